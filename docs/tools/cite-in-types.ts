/** Writes the keys of sources out as citations in the types of the built package, so that an editor shows its user the work. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { sourceInFull } from '../../src/catalogue/source-in-full.js'

/** Documentation with every `@source` in full. Each tag stands on one line. */
export function citedInFull(types: string): string {
  return types.replace(/(@source )(.+?)(?= *\*\/|$)/gm, (_, tag: string, source: string) => tag + sourceInFull(source))
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const dist = fileURLToPath(new URL('../../dist/', import.meta.url))
  for (const name of readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((one) => /\.d\.c?ts$/.test(one)))
    writeFileSync(`${dist}${name}`, citedInFull(readFileSync(`${dist}${name}`, 'utf8')))
}
