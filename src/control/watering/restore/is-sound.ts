import { isObject } from '../../../quantity/guard.js'
import { isMoment } from '../../moment.js'
import type { Limits } from '../settings/checked-settings.js'
import type {
  WateringClock,
  WateringCounters,
  WateringFill,
  WateringOrigin,
  WateringProbe,
  WateringState,
  WateringTally,
  WateringValve,
  WateringZone,
} from '../state/state.js'
import { each, inRange, type Loose } from './field.js'
import { clockSound } from './sound-clock.js'
import { countersSound } from './sound-counters.js'
import { probeSound } from './sound-probe.js'
import { isSame, isVolumes, isVolumesOfDay, roomSound, tallySound, valveSound } from './sound-water.js'
import { fillSound, zoneSound } from './sound-zone.js'

/**
 * Whether a state that came from outside is one that a decision may go on from: every field there, of its type, and possible together.
 * One field that is not makes the whole a lost state.
 */
export function isSound(state: unknown, limits: Limits): state is WateringState {
  // A state that throws when it is read throws here as well, and is lost as a whole.
  if (typeof state !== 'object' || state === null) return false
  const { made, clock, valve, water, spare, tally, probes, zone, fill, counters, override }: Loose<WateringState> =
    state
  if (!isOf(made, limits.name) || made.settings !== limits.fingerprint) return false
  if (!isObject<Loose<WateringClock>>(clock) || !clockSound(clock)) return false
  const elapsed = clock.elapsed as number
  return (
    isObject<Loose<WateringValve>>(valve) &&
    valveSound(valve, elapsed, limits) &&
    isObject<Loose<WateringState['water']>>(water) &&
    water.slot === Math.floor(elapsed / 900) &&
    isVolumes(water.litres) &&
    roomSound(water) &&
    (spare === water || (isVolumesOfDay(spare) && isSame(spare, water as WateringState['water']))) &&
    isObject<Loose<WateringTally>>(tally) &&
    tallySound(tally) &&
    Array.isArray(probes) &&
    probes.length === limits.probes.length &&
    each(probes, (probe) => isObject<Loose<WateringProbe>>(probe) && probeSound(probe, elapsed)) &&
    isObject<Loose<WateringZone>>(zone) &&
    zoneSound(zone, elapsed) &&
    isObject<Loose<WateringFill>>(fill) &&
    fillSound(fill, elapsed, limits.probes.length) &&
    isObject<Loose<WateringCounters>>(counters) &&
    countersSound(counters) &&
    overrideSound(override, elapsed)
  )
}

function isOf(made: unknown, zone: string): made is Loose<WateringOrigin> {
  return isObject<Loose<WateringOrigin>>(made) && made.zone === zone
}

function overrideSound(override: unknown, elapsed: number): boolean {
  if (override === null) return true
  return (
    isObject<Loose<NonNullable<WateringState['override']>>>(override) &&
    (override.action === 'close' || override.action === 'water') &&
    isMoment(override.until) &&
    inRange(override.ends, 0, elapsed + 86400)
  )
}
