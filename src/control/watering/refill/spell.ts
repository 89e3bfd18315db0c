import type { Limits } from '../settings/checked-settings.js'
import type { WateringZone } from '../state/state.js'

/** A level is higher than before from this rise on; less is noise: twice the scatter of a good probe, 0.002. Own judgement, no source. Unit: m³/m³. */
const HIGHER = 0.004
/** Shots that raised nothing, after which more would not either. Own judgement, no source. */
export const SHOTS = 4

/** The highest level since the lower limit, and the water that came since then less what plants usually use: what usually drains is no use. */
export function passSpell(zone: WateringZone, level: number, used: number, limits: Limits) {
  if (level <= limits.lower) return { best: limits.lower, spell: 0 }
  if (level > zone.best + HIGHER) return { best: level, spell: 0 }
  return { best: zone.best, spell: zone.spell - used * (1 - limits.drain) }
}

/** Whether shots have long ceased to raise the level: the medium does not reach the upper limit, and what comes runs off. */
export function isInVain(spell: number, { shot, substrate }: Limits): boolean {
  return spell > Math.max(SHOTS * shot, 2.5 * HIGHER * substrate)
}
