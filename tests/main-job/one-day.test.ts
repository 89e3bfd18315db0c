import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const bench = join(root, 'docs/examples/invented-bench')
let folder = ''

function start(...args: string[]): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(
    process.execPath,
    ['--import', 'tsx', join(root, 'docs/examples/one-day.ts'), ...args, '--picture', join(folder, 'day.svg')],
    { cwd: root, encoding: 'utf8' },
  )
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

describe('the main job on the invented bench', () => {
  it('prints a report that a grower can read and draws the day', () => {
    const { status, stdout, stderr } = start()
    expect(stderr).toBe('')
    expect(status).toBe(0)
    for (const part of [
      /An invented scenario: nothing here was measured\./,
      /360 readings from 2026-05-18 18:05 to 2026-05-20 00:00/,
      /probe B has no reading that can be trusted from 2026-05-19 13:55 to/,
      /After drain it settles at 6[01]\.\d %/,
      /Overnight dry-down 3\.\d %/,
      /4\.88 L given in 11 entries of the log, 1\.47 L drained: a drain fraction of 30\.0 %/,
      /Reference evapotranspiration by FAO-56 3\.26 mm\/d/,
      /\d+ shots, 4\.\d\d L together; 25\.\d % of it should drain \(asked: 25\.0 %\)/,
      /valve open \d+ min \d\d s: morning rewet/,
      /licensed electrician/,
    ]) {
      expect(stdout).toMatch(part)
    }
    const picture = readFileSync(join(folder, 'day.svg'), 'utf8')
    expect(picture).toMatch(/^<svg .*<\/svg>$/s)
    expect(picture).toContain('Bench 4, sweet pepper in coir and perlite, 2026-05-19')
    expect(picture).not.toMatch(/NaN|undefined/)
  })
  it('agrees with sums worked out from the log alone', () => {
    const rows = readFileSync(join(bench, 'feed-and-drain.csv'), 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','))
    const feed = rows.reduce((sum, row) => sum + Number(row[2]), 0)
    const drain = rows.reduce((sum, row) => sum + Number(row[4]), 0)
    const ec = rows.reduce((sum, row) => sum + Number(row[4]) * Number(row[5]), 0) / drain
    const { stdout } = start()
    expect(stdout).toContain(`${feed.toFixed(2)} L given`)
    expect(stdout).toContain(`drain fraction of ${((100 * drain) / feed).toFixed(1)} %`)
    expect(stdout).toContain(`drain ${ec.toFixed(2)} dS/m`)
  })
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
      (text: string) => text.replace(/,933,/, ',soaked,').replace(/,93\d,/, ',soaked,'),
      /readings\.csv line \d+, column \d \(raw_[ab]\): "soaked" found; expected a number/,
    ],
    [
      'a time that is none',
      'readings.csv',
      (text: string) => text.replace('2026-05-18T18:10+02:00', 'ten past six'),
      /readings\.csv line 3, column 1 \(time\): "ten past six" found; expected a time such as/,
    ],
    [
      'a time without an offset',
      'readings.csv',
      (text: string) => text.replaceAll('+02:00', ''),
      /line 2, column 1 \(time\).*a "clock" in the setup/,
    ],
    [
      'a line that is cut off',
      'readings.csv',
      (text: string) => text.slice(0, 300),
      /readings\.csv line \d+: has \d fields; expected 8/,
    ],
    ['an empty file', 'readings.csv', () => '', /readings\.csv: has no rows/],
    [
      'an open quote',
      'readings.csv',
      (text: string) => text.replace('2026-05-18T18:10+02:00', '"2026'),
      /readings\.csv line/,
    ],
    [
      'a column that is not there',
      'readings.json',
      (text: string) => text.replace('"raw_a"', '"raw_z"'),
      /there is no column "raw_z"; the file has time, raw_a/,
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
      (text: string) => text.replace('"dryWaterContent": 0.04', '"dryWaterContent": 0.9'),
      /the samples may be swapped/,
    ],
    [
      'no samples',
      'readings.json',
      (text: string) => text.replace('"probe B": { "dry', '"probe C": { "dry'),
      /no samples for "probe B"/,
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
