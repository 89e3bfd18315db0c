import * as fc from 'fast-check'
import {
  type CsvSeriesOptions,
  DocumentError,
  parseDocument,
  readDocument,
  seriesFromCsv,
  textFromBytes,
} from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { remedyForCell } from '../../src/schema/csv/cell.js'
import { csvRows } from '../../src/schema/csv/csv.js'
import { readingsFromTidyCsv } from '../../src/schema/csv/tidy-csv.js'
import { instantFromText, textFromInstant } from '../../src/schema/instant-text.js'
import { resolveSenml } from '../../src/schema/senml/resolve-senml.js'

const DAY = Date.UTC(2026, 4, 19) / 1000
const series = (text: string, more: Partial<CsvSeriesOptions> = {}) =>
  seriesFromCsv(text, { time: 'time', columns: { A: { column: 'a' }, B: { column: 'b' } }, ...more })
/** A table with these cells of one column, one a minute. */
const column = (cells: readonly string[], more: Partial<CsvSeriesOptions> = {}) =>
  series(`time;a\n${cells.map((cell, i) => `2026-05-19T07:${10 + i}Z;${cell}`).join('\n')}\n`, {
    columns: { A: { column: 'a' } },
    separator: ';',
    ...more,
  }).columns.A
const refusal = (call: () => unknown): string => {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return (error as Error).message
  }
  throw new Error('nothing was refused')
}

describe('times of cells, by ISO 8601', () => {
  const timeOf = (cell: string) => series(`time,a,b\n${cell},1,2\n`).time[0]
  it.each([
    ['2026-05-18T24:00Z', DAY],
    ['2026-05-18 24:00:00Z', DAY],
    ['2026-05-19T00:00:59Z', DAY + 59],
    ['2026-05-19T00:59:00Z', DAY + 3540],
    ['2026-05-19T00:00:00.25Z', DAY + 0.25],
    ['2026-05-19T05:30+0530', DAY],
    ['2026-05-19T05:30+05:30', DAY],
    ['2026-05-18T20:30-03:30', DAY],
    ['2026-05-18T19:00-05', DAY],
    ['2026-05-19T14:00+14', DAY],
    ['2026-05-19 00:00 UTC', DAY],
    ['2024-02-29T00:00Z', Date.UTC(2024, 1, 29) / 1000],
    ['2000-12-31T00:00Z', Date.UTC(2000, 11, 31) / 1000],
  ])('%s', (cell, time) => {
    expect(timeOf(cell)).toBe(time)
  })
  it.each([
    '2026-05-18T24:01Z',
    '2026-05-18T24:00:01Z',
    '2026-05-18T24:30:30Z',
    '2026-05-19T25:00Z',
    '2026-05-19T07:60Z',
    '2026-05-19T07:00:60Z',
    '2026-05-19T07:00+15',
    '2026-05-19T07:00+05:60',
    '2026-13-01T07:00Z',
    '2026-00-10T07:00Z',
    '2026-02-29T07:00Z',
    '2100-02-29T07:00Z',
    '2026-06-31T07:00Z',
  ])('%s is none', (cell) => {
    expect(refusal(() => timeOf(cell))).toMatch(/line 2, column 1 \(time\).*is not a time.*no such day or hour/)
  })
  it('a table of one row has no step', () => {
    expect(series('time,a,b\n2026-05-19T07:00Z,1,2\n').step).toBeNaN()
  })
})

