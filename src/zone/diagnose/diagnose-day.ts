import { diagnoseRecord, type RecordDiagnosis, type WatchedRecord } from '../../control/diagnose-record.js'
import type { WatchZoneSettings } from '../../control/diagnosis/state/settings.js'
import { applyCalibrationToSeries } from '../../probe/apply-to-series.js'
import { maxOf } from '../../quantity/extremes.js'
import type { Duration, Flow, WaterContent } from '../../quantity/generated/kinds.js'
import { optionOr, wholeNumberIn } from '../../quantity/guard.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import { checkZone } from '../checked-zone.js'
import type { OfZoneDay } from '../day/terms.js'
import type { ZoneDay } from '../day/zone-day.js'
import { DAYS_BEFORE } from '../domains.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { ZoneRecord } from '../record/zone-record.js'
import { columnsOfRecord, firstAt, type WateringColumns, type ZoneColumns } from '../record/zone-window.js'
import { checkDay } from '../restore/checked-day.js'
import type { Zone } from '../zone.js'

/** What the record of a zone shows of what may be wrong. */
export interface DayDiagnosis extends Pick<RecordDiagnosis, 'diagnosis' | 'told'> {
  /** Beginning of the record that it rests on. Unit: s. */
  readonly from: number
}

/** A reviewed day with the record that it comes from. */
export interface DiagnoseDayInput extends OfZoneDay {
  /** The record; of it the day and some days before count. */
  readonly record: ZoneRecord
  /** Days before it from which the diagnosis learns what is usual; seven by default. Unit: 1. Range: integers [0, 60]. */
  readonly daysBefore?: number
}

const NAMES: NamesOf<DiagnoseDayInput> = { record: 1, daysBefore: 1, day: 1, zone: 1 }

/**
 * Tells what may be wrong in a zone at the end of a reviewed day, the likeliest first, with evidence and the check to do by hand: `watchZone`
 * over the record of the day and of some days before. `explainControlFinding` puts a cause into words.
 *
 * @procedure Takes the zone for the settings of `watchZone`, the highest level after drain for full, the log of the valve for the shots,
 * and reads the record through; what was told before the day is left out of the list of what was told.
 * @returns The diagnosis at the end of the day and what was told on it, or the reason why there is none.
 * @throws `DomainError` for a number outside its range, `InputError` for parts that contradict each other.
 * @validity As `watchZone`: what was wrong from the beginning is usual to it. Without a log of single openings nothing is told.
 * @source common practice, no source
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * // Invented: two days of shots every four hours; on the second day the probe repeats one number from noon on.
 * const time = Array.from({ length: 576 }, (_, i) => i * 300)
 * const A = time.map((t) => 0.6 - (0.02 * (Math.min(t, 129600) % 14400)) / 14400 + 0.0004 * Math.sin(Math.min(t, 129600) ** 2))
 * const watering = { time: Array.from({ length: 12 }, (_, k) => 14400 * k), given: Array(12).fill(0.4), drained: Array(12).fill(0.08) }
 * const record = { time, probes: { A }, watering }
 * const { day } = reviewDay({ zone, record, date: '1970-01-02' })
 * const found = diagnoseDay({ zone, record, day })
 * found.known && found.value.diagnosis.causes.map(({ code }) => code) // => ['probe-frozen']
 */
export function diagnoseDay(input: DiagnoseDayInput): Known<DayDiagnosis> {
  onlyNames(input, NAMES, 'input')
  const zone = checkZone(input.zone)
  const day = checkDay(zone, input.day)
  const before = wholeNumberIn(optionOr(input.daysBefore, 7), DAYS_BEFORE, 'daysBefore')
  const settings = watchSettings(zone, day)
  if (!settings.known) return settings
  const columns = columnsOfRecord(zone, input.record)
  const begin = day.from - before * 86400
  const shots = shotsOf(zone, columns.watering, begin, day.to)
  if (shots.length === 0) return unknown('no-log-of-openings')
  const [a, b] = [firstAt(columns.time, begin), firstAt(columns.time, day.to)]
  if (a === b) return unknown('no-trusted-readings')
  const found = diagnoseRecord({ ...settings.value, record: watchedRecord(zone, columns, shots, a, b) })
  return known({
    diagnosis: found.diagnosis,
    told: found.told.filter(({ time }) => time >= day.from),
    from: columns.time[a]!,
  })
}

