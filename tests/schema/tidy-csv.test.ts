import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { instant } from 'porewater'
import { describe, expect, it } from 'vitest'
import { csvLine, csvRows } from '../../src/schema/csv/csv.js'
import { readingsFromTidyCsv, tidyCsvFromReadings } from '../../src/schema/csv/tidy-csv.js'
import { DocumentError } from '../../src/schema/document-error.js'
import type { TidyReading } from '../../src/schema/tidy-reading.js'
import { between } from '../support/round-trip.js'

const HEADER = 'time,source,quantity,value,unit,quality\r\n'
const refusal = (call: () => unknown) => {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return error as DocumentError
  }
  throw new Error('nothing was refused')
}

describe('CSV', () => {
  it('is read as the rules 1 to 7 of RFC 4180 section 2 print it', () => {
    expect(csvRows('t', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(csvRows('t', 'aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(csvRows('t', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(csvRows('t', '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(csvRows('t', '"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']])
    // Rule 4: spaces are part of a field.
    expect(csvRows('t', ' a , b ')).toEqual([[' a ', ' b ']])
  })
  it('agrees with an independent reader and writer on anything', () => {
    const field = fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('', '"', ',', '\r\n', '\n', '""', 'ä', 'm³/m³'))
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }),
        fc.array(field, { minLength: 60, maxLength: 60 }),
        (columns, fields) => {
          const rows = Array.from({ length: 10 }, (_, i) => fields.slice(i * columns, (i + 1) * columns))
          const text = rows.map(csvLine).join('')
          expect(csvRows('t', text)).toEqual(rows)
          // csv-parse 7, strict, as a general-purpose reader of RFC 4180.
          expect(parse(text, { relax_quotes: false, record_delimiter: ['\r\n'] })).toEqual(rows)
        },
      ),
      { numRuns: 200 },
    )
  })
  it('is refused where it is none, with the row', () => {
    for (const text of [
      'a,b\r\n"c,d',
      'a,b\r\nc"d,e',
      'a,b\r\n"c"d,e',
      'a,b\r\nc',
      'a,b\r\nc,d,e',
      'a,b\rc,d',
      'a,b\r\n\r\n',
    ])
      expect(refusal(() => csvRows('t', text)).problems[0]?.path, JSON.stringify(text)).toMatch(/^row [12]$/)
    expect(refusal(() => csvRows('t', ','.repeat(1000))).problems[0]?.problem).toMatch(/more than 100/)
  })
})

