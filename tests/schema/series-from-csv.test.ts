import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { type CsvSeriesOptions, DocumentError, resolveSenml, seriesFromCsv, textFromBytes } from 'porewater/schema'
import { describe, expect, it } from 'vitest'

const OPTIONS: CsvSeriesOptions = {
  name: 'readings.csv',
  time: 'time',
  columns: { A: { column: 'a' }, B: { column: 'b' } },
  maxCharacters: 1_000_000,
}
const PLAIN = 'time,a,b\n2026-05-19T07:00Z,0.5,20\n2026-05-19T07:05Z,0.499,20.5\n2026-05-19T07:10Z,0.498,21\n'
const TIMES = [0, 300, 600].map((s) => Date.UTC(2026, 4, 19, 7) / 1000 + s)
const read = (data: string | Uint8Array, more: Partial<CsvSeriesOptions> = {}) => {
  const { time, columns, ...rest } = seriesFromCsv(data, { ...OPTIONS, ...more })
  return { time: Array.from(time), A: Array.from(columns.A ?? []), B: Array.from(columns.B ?? []), ...rest }
}
const SAME = { time: TIMES, A: [0.5, 0.499, 0.498], B: [20, 20.5, 21] }

function refusalOf(data: string | Uint8Array, more: Partial<CsvSeriesOptions> = {}): string {
  try {
    read(data, more)
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return (error as Error).message
  }
  throw new Error('nothing was refused')
}

function utf16(text: string, high: 0 | 1, mark: boolean): Uint8Array {
  const whole = `${mark ? '\ufeff' : ''}${text}`
  const bytes = new Uint8Array(2 * whole.length)
  for (let i = 0; i < whole.length; i++) {
    bytes[2 * i + high] = whole.charCodeAt(i) & 255
    bytes[2 * i + 1 - high] = whole.charCodeAt(i) >> 8
  }
  return bytes
}

describe('a table in the forms in which people have it gives the same numbers', () => {
  it.each<[string, string | Uint8Array, Partial<CsvSeriesOptions>]>([
    ['plain', PLAIN, {}],
    ['CR LF', PLAIN.replaceAll('\n', '\r\n'), {}],
    ['lone CR', PLAIN.replaceAll('\n', '\r'), {}],
    ['no end of the last line', PLAIN.trimEnd(), {}],
    ['blank last lines', `${PLAIN}\n\r\n`, {}],
    ['lines with separators only', `${PLAIN},,\n,,\n`, {}],
    ['a byte order mark as text', `\ufeff${PLAIN}`, {}],
    ['UTF-8 with its mark', new TextEncoder().encode(`\ufeff${PLAIN}`), {}],
    ['UTF-16, low byte first', utf16(PLAIN, 0, true), {}],
    ['UTF-16, high byte first', utf16(PLAIN, 1, true), {}],
    ['UTF-16 without a mark', utf16(PLAIN, 0, false), {}],
    ['semicolons and decimal commas', PLAIN.replaceAll(',', ';').replaceAll('.', ','), {}],
    ['tabs', PLAIN.replaceAll(',', '\t'), {}],
    ['bars', PLAIN.replaceAll(',', '|'), {}],
    [
      'quotes and decimal commas',
      'time,a,b\n2026-05-19T07:00Z,"0,5",20\n2026-05-19T07:05Z,"0,499","20,5"\n2026-05-19T07:10Z,"0,498",21\n',
      {},
    ],
    ['comments before, between and behind', `# logger 4\n${PLAIN.replace('\n2026', '\n# calm\n2026')}# end\n`, {}],
    ['newest-first', ['time,a,b', ...PLAIN.trim().split('\n').slice(1).reverse()].join('\n'), {}],
    ['days without order', ['time,a,b', ...[2, 3, 1].map((i) => PLAIN.split('\n')[i])].join('\n'), {}],
    ['a day that stands twice', PLAIN + PLAIN.split('\n').slice(1).join('\n'), {}],
    ['seconds since 1970', PLAIN.replace(/2026[^,]*/g, (cell) => String(Date.parse(cell) / 1000)), {}],
    ['milliseconds since 1970', PLAIN.replace(/2026[^,]*/g, (cell) => String(Date.parse(cell))), {}],
    ['offsets', PLAIN.replace(/T0(\d):(\d\d)Z/g, 'T0$1:$2+00:00').replace('07:05+00:00', '09:05+0200'), {}],
    ['day first with dots', PLAIN.replace(/2026-05-19T(..:..)Z/g, '19.05.2026 $1'), { clock: [{ from: 0, ahead: 0 }] }],
    [
      'day first with slashes',
      PLAIN.replace(/2026-05-19T(..:..)Z/g, '19/05/2026 $1'),
      { clock: [{ from: 0, ahead: 0 }] },
    ],
    [
      'month first with slashes',
      PLAIN.replace(/2026-05-19T(..:..)Z/g, '5/19/2026 $1'),
      { clock: [{ from: 0, ahead: 0 }] },
    ],
    [
      'date and time of day in two columns',
      PLAIN.replace('time', 'date,clock').replace(/T(..:..)Z/g, ',$1'),
      { time: ['date', 'clock'], clock: [{ from: 0, ahead: 0 }] },
    ],
  ])('%s', (_, data, more) => {
    expect(read(data, more)).toMatchObject({ ...SAME, refused: 0, conflicting: 0 })
  })
  it('an order of dates that is none of its words is refused, and reads no day as a month', () => {
    const text = 'time,a\n03/04/2026 07:00,0.5\n'
    for (const dateOrder of ['lihgt', 'day-first', 3, null])
      expect(() => read(text, { dateOrder } as never)).toThrow('dateOrder')
  })
  it('says what it found', () => {
    expect(read(PLAIN.replaceAll(',', ';').replaceAll('.', ','))).toMatchObject({
      separator: ';',
      decimalMark: ',',
      step: 300,
    })
    expect(read(PLAIN + PLAIN.split('\n').slice(1).join('\n'))).toMatchObject({
      rows: 6,
      doubled: 3,
      order: 'shuffled',
    })
    expect(textFromBytes(Uint8Array.of(0x32, 0x30, 0x20, 0xb0, 0x43))).toEqual({
      text: '20 °C',
      encoding: 'windows-1252',
    })
  })
})

