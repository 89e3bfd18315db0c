import { instant } from '../../quantity/calendar.js'
import { InputError } from '../../quantity/errors.js'
import { requireObject, requireRows } from '../../quantity/guard.js'
import { DocumentError, type DocumentProblem, MAX_PROBLEMS, shownValue } from '../document-error.js'
import { problemFrom } from '../problem-from.js'
import type { ReadingKind } from '../terms.js'
import { checkReading, type TidyReading } from '../tidy-reading.js'
import { MIN_ABSOLUTE_TIME, type ResolvedSenmlRecord, SENML_NAME, type SenmlRecord } from './senml-record.js'
import { fromSenmlUnit, inSenmlUnit } from './senml-units.js'

/** What each sensor measures: by its full name, or by what stands behind the last colon, slash or underscore of its name. */
export type SenmlKinds = Readonly<Record<string, ReadingKind>>

/** Readings of a pack, and the records that are none. */
export interface SenmlReadings {
  /** Readings in canonical units, in the order of the records. */
  readonly readings: readonly TidyReading[]
  /** Records whose sensor is not listed, or whose value is no number. */
  readonly others: readonly ResolvedSenmlRecord[]
}

/** How readings are sent. */
export interface SenmlSending {
  /** Put before every name, such as the name of a device with a colon. */
  readonly baseName?: string
}

/**
 * The readings in resolved SenML records, in canonical units.
 *
 * SenML says the unit of a value, not what it is: siemens a metre may be the bulk medium, the pore water or the drain. So the kinds
 * are yours to state. Records of sensors that you did not list are handed back, not dropped.
 *
 * @procedure Looks up the kind of each record by its full name, then by the last part of its name; converts from the SenML unit.
 * @param records - The records, made by `resolveSenml`.
 * @returns The readings, and the records that are none.
 * @throws `DocumentError`, an `InputError` that lists every record whose unit or value does not fit its kind.
 * @source rfc-8428-2018, section 12.1, and rfc-8798-2020, sections 2 and 3 (units)
 * @example
 * const records = resolveSenml('[{"bn":"urn:dev:ow:10e2073a01080063:","bt":1.7e9,"n":"theta","u":"/","v":0.55},{"n":"ec","u":"S/m","v":0.12}]')
 * readingsFromSenml(records, { theta: 'WaterContent', ec: 'BulkEC' }).readings // => [{ value: 0.55 }, { value: 1.2 }]
 */
export function readingsFromSenml(records: readonly ResolvedSenmlRecord[], kinds: SenmlKinds): SenmlReadings {
  requireRows(records, 'records')
  for (const [i, { n, u }] of records.entries())
    if (typeof n !== 'string' || (u !== undefined && typeof u !== 'string'))
      throw new InputError(
        `records[${i}]`,
        'has a name or a unit that is no text',
        'resolve the pack with resolveSenml()',
      )
  requireObject(kinds, 'kinds')
  const readings: TidyReading[] = []
  const others: ResolvedSenmlRecord[] = []
  const problems: DocumentProblem[] = []
  records.forEach((record, i) => {
    const kind = kindOf(record.n, kinds)
    if (kind === undefined || record.v === undefined) others.push(record)
    else if (problems.length < MAX_PROBLEMS) {
      const { v, u, t, n } = record
      const path = `[${i}]`
      problemFrom(problems, path, shownValue(v), () => {
        const value = kind === 'RawReading' ? v : fromSenmlUnit(v, u, kind)
        readings.push(checkReading({ time: instant(t), source: n, kind, value }))
      })
    }
  })
  const [first, ...more] = problems
  if (first !== undefined) throw new DocumentError('SenML pack', [first, ...more])
  return { readings, others }
}

/**
 * A SenML pack of readings, with base fields where they save room: the data for `JSON.stringify`.
 *
 * Missing readings are left out, because SenML has no word for them; quality flags are not sent.
 *
 * @procedure Converts each reading to the unit of the SenML registry for its kind, sends the base name and the time of the first reading
 * once, and times relative to it.
 * @param readings - The readings, made by `readingsFromSenml`, `readingsFromTidyCsv` or by hand.
 * @returns The records of the pack.
 * @throws `DocumentError`, an `InputError` that lists every reading whose name or kind SenML cannot carry.
 * @source rfc-8428-2018, sections 4 and 5
 * @example
 * const { readings } = readingsFromTidyCsv('time,source,quantity,value,unit\r\n2026-05-19T06:30:00Z,A1,Temperature,68,°F\r\n')
 * senmlFromReadings(readings) // => [{ bt: 1779172200, n: 'A1', u: 'Cel', v: 20 }]
 */
export function senmlFromReadings(readings: readonly TidyReading[], sending: SenmlSending = {}): SenmlRecord[] {
  requireRows(readings, 'readings')
  requireObject(sending, 'sending')
  const { baseName = '' } = sending
  const problems: DocumentProblem[] = []
  const records: SenmlRecord[] = []
  const begin = readings.find((reading) => !Number.isNaN(reading.value))?.time ?? 0
  readings.forEach((reading, i) => {
    if (Number.isNaN(reading.value) || problems.length >= MAX_PROBLEMS) return
    problemFrom(problems, `[${i}]`, shownValue(reading.source), () => {
      const { time, source, kind, value } = checkReading(reading)
      const n = source.startsWith(baseName) ? source.slice(baseName.length) : source
      if (!SENML_NAME.test(baseName + n))
        throw new InputError('source', 'is not a SenML name', 'use letters, digits and - : . / _ only')
      if (time < MIN_ABSOLUTE_TIME)
        throw new InputError('time', `${time} is before 4 July 1978, which SenML cannot say`, 'send it as a table')
      const sent = kind === 'RawReading' ? { value } : inSenmlUnit(value, kind)
      records.push({
        ...(records.length === 0 && { ...(baseName !== '' && { bn: baseName }), bt: begin }),
        ...(n !== '' && { n }),
        ...('symbol' in sent && { u: sent.symbol }),
        ...(time !== begin && { t: time - begin }),
        v: sent.value,
      })
    })
  })
  const [first, ...more] = problems
  if (first !== undefined) throw new DocumentError('readings', [first, ...more])
  return records
}

function kindOf(name: string, kinds: SenmlKinds): ReadingKind | undefined {
  if (Object.hasOwn(kinds, name)) return kinds[name]
  const last = name.slice(Math.max(name.lastIndexOf(':'), name.lastIndexOf('/'), name.lastIndexOf('_')) + 1)
  return Object.hasOwn(kinds, last) ? kinds[last] : undefined
}
