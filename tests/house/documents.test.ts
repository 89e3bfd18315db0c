import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { runExample } from '../../docs/tools/examples.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { fencesOf } from '../support/fences.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const read = (path: string) => readFileSync(`${root}${path}`, 'utf8')
const guides = readdirSync(`${root}docs/guides`)
  .filter((name) => name.endsWith('.md'))
  .map((name) => `docs/guides/${name}`)
const code = (path: string) => fencesOf(read(path))

describe('the code in the documents runs and gives what is printed', () => {
  it.each(['README.md', ...guides])('%s', async (path) => {
    const checked = await runExample(code(path), publicNames)
    expect(checked.flatMap(({ line, problem }) => (problem ? [`line ${line}: ${problem}`] : []))).toEqual([])
    if (path === 'README.md') expect(checked.length).toBeGreaterThanOrEqual(3)
  })
})

/** Names of the fields of all public types, those of a union of results among them. */
function fieldsOf(shape: unknown): string[] {
  if (typeof shape !== 'object' || shape === null) return []
  const own = 'has' in shape && typeof shape.has === 'object' && shape.has !== null ? Object.keys(shape.has) : []
  return [...own, ...Object.values(shape).flatMap(fieldsOf)]
}

describe('the documents', () => {
  it('name only functions and files that exist', () => {
    const fields = catalogue.flatMap((entry) =>
      [...entry.arguments, ...entry.result.fields].flatMap((field) => field.path.split('.')),
    )
    const names = new Set([
      ...Object.keys(publicNames),
      ...fields,
      ...fieldsOf(JSON.parse(read('src/repl/signatures.json'))),
      ...Object.keys(JSON.parse(read('package.json')).scripts),
    ])
    for (const path of ['README.md', ...guides]) {
      for (const [, name] of read(path).matchAll(/`([a-z][a-zA-Z0-9]{3,})(?:\([^`]*\))?`/g)) {
        if (/[A-Z0-9]/.test(name as string)) expect(names, `${path} names ${name}`).toContain(name)
      }
      for (const [, target] of read(path).matchAll(/\]\((?!https?:|#)([^)#]+)/g)) {
        const base = path.includes('/') ? `${path.slice(0, path.lastIndexOf('/'))}/` : ''
        expect(
          execFileSync('git', ['ls-files', '--', `${base}${target}`], { cwd: root, encoding: 'utf8' }),
          `${path} links to ${target}`,
        ).not.toBe('')
      }
    }
  })
  it('for developers name commands that package.json has, and all of them', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> }
    const pages = ['DEVELOPERS.md', ...readdirSync(`${root}docs/developers`).map((name) => `docs/developers/${name}`)]
    const named = pages.flatMap((page) => [...read(page).matchAll(/\bnpm run ([\w:-]+)/g)].map(([, script]) => script!))
    const own = ['start', 'test', 'build', 'repl', 'catalogue:once', 'vitest']
    expect([...new Set(named)].filter((script) => !own.includes(script)).sort()).toEqual(
      Object.keys(scripts)
        .filter((script) => !own.includes(script))
        .sort(),
    )
  })
  it('hold no machine path, registry host or loose end', () => {
    const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
      .trim()
      .split('\n')
      .filter((path) => !/package-lock\.json|documents\.test\.ts$/.test(path))
    // A path from the top of a machine; those of every system may stand, such as that of its interpreter of commands.
    const path = /(?:^|[\s"'`(=])\/(?!usr\/bin\/|dev\/|proc\/)[a-z][\w.-]*\/[\w-]+(?!\w*\/\.test)/m
    const host = /registry\.[a-z]+js\./
    const words = /\b(?:TODO|FIXME)\b|\bissue \d|\bhelpers?\b|the design (?:card|did not name)/i
    const found = tracked.filter((name) => {
      const text = read(name)
      return host.test(text) || (/\.(?:ts|mts|md|js|cjs)$/.test(name) && (path.test(text) || words.test(text)))
    })
    expect(found).toEqual([])
    expect(read('package-lock.json')).not.toMatch(/"resolved": "http/)
  })
})
