import type { Duration } from '../quantity/duration.js'
import { within } from '../quantity/guard.js'
import type { Span } from '../quantity/span.js'
import { QUALITY } from './flags.js'

const STEP: Span = {
  quantity: 'expected step',
  unit: 's',
  min: 0,
  max: Infinity,
  open: 'min',
  hint: 'give the time between two readings, above zero',
}
const FACTOR: Span = {
  quantity: 'factor of a gap',
  unit: '1',
  min: 1,
  max: Infinity,
  hint: 'give how many times the expected step a gap is, at least 1',
}

/** Times of readings and what is expected of them. */
export interface TimeGapInput {
  /** Times of the readings, in the order in which they arrived. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Time that should lie between two readings. Unit: s. Range: (0, ∞). */
  readonly expectedStep: Duration
  /** A step of more than so many times the expected one is a gap; 1.5 by default. Unit: 1. Range: [1, ∞). */
  readonly factor?: number
}

/** A place where the times of a record do not run on. No slope, no event and no sum may reach across it. */
export interface Seam {
  /** Position of the reading after the seam. Unit: 1. */
  readonly index: number
  readonly kind: 'gap' | 'step back' | 'repeated time'
  /** Time from the reading before to the reading after; negative where the clock was set back. Unit: s. */
  readonly seconds: Duration
}

/**
 * Time gap test: a reading that arrives too late is suspect, one whose clock did not advance fails.
 *
 * @procedure Compares the step before each reading with the expected one.
 * @param input - Times and expected step.
 * @returns One flag for each reading; the first is not evaluated.
 * @throws `DomainError` outside the ranges.
 * @source Integrated Ocean Observing System (2020), Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data (QARTOD), version 2.1, Test 1 [from memory]
 * @example
 * ```ts
 * timeGapTest({ time: [0, 300, 600, 1800, 2100, 1200, 1500], expectedStep: minutes(5) }) // => [2, 1, 1, 3, 1, 4, 1]
 * ```
 */
export function timeGapTest(input: TimeGapInput): Uint8Array {
  const longest = within(input.expectedStep, STEP) * within(input.factor ?? 1.5, FACTOR)
  const { time } = input
  return Uint8Array.from(time, (now, i) => {
    if (i === 0) return QUALITY.notEvaluated
    const step = now - (time[i - 1] as number)
    if (!(step > 0)) return QUALITY.fail
    return step > longest ? QUALITY.suspect : QUALITY.pass
  })
}

/**
 * The places where the times of a record do not run on: gaps, clocks that were set back, and times that stand twice.
 *
 * @procedure Compares the step before each reading with the expected one.
 * @param input - Times and expected step.
 * @returns The seams in order.
 * @throws `DomainError` outside the ranges.
 * @source definition
 * @example
 * ```ts
 * findSeams({ time: [0, 300, 3900, 600], expectedStep: minutes(5) }).map((seam) => seam.kind) // => ['gap', 'step back']
 * ```
 */
export function findSeams(input: TimeGapInput): Seam[] {
  const longest = within(input.expectedStep, STEP) * within(input.factor ?? 1.5, FACTOR)
  const { time } = input
  const seams: Seam[] = []
  for (let index = 1; index < time.length; index++) {
    const seconds = ((time[index] as number) - (time[index - 1] as number)) as Duration
    if (seconds > longest) seams.push({ index, kind: 'gap', seconds })
    else if (seconds === 0) seams.push({ index, kind: 'repeated time', seconds })
    else if (!(seconds > 0)) seams.push({ index, kind: 'step back', seconds })
  }
  return seams
}
