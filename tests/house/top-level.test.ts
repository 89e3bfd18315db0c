import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' }).trim().split('\n')

describe('the house', () => {
  it('has at its top only what is listed here', () => {
    const top = [...new Set(tracked.map((path) => path.split('/')[0]!))].filter((name) => !name.startsWith('.'))
    expect(top.sort()).toEqual(
      [
        'CHANGELOG.md',
        'DEVELOPERS.md',
        'LICENSE',
        'README.md',
        'THIRD-PARTY-NOTICES.md',
        'benchmarks',
        'docs',
        'package-lock.json',
        'package.json',
        'src',
        'tests',
        'tsconfig.json',
        'tsup.config.ts',
      ].sort(),
    )
  })
  it('lists every public name of a folder in its index', () => {
    for (const folder of readdirSync(`${root}src`)) {
      if (folder === 'numerics' || !tracked.includes(`src/${folder}/index.ts`)) continue
      const index = readFileSync(`${root}src/${folder}/index.ts`, 'utf8')
      // What the unit tables give is listed name by name in an index of its own.
      expect(index.replace("export * from './generated/index.js'", ''), folder).not.toMatch(/export \*/)
    }
  })
  it('wires every published topic to a test', () => {
    const tests = tracked
      .filter((path) => path.endsWith('.test.ts') && !path.endsWith('top-level.test.ts'))
      .map((path) => readFileSync(`${root}${path}`, 'utf8'))
      .join('\n')
    const left: string[] = []
    for (const file of readdirSync(`${root}tests/published`)) {
      if (file === 'not-testable.json') continue
      const rows = JSON.parse(readFileSync(`${root}tests/published/${file}`, 'utf8')) as { topic: string }[]
      for (const topic of new Set(rows.map((row) => row.topic))) {
        const used = tests.includes(`'${topic}'`)
        if (!used) left.push(topic)
      }
    }
    expect(left).toEqual([])
  })
  it('says why a published row cannot be tested', () => {
    const rows = JSON.parse(readFileSync(`${root}tests/published/not-testable.json`, 'utf8')) as object[]
    for (const row of rows)
      expect(row).toMatchObject({ id: expect.any(String), notTestable: expect.stringMatching(/\w+ \w+/) })
  })
})
