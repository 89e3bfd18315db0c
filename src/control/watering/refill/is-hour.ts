import type { Limits } from '../settings/checked-settings.js'
import { shareOfHours } from '../settings/hours.js'
import type { WateringState } from '../state/state.js'

/** Whether a share of the allowed hours has gone by that lies between two. */
export function isHour({ clock }: WateringState, [from, to]: readonly [number, number], limits: Limits): boolean {
  if (clock.base === null) return false
  const share = shareOfHours(limits.hours, clock.base + clock.elapsed + limits.ahead)
  return share !== null && share >= from && share <= to
}
