import { isDue, judged, SHOTS, type ShotEvidence } from '../shots/judge-shot.js'
import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { canJudge } from '../watch/can-judge.js'
import { withFull } from '../watch/full-levels.js'
import type { WatchZoneInput } from '../watch/input.js'
import { useOf } from '../watch/leap-by-water.js'
import { levelOf, meanSince } from '../watch/level-of-probe.js'
import type { ProbeWatch } from '../watch/watch-probe.js'
import {
  type Before,
  type Counts,
  type GivenShot,
  type ValveWatch,
  withCounters,
  withEnd,
  withOrder,
} from '../watch/watch-valve.js'
import { withMeter, withShare } from './learn-usual.js'

export function withWater(
  state: ZoneWatchState,
  input: WatchZoneInput,
  counts: Counts,
  now: number,
  passed: number,
  zone: RememberedZone,
): ZoneWatchState {
  const counted = { ...state, valve: withEnd(withCounters(state.valve, counts, now, passed, zone), now) }
  const starts = input.open === true && counted.valve.open === null
  const due = isDue(counted.valve, counted.probes, now, zone)
  const early = starts && counted.valve.shot !== null && now - counted.valve.shot.end >= 120
  const judgedSoFar = due || early ? withJudged(counted, now, zone) : counted
  const risen = (counted.valve.lastEnd ?? Number.NEGATIVE_INFINITY) + zone.responseTime / 2
  const before = () => judgedSoFar.probes.map((probe) => beforeShot(probe, now, risen, zone))
  const { valve, begins } = withOrder(judgedSoFar.valve, input, now, before)
  return begins ? withDrained({ ...judgedSoFar, valve }, judgedSoFar.valve, now) : { ...judgedSoFar, valve }
}

/** What drained until the next shot belongs to the last one, where the gauge tells it now. */
function withDrained(state: ZoneWatchState, { gauge, drainedSince }: ValveWatch, now: number): ZoneWatchState {
  const last = state.shots[state.shots.length - 1]
  if (gauge.until !== now || last === undefined || last.drained !== null) return state
  const shot = { ...last, drained: drainedSince / last.volume }
  return { ...state, shots: [...state.shots.slice(0, -1), shot], usual: withShare(state.usual, shot, gauge.step) }
}

/** The mean of five minutes, five readings by the minute; else of the newest five that came since the last shot has risen. */
function beforeShot(probe: ProbeWatch, now: number, risen: number, zone: RememberedZone): Before | null {
  const mean = meanSince(probe, now - 300)
  if (mean !== null) return mean
  const time = probe.times[probe.times.length - 1]
  // Of an older reading nobody knows what the shot before this one made of it.
  if (time === undefined || now - time > zone.maxAge || time < risen) return null
  return meanSince(probe, Math.max(risen, time - 300))
}

function withJudged(state: ZoneWatchState, now: number, zone: RememberedZone): ZoneWatchState {
  const { valve, probes } = state
  const given = valve.shot as GivenShot
  const trusted = probes.map((probe) => canJudge(probe, now, zone))
  const outcome = judged(given, valve, probes, trusted, now, state.light, useOf(state.shots, now, zone), zone)
  const quiet: ValveWatch = { ...valve, shot: null, quietFrom: now }
  if (outcome === null) return { ...state, valve: quiet }
  const { shot } = outcome
  const stepped = outcome.probes.map((probe, i) => stepInShot({ ...probe, low: null }, given, shot, i, now, zone))
  // A probe that jumped meanwhile says nothing of the shot.
  const jumped = stepped.map(({ step }) => step !== null && step.time >= given.start)
  const told = { ...shot, rises: shot.rises.map((rise, i) => (jumped[i] ? null : rise)) }
  return {
    ...state,
    valve: quiet,
    probes: stepped.map((probe, i) =>
      jumped[i] ? { ...probe, usualRise: probes[i]!.usualRise, rises: probes[i]!.rises } : probe,
    ),
    fulls: withFull(state.fulls, given, valve, probes, trusted, state.usual.drained, now, state.light, zone),
    shots: [...state.shots, told].slice(-SHOTS),
    usual: withMeter(state.usual, told, valve.meter.step),
  }
}

/**
 * A rise that no shot can make, up or down, is a jump that fell into its time; at all probes at once it is water. Sizes chosen on rehearsals, as
 * that of a step.
 */
function stepInShot(
  probe: ProbeWatch,
  given: GivenShot,
  shot: ShotEvidence,
  i: number,
  now: number,
  zone: RememberedZone,
): ProbeWatch {
  const before = given.before[i]
  const level = levelOf(probe)
  const third = probe.times[probe.times.length - 3] ?? Number.NEGATIVE_INFINITY
  // Of five readings most must be of after the shot.
  if (!before || level === null || shot.rises[i] == null || third < given.end) return probe
  const change = level - before.level
  const expected = shot.volume / zone.volume
  if (change > -0.02 && change < expected + Math.max(0.025, expected)) return probe
  const all = shot.rises.every((rise) => rise === null || rise > 1.8)
  if (all && change > 0) return { ...probe, climb: { time: now, size: change - expected, lasted: now - given.start } }
  return { ...probe, step: { time: now, before: before.level, after: level } }
}
