import type { WateringClock } from '../state/state.js'

/** After so many steps that are alike it is known how far decisions are apart. */
export const STEPS_ALIKE = 8

export function knowsPace({ paces }: Pick<WateringClock, 'paces'>): boolean {
  return paces >= STEPS_ALIKE
}
