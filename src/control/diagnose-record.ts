import { readOrRefuse } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import { requireList, requireObject, requireRows } from '../quantity/guard.js'
import { runReducer } from '../record/reducer.js'
import { type Cause, type Diagnosis, nothingTold } from './diagnosis/cause/cause.js'
import type { WatchZoneSettings } from './diagnosis/state/settings.js'
import type { ZoneWatchState } from './diagnosis/state/zone-state.js'
import type { WatchZoneInput } from './diagnosis/watch/input.js'
import { isMoment } from './moment.js'
import { watchZone } from './watch-zone.js'

/** A record of a zone: columns with one entry for each time; NaN where one is missing, left out where nothing is measured. */
export interface WatchedRecord {
  /** Times of the rows, in order. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Readings of each probe. Unit: m³/m³. Range: any. */
  readonly probes: readonly { readonly name: string; readonly waterContent: ArrayLike<number> }[]
  /** Shots that were ordered, in order. Unit: s. Range: any. */
  readonly shots: readonly { readonly start: number; readonly end: number }[]
  /** Counter of the flow meter. Unit: L. Range: any. */
  readonly metered?: ArrayLike<number>
  /** Counter of the drain. Unit: L. Range: any. */
  readonly drained?: ArrayLike<number>
  /** Light. Unit: W/m². Range: any. */
  readonly light?: ArrayLike<number>
  /** Temperature in the medium. Unit: °C. Range: any. */
  readonly temperature?: ArrayLike<number>
  /** EC of the feed. Unit: dS/m. Range: any. */
  readonly feedEC?: ArrayLike<number>
  /** EC of the newest drain. Unit: dS/m. Range: any. */
  readonly drainEC?: ArrayLike<number>
}

/** What a record shows. */
export interface RecordDiagnosis {
  /** At its end. */
  readonly diagnosis: Diagnosis
  /** Causes when they were told first, or again, in order. */
  readonly told: readonly { readonly time: number; readonly cause: Cause }[]
  /** To go on from. */
  readonly state: ZoneWatchState
}

/** A record with the zone that it comes from. */
export interface DiagnoseRecordInput extends WatchZoneSettings {
  /** The columns. */
  readonly record: WatchedRecord
}

/**
 * Reads a record through as `watchZone` would have seen it, and tells what it named and when.
 *
 * @procedure Puts the rows of the record and the beginnings of its shots in order and runs `watchZone` over them.
 * @param input - Zone and record. The probes of the zone are those of the settings.
 * @returns The diagnosis at the end, causes by time, and the state.
 * @throws As `watchZone`; `InputError` for columns of different lengths, times that are not seconds in order, and shots that end before they begin.
 * @source definition
 * @example
 * // Two probes that stand still while two shots are ordered.
 * const time = Array.from({ length: 150 }, (_, minute) => 60 * minute)
 * const told = diagnoseRecord({
 *   probes: ['A', 'B'], substrateVolume: litres(10), flow: litresPerHour(6),
 *   minBelievable: waterContent(0.1), maxBelievable: waterContent(0.9), fullPoint: waterContent(0.74),
 *   record: {
 *     time,
 *     probes: ['A', 'B'].map((name, i) => ({ name, waterContent: time.map((_, k) => 0.68 + 0.001 * ((k + i) % 3)) })),
 *     shots: [{ start: 1200, end: 1320 }, { start: 4800, end: 4920 }],
 *   },
 * }).told
 * told.map(({ cause }) => cause.code) // => ['no-water', 'zone-full']
 * told[0].time // => 5520
 */
export function diagnoseRecord(input: DiagnoseRecordInput): RecordDiagnosis {
  return readOrRefuse('input', () => diagnosed(input))
}

function diagnosed(input: DiagnoseRecordInput): RecordDiagnosis {
  requireObject(input, 'input')
  const { record, ...settings } = input
  requireObject(record, 'record')
  requireList(record.time, 'record.time')
  for (const part of ['probes', 'shots'] as const) requireRows(record[part], `record.${part}`)
  const inputs = inputsOf(record)
  const { state, outputs } = runReducer({ reducer: watchZone(settings), inputs })
  const told: { time: number; cause: Cause }[] = []
  let standing: readonly Cause[] = []
  outputs.forEach(({ causes }, k) => {
    for (const cause of causes)
      if (!standing.some(({ code }) => code === cause.code)) told.push({ time: inputs[k]!.now, cause })
    standing = causes
  })
  const diagnosis = outputs[outputs.length - 1] ?? nothingTold()
  return { diagnosis, told, state }
}

const COLUMNS = ['metered', 'drained', 'light', 'temperature', 'feedEC', 'drainEC'] as const

function inputsOf(record: WatchedRecord): WatchZoneInput[] {
  checkRecord(record)
  const { time, shots } = record
  const inputs: WatchZoneInput[] = []
  let next = 0
  let row: Record<string, unknown> = {}
  const order = (now: number) => {
    const shot = shots.find(({ start, end }) => start <= now && now < end)
    return shot === undefined ? { open: false } : { open: true, closeAfter: shot.end - now }
  }
  for (let i = 0; i < time.length; i++) {
    const now = time[i]!
    for (; next < shots.length && shots[next]!.start < now; next++) {
      const { start } = shots[next]!
      inputs.push({ ...row, now: start, readings: [], ...order(start) } as unknown as WatchZoneInput)
    }
    const readings = record.probes
      .map(({ name, waterContent }) => ({ probe: name, waterContent: waterContent[i], time: now }))
      .filter(({ waterContent }) => !Number.isNaN(waterContent))
    // What is missing in a row stays as it was: a counter goes on.
    for (const column of COLUMNS) {
      const value = record[column]?.[i]
      if (value !== undefined && !Number.isNaN(value)) row = { ...row, [column]: value }
    }
    inputs.push({ ...row, now, readings, ...order(now) } as unknown as WatchZoneInput)
  }
  return inputs
}

function checkRecord(record: WatchedRecord): void {
  const { time, probes, shots } = record
  for (const [i, { waterContent }] of probes.entries()) requireList(waterContent, `probes[${i}].waterContent`)
  for (const column of COLUMNS) if (record[column] != null) requireList(record[column], `record.${column}`)
  const columns = [...probes.map(({ waterContent }) => waterContent), ...COLUMNS.map((column) => record[column])]
  if (columns.some((column) => column != null && column.length !== time.length))
    throw new InputError(
      'record',
      'has columns of different lengths',
      'give one entry for each time, NaN where it is missing',
    )
  for (let i = 0; i < time.length; i++)
    if (!isMoment(time[i]) || (i > 0 && time[i]! < time[i - 1]!))
      throw new InputError(
        'time',
        `entry ${i} is no moment in seconds after the one before`,
        'sort rows; give seconds, not milliseconds',
      )
  shots.forEach(({ start, end }, i) => {
    const before = shots[i - 1]
    if (!isMoment(start) || !isMoment(end) || end < start || (before !== undefined && start < before.end))
      throw new InputError('shots', `shot ${i} does not begin, and end, after the one before`, 'give seconds, in order')
  })
}
