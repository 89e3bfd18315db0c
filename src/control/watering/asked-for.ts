import type { ZoneLevel } from './probes/zone-level.js'
import { hasRoom } from './refill/full-zone.js'
import { slipped } from './refill/lacking.js'
import { nearDispute } from './refill/parted.js'
import { hedged, toGiveAgain } from './refill/refill.js'
import { isInVain, passSpell } from './refill/spell.js'
import type { Limits } from './settings/checked-settings.js'
import type { WateringState, WateringZone } from './state/state.js'

/** No shot is given for less than this share of its rise below the upper limit: most of it would stand above. Own judgement. */
const SHORT_BY = 0.25

/** Whether the zone asks for water by its level and by what came of the shots before. */
export function askedFor(
  limits: Limits,
  { fill, zone: before }: WateringState,
  zone: ZoneLevel,
  balance: WateringZone,
  usual: number,
): WateringZone {
  const slip = slipped(fill, zone, limits)
  const level = zone.level ?? 0
  const isRoom = hasRoom(fill, level - Math.min(0, slip) / limits.substrate, limits)
  const again = Math.max(toGiveAgain(fill, zone, limits), isRoom ? hedged(fill, zone, limits) : 0)
  const min = zone.level === null ? 0 : level - (again + slip) / limits.substrate
  // Containers that part become alike where all are full; and what runs past a drying medium stays away.
  const isUneven = zone.spread > nearDispute(limits) || fill.excess > limits.shot / 4
  const { best, spell } = passSpell({ ...balance, best: before.best }, min, usual, limits)
  const isAsked =
    balance.dry &&
    min + (SHORT_BY * limits.shot) / limits.substrate < limits.upper &&
    (isRoom || isUneven) &&
    !isInVain(spell, limits)
  const dry = zone.level === null ? before.dry : min <= limits.lower || isAsked
  return {
    ...balance,
    dry,
    best,
    spell,
    disputed: zone.disputed,
    lastWet: Math.max(balance.lastWet, zone.wet ?? balance.lastWet),
  }
}
