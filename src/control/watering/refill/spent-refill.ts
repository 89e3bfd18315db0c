import type { WateringFill } from '../state/state.js'

/** A refill that ended without drain: the next waits longer. */
export function spentRefill(fill: WateringFill, now: number): WateringFill {
  return {
    ...fill,
    under: null,
    foretold: null,
    tried: now,
    fails: Math.min(9, fill.fails + 1),
    cut: false,
  }
}
