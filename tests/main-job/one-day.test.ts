import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { oneDay } from '../../docs/examples/one-day.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const bench = join(root, 'docs/examples/invented-bench')
let folder = ''

/** The command in this process: its text, or its refusal. */
function start(...args: string[]): { status: number; stdout: string; stderr: string } {
  try {
    return { status: 0, stdout: oneDay([...args, '--picture', join(folder, 'day.svg')]), stderr: '' }
  } catch (error) {
    if (!['bad-input', 'outside-domain'].includes((error as { code?: string }).code ?? '')) throw error
    return { status: 1, stdout: '', stderr: (error as Error).message }
  }
}

/** The invented bench with a change in one of its files. */
function changed(file: string, change: (text: string) => string): string {
  for (const name of readdirSync(bench)) cpSync(join(bench, name), join(folder, name))
  writeFileSync(join(folder, file), change(readFileSync(join(bench, file), 'utf8')))
  return join(folder, 'readings.csv')
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-day-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the script itself', () => {
  const source = readFileSync(join(root, 'docs/examples/one-day.ts'), 'utf8')
  it('is a thin reader and printer of at most 250 lines', () => {
    expect(source.trimEnd().split('\n').length).toBeLessThanOrEqual(250)
    for (const name of [
      'reviewZone',
      'proposeDay',
      'diagnoseDay',
      'reportZone',
      'trustedReadings',
      'seriesFromCsv',
      'readDocument',
    ])
      expect(source).toMatch(new RegExp(`\\b${name}\\(`))
  })
  it('whose zone stands on the functions of the record, not on copies of them', () => {
    const folder = join(root, 'src/zone')
    const zone = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => readFileSync(join(folder, name), 'utf8'))
      .join('\n')
    for (const name of [
      'checkReadings',
      'findShots',
      'matchShots',
      'zoneMean',
      'flatLineLimits',
      'overnightDryDowns',
      'diagnoseRecord',
    ])
      expect(zone).toMatch(new RegExp(`\\b${name}\\(`))
  })
})

describe('the main job on the invented bench', () => {
  it('prints a report that a grower can read and draws the day', () => {
    const { status, stdout, stderr } = start()
    expect(stderr).toBe('')
    expect(status).toBe(0)
    expect(stdout).toContain('An invented scenario: nothing here was measured.')
    expect(stdout).toContain('licensed electrician')
    const picture = readFileSync(join(folder, 'day.svg'), 'utf8')
    expect(picture).toMatch(/^<svg .*<\/svg>$/s)
    expect(picture).toContain('Bench 4, sweet pepper in coir and perlite, 2026-05-19')
    expect(picture).not.toMatch(/NaN|undefined/)
  })
  it('is a command that ends with 0, or with 1 and a message without a stack', () => {
    const command = (...args: string[]) =>
      spawnSync(
        process.execPath,
        ['--import', 'tsx', join(root, 'docs/examples/one-day.ts'), ...args, '--picture', join(folder, 'day.svg')],
        { cwd: root, encoding: 'utf8' },
      )
    const good = command()
    expect([good.stderr, good.status]).toEqual(['', 0])
    expect(good.stdout).toBe(start().stdout)
    const bad = command(join(folder, 'nothing.csv'))
    expect([bad.stdout, bad.status]).toEqual(['', 1])
    expect(bad.stderr).toMatch(/nothing\.json: cannot be read/)
    expect(bad.stderr).not.toMatch(/\n\s+at /)
  }, 200_000)
  it('is made again by its script, byte for byte', () => {
    execFileSync(process.execPath, ['--import', 'tsx', join(bench, 'make.ts'), folder], { cwd: root })
    for (const name of ['readings.csv', 'feed-and-drain.csv']) {
      expect(readFileSync(join(folder, name), 'utf8')).toBe(readFileSync(join(bench, name), 'utf8'))
    }
  })
})

describe('bad input', () => {
  it.each([
    [
      'a word among the numbers',
      'readings.csv',
      (text: string) => text.replace(/,9\d\d,/, ',soaked,'),
      /readings\.csv, line \d+, column \d \(raw_[ab]\): "soaked" is not a number.*"missing"/,
    ],
    [
      'a time that is none',
      'readings.csv',
      (text: string) => text.replace('2026-05-18T12:10+02:00', 'ten past noon'),
      /readings\.csv, line 3, column 1 \(time\): "ten past noon" is not a time/,
    ],
    ['an empty file', 'readings.csv', () => '', /readings\.csv: has no rows/],
    [
      'a column that is not there',
      'readings.json',
      (text: string) => text.replace('"raw_a"', '"raw_z"'),
      /line 1: there is no column "raw_z"; the table has time, raw_a/,
    ],
    ['a setup that is not JSON', 'readings.json', () => '{', /readings\.json: is not JSON/],
    [
      'a setup with a word for a number',
      'readings.json',
      (text: string) => text.replace('"plants": 2', '"plants": "two"'),
      /container\.plants: /,
    ],
    [
      'a setup with a key too many',
      'readings.json',
      (text: string) => text.replace('"plants": 2', '"plants": 2, "buckets": 3'),
      /buckets/,
    ],
    [
      'swapped samples',
      'readings.json',
      (text: string) => text.replace('"waterContent": 0.04', '"waterContent": 0.9'),
      /the samples may be swapped/,
    ],
    [
      'no column for a probe',
      'readings.json',
      (text: string) => text.replace('"probe B": {', '"probe C": {'),
      /no column for "probe B"/,
    ],
    [
      'a limit that cannot be',
      'readings.json',
      (text: string) => text.replace('"7 L"', '"-7 L"'),
      /limits\.maxPerDay|maxPerDay/,
    ],
  ] as [string, string, (text: string) => string, RegExp][])(
    '%s: says where and what was expected, exits with 1 and writes nothing',
    (_, file, change, message) => {
      rmSync(join(folder, 'day.svg'), { force: true })
      const { status, stdout, stderr } = start(changed(file, change))
      expect(stderr).toMatch(message)
      expect(stderr).not.toMatch(/\n\s+at /)
      expect(status).toBe(1)
      expect(stdout).toBe('')
      expect(existsSync(join(folder, 'day.svg'))).toBe(false)
      expect(existsSync(join(folder, 'day.svg.part'))).toBe(false)
    },
  )
  it('a file that is not there, an option that is unknown, a day without readings', () => {
    expect(start(join(folder, 'nothing.csv')).stderr).toMatch(/nothing\.(csv|json): cannot be read/)
    expect(start('--colums', 'x').stderr).toMatch(/Usage: npm start/)
    expect(start('--day', '2020-01-01').stderr).toMatch(/no reading on 2020-01-01/)
    expect(start('--columns', 'time').stderr).toMatch(/is not role=column/)
    expect(start('--columns', 'tide=x').stderr).toMatch(/there is no role "tide"/)
  })
  it('columns named on the command line take the place of those in the setup', () => {
    const file = changed('readings.csv', (text) => text.replace('raw_a', 'left probe'))
    expect(start(file).stderr).toMatch(/there is no column "raw_a"/)
    expect(start(file, '--columns', 'probe A=left probe').status).toBe(0)
  })
})