describe('instants as text', () => {
  it('keep parts of a second that milliseconds do not hold', () => {
    expect(instantFromText('2026-05-19T00:00:00.1234567Z')).toBeCloseTo(DAY + 0.1234567, 6)
    expect(instantFromText('2026-05-19T00:00:00.250000Z')).toBe(DAY + 0.25)
    expect(instantFromText('2026-05-19T00:00:00.5Z')).toBe(DAY + 0.5)
  })
  it('are written as dates for the years that ISO 8601 writes with four digits', () => {
    expect(textFromInstant(253_402_300_799)).toBe('9999-12-31T23:59:59Z')
    expect(textFromInstant(253_402_300_800)).toBe('253402300800')
    expect(textFromInstant(-62_135_596_800)).toBe('0001-01-01T00:00:00Z')
    expect(textFromInstant(-62_135_596_801)).toBe('-62135596801')
    expect(textFromInstant(0.0005)).toBe('0.0005')
  })
  it.each(['2026-05-19T07:00+02:60', '2026-05-19T07:00-15:00', '2026-05-19T24:00Z', '2026-05-19T07:60Z'])(
    '%s is none',
    (text) => {
      expect(() => instantFromText(text)).toThrow('is not a date and time with a zone')
    },
  )
  it.each([
    ['2026-05-19T00:59:59+00:00', DAY + 3599],
    ['2026-05-18T23:00-01:00', DAY],
    ['2026-05-19T14:00+14:00', DAY],
    ['2026-05-19T00:59+00:59', DAY],
  ])('%s is one', (text, time) => {
    expect(instantFromText(text)).toBe(time)
  })
})

describe('marks in numbers', () => {
  it('points and commas of numbers with a sign or an exponent are both seen', () => {
    for (const pointed of ['-0.5', '+0.5', '−0.5', '.5', '5.0e-1', '5.0E3', '5.0e+3', '5.0e12'])
      for (const comma of ['1,55', '-1,55', '−1,55', ',5', '1,5e-1'])
        expect(
          refusal(() => column([pointed, comma])),
          `${pointed} and ${comma}`,
        ).toMatch(/line 3, column 2 \(a\): ".*,.*" has a comma beside numbers with a point/)
  })
  it('a comma is a decimal one where any cell cannot be a thousand', () => {
    for (const sure of ['0,234', '-0,234', '1,23', '1,2345', '1234,5', '−1,5'])
      expect(column([sure, '1,234'])?.[1], sure).toBe(1.234)
    for (const either of ['1,234', '-12,345', '+123,456', '−1,234'])
      expect(
        refusal(() => column([either])),
        either,
      ).toMatch(/line 2, column 2 \(a\): ".+" has a comma .*that may part thousands/)
  })
  it('998, then 1.002 may be thousands with a sign and with blanks around them too', () => {
    for (const [whole, marked] of [
      ['998', '1.002'],
      ['-998', '-1.002'],
      [' 998 ', ' 1.002 '],
      ['998', '123.456'],
    ] as const)
      expect(
        refusal(() => column([whole, marked])),
        whole,
      ).toMatch(/may be a thousand/)
    // A zero in front, two digits behind, or whole numbers of another length: no thousands.
    for (const cells of [
      ['998', '0.002'],
      ['998', '1.02'],
      ['98', '1.002'],
      ['9980', '1.002'],
      ['998', '1234.567'],
    ])
      expect(column(cells)?.[1]).toBe(Number(cells[1]))
  })
  it('blanks around a number are no part of it', () => {
    expect(column([' 0.5 ', '\t0.4', '0.3 '])).toEqual(Float64Array.of(0.5, 0.4, 0.3))
  })
  it('a cell that is no number is answered by what it looks like', () => {
    const remedy = (cell: string) =>
      remedyForCell(cell, { decimalMark: '.', missing: new Set(), sentinels: new Set() } as never)
    for (const cell of ['1.234.567', '1,234,567', "1'234", '1 234', '-1 234 567', '+1,234.5', '12,345'])
      expect(remedy(cell), cell).toMatch(/thousands/)
    for (const cell of ['0,5', '-0,55', ',5', '+1,5']) expect(remedy(cell), cell).toMatch(/decimal mark of this table/)
    for (const cell of ['inf', '-Infinity', '+INF']) expect(remedy(cell), cell).toMatch(/no reading is infinite/)
    for (const cell of ['55 %', '55%']) expect(remedy(cell), cell).toMatch(/leave the sign out/)
    for (const cell of ['wet', '1234 567', '1.2.3', 'information', '5% or so'])
      expect(remedy(cell), cell).toMatch(/^correct it/)
  })
  it('a mark that is set is believed', () => {
    expect(column(['998', '1.002'], { decimalMark: '.' })?.[1]).toBe(1.002)
    expect(column(['1,234'], { decimalMark: ',' })?.[0]).toBe(1.234)
  })
})

