import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { EXPECTED_STEP, GAP_FACTOR } from '../domains.js'
import type { ArrivalTimes, ExpectedStep } from '../terms.js'
import { QUALITY } from './flags.js'

/** Times of readings and what is expected of them. */
export interface TimeGapInput extends ExpectedStep, ArrivalTimes {
  /** A step of more than so many times the expected one is a gap; 1.5 by default. Unit: 1. Range: [1, ∞). */
  readonly factor?: number
}

/**
 * Time gap test: a reading that arrives too late is suspect, one whose clock did not advance fails.
 *
 * @procedure Compares the step before each reading with the expected one.
 * @returns One flag for each reading; the first is not evaluated.
 * @source qartod-2016, Test 1 [not confirmed, source not seen]
 * @example
 * timeGapTest({ time: [0, 300, 600, 1800, 2100, 1200, 1500], expectedStep: minutes(5) }) // => [2, 1, 1, 3, 1, 4, 1]
 */
export function timeGapTest(input: TimeGapInput): Uint8Array {
  requireObject(input, 'input')
  const time = seriesOf(input.time, 'time')
  const maxStep = maxGap(input.expectedStep, input.factor)
  const flags = new Uint8Array(time.length)
  flags[0] = QUALITY.notEvaluated
  for (let i = 1; i < time.length; i++) flags[i] = gapFlag(time[i]! - time[i - 1]!, maxStep)
  return flags
}

/** The longest step that is no gap; a refusal calls the factor as the caller does. */
export function maxGap(expectedStep: Duration, factor = 1.5, argument = 'factor'): number {
  return numberIn(expectedStep, EXPECTED_STEP, 'expectedStep') * numberIn(factor, GAP_FACTOR, argument)
}

export function gapFlag(step: number, maxStep: number): number {
  if (!(step > 0)) return QUALITY.fail
  return step > maxStep ? QUALITY.suspect : QUALITY.pass
}
