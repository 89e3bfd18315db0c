import { readDocument, seriesFromCsv, writeDocument } from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { remedyForTime } from '../../src/schema/csv/table-times.js'
import { DocumentError } from '../../src/schema/document-error.js'
import { checkSource } from '../../src/schema/tidy-reading.js'

const refusal = (call: () => unknown): DocumentError => {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return error as DocumentError
  }
  throw new Error('nothing was refused')
}
const emitters = { version: 1, emitters: 2, emitterFlow: 2, lineFill: 8 }

describe('a version', () => {
  it.each(['1', true, { of: 1 }, null, 0, 1.5])('of %o is none', (version) => {
    expect(refusal(() => readDocument('emitters', { ...emitters, version })).problems).toMatchObject([
      { path: 'version', problem: 'is not a version', hint: 'correct it' },
    ])
  })
})

describe('keys that nobody knows', () => {
  it('are told one by one, a hundred at most', () => {
    const unknown = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, k) => [`more${k}`, k]))
    const told = (count: number) => refusal(() => readDocument('emitters', { ...emitters, ...unknown(count) })).problems
    expect(told(3).map(({ path, value }) => [path, value])).toEqual([
      ['more0', '0'],
      ['more1', '1'],
      ['more2', '2'],
    ])
    expect(told(150)).toHaveLength(100)
  })
})

describe('run times of limits', () => {
  it('may be one, and are refused the wrong way round', () => {
    const limits = { version: 1, refillPoint: 0.5, fullPoint: 0.62, drainFraction: 0.2, minRest: 900, maxPerDay: 8 }
    const read = (minRunTime: number) => () => readDocument('limits', { ...limits, minRunTime, maxRunTime: 300 })
    expect(read(300)()).toMatchObject({ minRunTime: 300, maxRunTime: 300 })
    expect(refusal(read(301)).problems).toMatchObject([{ path: 'minRunTime' }])
  })
})

describe('a table', () => {
  const OPTIONS = { time: 'time', columns: { A: { column: 'a' } } } as const
  const read = (lines: readonly string[]) => seriesFromCsv(`${lines.join('\n')}\n`, OPTIONS as never)
  it('of which half the rows are whole is read, and of fewer not', () => {
    const whole = ['2026-05-19T07:00Z,1', '2026-05-19T07:05Z,2']
    expect(read(['time,a', ...whole, 'x', 'y'])).toMatchObject({ rows: 4, refused: 2 })
    expect(() => read(['time,a', ...whole, 'x', 'y', 'z'])).toThrow(DocumentError)
  })
  it('with one row is parted by the mark that parts its names', () => {
    expect([...seriesFromCsv('time;a\n2026-05-19T07:00Z;1,5\n', OPTIONS as never).columns.A!]).toEqual([1.5])
    expect(refusal(() => seriesFromCsv('time;a\n', OPTIONS as never)).message).toContain('has no rows')
  })
  it.each([
    ['45430', 'day number of a spreadsheet'],
    ['45430.25', 'day number of a spreadsheet'],
    ['45430,25', 'day number of a spreadsheet'],
    ['19/05/2026 07:10', 'whether the day or the month comes first'],
    ['7:10 pm', 'in 24 hours'],
    ['19.05.26', 'four digits'],
    ['date', 'begin it with #'],
    ['2026-13-01T07:00Z', 'no such day or hour'],
    ['454301', 'write it as 2026-05-19T07:10+02:00'],
  ])('has for the time %s a remedy: %s', (cell, remedy) => {
    expect(remedyForTime(cell)).toContain(remedy)
  })
})

describe('the name of a source', () => {
  it.each(['a\u0001b', 'a\nb', '\u001f', 'a\u007f', ' ', '', '=1+1', '+a', '-a', '@a'])('%j is refused', (source) => {
    expect(() => checkSource(source)).toThrow('is not a name')
  })
  it.each(['A1', 'a b', 'Zone 4 – left', '4=5'])('%j is kept', (source) => {
    expect(checkSource(source)).toBe(source)
  })
})

describe('a document that is written', () => {
  it('leaves out what is undefined and keeps what is null or in a list', () => {
    const record = { source: 'A1', kind: 'WaterContent', time: [0, 300], value: [0.5, null], name: undefined }
    expect(writeDocument('record', record as never)).toEqual({
      version: 1,
      source: 'A1',
      kind: 'WaterContent',
      time: [0, 300],
      value: [0.5, null],
    })
  })
})
