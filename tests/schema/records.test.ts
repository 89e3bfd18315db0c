import fc from 'fast-check'
import { instant } from 'porewater'
import {
  DocumentError,
  readDocument,
  readingsFromRecord,
  recordsFromReadings,
  type TidyReading,
  writeDocument,
} from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { between } from '../support/round-trip.js'

const reading = fc.record(
  {
    time: fc.integer({ min: 0, max: 100 }).map((t) => instant(t)),
    source: fc.constantFrom('A1', 'A2', 'A1 WaterContent'),
    kind: fc.constantFrom('WaterContent', 'RawReading', 'BulkEC'),
    value: fc.oneof(between(0, 1), fc.constant(Number.NaN)),
    quality: fc.constantFrom(1, 2, 3, 4, 9),
  },
  { requiredKeys: ['time', 'source', 'kind', 'value'] },
)

describe('records of readings', () => {
  it('hold every reading once, in the order of time, and can be stored', () => {
    fc.assert(
      fc.property(fc.array(reading as fc.Arbitrary<TidyReading>, { maxLength: 40 }), (readings) => {
        const records = recordsFromReadings(readings)
        const plain = ({ time, source, kind, value }: TidyReading) => `${source}|${kind}|${time}|${value}`
        expect(records.flatMap(readingsFromRecord).map(plain).sort()).toEqual(readings.map(plain).sort())
        expect(new Set(records.map((one) => `${one.source}|${one.kind}`)).size).toBe(records.length)
        for (const record of records) {
          expect([...record.time]).toEqual([...record.time].sort((a, b) => a - b))
          expect(recordsFromReadings(readingsFromRecord(record))).toEqual([record])
          expect(readDocument('record', JSON.parse(JSON.stringify(writeDocument('record', record))))).toEqual(record)
        }
      }),
      { numRuns: 200 },
    )
  })
  it('keep flags, and call readings without one not evaluated', () => {
    const at = (t: number, quality?: number): TidyReading => ({
      time: instant(t),
      source: 'a',
      kind: 'WaterContent',
      value: 0.5,
      ...(quality === undefined ? {} : { quality }),
    })
    expect(recordsFromReadings([at(2), at(1, 3)])[0]?.quality).toEqual(Uint8Array.of(3, 2))
    expect(recordsFromReadings([at(2), at(1)])[0]).not.toHaveProperty('quality')
  })
  it('leave the list they were given as it was, and refuse what cannot be kept', () => {
    const readings: TidyReading[] = [
      { time: instant(2), source: 'a', kind: 'WaterContent', value: 0.5 },
      { time: instant(1), source: 'a', kind: 'WaterContent', value: 0.4 },
    ]
    recordsFromReadings(readings)
    expect(readings.map((one) => one.time)).toEqual([2, 1])
    expect(recordsFromReadings([])).toEqual([])
    expect(() => recordsFromReadings([{ ...readings[0]!, value: 2 }])).toThrow(DocumentError)
  })
})
