import type { WateringClock } from '../state/state.js'

/** After so many steps that are alike it is known how far decisions are apart. */
export const STEPS_ALIKE = 8

export function knowsPace({ paces }: Pick<WateringClock, 'paces'>): boolean {
  return paces >= STEPS_ALIKE
}

/** Longest step that is believed once the pace is known: eight decisions, and a minute where they come faster. Own judgement. Unit: s. */
export function maxStep(pace: number): number {
  return Math.max(60, 8 * pace)
}
