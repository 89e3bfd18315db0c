import type { Limits } from './checked-settings.js'
import { SLOT, SLOTS } from './given-water.js'
import type { WateringVolumes } from './state.js'

/** Share of a day's limit that may be given at once. */
const AT_ONCE = 0.3
/** What a day may come to by pace alone, as a share of its limit. */
const OF_LIMIT = 1.04

/**
 * What may be given now, so that a day stays within its limit even where its water is forgotten: room for water comes at an even pace over the
 * allowed hours, and little of it can be saved. A start begins without any, so that states lost again and again give no more than one that is kept.
 * Unit: L.
 */
export function roomAtPace(water: WateringVolumes, elapsed: number, { perDay, allowed }: Limits): number {
  const most = AT_ONCE * perDay
  const pace = (SLOT * (OF_LIMIT - AT_ONCE) * perDay) / allowed
  const first = Math.max(0, water.slot - SLOTS + 1)
  let room = first > 0 ? most : 0
  for (let slot = first; slot <= water.slot; slot++) {
    const share = slot < water.slot ? 1 : elapsed / SLOT - slot
    room = Math.max(0, Math.min(most, room + share * pace) - water.litres[slot % SLOTS]!)
  }
  return room
}
