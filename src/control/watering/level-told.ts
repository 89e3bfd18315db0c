import type { ProbeView } from './probes/probes.js'
import { type ZoneLevel, zoneLevel } from './probes/zone-level.js'
import { unbiased } from './refill/known-error.js'
import type { Limits } from './settings/checked-settings.js'
import type { WateringState } from './state/state.js'

/** A level that moves by more than this beyond what plants can drink between two decisions has leapt. Own judgement. Unit: m³/m³. */
const LEAP = 0.01
/** A calm level moves by no more than this beyond what plants can drink between two decisions: twice the scatter of a good probe, 0.002. Own judgement. Unit: m³/m³. */
const CALM = 0.004

/** What probes tell of the zone, and of what plants drank since the decision before. */
export interface LevelTold {
  readonly measured: ZoneLevel
  /** The level while the valve is closed and the last shot has shown; null otherwise. Unit: m³/m³. */
  readonly told: number | null
  /** What plants drank; null where nothing tells or the level leapt. Unit: L. */
  readonly fell: number | null
  /** The same as a calm level tells it: null where the level scatters, zero where nobody tells. Unit: L. */
  readonly calm: number | null
}

/** Takes the errors that a full zone showed from the probes, and compares their level with that of the decision before. */
export function levelTold(
  before: WateringState,
  { clock, valve }: WateringState,
  views: readonly ProbeView[],
  limits: Limits,
): LevelTold {
  const { fill, zone } = before
  const { elapsed } = clock
  const measured = zoneLevel(unbiased(views, fill, elapsed), fill.apart, zone.disputed, limits)
  const isShown = valve.opened === null && elapsed >= valve.closed + limits.lag
  const told = isShown ? (measured.level ?? measured.mean) : null
  if (zone.told === null || told === null) return { measured, told, fell: null, calm: 0 }
  const fell = (zone.told - told) * limits.substrate
  const max = 4 * limits.use * (elapsed - before.clock.elapsed)
  const within = (scatter: number) => (Math.abs(fell) > max + scatter * limits.substrate ? null : fell)
  return { measured, told, fell: within(LEAP), calm: within(CALM) }
}
