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

/** The report on a table; others of the scenario's files are changed for it alone. */
function report(data: string | Uint8Array, others: Readonly<Record<string, string>> = {}): string {
  writeFileSync(join(folder, 'readings.csv'), data)
  for (const name of readdirSync(bench)) if (name !== 'readings.csv') cpSync(join(bench, name), join(folder, name))
  for (const [name, text] of Object.entries(others)) writeFileSync(join(folder, name), text)
  return oneDay([join(folder, 'readings.csv'), '--picture', join(folder, 'day.svg')])
}
/** The report below its head, where the reader tells what it met. */
const body = (text: string) => text.slice(text.indexOf('What was read'))
const unfolded = (text: string) => text.replace(/\s+/g, ' ')
const local = (text: string) => text.replaceAll('+02:00', '')
const utf16 = (text: string) => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le'))
const utf16high = (text: string) => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le').swap16())
const log = readFileSync(join(bench, 'feed-and-drain.csv'), 'utf8')
/** One column of the readings written anew on the lines of these times. */
const rewritten = (column: string, of: (cell: string) => string, at = /^2026/) => {
  const k = HEAD.split(',').indexOf(column)
  const lines = LINES.map((text) => {
    const cells = text.split(',')
    if (at.test(text) && cells[k] !== '') cells[k] = of(cells[k]!)
    return cells.join(',')
  })
  return `${[HEAD, ...lines].join('\n')}\n`
}
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
    [
      '24. names that a logger writes again when it starts',
      [HEAD, ...LINES.slice(0, 200), HEAD, ...LINES.slice(200)].join('\n'),
    ],
    ['25. two exports in one file, each with its byte order mark', `\ufeff${plain}\ufeff${plain}`],
    ['26. a first line that says the separator', `sep=;\r\n${semicolons}`],
    ['27. the year first, with slashes', local(plain).replace(/(\d{4})-(\d\d)-(\d\d)T/g, '$1/$2/$3 ')],
    [
      '28. a note in quotes that goes over two lines',
      [`${HEAD},note`, ...LINES.map((line, i) => `${line},${i === 100 ? '"vents opened,\nthen closed"' : ''}`)].join(
        '\n',
      ),
    ],
    [
      '29. some times in universal time, some local, some with their offset',
      plain.replace(/^2026-05-19T(\d\d):(\d)(\d)\+02:00/gm, (time, _, ten) =>
        ten === '0' ? new Date(time).toISOString() : ten === '3' ? local(time) : time,
      ),
    ],
    [
      '30. seconds in some rows, milliseconds in others',
      plain.replace(/^2026[^,]+/gm, (time) => String(Date.parse(time) / (/5\+/.test(time) ? 1 : 1000))),
    ],
    ['31. midnight as 24:00', plain.replace('2026-05-19T00:00', '2026-05-18T24:00')],
    ['32. decimal commas in quotes between commas', plain.replace(/(\d+)\.(\d+)/g, '"$1,$2"')],
    ['21. newest first with a piece of a line at its end', [HEAD, ...[...LINES].reverse()].join('\n').slice(0, -1)],
  ])('%s', (_, data) => {
    expect(body(report(data))).toBe(body(report(plain)))
  })
  it('22. a wild number of the light costs itself, and does not move the plan', () => {
    const wild = (light: string) =>
      plain.replace(/^(2026-05-19T11:40\+02:00(?:,[^,]*){5}),[^,]*/m, (_, before) => `${before},${light}`)
    const told = /Look: 1 entry of the climate with a number that is impossible[^.]*\.\n/
    for (const light of ['99999', '32767', '-3000']) {
      const text = body(report(wild(light)))
      expect(text).toMatch(told)
      expect(text.replace(told, '')).toBe(body(report(wild(''))))
    }
  })
  it('23. millilitres in the log of litres are no water use', () => {
    const text = report(plain, { 'feed-and-drain.csv': log.replace(/,0\.(\d{3}),/g, ',$1,') })
    expect(text).toContain('Given: not known (the log has impossible volumes')
    expect(text).toMatch(/Expected use 2\.\d\d L a container, from the climate/)
  })
  it.each<[string, string, RegExp]>([
    [
      '33. another unit of light drives some readings out of range: the course of the day is not known',
      rewritten('radiation_W_m2', (x) => String(4.57 * Number(x))),
      /By the climate: not known \(the climate of the day has impossible numbers\).*Look: a radiation of \d{4} W\/m² is hard to believe: it looks like µmol.*Look: light was not measured, or not all day long; daylight from 6:00 to 20:00 is assumed/,
    ],
    [
      '34. three hours of light are missing at noon',
      rewritten('radiation_W_m2', () => '', /^2026-05-19T1[123]/),
      /By the climate: not known \(the climate of the day has too many gaps\)[\s\S]*Look: light was not measured, or not all day long/,
    ],
    [
      '35. a sensor of the air that broke off',
      rewritten('air_C', () => '-40', /^2026-05-19T1[0-4]/),
      /By the climate: not known \(the climate of the day has impossible numbers\)/,
    ],
    [
      '36. a humidity far beyond saturation',
      rewritten('humidity_pct', () => '135', /^2026-05-19T10/),
      /By the climate: not known \(the climate of the day has impossible numbers\)/,
    ],
    [
      '37. a root zone in degrees Fahrenheit',
      rewritten('root_C', (x) => String(32 + 1.8 * Number(x))),
      /The root zone: not known \(its numbers are impossible: check their unit\)/,
    ],
    [
      '57. air in degrees Fahrenheit',
      rewritten('air_C', (x) => String(32 + 1.8 * Number(x))),
      /By the climate: not known .*Look: an air temperature of [67]\d(\.\d)? °C is hard to believe: it looks like degrees Fahrenheit/,
    ],
    [
      '58. wind in km/h, of a field',
      rewritten('wind_m_s', (x) => String(3.6 * 18 * Number(x))),
      /Look: a wind speed of \d\d(\.\d)? m\/s is hard to believe: it looks like km\/h \(3\.6 km\/h is 1 m\/s\)/,
    ],
    [
      '59. light in kW/m²',
      rewritten('radiation_W_m2', (x) => String(Number(x) / 1000)),
      /By the climate: not known .*Look: a radiation of 0\.\d+ W\/m² is hard to believe: it looks like MJ\/m² in an hour or a day, or kW\/m²/,
    ],
  ])('%s', (_, data, told) => {
    expect(unfolded(report(data))).toMatch(told)
  })
  it('38. an hour of light that is missing at noon costs little', () => {
    const whole = /evapotranspiration by FAO-56 (\d\.\d\d)/
    const gap = report(rewritten('radiation_W_m2', () => '', /^2026-05-19T12/))
    expect(Number(whole.exec(gap)?.[1])).toBeCloseTo(Number(whole.exec(report(plain))?.[1]), 1)
    expect(unfolded(gap)).toContain('light as on this day (measured)')
  })
  it.each<[string, string, RegExp]>([
    [
      '39. conductivities in microsiemens',
      log.replace(/(\d)\.(\d\d)(?=,|$)/gm, '$1$20'),
      /Feed EC: not known \(its numbers are impossible: check their unit\)\. Drain EC: not known \(its numbers are impossible/,
    ],
    [
      '40. one volume in millilitres',
      log.replace(/(05-19T07:10.*?),0\.(\d{3}),/, '$1,$2,'),
      /Given: not known \(the log has impossible volumes: check their unit and sign\)/,
    ],
    [
      '41. a volume below zero',
      log.replace(/(05-19T08:20.*),0\.(044),/, '$1,-0.$2,'),
      /Drained: not known \(the log has impossible volumes: check their unit and sign\)/,
    ],
    [
      '42. a conductivity below zero costs itself',
      log.replace(/(05-19T08:20.*),\d\.\d\d$/m, '$1,-1'),
      /Feed EC: 2\.40 dS\/m\. Drain EC: 3\.\d\d dS\/m/,
    ],
    [
      '55. a log in local time that is marked as universal time',
      log.replaceAll('+02:00', 'Z'),
      /Danger: the valve log fits the rises once it is moved by −2\.0 h: it runs on another clock than the readings/,
    ],
    [
      '56. conductivities in millisiemens per metre',
      log.replace(/,(\d)\.(\d\d)(?=,|$)/gm, ',$1$2'),
      /Look: a feed EC of 24\d dS\/m is hard to believe: it looks like mS\/m \(100 mS\/m is 1 dS\/m\); set the unit of its column/,
    ],
  ])('%s', (_, changed, told) => {
    expect(changed).not.toBe(log)
    expect(unfolded(report(plain, { 'feed-and-drain.csv': changed }))).toMatch(told)
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
    [
      '43. decimal commas between commas',
      plain.replace(/(\d)\.(\d)/g, '$1,$2'),
      /line 2: has 11 fields.*need quotes, or semicolons between/,
    ],
    [
      '44. a separator at the end of every row but of the names',
      plain.replaceAll('\n', ',\n').replace(`${HEAD},`, HEAD),
      /line 2: has 9 fields.*end the line of names with it too/,
    ],
    [
      '45. a row of units below the names',
      [HEAD, ',,,°C,°C,%,W/m²,m/s', ...LINES].join('\n'),
      /line 2, column 1 \(time\).*units below the names, remove it/,
    ],
    [
      '46. lines above the names',
      `Logger 7,,\n${plain}`,
      /line 1: there is no column "time".*remove lines above the names/,
    ],
    [
      '47. thousands parted by commas in quotes',
      plain.replace(/,(\d{3}),/g, ',"1,$1",'),
      /line 2, column 2 \(raw_a\): "1,959" has a comma.*leave thousands separators out/,
    ],
    [
      '48. thousands parted by narrow spaces',
      plain.replace(/,(\d{3}),/g, ',1\u202f$1,'),
      /line 2, column 2 \(raw_a\).*leave thousands separators out/,
    ],
    [
      '49. decimal commas in the second half',
      semicolons
        .split('\n')
        .map((line, i) => (i < 200 ? line.replace(/(\d),(\d)/g, '$1.$2') : line))
        .join('\n'),
      /line 201, column 4 \(root_C\): "\d+,\d" has a comma beside numbers with a point/,
    ],
    [
      '50. years of two digits',
      local(plain).replace(/20(\d\d)-(\d\d)-(\d\d)T/g, '$3.$2.$1 '),
      /line 2, column 1 \(time\): "18\.05\.26 12:05".*year with four digits/,
    ],
    [
      '51. mornings and afternoons by letters',
      local(plain).replace(
        /T(\d\d):(\d\d)/g,
        (_, h, m) => ` ${Number(h) % 12 || 12}:${m} ${Number(h) < 12 ? 'a.m.' : 'p.m.'}`,
      ),
      /line 2, column 1 \(time\).*24 hours/,
    ],
    [
      '52. day numbers of a spreadsheet',
      plain.replace(/^2026[^,]+/gm, (time) => String((Date.parse(time) / 1000 + 7200) / 86400 + 25569)),
      /line 2, column 1 \(time\).*format of date and time/,
    ],
    [
      '53. a workbook instead of a table',
      `PK\u0003\u0004\u0014\0\u0006\0,x\n\u0001\u0002,\u0007\n`,
      /line 1: is no text.*save it as CSV/,
    ],
    [
      '54. a 29 February in a year that has none',
      plain.replace('2026-05-18T23:00', '2026-02-29T23:00'),
      /line \d+, column 1 \(time\).*no such day/,
    ],
  ])('%s', (_, data, message) => {
    expect(() => report(data)).toThrow(message)
  })
  it('15. per cent from a probe that reports water content', () => {
    const setup = JSON.parse(readFileSync(join(bench, 'readings.json'), 'utf8'))
    setup.zone.probes = [{ name: 'probe A' }, { name: 'probe B' }]
    const percent = plain.replace(
      /^([^,]+),(\d+),(\d+)/gm,
      (_, time, a, b) => `${time},${(a / 16).toFixed(1)},${(b / 16).toFixed(1)}`,
    )
    expect(() => report(percent, { 'readings.json': JSON.stringify(setup) })).toThrow(
      /line 2, column 2 \(raw_a\): 5\d\.\d looks like per cent .*"%"/,
    )
  })
})
