import type { Limits } from '../settings/checked-settings.js'
import { inHours, MIN_HOURS_OF_USE } from '../settings/hours.js'
import type { WateringClock } from '../state/state.js'
import { clockAdvance, isRefused, NEAR } from './clock-advance.js'

/** What plants use in 1.2 h, at their usual pace, is enough to tell: a level tells it in several times the scatter of a probe. Chosen on rehearsals. Unit: s. */
const ENOUGH = 4320

/**
 * Lets the plants say who is right where the clock leapt far: they drink by day. What the level falls while only the count says that it is
 * day speaks for the count, and while only the clock does, for the clock. A level that stands still says nothing, and one that
 * scatters (`null`) unsays what was heard.
 */
export function heardPlants(clock: WateringClock, fell: number | null, limits: Limits): WateringClock {
  if (fell === null) return { ...clock, byCount: 0, byClock: 0 }
  const apart = clockAdvance(clock)
  if (Math.abs(apart) <= NEAR || clock.steady < 3 || clock.base === null || isRefused(clock)) return clock
  const local = clock.base + clock.elapsed + limits.ahead
  const isDay = inHours(limits.hours, local, 0, 0)
  if (isDay === inHours(limits.hours, local + apart, 0, 0)) return clock
  const turned = Math.abs(apart) % 86400
  // Shorter hours than those in which plants drink are parted from others of the day only by more.
  const hoursApart = Math.min(turned, 86400 - turned)
  if (Math.max(limits.allowed, hoursApart) < MIN_HOURS_OF_USE) return clock
  const byCount = clock.byCount + (isDay ? fell : 0)
  const byClock = clock.byClock + (isDay ? 0 : fell)
  const enough = ENOUGH * limits.use
  if (byCount >= enough && byCount > 3 * byClock) return { ...clock, byCount: 0, byClock: 0, refused: apart }
  return byClock >= enough && byClock > 3 * byCount ? right(clock) : { ...clock, byCount, byClock }
}

/**
 * The same where nothing was decided for long, as in a power cut by day: what probes fell over a silence that was not counted tells that it was as
 * long as the clock says. By night nothing falls, and nothing is told.
 */
export function heardSilence(clock: WateringClock, fell: number, { use, substrate }: Limits): WateringClock {
  const isAhead = clockAdvance(clock) > NEAR && clock.base !== null && !isRefused(clock)
  return isAhead && fell * substrate >= ENOUGH * use ? right(clock) : clock
}

/** The clock was right, and the count of decisions was not. */
function right(clock: WateringClock): WateringClock {
  const { raw, elapsed } = clock
  return { ...clock, base: (raw as number) - elapsed, agreed: elapsed, doubt: 0, vouched: 0, byCount: 0, byClock: 0 }
}
