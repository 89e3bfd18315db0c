import type { WateringClock } from '../state/state.js'
import { clockAdvance, NEAR } from './clock-advance.js'
import { HIDES } from './rarer-decisions.js'

/** Whether the clock steps back from a leap to the time that was counted meanwhile: no time is unknown then. */
export function isBack(before: WateringClock, clock: WateringClock): boolean {
  if (before.raw === null || clock.raw === null || clock.raw >= before.raw) return false
  return clockAdvance(before) > NEAR && Math.abs(clockAdvance(clock)) <= NEAR
}

/** Whether it returns from a leap, on or back, to just what was counted: no decision can be missing. */
export function isJustBack(before: WateringClock, clock: WateringClock): boolean {
  const isSameStart = before.base === clock.base
  const leapt = Math.abs(clockAdvance(before))
  return isSameStart && leapt > HIDES * before.pace && Math.abs(clockAdvance(clock)) < before.pace / 2
}
