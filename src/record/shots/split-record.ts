import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { MAX_STEP } from '../domains.js'
import type { ArrivalTimes } from '../terms.js'

/** A series that may have breaks. */
export interface SplitRecordInput extends ArrivalTimes {
  /** Readings; NaN where one is missing or not to be trusted. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
  /** A longer step between two good readings ends a stretch. Unit: s. Range: (0, 86400]. */
  readonly maxStep: Duration
}

/** A stretch of good readings without a gap or a break. */
export interface RecordSegment {
  /** Position of its first good reading. Unit: 1. */
  readonly first: number
  /** Position of its last good reading. Unit: 1. */
  readonly last: number
  /** Time of its first good reading. Unit: s. */
  readonly start: number
  /** Time of its last good reading. Unit: s. */
  readonly end: number
  /** Good readings in it. Unit: 1. */
  readonly readings: number
}

/**
 * The stretches of a record in which times run on and readings follow each other closely. Slopes, events and sums are taken inside
 * one of them only.
 *
 * @procedure Ends a stretch where the next good reading is not later than the last one, or later by more than the longest step.
 * @returns The stretches in order of arrival.
 * @throws `DomainError` outside the range, `InputError` for lists of different lengths.
 * @source definition
 * @example
 * splitRecord({ time: [0, 300, 600, 4200, 4500], value: [0.5, 0.5, NaN, 0.48, 0.48], maxStep: minutes(12) }).length // => 2
 */
export function splitRecord(input: SplitRecordInput): RecordSegment[] {
  requireObject(input, 'input')
  const [time, value] = alignedSeries(input.time, input.value, 'value')
  return stretchesOf(time, value, input.maxStep)
}

/** The same, for series that are aligned. */
export function stretchesOf(time: ArrayLike<number>, value: ArrayLike<number>, maxStep: Duration): RecordSegment[] {
  const max = numberIn(maxStep, MAX_STEP, 'maxStep')
  const segments: RecordSegment[] = []
  let first = -1
  let last = -1
  let readings = 0
  const close = () => {
    if (first >= 0) segments.push({ first, last, start: time[first]!, end: time[last]!, readings })
  }
  for (let i = 0; i < time.length; i++) {
    const now = time[i]!
    if (Number.isNaN(value[i]) || Number.isNaN(now)) continue
    const step = first < 0 ? 0 : now - time[last]!
    if (first < 0 || !(step > 0) || step > max) {
      close()
      first = i
      readings = 0
    }
    last = i
    readings++
  }
  close()
  return segments
}
