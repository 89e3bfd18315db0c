import { clockMode } from '../clock/clock.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringClock, WateringDelivery } from '../state/state.js'
import { HEARD, isDeadMeter } from '../state/wrong-meter.js'
import { arrivingShare, NONE } from './delivery.js'
import { wholeRun } from './whole-shot.js'

/** Time that is counted by decisions may lag so many times behind the true one: own judgement, from clocks that failed at random. */
const LAGS = 1.2

/** No smaller part of a shot is given where there is no room for a whole one: lines fill and drain at each opening. Own judgement. */
export const PART = 0.25

/**
 * Time of an opening that gives a whole shot of the water that arrives, within the longest one. Where nothing comes, openings are short: they
 * try whether there is water again, and count for little.
 */
export function runFor(delivery: WateringDelivery, clock: WateringClock, limits: Limits): number {
  const max = maxRunFor(clock, limits)
  // Not before probes had some whole shots to see: a meter that was never connected counts nothing either.
  if (delivery.metered < NONE && delivery.shots >= HEARD && !isDeadMeter(delivery)) return limits.run / 4
  const run = wholeRun(clock, limits)
  return Math.min(max, delivery.metered < NONE ? run : run / arrivingShare(delivery))
}

/**
 * Longest opening. Where time is counted by decisions, or the clock is in doubt, it is no more than a shot, and less than the longest one by what that
 * count may lag: each decision sends the rest of an opening anew.
 */
export function maxRunFor(clock: WateringClock, { run, maxRun }: Limits): number {
  const isSure = clockMode(clock) === 'runs' && clock.doubt === 0 && clock.lent === 0 && clock.owed === 0
  return isSure ? maxRun : Math.min(run, maxRun / LAGS)
}
