import { maxOf } from '../../../quantity/extremes.js'
import type { Suspicion } from '../cause/cause.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { canJudge } from '../watch/can-judge.js'
import type { FoundWater } from '../watch/found-water.js'
import { useOf } from '../watch/leap-by-water.js'
import { levelOf } from '../watch/level-of-probe.js'
import { lineOf } from '../watch/night-line.js'
import { isLong } from '../watch/watch-night.js'
import { fallOfHour } from '../watch/watch-pairs.js'
import { drainsLate, LEAK } from '../watch/watch-valve.js'
import type { Watched } from '../watch/watched.js'
import { evidence, suspicion } from './suspicion.js'
import { canTellLevel } from './trust.js'

/** Water that came once is told for so long: chosen, so that the next round of the day sees it. Unit: s. */
const TOLD = 21600

/** Water that nobody ordered: by the meter, the drain, or the levels. A gauge that counts too much says nothing. */
export function suspectLeak(state: ZoneWatchState, overcounts: boolean, now: number, zone: Watched): Suspicion[] {
  const { found } = state.balance
  const isTold = found !== null && now - found.time < TOLD && !overcounts
  const balance = isTold ? byBalance(state, found) : []
  return [
    ...byMeter(state),
    ...(overcounts ? [] : byDrain(state)),
    ...balance,
    ...byClimbs(state, now, zone),
    ...byFullness(state, now, zone),
  ]
}

/** A quarter of the flow is no weeping valve; three minutes are the time of a slow one, fifteen a mean that holds. Chosen on rehearsals. */
function byMeter({ valve }: ZoneWatchState): Suspicion[] {
  const { closedFlow, closedFlowFor, closedVolume } = valve
  const because = [
    evidence('flow-while-closed', closedFlow, 'share of the flow', { usual: 0 }),
    evidence('volume-while-closed', closedVolume, 'L', { usual: 0 }),
  ]
  if (closedFlow > 0.25 && closedFlowFor >= 180)
    return [suspicion('valve-stuck-open', 'danger', 0.95, because, 'shut-main-valve-and-look')]
  if (closedFlow > LEAK && closedFlowFor >= 900)
    return [suspicion('leak-between-shots', 'danger', 0.9, because, 'shut-main-valve-and-look')]
  return []
}

function byDrain({ valve }: ZoneWatchState): Suspicion[] {
  if (!drainsLate(valve)) return []
  const because = [evidence('drain-long-after-shots', valve.lateDrain, 'share of the flow', { usual: 0 })]
  const much = valve.lateDrain > 0.25
  // Where the meter is still, the water came past it.
  const past = valve.hasMeter && valve.closedFlow < LEAK
  const weight = past ? 0.5 : 0.8
  return [
    much
      ? suspicion('valve-stuck-open', 'danger', weight, because, 'shut-main-valve-and-look')
      : suspicion('leak-between-shots', 'danger', weight, because, 'shut-main-valve-and-look'),
    ...(past ? [suspicion('watered-by-hand', 'note', 0.55, because, 'ask-who-watered')] : []),
  ]
}

/** Levels and drain grew by more than came through the valve. */
function byBalance({ valve }: ZoneWatchState, { size, drained, lasted, time }: FoundWater): Suspicion[] {
  const because = [
    evidence('water-beside-the-valve', size, 'm³/m³', { usual: 0, time }),
    evidence('drain-beside-the-valve', drained, 'm³/m³', { time }),
    evidence('time-of-climb', lasted, 's', { time }),
  ]
  return [
    suspicion('watered-by-hand', 'note', valve.hasMeter ? 0.88 : 0.65, because, 'ask-who-watered'),
    ...(valve.hasMeter ? [] : [suspicion('valve-stuck-open', 'danger', 0.6, because, 'shut-main-valve-and-look')]),
  ]
}

/**
 * All probes that can be trusted climbed without a shot: water came. By hand it comes within three quarters of an hour, by a leak in more: chosen.
 */
