import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { MAX_STEP, MIN_DRY_DOWN, SETTLE_TIME } from '../domains.js'
import { stretchesOf } from '../shots/split-record.js'
import type { KnownShots } from '../shots/watch-shots.js'
import type { FollowedStep, WaterContentSeries } from '../terms.js'
import { type DryDownLine, fitDryDown } from './dry-down.js'
import { checkedPeriods, type LightPeriod } from './light-periods.js'

/** A series in which dry-downs are looked for. */
export interface FindDryDownsInput extends FollowedStep, KnownShots, WaterContentSeries {
  /** Time after the peak of a shot that is left out, because drain is no use by plants. Unit: s. Range: [0, 86400]. */
  readonly drainTime: Duration
  /** Shorter ones are left out. Unit: s. Range: (0, 604800]. */
  readonly minDuration: Duration
  /** Times with light, in order; without them day and night are not told apart. */
  readonly light?: readonly LightPeriod[]
}

/** A stretch of one regime without shot, drain or break. */
export interface FoundDryDown extends DryStretch {
  /** The straight line through it. */
  readonly line: DryDownLine
}

/** A stretch in which water only leaves: its place in the record. */
export interface DryStretch {
  /** Position of its first reading. Unit: 1. */
  readonly first: number
  /** Position of its last reading. Unit: 1. */
  readonly last: number
  /** Time of its first reading. Unit: s. */
  readonly start: number
  /** Time of its last reading. Unit: s. */
  readonly end: number
  readonly regime: 'day' | 'night' | 'not-told'
}

/**
 * The dry-downs of a record, each in one light regime, with its slope: between shots, after drain, never across a gap or a break.
 *
 * @procedure Cuts the stretches of `splitRecord` at shots with their drain and at the beginning and end of light, and fits a line to each part
 * that is long enough and has at least three readings.
 * @param input - Series, shots, times with light and limits.
 * @returns The dry-downs in order; a part that rises slowly is among them and has a positive slope.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths or periods of light out of order.
 * @source common practice, no source
 * @example
 * const time = Array.from({ length: 13 }, (_, i) => i * 3600)
 * const content = time.map((t, i) => 0.6 - 0.008 * Math.min(i, 6) - 0.002 * Math.max(0, i - 6))
 * const found = findDryDowns({
 *   time, waterContent: content, shots: [], drainTime: minutes(30), maxStep: hours(2), minDuration: hours(3), light: [{ start: 0, end: 21600 }],
 * })
 * found // => [{ regime: 'day', line: { slopePerHour: -0.008 } }, { regime: 'night', line: { slopePerHour: -0.002 } }]
 */
export function findDryDowns(input: FindDryDownsInput): FoundDryDown[] {
  const stretches = dryStretches(input)
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  return stretches.map((stretch) => {
    const { first, last } = stretch
    const line = fitDryDown({ time: part(time, first, last), waterContent: part(waterContent, first, last) })
    return { ...stretch, line }
  })
}

/** The same without lines, for those who want none. */
export function dryStretches(input: FindDryDownsInput): DryStretch[] {
  requireObject(input, 'input')
  const { shots, light, ...limits } = input
  const drainTime = numberIn(limits.drainTime, SETTLE_TIME, 'drainTime')
  const maxStep = numberIn(limits.maxStep, MAX_STEP, 'maxStep') as Duration
  const min = numberIn(limits.minDuration, MIN_DRY_DOWN, 'minDuration')
  requireRows(shots, 'shots')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const periods = checkedPeriods(light ?? [])
  const found: DryStretch[] = []
  const close = (first: number, last: number, regime: DryStretch['regime'], readings: number) => {
    if (readings < 3 || time[last]! - time[first]! < min) return
    found.push({ first, last, start: time[first]!, end: time[last]!, regime })
  }
  let s = 0
  let p = 0
  // A medium goes on draining while readings are missing.
  let drained = -Infinity
  for (const segment of stretchesOf(time, waterContent, maxStep)) {
    let first = -1
    let last = -1
    let readings = 0
    let regime: DryStretch['regime'] = 'not-told'
    // Behind a clock that was set back the moments of shots before it say nothing.
    if (time[segment.first]! < drained - drainTime) drained = -Infinity
    for (let i = segment.first; i <= segment.last; i++) {
      if (Number.isNaN(waterContent[i])) continue
      const now = time[i]!
      while (s < shots.length && shots[s]!.peakIndex < i) drained = shots[s++]!.peak + drainTime
      const shot = shots[s]
      const rising = shot !== undefined && i > shot.startIndex && i <= shot.peakIndex
      while (p > 0 && now < periods[p - 1]!.end) p--
      while (p < periods.length && now >= periods[p]!.end) p++
      const inLight = p < periods.length && now >= periods[p]!.start
      const here = light === undefined ? 'not-told' : inLight ? 'day' : 'night'
      const use = !rising && now >= drained
      if (first >= 0 && (!use || here !== regime)) {
        close(first, last, regime, readings)
        first = -1
      }
      if (!use) continue
      if (first < 0) {
        first = i
        readings = 0
        regime = here
      }
      last = i
      readings++
    }
    if (first >= 0) close(first, last, regime, readings)
  }
  return found
}

function part(list: ArrayLike<number>, first: number, last: number): ArrayLike<number> {
  return list instanceof Float64Array
    ? list.subarray(first, last + 1)
    : Array.prototype.slice.call(list, first, last + 1)
}
