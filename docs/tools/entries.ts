/**
 * Writes `entries/<topic>.ts`, from which the build makes `porewater/<topic>`: the topic's own index, and the constructors and readers that
 * its examples use, so that an example runs with one import. Not committed; part of `npm run build`.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { catalogue } from '../../src/catalogue/index.js'
import * as quantity from '../../src/quantity/index.js'
import { topics } from './topics.js'

/** For a topic the names of `porewater/quantity` that its examples call. */
export function unitsIn(topic: string, entries: readonly CatalogueEntry[] = catalogue): string[] {
  const code = entries.filter((entry) => entry.topic === topic).map(({ example }) => example.replace(/\/\/.*$/gm, ''))
  const called = new Set(code.join('\n').match(/(?<![.\w$'"])[a-z]\w*(?=\s*(?:<\w+>)?\()/g) ?? [])
  return [...called].filter((name) => Object.hasOwn(quantity, name)).sort()
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = fileURLToPath(new URL('../../entries/', import.meta.url))
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder)
  for (const topic of topics()) {
    const units = topic === 'quantity' ? [] : unitsIn(topic)
    const more = units.length === 0 ? '' : `export { ${units.join(', ')} } from '../src/quantity/index.js'\n`
    writeFileSync(`${folder}${topic}.ts`, `export * from '../src/${topic}/index.js'\n${more}`)
  }
}