describe('shares', () => {
  const humid = (cells: readonly string[], unit?: string) =>
    column(cells, { columns: { A: { column: 'a', kind: 'RelativeHumidity', ...(unit && { unit }) } } })
  it('air that is saturated throughout is 100 per cent, not a fraction', () => {
    expect(refusal(() => humid(['100', '100', '100']))).toMatch(/looks like per cent.*1\.00/)
    expect(humid(['100', '100', '100'], '%')).toEqual(Float64Array.of(1, 1, 1))
    expect(humid(['1', '1', '1'])).toEqual(Float64Array.of(1, 1, 1))
  })
  it('the first reading that is no fraction is named', () => {
    expect(refusal(() => humid(['0.5', '55', '60']))).toMatch(/line 3, column 2 \(a\): 55 looks like per cent.*0\.550/)
    expect(refusal(() => humid(['0', '0.5', '0.6'], '%'))).toMatch(/line 3, column 2 \(a\): 0\.5 looks like a fraction/)
  })
  it('without a reading nothing is doubted', () => {
    expect(humid(['', 'NA'])).toEqual(Float64Array.of(Number.NaN, Number.NaN))
    expect(humid(['0', '0'], '%')).toEqual(Float64Array.of(0, 0))
  })
})

describe('lines', () => {
  it('a strict table refuses a lone carriage return, behind plain and behind quoted fields', () => {
    for (const text of ['a,b\r1,2\r', 'a,b\r\n1,2\r3,4\r\n'])
      expect(() => csvRows('t', text)).toThrow('lone carriage return')
    expect(() => csvRows('t', '"a","b"\r"1","2"\r\n')).toThrow('lone carriage return')
    expect(csvRows('t', '"a","b"\r\n"1","2"\r\n')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ])
  })
  it('a last field that is cut is told where all others have one length', () => {
    const rows = Array.from({ length: 25 }, (_, i) => `2026-05-19T07:${10 + i}Z,0.5,12.3${i % 10}`)
    const text = ['time,a,b', ...rows].join('\n')
    expect(series(text)).toMatchObject({ refused: 0 })
    expect(series(text.slice(0, -1))).toMatchObject({ refused: 1, problems: [{ path: 'line 26' }] })
    // A longer one is no piece, and a line end says that the line is whole.
    expect(series(`${text}9`)).toMatchObject({ refused: 0 })
    expect(series(`${text.slice(0, -1)}\n`)).toMatchObject({ refused: 0 })
    // Too few rows say nothing.
    expect(series(['time,a,b', ...rows.slice(0, 19)].join('\n').slice(0, -1))).toMatchObject({ refused: 0 })
  })
  it('a long name of a column is not repeated at length', () => {
    const message = refusal(() =>
      series('time,a,b\n2026-05-19T07:00Z,1,2\n', { columns: { A: { column: 'x'.repeat(500) } } }),
    )
    expect(message).toContain(`"${'x'.repeat(60)}"`)
    expect(message).not.toContain('x'.repeat(61))
  })
})

describe('bytes', () => {
  it('UTF-16 without a mark, with the high byte first', () => {
    expect(textFromBytes(Uint8Array.of(0, 0x41, 0, 0x42))).toEqual({ text: 'AB', encoding: 'utf-16be' })
    expect(textFromBytes(Uint8Array.of(0x41, 0, 0x42, 0))).toEqual({ text: 'AB', encoding: 'utf-16le' })
  })
  it('a part of a mark is text', () => {
    expect(textFromBytes(Uint8Array.of(0xef, 0xbb, 0x41))).toEqual({ text: 'ï»A', encoding: 'windows-1252' })
    expect(textFromBytes(Uint8Array.of(0xef, 0x41, 0xbf)).encoding).toBe('windows-1252')
    expect(textFromBytes(Uint8Array.of(0x41, 0xbb, 0xbf)).encoding).toBe('windows-1252')
    expect(textFromBytes(Uint8Array.of(0xff, 0x41)).encoding).toBe('windows-1252')
    expect(textFromBytes(Uint8Array.of(0xfe, 0x41)).encoding).toBe('windows-1252')
  })
  it('no bytes are no text', () => {
    expect(textFromBytes(new Uint8Array(0))).toEqual({ text: '', encoding: 'utf-8' })
  })
})

