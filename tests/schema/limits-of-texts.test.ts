import { resolveSenml, senmlFromReadings, seriesFromCsv, textFromBytes } from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { dateOrderOf, timeOfCell } from '../../src/schema/csv/table-times.js'
import { jsonData, limitedText, refuseHostile } from '../../src/schema/hostile-input.js'
import { instantFromText, textFromInstant } from '../../src/schema/instant-text.js'

describe('what a document may be', () => {
  const nested = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`
  it('is sixteen levels deep, as text and as data', () => {
    expect(() => refuseHostile('it', jsonData('it', nested(16)))).not.toThrow()
    expect(() => jsonData('it', nested(17))).toThrow('at most 16 levels')
    expect(() => refuseHostile('it', JSON.parse(nested(17)))).toThrow('at most 16 levels')
  })
  it('has brackets in its texts as it likes, also behind an escaped quote', () => {
    const text = JSON.stringify({ a: `"${'['.repeat(17)}`, b: ']}', c: `\\${'{'.repeat(17)}` })
    expect(jsonData('it', text)).toEqual(JSON.parse(text))
    // What is closed again makes nothing deeper.
    const wide = `[${'[],{},'.repeat(20)}0]`
    expect(jsonData('it', wide)).toEqual(JSON.parse(wide))
    // A text that ends with a bracket hides nothing behind it.
    expect(() => jsonData('it', `["]",${nested(16)}]`)).toThrow('at most 16 levels')
  })
  it('has five million values', () => {
    expect(() => refuseHostile('it', new Uint8Array(5_000_000))).not.toThrow()
    expect(() => refuseHostile('it', new Uint8Array(5_000_001))).toThrow('more than 5000000 values')
  })
  it('has texts of 2,000 characters and keys of 200', () => {
    expect(() => refuseHostile('it', { a: 'x'.repeat(2000), ['y'.repeat(200)]: 1 })).not.toThrow()
    expect(() => refuseHostile('it', { a: 'x'.repeat(2001) })).toThrow('at most 2000 characters')
    expect(() => refuseHostile('it', { ['y'.repeat(201)]: 1 })).toThrow('keys of at most 200')
  })
  it('is eight million characters long, and a table 200 million', () => {
    expect(() => limitedText('it', ' '.repeat(8_000_000))).not.toThrow()
    expect(() => limitedText('it', ' '.repeat(8_000_001))).toThrow('at most 8000000 characters')
    expect(() => seriesFromCsv(' '.repeat(200_000_001), { time: 'a', columns: { A: { column: 'a' } } })).toThrow(
      '200000000 characters',
    )
  })
  it('has SenML names of 500 characters', () => {
    const record = (length: number) => resolveSenml([{ n: 'a'.repeat(length), v: 1, t: 1.7e9 }])
    expect(record(500)).toMatchObject([{ v: 1 }])
    expect(() => record(501)).toThrow('is not a name')
  })
})

describe('times', () => {
  it('of SenML are absolute from 2^28 s on: RFC 8428, section 4.5.3', () => {
    const [first, early] = [2 ** 28, 2 ** 28 - 1]
    expect(resolveSenml([{ n: 'a', v: 1, t: first }])).toMatchObject([{ t: first }])
    expect(() => resolveSenml([{ n: 'a', v: 1, t: early }])).toThrow()
    const sent = (time: number) =>
      senmlFromReadings([{ time: time as never, source: 'a', kind: 'RawReading', value: 1 as never }])
    expect(sent(first)).toMatchObject([{ bt: first }])
    expect(() => sent(early)).toThrow('before 4 July 1978')
  })
  it('of ISO 8601 have years of four digits, and zones of less than sixty minutes beside the hours', () => {
    for (const [time, text] of [
      [-62_135_596_800, '0001-01-01T00:00:00Z'],
      [253_402_300_799, '9999-12-31T23:59:59Z'],
      [-62_135_596_801, '-62135596801'],
      [253_402_300_800, '253402300800'],
    ] as const)
      expect(textFromInstant(time)).toBe(text)
    expect(instantFromText('1970-01-01T01:59:00+01:59')).toBe(0)
    expect(() => instantFromText('1970-01-01T02:00:00+01:60')).toThrow('not a date and time')
  })
})

describe('bytes of a table', () => {
  const utf16 = (text: string, order: 'low-first' | 'high-first') =>
    Uint8Array.from(
      [...text].flatMap((letter) => {
        const [low, high] = [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8]
        return order === 'low-first' ? [low, high] : [high, low]
      }),
    )
  // RFC 3629, section 6, and RFC 2781, section 4.3.
  it.each([
    ['utf-8', [0xef, 0xbb, 0xbf, 0x41]],
    ['utf-16le', [0xff, 0xfe, 0x41, 0]],
    ['utf-16be', [0xfe, 0xff, 0, 0x41]],
  ])('of %s may begin with its mark, which is no text', (encoding, bytes) => {
    expect(textFromBytes(Uint8Array.from(bytes))).toEqual({ text: 'A', encoding })
  })
  it('are UTF-16 without a mark where three tenths of them are zero, in every other place', () => {
    // Seven of ten letters are Latin, of which every second byte is zero.
    const text = 'Latin a\u4e2d\u6587\u5b57'.repeat(2000)
    expect(textFromBytes(utf16(text, 'low-first'))).toEqual({ text, encoding: 'utf-16le' })
    expect(textFromBytes(utf16(text, 'high-first'))).toEqual({ text, encoding: 'utf-16be' })
    const few = utf16('Latin \u4e2d\u6587\u5b57\u5b57\u5b57'.repeat(100), 'low-first')
    expect(textFromBytes(few).encoding).not.toBe('utf-16le')
  })
  it('are judged by the first four hundred', () => {
    const bytes = new Uint8Array(500).fill(0x41)
    // 120 zeros are three tenths of those, and one more stands behind them.
    for (let i = 0; i < 120; i++) bytes[2 * i] = 0
    bytes[400] = 0
    expect(textFromBytes(bytes).encoding).toBe('utf-8')
    bytes[2 * 120] = 0
    expect(textFromBytes(bytes).encoding).toBe('utf-16be')
  })
})

describe('dates of a table', () => {
  it('are told apart from the thirteenth of a month on', () => {
    expect(dateOrderOf(['12/11/2026'])).toBeUndefined()
    expect(dateOrderOf(['13/11/2026'])).toBe('day-month-year')
    expect(dateOrderOf(['11/13/2026'])).toBe('month-day-year')
  })
  it('end with the month, and zones within the hour', () => {
    for (const [cell, there] of [
      ['2026-12-31 00:00Z', true],
      ['2026-12-32 00:00Z', false],
      ['2026-12-31 00:00+01:59', true],
      ['2026-12-31 00:00+01:60', false],
      ['2023-02-29 00:00Z', false],
    ] as const)
      expect(timeOfCell(cell, undefined) !== undefined, cell).toBe(there)
  })
})
