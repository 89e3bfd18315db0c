import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { alignedSeries } from '../aligned-series.js'
import { EXPECTED_STEP } from '../domains.js'
import { maxGap, type TimeGapInput } from './time-gap-test.js'

/** Times of readings, what is expected of them, and the readings themselves if those that are missing shall count as a gap. */
export interface TimeBreaksInput extends TimeGapInput {
  /** Readings; NaN where one is missing, which then counts as if its row were not there. Unit: any. Range: any. */
  readonly value?: ArrayLike<number>
}

/** A place where the times of a record do not run on. No slope, no event and no sum may reach across it. */
export interface TimeBreak {
  /** Position of the reading after the break. Unit: 1. */
  readonly index: number
  readonly kind: 'gap' | 'step-back' | 'repeated-time' | 'no-time'
  /** Time from the reading before to the reading after; negative where the clock was set back. Unit: s. */
  readonly seconds: Duration
  /**
   * Present when the step is one expected step and one hour forward or back: a civil clock change, or an hour without readings, or a
   * clock that was set. The times alone cannot tell which.
   */
  readonly mayBeClockChange?: 'forward' | 'back'
}

/**
 * The places where the times of a record do not run on: gaps, clocks that were set back, and times that stand twice.
 *
 * @procedure Compares the step before each reading with the expected one; a step that is an hour off, to three expected steps and a quarter of
 * an hour, may be a change of civil time. A missing last stretch is no break: it ends the record.
 * @returns The breaks in order.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths.
 * @source definition
 * @example
 * const breaks = findTimeBreaks({ time: [0, 300, 4200, 900], expectedStep: minutes(5) })
 * breaks // => [{ kind: 'gap', mayBeClockChange: 'forward' }, { kind: 'step-back', seconds: -3300 }]
 */
export function findTimeBreaks(input: TimeBreaksInput): TimeBreak[] {
  requireObject(input, 'input')
  const expected = numberIn(input.expectedStep, EXPECTED_STEP, 'expectedStep')
  const max = maxGap(input.expectedStep, input.factor)
  const [time, value] =
    input.value === undefined ? [seriesOf(input.time, 'time')] : alignedSeries(input.time, input.value, 'value')
  const breaks: TimeBreak[] = []
  let before = -1
  for (let index = 0; index < time.length; index++) {
    if (value !== undefined && Number.isNaN(value[index])) continue
    if (before >= 0) {
      const step = time[index]! - time[before]!
      if (!(step > 0 && step <= max)) breaks.push(breakAt(index, step, expected))
    }
    before = index
  }
  return breaks
}

function breakAt(index: number, step: number, expected: number): TimeBreak {
  const seconds = step as Duration
  if (Number.isNaN(step)) return { index, kind: 'no-time', seconds }
  const kind = step > 0 ? 'gap' : step === 0 ? 'repeated-time' : 'step-back'
  const off = step - expected
  const tolerance = Math.min(3 * expected, 900)
  if (Math.abs(Math.abs(off) - 3600) > tolerance) return { index, kind, seconds }
  return { index, kind, seconds, mayBeClockChange: off > 0 ? 'forward' : 'back' }
}
