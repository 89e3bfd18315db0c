import type { Instant } from '../quantity/calendar.js'
import { requireList, requireObject } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import type { KindName } from '../text/generated/kind-types.js'
import { KINDS } from '../text/generated/kinds.js'
import { DocumentError, type DocumentProblem, MAX_PROBLEMS } from './document-error.js'
import type { RecordDocument } from './documents/probe-documents.js'
import { problemFrom } from './problem-from.js'
import { checkReading, type TidyReading } from './tidy-reading.js'

/** Flag of a reading that no test has judged, beside others that were: QARTOD, as `QUALITY` has it. */
const NOT_EVALUATED = 2

/**
 * Records of single readings: one for each probe and kind, in the order of time, as arrays of doubles for the functions of this
 * package.
 *
 * Readings of one time stay in the order in which they came; none is dropped.
 *
 * @procedure Groups readings by source and kind and sorts each group by time. Flags are kept where any reading of a group has one;
 * those without count as not evaluated.
 * @param readings - The readings, made by `readingsFromTidyCsv`, `readingsFromSenml` or by hand.
 * @returns The records, in the order in which their first readings came.
 * @throws `DocumentError`, an `InputError` that lists every reading that cannot be kept.
 * @source definition
 * @example
 * const table = readingsFromTidyCsv('time,source,quantity,value,unit\r\n600,A1,WaterContent,54,%\r\n300,A1,WaterContent,,\r\n')
 * recordsFromReadings(table.readings) // => [{ source: 'A1', time: [300, 600], value: [NaN, 0.54] }]
 */
export function recordsFromReadings(readings: readonly TidyReading[]): RecordDocument[] {
  requireList(readings, 'readings')
  const groups = new Map<string, TidyReading[]>()
  const problems: DocumentProblem[] = []
  readings.forEach((reading, i) => {
    if (problems.length >= MAX_PROBLEMS) return
    problemFrom(problems, `[${i}]`, '', () => {
      const { source, kind } = checkReading(reading)
      const key = `${kind} ${source}`
      const group = groups.get(key)
      if (group === undefined) groups.set(key, [reading])
      else group.push(reading)
    })
  })
  const [first, ...more] = problems
  if (first !== undefined) throw new DocumentError('readings', [first, ...more])
  return [...groups.values()].map(recordOf)
}

/**
 * The single readings of a record.
 *
 * @procedure Gives one reading for each time, with its flag where the record has flags.
 * @param record - The record, made by `readDocument` or `recordsFromReadings`.
 * @returns The readings, in the order of the record.
 * @source definition
 * @example
 * const record = readDocument('record', { version: 1, source: 'A1', kind: 'WaterContent', time: [300, 600], value: [null, 0.54] })
 * readingsFromRecord(record)[1] // => { time: 600, source: 'A1', kind: 'WaterContent', value: 0.54 }
 */
export function readingsFromRecord(record: RecordDocument): TidyReading[] {
  requireObject(record, 'record')
  requireList(record.time, 'record.time')
  requireList(record.value, 'record.value')
  const { source, quality } = record
  const kind = oneOf(record.kind, ['RawReading', ...(Object.keys(KINDS) as KindName[])], 'kind')
  return Array.from(record.time, (time, i) => ({
    time: time as Instant,
    source,
    kind,
    value: record.value[i]!,
    ...(quality === undefined ? {} : { quality: quality[i]! }),
  }))
}

function recordOf(group: TidyReading[]): RecordDocument {
  // The sort is stable, so that readings of one time keep their order.
  const sorted = group.sort((a, b) => a.time - b.time)
  const { source, kind } = sorted[0]!
  const flagged = sorted.some((reading) => reading.quality !== undefined)
  return {
    version: 1,
    source,
    kind,
    time: Float64Array.from(sorted, (reading) => reading.time),
    value: Float64Array.from(sorted, (reading) => reading.value),
    ...(flagged && { quality: Uint8Array.from(sorted, (reading) => reading.quality ?? NOT_EVALUATED) }),
  }
}