describe('missing readings', () => {
  it.each(['', 'NaN', 'nan', 'NA', 'N/A', 'null', 'None', '-', '−', '#N/A', '-999', '-9999', '65535'])(
    '"%s" is one, and its neighbours stay',
    (word) => {
      expect(read(PLAIN.replace('0.499', word)).A).toEqual([0.5, Number.NaN, 0.498])
    },
  )
  it('are those that the user names, and then no others', () => {
    expect(read(PLAIN.replace('0.499', 'aus'), { missing: ['AUS'] }).A).toEqual([0.5, Number.NaN, 0.498])
    expect(refusalOf(PLAIN.replace('0.499', 'NA'), { missing: ['AUS'] })).toMatch(/line 3, column 2 \(a\): "NA"/)
    expect(read(PLAIN.replace('0.499', '-999'), { sentinels: [7] }).A).toEqual([0.5, -999, 0.498])
  })
  it('a minus sign as type setters write it stands before a number', () => {
    expect(read(PLAIN.replace('20.5', '−20.5')).B).toEqual([20, -20.5, 21])
  })
})

describe('what cannot be read is refused with line, column and remedy', () => {
  it.each<[string, string | Uint8Array, RegExp, Partial<CsvSeriesOptions>]>([
    [
      'a word',
      PLAIN.replace('0.499', 'soaked'),
      /readings\.csv, line 3, column 2 \(a\): "soaked" is not a number.*correct it, or list it under "missing"/,
      {},
    ],
    ['a thousand', PLAIN.replace('20.5', '"1.234,5"'), /decimal|column 3 \(b\).*thousands/, {}],
    ['numbers with both marks', PLAIN.replaceAll(',', ';').replace('0.499', '0,499'), /set decimalMark/, {}],
    ['1,234 that may be a thousand', 'time;a;b\n2026-05-19T07:00Z;1,234;2\n', /set decimalMark/, {}],
    ['a percent sign', PLAIN.replace('0.499', '49.9 %'), /line 3, column 2 \(a\).*unit of the column to "%"/, {}],
    ['infinity', PLAIN.replace('0.499', 'inf'), /no reading is infinite/, {}],
    ['a number that no number can hold', PLAIN.replace('0.499', '1e999'), /column 2 \(a\): "1e999".*infinite/, {}],
    ['another one', PLAIN.replace('20.5', '-1e+400'), /column 3 \(b\): "-1e\+400".*infinite/, {}],
    [
      'dates run together to the minute, which would be of 1976',
      PLAIN.replace(/2026-05-19T(..):(..)Z/g, '20260519$1$2'),
      /line 2, column 1 \(time\): "202605190700".*part the date/,
      { clock: [{ from: 0, ahead: 0 }] },
    ],
    [
      'dates run together to the hour, which would be of 2034',
      'time,a,b\n2026051907,1,2\n2026051908,1,2\n',
      /line 2, column 1 \(time\): "2026051907".*part the date/,
      { clock: [{ from: 0, ahead: 0 }] },
    ],
    [
      '30 February',
      PLAIN.replace('2026-05-19T07:05', '2026-02-30T07:05'),
      /line 3, column 1 \(time\): "2026-02-30T07:05Z" is not a time.*no such day/,
      {},
    ],
    ['25 o’clock', PLAIN.replace('T07:05', 'T25:05'), /line 3, column 1/, {}],
    ['a time without an offset', PLAIN.replaceAll('Z', ''), /line 2, column 1 \(time\).*"clock"/, {}],
    ['dates that could be either', PLAIN.replace(/2026-05-19T(..:..)Z/g, '5/6/2026 $1'), /dateOrder/, {}],
    ['afternoon by letters', PLAIN.replace('2026-05-19T07:05Z', '2026-05-19 07:05 PM'), /24 hours/, {}],
    [
      'a column that is not there',
      PLAIN.replace('a,b', 'x,b'),
      /line 1: there is no column "a"; the table has time, x, b/,
      {},
    ],
    ['a name that stands twice', PLAIN.replace('time,a,b', 'a,a,b'), /no column "time"|two columns are called/, {}],
    ['nothing', '', /has no rows/, {}],
    ['a header alone', 'time,a,b\n', /has no rows/, {}],
    [
      'mostly broken rows',
      'time,a,b\n1\n2\n3\n2026-05-19T07:00Z,1,2\n',
      /line 2: has 1 field.*3 fields/,
      { separator: ',' },
    ],
    ['half a character', utf16(PLAIN, 0, true).slice(0, -1), /ends within a character/, {}],
    [
      'thousands with a point, beside whole numbers',
      'time,a,b\n2026-05-19T07:00Z,998,1\n2026-05-19T07:05Z,1.002,1\n',
      /line 3, column 2 \(a\): "1\.002" may be a thousand.*set decimalMark/,
      {},
    ],
    [
      'thousands with a comma, beside numbers with a decimal comma',
      'time;a;b\n2026-05-19T07:00Z;998;0,5\n2026-05-19T07:05Z;1,002;0,5\n',
      /line 3, column 2 \(a\): "1,002" may be a thousand/,
      {},
    ],
    [
      'per cent instead of a fraction',
      PLAIN.replaceAll('0.5,', '55.3,').replaceAll('0.49', '54.'),
      /line 2, column 2 \(a\): 55\.3 looks like per cent \(expected: a fraction such as 0\.553\).*"%"/,
      { columns: { A: { column: 'a', kind: 'WaterContent' } } },
    ],
    [
      'a fraction instead of per cent',
      PLAIN,
      /line 2, column 2 \(a\): 0\.5 looks like a fraction/,
      { columns: { A: { column: 'a', kind: 'WaterContent', unit: '%' } } },
    ],
  ])('%s', (_, data, message, more) => {
    expect(refusalOf(data, more)).toMatch(message)
  })
})

