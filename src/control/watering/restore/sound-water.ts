import { isObject } from '../../../quantity/guard.js'
import { PURSE, TALLY_HOURS } from '../delivery/tally.js'
import { MAX_PAUSE } from '../delivery/unknown-time.js'
import type { Limits } from '../settings/checked-settings.js'
import { SLOTS } from '../state/given-water.js'
import type { WateringState, WateringTally, WateringValve } from '../state/state.js'
import { AGES, each, inRange, isCount, type Loose, nullOr } from './field.js'

export function valveSound(valve: Loose<WateringValve>, elapsed: number, limits: Limits): boolean {
  return (
    nullOr(valve.opened, 0, elapsed) &&
    inRange(valve.duration, 0, limits.maxRun) &&
    // An opening whose start is gone would begin again.
    (valve.opened !== null || valve.duration === 0) &&
    inRange(valve.counted, 0, AGES) &&
    (valve.reason === 'dry' ||
      valve.reason === 'refill' ||
      valve.reason === 'back-up-shot' ||
      valve.reason === 'override-water') &&
    // A valve that closes by itself is known to close a little later, and after missing decisions the rest begins later.
    inRange(valve.closed, 0, elapsed + Math.max(limits.maxRun, MAX_PAUSE)) &&
    inRange(valve.rested, 0, valve.closed as number) &&
    isCount(valve.openings, Number.MAX_SAFE_INTEGER)
  )
}

export function isVolumesOfDay(water: unknown): water is WateringState['water'] {
  return (
    isObject<Loose<WateringState['water']>>(water) &&
    isCount(water.slot, AGES) &&
    isVolumes(water.litres) &&
    roomSound(water)
  )
}

export function isVolumes(litres: unknown): boolean {
  if (!Array.isArray(litres) || litres.length !== SLOTS) return false
  for (let i = 0; i < SLOTS; i++) if (!inRange(litres[i], 0, AGES)) return false
  return true
}

export function isSame(a: WateringState['water'], b: WateringState['water']): boolean {
  for (let i = 0; i < SLOTS; i++) if (a.litres[i] !== b.litres[i]) return false
  return a.slot === b.slot && a.paced === b.paced && a.room === b.room && a.taken === b.taken
}

export function roomSound({ slot, paced, room, taken }: Loose<WateringState['water']>): boolean {
  return isCount(paced, slot as number) && inRange(room, -AGES, AGES) && inRange(taken, 0, AGES)
}

export function tallySound({ at, pace, decisions, sooner, purse, drank, due, litres }: Loose<WateringTally>): boolean {
  return (
    inRange(at, 0, AGES) &&
    inRange(pace, 0, AGES) &&
    isCount(decisions, 4096) &&
    inRange(sooner, 0, AGES) &&
    inRange(purse, 0, PURSE) &&
    inRange(drank, -AGES, AGES) &&
    inRange(due, 0, AGES) &&
    Array.isArray(litres) &&
    litres.length === TALLY_HOURS &&
    each(litres, (volume) => inRange(volume, 0, AGES))
  )
}
