import { isMoment } from '../../moment.js'
import type { WateringDoubt } from '../findings/finding.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringReading } from '../state/input.js'
import type { WateringProbe } from '../state/state.js'

/** A fall by so much is more than plants drink between two readings: a third of a usual day in a common container. Own judgement. Unit: m³/m³. */
const FALL = 0.1
/** After so long the restlessness of a probe is known: a day holds a night, in which little changes. Unit: s. */
const LEARNT = 86400
/** No shorter stretch without a change is frozen: readings rounded to 0.001 stand still for some minutes at night. Chosen on rehearsals. Unit: s. */
const MIN_QUIET = 1800
/** Readings of this time are looked at together: plants take less than the scatter of a probe in it, but at noon. Own judgement. Unit: s. */
const TOGETHER = 600
/** Plants are taken to drink in no longer silence of a probe by its own times: a clock that leaps must not excuse any fall. Own judgement. Unit: s. */
const MAX_SILENT = 86400
/** Each unbelievable reading asks for two more good ones, up to this number: a probe that trembles about the end of the band is not believed at every other one. Own judgement. */
export const MAX_PROBATION = 6

/** The moment of a decision as far as readings need it. */
export interface Moment {
  readonly now: unknown
  /** Trusted time. Unit: s. */
  readonly elapsed: number
  /** When the last opening ended, in trusted time. Unit: s. */
  readonly closed: number
}

/** What a probe is worth now. */
export interface ProbeView {
  /** What it says, believed or not. */
  readonly seen: number | null
  /** Its level, if it may be believed. */
  readonly level: number | null
  /** When that was measured, in trusted time. Unit: s. */
  readonly measured: number
  readonly doubt: WateringDoubt | null
}

/** Takes a reading into what is known of its probe. */
export function takeReading(
  probe: WateringProbe,
  reading: WateringReading | undefined,
  offset: number,
  { now, elapsed, closed }: Moment,
  limits: Limits,
): WateringProbe {
  const time: unknown = reading?.time
  if (reading === undefined || !isMoment(time) || !isMoment(now) || time > now + 60) return probe
  // The clock may have been set back; otherwise only what is newer says anything.
  const isNewer = probe.time === null || time > probe.time || probe.time > now + 60
  if (!isNewer) return probe
  const measured = Math.min(elapsed, elapsed - (now - time))
  const value: unknown = reading.waterContent
  if (typeof value !== 'number' || !(value >= limits.min && value <= limits.max))
    return { ...probe, time, measured, values: [], times: [], probation: Math.min(MAX_PROBATION, probe.probation + 2) }
  const level = value - offset
  const isSame = probe.values.length > 0 && probe.values[0] === value
  const changed = isSame ? probe.changed : measured
  const quiet = isSame || probe.values.length === 0 ? probe.quiet : Math.max(probe.quiet, measured - probe.changed)
  const before = medianOf(probe, offset, closed + limits.lag)
  // Trusted time lags behind the time of readings where decisions become rarer, and after a power cut, in which plants drank on.
  const since = Math.min(MAX_SILENT, time - (probe.time ?? time))
  const values = withNewest(value, since > TOGETHER ? [] : probe.values)
  const times = withNewest(measured, since > TOGETHER ? [] : probe.times)
  const passed = Math.max(0, measured - probe.measured, since)
  const plausible = before === null ? 0 : FALL + (3 * limits.use * passed) / limits.substrate
  let fellFrom = probe.fellFrom
  if (fellFrom === null && before !== null && level < before - plausible) fellFrom = before
  else if (fellFrom !== null && level > fellFrom - FALL) fellFrom = null
  // Written out: a copy by spreading costs more than the rest of the decision.
  return {
    time,
    measured,
    values,
    times,
    changed,
    quiet,
    probation: Math.max(0, probe.probation - 1),
    anchor: probe.anchor,
    anchorAt: probe.anchorAt,
    fall: probe.fall,
    before: probe.before,
    beforeAt: probe.beforeAt,
    peak: probe.peak,
    misses: probe.misses,
    fellFrom,
    latched: probe.latched,
  }
}

/** A probe that has trembled for a day, and stands for ten times as long as it ever did, is frozen before the longest time is over. */
function maxQuiet({ quiet }: WateringProbe, elapsed: number, limits: Limits): number {
  if (elapsed < LEARNT) return limits.maxUnchanged
  return Math.min(limits.maxUnchanged, Math.max(MIN_QUIET, 10 * quiet))
}

function withNewest(newest: number, list: readonly number[]): number[] {
  const [first, second] = list
  return first === undefined ? [newest] : second === undefined ? [newest, first] : [newest, first, second]
}

/** What a probe is worth at a moment. */
export function viewProbe(
  probe: WateringProbe,
  offset: number,
  { elapsed, closed }: Moment,
  limits: Limits,
): ProbeView {
  const { measured } = probe
  const seen = probe.probation > 0 ? null : medianOf(probe, offset, closed + limits.lag)
  const doubt = doubtOf(probe, elapsed, limits)
  return { seen, level: doubt === null ? seen : null, measured, doubt }
}

function doubtOf(probe: WateringProbe, elapsed: number, limits: Limits): WateringDoubt | null {
  const { measured } = probe
  if (probe.time === null) return 'reading-missing'
  if (probe.probation > 0 || probe.values.length === 0) return 'reading-unbelievable'
  if (probe.latched) return 'shots-without-rise'
  if (probe.fellFrom !== null) return 'reading-fell-too-fast'
  if (measured - probe.changed >= maxQuiet(probe, elapsed, limits)) return 'reading-frozen'
  return elapsed - measured > limits.maxAge ? 'reading-old' : null
}

/** Median of the newest readings, of those after the last shot where there are some. */
export function medianOf({ values, times }: WateringProbe, offset: number, since: number): number | null {
  const newest = times[0]
  if (newest === undefined) return null
  let count = 1
  while (count < values.length && newest - times[count]! <= TOGETHER) {
    // Readings before and after a shot are two things.
    if (newest >= since && times[count]! < since) break
    count++
  }
  const [a, b, c] = values as [number, number, number]
  if (count === 1) return a - offset
  if (count === 2) return (a + b) / 2 - offset
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c)) - offset
}

/** The newest time that came with readings, or null. */
export function newestTime(readings: unknown): number | null {
  if (!Array.isArray(readings)) return null
  let newest: number | null = null
  for (const reading of readings) {
    const time: unknown = reading?.time
    if (isMoment(time) && (newest === null || time > newest)) newest = time
  }
  return newest
}