describe('rows that are broken cost themselves', () => {
  it('a last line that is cut is one bad row', () => {
    expect(read(`${PLAIN}2026-05-19T07:1`)).toMatchObject({ ...SAME, refused: 1, problems: [{ path: 'line 5' }] })
    expect(read(`${PLAIN}"2026-05-19T07:1`)).toMatchObject({ ...SAME, refused: 1, problems: [{ path: 'line 5' }] })
  })
  it('a last line that is cut within its last number is one bad row, where all others tell how long it must be', () => {
    const lines = Array.from({ length: 30 }, (_, i) => `2026-05-19T08:${10 + i}Z,0.5,${i < 15 ? 9 : 10}.2${i % 10}`)
    const whole = ['time,a,b', ...lines].join('\n')
    for (const piece of [whole.slice(0, -1), whole.slice(0, -2), whole.slice(0, -3)])
      expect(read(piece), piece.slice(-8)).toMatchObject({ refused: 1, problems: [{ path: 'line 31' }] })
    expect(read(whole)).toMatchObject({ refused: 0 })
    expect(read(`${whole.slice(0, -1)}\n`)).toMatchObject({ refused: 0 })
    // Where the number of decimals changes, a short one is a number.
    expect(read(whole.replace(/\.20/g, '').slice(0, -1))).toMatchObject({ refused: 0 })
  })
  it('a row with a field too many, in the middle', () => {
    expect(read(PLAIN.replace('0.499,', '0.499,,'))).toMatchObject({ time: [TIMES[0], TIMES[2]], refused: 1 })
  })
  it('two rows of one time with different numbers are told', () => {
    const table = read(`${PLAIN}2026-05-19T07:10Z,0.6,21\n`)
    expect(table).toMatchObject({ ...SAME, conflicting: 1, problems: [{ path: 'line 5' }] })
  })
})

