import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill } from '../state/state.js'

/** Whether a refill has no room for another shot below the most that it may give. */
export function isSpent({ under, max, due }: WateringFill, { shot }: Limits): boolean {
  return under !== null && under + shot > max + due
}

/** No refill is under way any more; `cut` where the limits of the day ended it. */
export function endedRefill(fill: WateringFill, tried: number, cut: boolean): WateringFill {
  return { ...fill, under: null, foretold: null, tried, cut }
}

/** A refill that ended without drain: the next waits longer. */
export function spentRefill(fill: WateringFill, now: number): WateringFill {
  return { ...endedRefill(fill, now, false), fails: Math.min(9, fill.fails + 1) }
}
