import type { WateringClock } from '../state/state.js'

/** Clock and count that differ by less are not in dispute. Unit: s. */
export const NEAR = 1200

/** How far the clock, as it was read last, is ahead of the count. Unit: s. */
export function clockAdvance(clock: WateringClock): number {
  return clock.raw === null || clock.base === null ? 0 : clock.raw + clock.lent - clock.base - clock.elapsed
}

/** Whether plants have spoken against the clock as it runs now. */
export function isRefused(clock: WateringClock): boolean {
  return clock.refused !== null && Math.abs(clockAdvance(clock) - clock.refused) <= NEAR
}
