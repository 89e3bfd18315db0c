import type { Limits } from '../settings/checked-settings.js'
import { inHours } from '../settings/hours.js'
import { SLOT, SLOTS } from '../state/given-water.js'
import type { WateringClock, WateringVolumes } from '../state/state.js'

/** Share of a day's limit that may be given at once: the larger it is, the smaller is the pace after it. Chosen on rehearsals. */
const AT_ONCE = 0.3
/** What a day may come to by pace alone, as a share of its limit: one hundredth below what a state that is lost again and again may come to. */
const OF_LIMIT = 1.04
/** Quarters of the first day after a start. */
const FIRST_DAY = 96
/** Share of a day's limit that may be saved over the first night: own judgement. A state lost once gave 0.96 of the limit where water was always wanted, 1.10 in another simulation. */
const OVERNIGHT = 0.1

/**
 * What may be given now, so that a day stays within its limit even where its water is forgotten: room for water comes at an even pace over the
 * allowed hours, and little of it can be saved. A start begins without any and saves little overnight in its first day: what was given before a state was
 * lost, at most `AT_ONCE` and the pace of its hours, and the pace of the hours after it come to `OF_LIMIT` in 24 hours, and what the first night saves. `base` is the moment of the
 * start. Unit: L.
 */
export function roomAtPace(water: WateringVolumes, elapsed: number, base: number | null, limits: Limits): number {
  const max = AT_ONCE * limits.perDay
  const pace = pacePerSlot(limits)
  const first = Math.max(0, water.slot - SLOTS + 1)
  let room = water.paced < first ? max : water.room
  for (let slot = Math.max(first, water.paced); slot <= water.slot; slot++) {
    const share = slot < water.slot ? 1 : elapsed / SLOT - slot
    const isNight = slot < FIRST_DAY && !isAllowed(slot, base, limits)
    const saved = isNight
      ? Math.max(room, Math.min(OVERNIGHT * limits.perDay, room + share * pace))
      : room + share * pace
    room = Math.max(0, Math.min(max, saved) - water.litres[slot % SLOTS]!)
  }
  return room
}

function isAllowed(slot: number, base: number | null, { hours, ahead }: Limits): boolean {
  return base !== null && inHours(hours, base + slot * SLOT + ahead, 0, 0)
}

/** Room that comes in a quarter of an hour. Unit: L. */
function pacePerSlot({ perDay, allowed }: Limits): number {
  return (SLOT * (OF_LIMIT - AT_ONCE) * perDay) / allowed
}

/**
 * The volumes after a time of which nothing is known: a state may be an old one, and what was decided since then forgotten. The room for water
 * is then less by all that may have been given in that time, and by what single decisions that are `missed` may have given. A clock that comes `back`
 * from a leap to the time that was counted tells that there was no such time.
 */
export function afterGap(
  water: WateringVolumes,
  { gap, missed, back }: { readonly gap: number; readonly missed: number; readonly back: boolean },
  { elapsed, base }: WateringClock,
  limits: Limits,
): WateringVolumes {
  if (!back && gap <= 0 && missed <= 0) return water
  const room = roomAtPace(water, elapsed, base, limits)
  const forgotten = Math.max(missed, (gap / Math.max(1, limits.run + limits.rest)) * limits.shot)
  const left = back ? room + water.taken : Math.max(0, room - forgotten)
  return { ...withRoom(water, left, elapsed, limits), taken: Math.max(0, room - left) }
}

/** The volumes with another room at a moment. */
function withRoom(water: WateringVolumes, room: number, elapsed: number, limits: Limits): WateringVolumes {
  const begun = (elapsed / SLOT - water.slot) * pacePerSlot(limits)
  // As it was when the present quarter began, downwards: a stored state stays small.
  const before = Math.floor((room - begun + water.litres[water.slot % SLOTS]!) * 1e6) / 1e6
  return { ...water, paced: water.slot, room: before }
}