function byClimbs(state: ZoneWatchState, now: number, zone: Watched): Suspicion[] {
  const { probes, valve } = state
  const trusted = probes.filter((probe) => canJudge(probe, now, zone))
  const climbs = trusted.flatMap(({ climb }) => (climb !== null && now - climb.time < TOLD ? [climb] : []))
  const last = climbs[0]
  if (last === undefined || climbs.length < trusted.length) return []
  if (climbs.some(({ time }) => Math.abs(time - last.time) > 3600)) return []
  const size = climbs.reduce((sum, climb) => sum + climb.size / climbs.length, 0)
  const because = [
    evidence('climb-without-shot', size, 'm³/m³', { usual: 0, time: last.time }),
    evidence('time-of-climb', last.lasted, 's', { time: last.time }),
  ]
  const seen = valve.hasMeter && valve.closedFlow > LEAK
  if (seen) return []
  if (last.lasted < 2700)
    return [
      suspicion('watered-by-hand', 'note', valve.hasMeter ? 0.8 : 0.65, because, 'ask-who-watered'),
      ...(valve.hasMeter ? [] : [suspicion('valve-stuck-open', 'danger', 0.6, because, 'shut-main-valve-and-look')]),
    ]
  return [suspicion('leak-between-shots', 'danger', valve.hasMeter ? 0.5 : 0.75, because, 'shut-main-valve-and-look')]
}

/** The zone is full and does not fall though plants should drink: looked at before anything else. */
function byFullness(state: ZoneWatchState, now: number, zone: Watched): Suspicion[] {
  const { probes, valve, shots } = state
  const told = probes.filter((probe) => canTellLevel(probe, now, zone))
  const full = told.filter((probe) => (levelOf(probe) as number) >= zone.full)
  if (full.length === 0 || full.length < told.length) return []
  const level = maxOf(full.map((probe) => levelOf(probe) as number))
  const since = shots[shots.length - 2]?.time ?? Infinity
  const isSeen = full.every(({ fallTime }) => fallTime !== null && fallTime > since)
  const late = valve.lastEnd !== null && now - valve.lastEnd > 21600
  const falls = full.some((probe) => mayFall(state, probes.indexOf(probe), now, useOf(shots, now, zone)))
  // Shots into a full medium do not show; that nothing falls between them does, once that was seen.
  const vain = isSeen && shots.slice(-2).every((shot) => shot.level !== null && shot.level >= zone.full - 0.003)
  if (!vain && !late) return []
  if (falls) return []
  const because = [evidence('level', level, 'm³/m³', { usual: zone.full, time: now })]
  const meterClears = valve.hasMeter && valve.closedFlow < LEAK
  return [
    suspicion('zone-full', 'caution', 0.7, because, 'weigh-a-container'),
    suspicion('valve-stuck-open', 'danger', meterClears ? 0.5 : 0.75, because, 'shut-main-valve-and-look'),
  ]
}

/** Half of what plants take in the dark in the rehearsals, 0.0007 m³/m³/h, and half of a tenth of what they use in the mean. Chosen. Unit: m³/m³/s, 1. */
const MIN_FALL = 2e-7
const OF_USE = 0.05

/** Half hours without a shot whose means tell a fall. Unit: s. */
const QUIET = 7200
/** In less light plants drink so little that less than an hour of readings cannot tell it: a seventh of a bright noon. Chosen. Unit: W/m². */
const DIM = 100

/**
 * Whether a place may fall as plants drink. A long stretch of the dark tells it best, to two of its errors, then the half hours of two hours
 * without a shot, to one; the readings of late only in the light.
 */
function mayFall({ probes, pairs, night, valve, light }: ZoneWatchState, i: number, now: number, use: number): boolean {
  const probe = probes[i]!
  const min = Math.min(MIN_FALL, OF_USE * use)
  const line = lineOf(night.sums[i]!, probe.noise)
  if (isLong(night) && line.fall !== null) return (line.fall + 2 * line.error) / 3600 > min
  const late = fallOfHour(pairs, i, probe)
  if (late !== null && now - (valve.lastEnd ?? -Infinity) > QUIET) return late.fall + late.error > min
  if (light !== null && light < DIM) return true
  return Math.max(probe.fall, late?.fall ?? 0) > MIN_FALL
}