describe('a tidy table', () => {
  const kinds = ['WaterContent', 'BulkEC', 'Temperature', 'SuctionHead', 'RawReading', 'Volume'] as const
  it('is read again without loss', () => {
    const reading = fc.record(
      {
        time: fc
          .oneof(between(-62135596800, 253402300799), fc.integer({ min: 0, max: 2e9 }))
          .map((t) => instant(t + 0)),
        source: fc
          .string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
          .filter((s) => /^[^=+\-@\s]/.test(s) && [...s].every((c) => c.charCodeAt(0) > 31 && c.charCodeAt(0) !== 127)),
        kind: fc.constantFrom(...kinds),
        value: fc.oneof(
          between(0, 1).map((x) => x + 0),
          fc.constant(Number.NaN),
        ),
        quality: fc.constantFrom(1, 2, 3, 4, 9),
      },
      { requiredKeys: ['time', 'source', 'kind', 'value'] },
    )
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 20 }), (readings) => {
        const text = tidyCsvFromReadings(readings)
        const table = readingsFromTidyCsv(text)
        expect(table.readings).toEqual(readings)
        expect(table).toMatchObject({ rows: readings.length, refused: 0, problems: [] })
      }),
      { numRuns: 300 },
    )
  })
  it('takes any unit of a kind, columns in any order, and quality left out', () => {
    const text =
      'unit,value,quantity,source,time\n%,55,WaterContent,A1,2026-05-19T08:30:00+02:00\nkPa,3,SuctionHead,T1,1779172200\n,640,RawReading,A2,1779172200.5\n°F,68,Temperature,A3,2026-05-19T06:30:00Z\n'
    const { readings } = readingsFromTidyCsv(text)
    expect(readings.map((one) => one.time)).toEqual([1779172200, 1779172200, 1779172200.5, 1779172200])
    // 1 cm of water is 98.0665 Pa: NIST Special Publication 811 (2008), Appendix B.8.
    const expected = [0.55, 3000 / 98.0665, 640, 20]
    readings.forEach((one, i) => {
      expect(one.value).toBeCloseTo(expected[i]!, 10)
    })
  })
  it('counts every bad row by its number and loses no good one', () => {
    const good = '2026-05-19T06:30:00Z,A1,WaterContent,0.5,,1\r\n'
    const bad = [
      '2026-05-19 06:30,A1,WaterContent,0.5,,',
      '2026-05-19T06:30:00Z,A1,WaterContent,155,%,',
      '2026-05-19T06:30:00Z,A1,WaterContent,"0,5",,',
      '2026-05-19T06:30:00Z,A1,WaterContent,0x10,,',
      '2026-05-19T06:30:00Z,A1,WaterContent,NaN,,',
      '2026-05-19T06:30:00Z,A1,WaterContent,1e308,,',
      '2026-05-19T06:30:00Z,A1,Volume,1e308,,',
      '2026-05-19T06:30:00Z,A1,Volume,1,500 mL,',
      '2026-05-19T06:30:00Z,A1,Volume,1 500,mL,',
      '2026-05-19T06:30:00Z,A1,Moisture,0.5,,',
      '2026-05-19T06:30:00Z,A1,constructor,0.5,,',
      '2026-05-19T06:30:00Z,A1,RawReading,640,mV,',
      '2026-05-19T06:30:00Z,=cmd(),WaterContent,0.5,,',
      '2026-05-19T06:30:00Z,A1,WaterContent,0.5,L,',
      '2026-05-19T06:30:00Z,A1,WaterContent,0.5,,7',
    ]
    const table = readingsFromTidyCsv(HEADER + bad.map((row) => `${good}${row}\r\n`).join('') + good)
    expect(table.rows).toBe(2 * bad.length + 1)
    expect(table.readings).toHaveLength(bad.length + 1)
    expect(table.refusedRows).toEqual(bad.map((_, i) => 2 * i + 3))
    expect(table.refused).toBe(bad.length)
    for (const one of table.problems)
      expect(one).toMatchObject({ path: expect.stringMatching(/^row \d+$/), hint: expect.stringMatching(/\w/) })
  })
  it('is refused as a whole without its columns', () => {
    for (const text of ['', 'time,source\r\n', 'time,source,quantity,value\r\n', `colour,${HEADER}`, `time,${HEADER}`])
      expect(refusal(() => readingsFromTidyCsv(text)).problems[0]?.path, text).toBe('header')
    expect(
      readingsFromTidyCsv(`colour,${HEADER}green,2026-05-19T06:30:00Z,A1,WaterContent,0.5,,\r\n`, {
        unknownColumns: 'pass-over',
      }).readings,
    ).toHaveLength(1)
    expect(readingsFromTidyCsv(HEADER)).toEqual({ readings: [], rows: 0, refused: 0, refusedRows: [], problems: [] })
  })
  it('is not written with what could not be read', () => {
    const good: TidyReading = { time: instant(0), source: 'a', kind: 'WaterContent', value: 0.5 }
    const wrong = [
      { ...good, value: 2 },
      { ...good, source: '=1' },
      { ...good, value: Infinity },
      { ...good, quality: 5 },
    ]
    expect(refusal(() => tidyCsvFromReadings([good, ...wrong])).problems.map((one) => one.path)).toEqual([
      '[1]',
      '[2]',
      '[3]',
      '[4]',
    ])
  })
})