describe('documents and packs', () => {
  it('columns that are no list of columns are refused by name', () => {
    for (const columns of [null, undefined, {}, 'a', 5])
      expect(refusal(() => series('time,a\n2026-05-19T07:00Z,1\n', { columns: columns as never }))).toMatch(/columns/)
    expect(refusal(() => series('time,a\n2026-05-19T07:00Z,1\n', { columns: { A: {} } as never }))).toMatch(
      /columns\.A/,
    )
  })
  it('tell a hundred problems at most, five of them in the message, and the whole by "it"', () => {
    const shots = Array.from({ length: 300 }, () => ({ time: 'soon', volume: 'much' }))
    let told: DocumentError | undefined
    try {
      readDocument('plan', { version: 1, shots })
    } catch (error) {
      told = error as DocumentError
    }
    expect(told?.problems.length).toBeGreaterThan(5)
    expect(told?.problems.length).toBeLessThanOrEqual(100)
    expect(told?.message).toMatch(/; and \d+ more/)
    const [a, b] = ['a', ''].map((path) => ({ path, value: '', problem: 'is odd', expected: '', hint: 'look' }))
    expect(new DocumentError('x', [a!, b!]).message).toBe('x, a: is odd; it: is odd; look')
  })
  it('name the choices where a word is none of them', () => {
    expect(
      refusal(() => readDocument('calibration', { version: 1, method: 'x', form: 'curve', coefficients: [1] })),
    ).toMatch(/form.*line, square-root, power, quadratic, cubic, monotone-cubic/)
  })
  it('keys with broken escapes are no JSON, rather than the same key twice', () => {
    expect(refusal(() => parseDocument('emitters', '{"\\x": 1, "\\y": 2}'))).toContain('is not JSON')
  })
  it('the time within which a sensor reports again stays with its record: RFC 8428, section 4.3', () => {
    expect(resolveSenml([{ n: 'a', v: 1, t: 1.7e9, ut: 60 }])).toEqual([{ n: 'a', v: 1, t: 1.7e9, ut: 60 }])
  })
})

describe('numbers of a tidy table', () => {
  const value = (text: string) =>
    readingsFromTidyCsv(`time,source,quantity,value,unit,quality\r\n2026-05-19T06:30:00Z,A1,Temperature,${text},,\r\n`)
  it.each([
    ['-5', -5],
    ['+5', 5],
    ['5.', 5],
    ['.5', 0.5],
    ['5e0', 5],
    ['-2.5E-1', -0.25],
    ['2.5e+1', 25],
  ])('%s', (text, number) => {
    expect(value(text).readings[0]?.value).toBe(number)
  })
  it.each(['x5', '5x', '--5', '.', 'e5', '5e', '5 5', 'Infinity'])('%s is none', (text) => {
    expect(value(text)).toMatchObject({ refused: 1, readings: [] })
  })
})

describe('the day of a time in a table', () => {
  it('is taken where the calendar of the language has it, and refused where it has none', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9998 }),
        fc.integer({ min: 0, max: 13 }),
        fc.integer({ min: 0, max: 32 }),
        (year, month, day) => {
          const two = (n: number) => String(n).padStart(2, '0')
          const text = `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T07:10Z`
          const there = new Date(0)
          there.setUTCFullYear(year, month - 1, day)
          const real = there.getUTCMonth() === month - 1 && there.getUTCDate() === day
          const read = () => series(`time;a\n${text};1\n`, { columns: { A: { column: 'a' } }, separator: ';' }).time[0]
          if (real) expect(read()).toBe(there.getTime() / 1000 + 7 * 3600 + 600)
          else expect(read).toThrow(DocumentError)
        },
      ),
      {
        examples: [
          [2000, 2, 29],
          [1900, 2, 29],
          [2024, 2, 29],
          [2026, 12, 31],
          [2026, 13, 1],
          [2026, 0, 1],
          [2026, 4, 31],
        ],
      },
    )
  })
})
