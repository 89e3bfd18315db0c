import { answerOf, answersOf } from '../../quantity/answer.js'
import { ELAPSED } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, PoreWaterEC, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { APPLIED, FEED_EC, SOME_DRAINED, STORE_EC, STORE_WATER, TIME_CONSTANT, UPTAKE_EC } from '../domains.js'
import type { FeedSalts, StartEC } from '../terms.js'

/** A well-mixed root zone that is watered and drains the same every day. */
export interface ReservoirInput extends StartEC, FeedSalts {
  /** Water in the root zone, which stays the same. Unit: L. Range: (0, ∞). */
  readonly rootZoneWater: Volume
  /** Water applied in a day. Unit: L. Range: [0, ∞). */
  readonly dailyApplied: Volume
  /** Drain in a day. Unit: L. Range: (0, ∞). */
  readonly dailyDrained: Volume
  /** Time since the start. Unit: s. Range: [0, ∞). */
  readonly time: Duration
}

/** EC of a root zone on its way. */
export interface ReservoirCourse {
  /** EC at that time. Unit: dS/m. */
  readonly ec: PoreWaterEC
  /** EC towards which it tends. Unit: dS/m. */
  readonly steady: PoreWaterEC
  /** Time in which all but 37 % of the way is gone. Unit: s. */
  readonly timeConstant: Duration
}

/**
 * EC of a well-mixed root zone in time, when every day brings the same water, uptake and drain.
 *
 * Real root zones are layered and their drain lags behind: take the course as a guide to days, not to hours.
 *
 * @equation `C = C_s + (C_0 - C_s) \, e^{-t/\tau}, \quad C_s = \frac{C_{in} I - C_{up} (I - D)}{D}, \quad \tau = \frac{W}{D}`
 * @returns EC at that time, EC in the end, and time constant.
 * @throws `DomainError` outside the ranges; `InputError` when more drains than is applied, or plants would take more salt than there is.
 * @source definition: salt balance of a well-mixed reservoir (first-order mixing)
 * @example
 * reservoirCourse({
 *   start: decisiemensPerMetre(2.5),
 *   feedEC: decisiemensPerMetre(2.5),
 *   rootZoneWater: litres(6),
 *   dailyApplied: litres(2.4),
 *   dailyDrained: litres(0.6),
 *   time: days(1),
 * }) // => { ec: 3.21372, steady: 10, timeConstant: 864000 }
 */
export function reservoirCourse(input: ReservoirInput): ReservoirCourse {
  requireObject(input, 'input')
  const start = numberIn(input.start, STORE_EC, 'start')
  const drained = numberIn(input.dailyDrained, SOME_DRAINED, 'dailyDrained')
  const applied = numberIn(input.dailyApplied, APPLIED, 'dailyApplied')
  const feed = numberIn(input.feedEC, FEED_EC, 'feedEC')
  const uptake = numberIn(optionOr(input.uptakeEC, 0), UPTAKE_EC, 'uptakeEC')
  const timeConstant = (numberIn(input.rootZoneWater, STORE_WATER, 'rootZoneWater') / drained) * 86400
  const left = Math.exp(-numberIn(input.time, ELAPSED, 'time') / timeConstant)
  if (drained > applied)
    throw new InputError(
      'dailyDrained',
      `${drained} L drain of ${applied} L applied, so that the root zone would dry`,
      'its water must stay the same: step through the days with followReservoir()',
    )
  const steady = (feed * applied - uptake * (applied - drained)) / drained
  const ec = steady + (start - steady) * left
  if (ec < 0)
    throw new InputError(
      'uptakeEC',
      `plants would take more salt than there is, down to ${ec} dS/m`,
      'check the uptake',
    )
  return answersOf(
    { ec: ec as PoreWaterEC, steady: steady as PoreWaterEC, timeConstant: timeConstant as Duration },
    'dailyDrained',
  )
}

/** An EC on its way from one value to another. */
export interface TimeToECInput extends StartEC {
  /** EC that is to be reached. Unit: dS/m. Range: [0, 200]. */
  readonly target: PoreWaterEC
  /** EC towards which it tends. Unit: dS/m. Range: [0, 200]. */
  readonly steady: PoreWaterEC
  /** Time in which all but 37 % of the way is gone. Unit: s. Range: (0, ∞). */
  readonly timeConstant: Duration
}

/**
 * Time that a well-mixed root zone takes to a wanted EC. The end itself is never reached: ask for an EC near it.
 *
 * @equation `t = \tau \ln\frac{C_0 - C_s}{C_t - C_s}`
 * @param input - Start, target, end and time constant.
 * @returns Time. Unit: s.
 * @throws `DomainError` outside the ranges, `InputError` when the target does not lie between start and end.
 * @source definition: salt balance of a well-mixed reservoir (first-order mixing)
 * @example
 * const time = timeToEC({
 *   start: decisiemensPerMetre(4.9),
 *   target: decisiemensPerMetre(4.1),
 *   steady: decisiemensPerMetre(4),
 *   timeConstant: days(1.33661),
 * })
 * inDays(time) // => 2.9368
 */
export function timeToEC(input: TimeToECInput): Duration {
  requireObject(input, 'input')
  const start = numberIn(input.start, STORE_EC, 'start')
  const target = numberIn(input.target, STORE_EC, 'target')
  const steady = numberIn(input.steady, STORE_EC, 'steady')
  const constant = numberIn(input.timeConstant, TIME_CONSTANT, 'timeConstant')
  if (target === start) return 0 as Duration
  const left = (target - steady) / (start - steady)
  if (!(left > 0 && left <= 1))
    throw new InputError(
      'target',
      `${target} dS/m is never passed on the way from ${start} to ${steady} dS/m`,
      'choose a value between them, or another feed or drain',
    )
  return answerOf(-constant * Math.log(left), 'timeConstant') as Duration
}