describe('local clocks', () => {
  // Central European time, as the law of 2026 has it: ahead by two hours from 29 March to 25 October, 01:00 in universal time.
  const clock = [
    { from: Date.UTC(2025, 9, 26, 1) / 1000, ahead: 3600 },
    { from: Date.UTC(2026, 2, 29, 1) / 1000, ahead: 7200 },
    { from: Date.UTC(2026, 9, 25, 1) / 1000, ahead: 3600 },
  ]
  const local = (utc: number) => {
    const ahead = clock.filter((one) => utc >= one.from).at(-1)?.ahead as number
    return new Date((utc + ahead) * 1000).toISOString().slice(0, 16).replace('T', ' ')
  }
  const table = (moments: readonly number[]) =>
    `time,a,b\n${moments.map((utc, i) => `${local(utc)},${i},${utc % 997}`).join('\n')}\n`
  it.each([
    ['spring', Date.UTC(2026, 2, 28, 20) / 1000],
    ['autumn', Date.UTC(2026, 9, 24, 20) / 1000],
  ])('are put right over the break of %s, oldest or newest first, for every step', (_, from) => {
    for (const step of [60, 300, 900, 3600]) {
      const moments = Array.from({ length: 43200 / step }, (_, i) => from + i * step)
      expect(read(table(moments), { clock }).time).toEqual(moments)
      expect(read(table([...moments].reverse()), { clock })).toMatchObject({ time: moments, order: 'newest-first' })
    }
  })
  it('cannot tell the repeated hour of a table without order, and says so', () => {
    const moments = Array.from({ length: 144 }, (_, i) => Date.UTC(2026, 9, 24, 20) / 1000 + i * 300)
    const shuffled = [...moments.slice(100), ...moments.slice(0, 100)]
    const result = read(table(shuffled), { clock })
    const first = Date.UTC(2026, 9, 25, 0) / 1000
    expect(result.time).toEqual(moments.filter((utc) => utc < first || utc >= first + 7200))
    expect(result.refused).toBe(24)
  })
  it('leave out an hour in spring: a reading within it has no time', () => {
    const text = 'time,a,b\n2026-03-29 01:55,1,1\n2026-03-29 02:30,2,2\n2026-03-29 03:00,3,3\n'
    expect(read(text, { clock })).toMatchObject({ A: [1, 3], refused: 1, problems: [{ path: 'line 3' }] })
  })
})

describe('whole years', () => {
  it.each([
    ['hourly', 3600],
    ['every 15 minutes', 900],
    ['every 5 minutes', 300],
    ['every minute', 60],
  ])(
    '%s, with nothing lost',
    (_, step) => {
      const start = Date.UTC(2026, 0, 1) / 1000
      const count = (365 * 86400) / step
      const lines = Array.from(
        { length: count },
        (_, i) => `${new Date((start + i * step) * 1000).toISOString()},${(i % 997) / 1000},20`,
      )
      const table = seriesFromCsv(`time,a,b\n${lines.join('\n')}\n`, { ...OPTIONS, maxCharacters: 50_000_000 })
      expect(table).toMatchObject({ rows: count, refused: 0, step })
      expect(table.time[count - 1]).toBe(start + (count - 1) * step)
      expect(table.columns.A?.[997 + 5]).toBe(0.005)
    },
    300_000,
  )
})

describe('against an independent reader', () => {
  // csv-parse from npm reads the same fields.
  it('gives its numbers for any table of numbers and separators', () => {
    const number = fc
      .double({ noNaN: true, noDefaultInfinity: true, min: -500, max: 500 })
      .map((x) => String(Number(x.toPrecision(6))))
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, number), { minLength: 3, maxLength: 20 }),
        fc.constantFrom(',', ';', '\t', '|'),
        fc.constantFrom('\n', '\r\n'),
        fc.boolean(),
        (rows, separator, end, quotes) => {
          const field = (text: string) => (quotes ? `"${text}"` : text)
          const lines = rows.map((row, i) => [String(1_700_000_000 + 300 * i), ...row].map(field).join(separator))
          const text = ['time', 'a', 'b'].map(field).join(separator) + end + lines.join(end) + end
          const theirs = parse(text, { delimiter: separator, from_line: 2 }) as string[][]
          const ours = read(text)
          expect(ours.A).toEqual(theirs.map((row) => Number(row[1])))
          expect(ours.B).toEqual(theirs.map((row) => Number(row[2])))
        },
      ),
      { numRuns: 100 },
    )
  })
})

describe('SenML', () => {
  it('sums that no number can hold are refused with their record', () => {
    for (const [fields, path] of [
      [{ bv: 1e308, v: 1e308 }, '[0].v'],
      [{ bs: 1e308, s: 1.7e308, v: 1 }, '[0].s'],
      [{ bt: 1.7e308, t: 1.7e308, v: 1 }, '[0].t'],
    ] as const) {
      try {
        resolveSenml([{ n: 'a', bt: 1.7e9, ...fields }])
        throw new Error('nothing was refused')
      } catch (error) {
        expect(error).toBeInstanceOf(DocumentError)
        expect((error as DocumentError).problems.map((one) => one.path)).toEqual([path])
      }
    }
  })
})
