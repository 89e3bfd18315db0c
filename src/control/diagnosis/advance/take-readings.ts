import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { withClimb, withFall } from '../watch/climb-and-fall.js'
import { known, type WatchedReading } from '../watch/input.js'
import { useOf, type WaterOfLate } from '../watch/leap-by-water.js'
import { risenTogether } from '../watch/risen-together.js'
import { withStep } from '../watch/step-of-probe.js'
import { withAge, withReading } from '../watch/take-reading.js'
import { withPace } from '../watch/watch-pace.js'
import type { ProbeWatch } from '../watch/watch-probe.js'
import { quietSince } from './quiet-since.js'

export function withReadings(
  state: ZoneWatchState,
  readings: unknown,
  now: number,
  zone: RememberedZone,
): ProbeWatch[] {
  const probes = [...state.probes]
  if (!Array.isArray(readings)) return probes
  const quietFrom = quietSince(state.valve)
  const beside = { quietFrom, maxRate: zone.flow / 3600 / zone.volume, water: () => waterOfLate(state, now, zone) }
  const youngest = zone.names.map<number | null>(() => null)
  for (const { i, time, value } of inOrder(readings, now, zone)) {
    const before = probes[i]!
    const after = withReading(before, { time, value }, now, quietFrom, zone)
    youngest[i] = time
    if (after.times === before.times) probes[i] = after
    else probes[i] = withClimbs(withStep(after, beside, zone), quietFrom, state.light, zone)
  }
  const aged = probes.map((probe, i) => (youngest[i] === null ? probe : withAge(probe, now - youngest[i]!)))
  return risenTogether(aged, now, zone)
}

interface TakenReading {
  readonly i: number
  readonly time: number
  readonly value: number | null
}

/** Readings of the probes of the zone in the order of their own times: a message holds them in any. */
function inOrder(readings: readonly (WatchedReading | null)[], now: number, zone: RememberedZone): TakenReading[] {
  const taken = readings.flatMap((reading): TakenReading[] => {
    const i = zone.names.indexOf(reading?.probe as string)
    if (i < 0 || reading === null) return []
    return [{ i, time: known(reading.time) ?? now, value: known(reading.waterContent) }]
  })
  return taken.sort((one, other) => one.time - other.time)
}

/** Climbs count between shots only, and not where the probe jumped. */
function withClimbs(probe: ProbeWatch, quietFrom: number, light: number | null, zone: RememberedZone): ProbeWatch {
  const first = probe.times[Math.max(0, probe.times.length - 5)]!
  if (quietFrom === Infinity) return { ...probe, low: null }
  // The level at the end of the shot stands until the probe has been quiet for a while.
  if (first < quietFrom) return probe
  const fallen = withFall(probe, quietFrom, light)
  // Half of what two minutes of flow bring, and eight times the noise of a usual probe: chosen on rehearsals.
  return withClimb(fallen, Math.max(0.012, (0.5 * zone.flow * 120) / 3600 / zone.volume))
}

/** The shots, the one that is under way among them. */
function waterOfLate({ shots, valve }: ZoneWatchState, now: number, zone: RememberedZone): WaterOfLate {
  const { shot, open } = valve
  const given = shot === null ? [] : [{ time: shot.start, volume: (zone.flow * (shot.end - shot.start)) / 3600 }]
  const running = open === null ? [] : [{ time: open.start, volume: (zone.flow * (now - open.start)) / 3600 }]
  return { shots: [...shots, ...given, ...running], use: useOf(shots, now, zone) }
}

export function paced(probes: readonly ProbeWatch[], { probes: before }: ZoneWatchState, passed: number): ProbeWatch[] {
  return probes.map((probe, i) => withPace(probe, before[i]!, passed))
}

/** One that never sent anything is awaited from now on: its name may be another one in the messages. */
export function awaited(probe: ProbeWatch, now: number): ProbeWatch {
  return probe.heard === null && probe.count === 0 ? { ...probe, heard: now } : probe
}
