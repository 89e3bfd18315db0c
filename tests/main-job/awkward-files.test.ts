import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { oneDay } from '../../docs/examples/one-day.js'

/** The invented bench in the forms in which people have their files: the report is that of the plain file, or there is none. */
const bench = fileURLToPath(new URL('../../docs/examples/invented-bench/', import.meta.url))
const plain = readFileSync(join(bench, 'readings.csv'), 'utf8')
const [HEAD = '', ...LINES] = plain.trimEnd().split('\n')
let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-awkward-'))
  for (const name of readdirSync(bench)) cpSync(join(bench, name), join(folder, name))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function report(data: string | Uint8Array): string {
  writeFileSync(join(folder, 'readings.csv'), data)
  return oneDay([join(folder, 'readings.csv'), '--picture', join(folder, 'day.svg')])
}
/** The report below its head, where the reader tells what it met. */
const body = (text: string) => text.slice(text.indexOf('What was read'))
const local = (text: string) => text.replaceAll('+02:00', '')
const utf16 = (text: string) => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le'))
const utf16high = (text: string) => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le').swap16())
const semicolons = plain.replaceAll(',', ';').replace(/(\d)\.(\d)/g, '$1,$2')

describe('awkward files give the report of the plain one', () => {
  it.each<[string, string | Uint8Array]>([
    ['1. semicolons and decimal commas', semicolons],
    ['2. UTF-16 with its mark and CR LF', utf16(plain.replaceAll('\n', '\r\n'))],
    ['3. a byte order mark, quotes and blank last lines', `\ufeff${plain.replace(/[^,\n]+/g, '"$&"')}\n\n`],
    ['4. words for missing readings', plain.replaceAll(',,', ',NaN,').replace(/,,/g, ',#N/A,')],
    ['5. newest first', [HEAD, ...[...LINES].reverse()].join('\n')],
    [
      '6. shuffled days, one of them twice',
      [HEAD, ...LINES.slice(200), ...LINES.slice(0, 200), ...LINES.slice(50, 150)].join('\n'),
    ],
    ['7. the clock on the wall', local(plain)],
    ['8. comments and a last line that is cut', `# logger 7\n${plain}2026-05-20T00:05+02:00,95`],
    [
      '9. tabs and day first',
      local(plain)
        .replaceAll(',', '\t')
        .replace(/(\d{4})-(\d\d)-(\d\d)T/g, '$3.$2.$1 '),
    ],
  ])('%s', (_, data) => {
    expect(body(report(data))).toBe(body(report(plain)))
  })
  it.each<[string, string | Uint8Array]>([
    ['16. semicolons, decimal commas and UTF-16 with the high byte first', utf16high(semicolons)],
    ['17. UTF-16 without a mark', utf16(semicolons).subarray(2)],
    [
      '18. lines that end at a carriage return alone, in quotes',
      plain.replace(/[^,\n]+/g, '"$&"').replaceAll('\n', '\r'),
    ],
    ['19. seconds since 1970', plain.replace(/^2026[^,]+/gm, (time) => String(Date.parse(time) / 1000))],
    [
      '20. a day twice, the second time with other numbers',
      `${plain}${LINES.slice(50, 150)
        .join('\n')
        .replace(/,9\d\d,/g, ',777,')}\n`,
    ],
    ['21. newest first with a piece of a line at its end', [HEAD, ...[...LINES].reverse()].join('\n').slice(0, -1)],
  ])('%s', (_, data) => {
    expect(body(report(data))).toBe(body(report(plain)))
  })
  it('22. a wild number of the light costs itself, and does not move the plan', () => {
    const wild = (light: string) =>
      plain.replace(/^(2026-05-19T11:40\+02:00(?:,[^,]*){5}),[^,]*/m, (_, before) => `${before},${light}`)
    for (const light of ['99999', '32767', '-3000']) expect(body(report(wild(light)))).toBe(body(report(wild(''))))
  })
  it('23. millilitres in the log of litres are no water use', () => {
    const log = readFileSync(join(bench, 'feed-and-drain.csv'), 'utf8')
    writeFileSync(join(folder, 'feed-and-drain.csv'), log.replace(/,0\.(\d{3}),/g, ',$1,'))
    const text = report(plain)
    writeFileSync(join(folder, 'feed-and-drain.csv'), log)
    expect(text).toContain('Given: not known (the log has volumes that cannot be')
    expect(text).toMatch(/Expected use 2\.\d\d L a container, from the climate/)
  })
  it('10. sentinels cost themselves and no neighbour', () => {
    const at = LINES.findIndex((line) => line.startsWith('2026-05-19T11:40'))
    for (const sentinel of ['-999', '65535']) {
      const lines = LINES.map((line, i) => (i === at ? line.replace(/,\d+,/, `,${sentinel},`) : line))
      const text = report([HEAD, ...lines].join('\n'))
      expect(text).toContain('probe A: 275 good, 0 doubtful, 3 wrong, 10 missing')
      expect(text).toContain('10 of 11 shots seen')
    }
  })
})

describe('awkward files that would give a wrong number are refused', () => {
  it.each<[string, string, RegExp]>([
    [
      '11. a 30 February',
      plain.replace('2026-05-19T08:00', '2026-02-30T08:00'),
      /line \d+, column 1 \(time\).*no such day/,
    ],
    [
      '12. a number with a unit',
      plain.replace(/,21\.\d,/, ',21.1 °C,'),
      /line \d+, column \d \(\w+\): "21\.1 °C" is not a number/,
    ],
    ['13. dates that could be either', local(plain).replace(/(\d{4})-(\d\d)-(\d\d)T/g, '$2/05/$1 '), /dateOrder/],
    [
      '14. a column that is gone',
      plain.replace('raw_b', 'raw_c'),
      /no column "raw_b"; the table has time, raw_a, raw_c/,
    ],
  ])('%s', (_, data, message) => {
    expect(() => report(data)).toThrow(message)
  })
  it('15. per cent from a probe that reports water content', () => {
    const setup = JSON.parse(readFileSync(join(bench, 'readings.json'), 'utf8'))
    setup.zone.probes = [{ name: 'probe A' }, { name: 'probe B' }]
    writeFileSync(join(folder, 'readings.json'), JSON.stringify(setup))
    const percent = plain.replace(
      /^([^,]+),(\d+),(\d+)/gm,
      (_, time, a, b) => `${time},${(a / 16).toFixed(1)},${(b / 16).toFixed(1)}`,
    )
    expect(() => report(percent)).toThrow(/line 2, column 2 \(raw_a\): 5\d\.\d looks like per cent .*"%"/)
  })
})