/** A zone as `watchZone` wants it described. */
function watchSettings(zone: Zone, day: ZoneDay): Known<WatchZoneSettings> {
  const { container, emitters, limits, probes, readingStep } = zone
  const own = day.probes.flatMap((probe) => (probe.limits.known ? [probe.limits.value.fullPoint] : []))
  // Where every probe is left out, their levels after drain still say what full is.
  const levels = day.probes.flatMap((probe) => (probe.drainedLevel.known ? [probe.drainedLevel.value.level] : []))
  const points = own.length > 0 ? own : levels
  const full = points.length > 0 ? maxOf(points) : day.medium.known ? day.medium.value.containerCapacity : undefined
  if (full === undefined) return unknown('no-full-point')
  if (probes.length > 8) return unknown('more-than-eight-probes')
  const min = Math.max(0, limits.minBelievable)
  if (!(full > min && full < limits.maxBelievable)) return unknown('full-point-not-believed')
  const hour = (moment: number) => (((moment / 3600) % 24) + 24) % 24
  const { light } = day
  return known({
    probes: probes.map(({ name }) => name),
    substrateVolume: container.substrateVolume,
    flow: (emitters.count * emitters.flow) as Flow,
    minBelievable: min as WaterContent,
    maxBelievable: limits.maxBelievable,
    fullPoint: full as WaterContent,
    responseTime: Math.min(7200, Math.max(600, 2.2 * readingStep)) as Duration,
    maxReadingAge: Math.min(86400, Math.max(1200, 2.2 * readingStep)) as Duration,
    ...(light.source !== 'assumed' && { darkHours: { from: hour(light.dusk), until: hour(light.dawn) } }),
  })
}

interface Shot {
  readonly start: number
  readonly end: number
}

/** Openings of the log, each as long as its water takes. */
function shotsOf({ emitters, wateringLog }: Zone, watering: WateringColumns, from: number, to: number): Shot[] {
  if (wateringLog === 'days') return []
  const flow = (emitters.count * emitters.flow) / 3600
  const shots: Shot[] = []
  watering.time.forEach((start, i) => {
    const given = watering.given[i]!
    if (!(given > 0) || start < from || start >= to) return
    const last = shots[shots.length - 1]
    if (last !== undefined && last.end > start) shots[shots.length - 1] = { ...last, end: start }
    shots.push({ start, end: start + given / flow })
  })
  return shots
}

function watchedRecord(zone: Zone, columns: ZoneColumns, shots: readonly Shot[], a: number, b: number): WatchedRecord {
  const time = columns.time.subarray(a, b)
  const { climate, watering, rootTemperature } = columns
  const probes = zone.probes.map(({ name, calibration }, p) => {
    const readings = columns.probes[p]!.slice(a, b)
    if (calibration !== undefined) applyCalibrationToSeries({ calibration, readings, output: readings })
    return { name, waterContent: readings }
  })
  // Lamps do not show in what is measured outside: the hours of the day's light then say when it is dark.
  const light = zone.lamps === undefined ? newestBefore(time, climate.time, climate.irradiance) : undefined
  return {
    time,
    probes,
    shots,
    temperature: rootTemperature.slice(a, b),
    feedEC: newestBefore(time, watering.time, watering.feedEC),
    drainEC: newestBefore(time, watering.time, watering.drainEC),
    ...(light?.some((x) => !Number.isNaN(x)) && { light }),
    ...drainCounter(time, watering),
  }
}

/** What a column said last before each moment, not longer ago than two hours before; NaN where it said nothing. */
function newestBefore(time: Float64Array, times: Float64Array, column: Float64Array): Float64Array {
  let k = 0
  let newest = Number.NaN
  let since = -Infinity
  return time.map((now) => {
    for (; k < times.length && times[k]! <= now; k++)
      if (!Number.isNaN(column[k])) [newest, since] = [column[k]!, times[k]!]
    return now - since <= 7200 ? newest : Number.NaN
  })
}

/** The drain of the log as a counter, where no entry is missing. */
function drainCounter(time: Float64Array, { time: times, drained }: WateringColumns): { drained?: Float64Array } {
  if (drained.length === 0 || drained.some((x) => Number.isNaN(x))) return {}
  let k = 0
  let sum = 0
  return {
    drained: time.map((now) => {
      for (; k < times.length && times[k]! < now; k++) sum += drained[k]!
      return sum
    }),
  }
}
