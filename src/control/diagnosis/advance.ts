import type { Cause, CauseCode, Diagnosis, Suspicion } from './cause/cause.js'
import { ranked } from './rank.js'
import { isDue, judged, SHOTS, type ShotEvidence } from './shots/judge-shot.js'
import type { OfShots } from './state/memo.js'
import { jumpedLately, recentShots } from './state/recent-shots.js'
import type { RememberedZone } from './state/settings.js'
import type { UsualShares, ZoneWatchState } from './state/zone-state.js'
import { gaugeLies, suspectDrain } from './suspect/suspect-drain.js'
import { drainOfLate, stillAgainstGauge } from './suspect/suspect-gauge.js'
import { suspectLeak } from './suspect/suspect-leak.js'
import { suspectProbes } from './suspect/suspect-probe.js'
import { changeOfNight, suspectReadings } from './suspect/suspect-reading.js'
import { suspectRest } from './suspect/suspect-rest.js'
import { suspectTiming } from './suspect/suspect-timing.js'
import { suspectWater } from './suspect/suspect-water.js'
import { fullOrNot } from './suspect/trust.js'
import { notTold } from './suspect/what-is-not-told.js'
import { canJudge } from './watch/can-judge.js'
import { DRAINS, withFull } from './watch/full-levels.js'
import { known, lightOf, type WatchedReading, type WatchZoneInput } from './watch/input.js'
import { useOf, type WaterOfLate } from './watch/leap-by-water.js'
import { withLeap } from './watch/leap-of-pair.js'
import { risenTogether } from './watch/risen-together.js'
import { cameIn, newBalance, withBalance } from './watch/watch-balance.js'
import { ticked } from './watch/watch-clock.js'
import { isBelowRain, withValue } from './watch/watch-feed.js'
import { oftenBeyond, withDrain } from './watch/watch-gauge.js'
import { evidenceOf, linesOf, NIGHTS, newNight, withEvening } from './watch/watch-night.js'
import { isSlow, withPace } from './watch/watch-pace.js'
import { BIN, newPairs, withLevels } from './watch/watch-pairs.js'
import { levelOf, meanSince, type ProbeWatch, withClimb, withFall, withReading, withStep } from './watch/watch-probe.js'
import { newTiming, withTiming } from './watch/watch-timing.js'
import {
  type Before,
  type GivenShot,
  newValve,
  type ValveWatch,
  withCounters,
  withEnd,
  withOrder,
} from './watch/watch-valve.js'

/**
 * Time after a shot until drain has stopped and the night begins to tell: three of the longest time constants of drain in the rehearsals. Unit: s.
 */
const EVENING = 3600

/** The state after a moment, and what it shows. */
export function advanced(
  state: ZoneWatchState,
  input: WatchZoneInput,
  zone: RememberedZone,
): [ZoneWatchState, Diagnosis] {
  const tick = ticked(state.clock, input.now)
  if (tick.now === null) return told({ ...state, clock: tick.clock }, state.clock.last ?? 0, zone)
  const now = tick.now
  const rested = tick.leapt ? afterLeap(state) : state
  const light = lightOf(input)
  const heard = {
    ...rested,
    clock: tick.clock,
    light,
    probes: paced(withReadings(rested, input.readings, now, zone), rested, tick.passed).map((probe) =>
      awaited(probe, now),
    ),
  }
  const watered = withWater(heard, input, now, tick.passed, zone)
  const { balance, timing, valve } = heard
  const came = cameIn(valve, input, now, tick.passed, zone)
  const balanced = {
    ...watered,
    balance: withBalance(balance, came, valve, watered.valve, watered, input, now, tick.passed, zone),
    timing: withTiming(timing, came, watered.probes, input, now, zone),
  }
  const steady = withSteady(balanced, input, now, zone)
  return told(withNight(steady, now, input, zone), now, zone)
}

/** What a state shows without a message. */
export function shown(state: ZoneWatchState, zone: RememberedZone): Diagnosis {
  return told(state, state.clock.last ?? 0, zone)[1]
}

/** One that never sent anything is awaited from now on: its name may be another one in the messages. */
function awaited(probe: ProbeWatch, now: number): ProbeWatch {
  return probe.heard === null && probe.count === 0 ? { ...probe, heard: now } : probe
}

/** Across a leap of the clock nothing can be compared; what is usual stays. */
function afterLeap(state: ZoneWatchState): ZoneWatchState {
  const { metered, drained, hasMeter, hasDrain } = state.valve
  return {
    ...state,
    valve: { ...newValve, metered, drained, hasMeter, hasDrain },
    balance: newBalance,
    timing: newTiming(state.probes.length),
    night: newNight(state.probes.length),
    pairs: newPairs(state.probes.length),
    standing: [],
    probes: state.probes.map((probe) => ({
      ...probe,
      times: [],
      levels: [],
      bad: null,
      heard: null,
      flatSince: null,
      flatCount: 0,
      spikes: [],
      step: null,
      low: null,
      climb: null,
    })),
  }
}

function withReadings(state: ZoneWatchState, readings: unknown, now: number, zone: RememberedZone): ProbeWatch[] {
  const probes = [...state.probes]
  if (!Array.isArray(readings)) return probes
  const quietFrom = quietSince(state.valve)
  const beside = { quietFrom, maxRate: zone.flow / 3600 / zone.volume, water: () => waterOfLate(state, now, zone) }
  for (const reading of readings as readonly (WatchedReading | null)[]) {
    const i = zone.names.indexOf(reading?.probe as string)
    if (i < 0 || reading === null) continue
    const before = probes[i]!
    const after = withReading(before, reading, now, quietFrom, zone)
    if (after.times === before.times) probes[i] = after
    else probes[i] = withClimbs(withStep(after, beside, zone), quietFrom, state.light, zone)
  }
  return risenTogether(probes, now, zone)
}

function paced(probes: readonly ProbeWatch[], { probes: before }: ZoneWatchState, passed: number): ProbeWatch[] {
  return probes.map((probe, i) => withPace(probe, before[i]!, passed))
}

/** Since when no shot moves the probes; not yet while one is under way. Unit: s. */
function quietSince({ shot, open, quietFrom }: ValveWatch): number {
  return shot !== null || open !== null ? Infinity : (quietFrom ?? -Infinity)
}

/** The shots, the one that is under way among them. */
function waterOfLate({ shots, valve }: ZoneWatchState, now: number, zone: RememberedZone): WaterOfLate {
  const { shot, open } = valve
  const given = shot === null ? [] : [{ time: shot.start, volume: (zone.flow * (shot.end - shot.start)) / 3600 }]
  const running = open === null ? [] : [{ time: open.start, volume: (zone.flow * (now - open.start)) / 3600 }]
  return { shots: [...shots, ...given, ...running], use: useOf(shots, now, zone) }
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

function withWater(
  state: ZoneWatchState,
  input: WatchZoneInput,
  now: number,
  passed: number,
  zone: RememberedZone,
): ZoneWatchState {
  const counted = { ...state, valve: withEnd(withCounters(state.valve, input, now, passed, zone), now) }
  const starts = input.open === true && counted.valve.open === null
  const due = isDue(counted.valve, counted.probes, now, zone)
  const early = starts && counted.valve.shot !== null && now - counted.valve.shot.end >= 120
  const judgedSoFar = due || early ? withJudged(counted, now, zone) : counted
  const risen = (counted.valve.lastEnd ?? Number.NEGATIVE_INFINITY) + zone.responseTime / 2
  const before = () => judgedSoFar.probes.map((probe) => beforeShot(probe, now, risen, zone))
  const { valve, begins } = withOrder(judgedSoFar.valve, input, now, before)
  return begins ? withDrained({ ...judgedSoFar, valve }, judgedSoFar.valve) : { ...judgedSoFar, valve }
}

/** What drained until the next shot belongs to the last one. */
function withDrained(state: ZoneWatchState, { hasDrain, drainedSince }: ValveWatch): ZoneWatchState {
  const last = state.shots[state.shots.length - 1]
  if (!hasDrain || last === undefined || last.drained !== null) return state
  const shot = { ...last, drained: drainedSince / last.volume }
  return { ...state, shots: [...state.shots.slice(0, -1), shot], usual: withShare(state.usual, shot) }
}

/** The mean of five minutes, five readings by the minute; else the newest since the last shot has risen. */
function beforeShot(probe: ProbeWatch, now: number, risen: number, zone: RememberedZone): Before | null {
  const mean = meanSince(probe, now - 300)
  if (mean !== null) return mean
  const time = probe.times[probe.times.length - 1]
  // Of an older reading nobody knows what the shot before this one made of it.
  return time === undefined || now - time > zone.maxAge || time < risen
    ? null
    : { level: probe.levels[probe.levels.length - 1]!, time }
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
    usual: withMeter(state.usual, told),
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

/** Learns what the meter shows of a shot that rose as usual; what is far from it is not learnt. Spans chosen on rehearsals. */
function withMeter(usual: UsualShares, shot: ShotEvidence): UsualShares {
  const { metered } = shot
  if (metered === null || !roseWell(shot)) return usual
  if (usual.meteredShots < 4 ? metered < 0.5 || metered > 1.5 : !like(metered, usual.metered, 0.12)) return usual
  const meteredShots = usual.meteredShots + 1
  return {
    ...usual,
    meteredShots,
    metered: usual.metered + Math.max(1 / meteredShots, 0.02) * (metered - usual.metered),
  }
}

/** Learns what drains of a shot that rose as usual, and at which level. */
function withShare(usual: UsualShares, shot: ShotEvidence): UsualShares {
  const { drained, level } = shot
  if (drained === null || level === null || !roseWell(shot)) return usual
  if (usual.drainedShots >= 8 && !like(drained, usual.drained, 0.6)) return usual
  const drainedShots = usual.drainedShots + 1
  const share = Math.max(1 / drainedShots, 0.02)
  return {
    ...usual,
    drainedShots,
    drained: usual.drained + share * (drained - usual.drained),
    drainedAt: usual.drainedAt + share * (level - usual.drainedAt),
  }
}

/** Between a quarter less than usual, five standard deviations of a shot of 0.02 m³/m³, and some more: chosen on rehearsals. */
function roseWell({ rises }: ShotEvidence): boolean {
  const told = rises.filter((rise) => rise !== null)
  return told.length > 0 && told.every((rise) => rise > 0.75 && rise < 1.4)
}

function like(value: number, usual: number, tolerance: number): boolean {
  return Math.abs(value - usual) <= tolerance * usual
}

function withSteady(state: ZoneWatchState, input: WatchZoneInput, now: number, zone: RememberedZone): ZoneWatchState {
  const drainEC = known(input.drainEC) ?? state.drainEC
  return {
    ...state,
    drainEC,
    hasTemperature: known(input.temperature) !== null,
    feed: withValue(state.feed, known(input.feedEC), now, 0.2),
    pairs: withLeap(
      withLevels(state.pairs, state.probes, now, movedApart(state, now, zone)),
      state.probes,
      quietSince(state.valve),
    ),
  }
}

/**
 * Shots of two and a half hours, or of as many steps where calls are further apart than half an hour, move two places against each other by an
 * eighth of their water, and so by twice as much of a difference to its mirror; where more drains than usual, one of them may be full, and the
 * other takes all of it. Chosen on rehearsals.
 */
function movedApart({ shots, valve, usual, pairs, probes }: ZoneWatchState, now: number, zone: RememberedZone): number {
  let [watered, drained] = [0, valve.drainedSince]
  const lasts = 5 * Math.max(BIN, now - (pairs.start ?? now))
  for (let k = shots.length - 1; k >= 0 && now - shots[k]!.time < lasts; k--) {
    watered += shots[k]!.volume
    drained += (shots[k]!.drained ?? 0) * shots[k]!.volume
  }
  const overflows = drained > (usual.drained + DRAINS) * watered
  // Between readings that are far apart a shot that one of them does not get looks like a change of places.
  return ((overflows || probes.some((probe) => isSlow(probe, zone)) ? 0.5 : 0.125) * watered) / zone.volume
}

/** Light below which it is dark: chosen, less than a hundredth of a bright day. Unit: W/m². */
const DARK = 5

/** Whether it is dark; null where nobody knows. */
function isDark(input: WatchZoneInput, now: number, { dark }: RememberedZone): boolean | null {
  const light = lightOf(input)
  if (light !== null) return light < DARK
  if (dark === null) return null
  const hour = (((now / 3600) % 24) + 24) % 24
  return dark.from <= dark.until ? hour >= dark.from && hour < dark.until : hour >= dark.from || hour < dark.until
}

/** The dark without shots: it begins an hour after the last shot, and ends with the next or with the light. */
function withNight(state: ZoneWatchState, now: number, input: WatchZoneInput, zone: RememberedZone): ZoneWatchState {
  const { valve, night } = state
  if (isDark(input, now, zone) === true && valve.open === null && valve.shot === null) {
    if (valve.lastEnd !== null && now - valve.lastEnd < EVENING) return state
    return { ...state, night: withEvening(night, state.probes, known(input.temperature), now) }
  }
  if (night.from === null) return state
  const { odd } = changeOfNight(linesOf(night, state.probes), state.nights, zone.memo)
  const drained = ofShots(state, zone).recent.drained(3)
  // A dead sensor beside nights on which it was alive would be salt that comes and goes.
  const drainEC = state.drainEC === null || isBelowRain(state.drainEC) ? null : state.drainEC
  const ended = evidenceOf(night, state.probes, { drained, drainEC, odd })
  const nights = ended === null ? state.nights : [...state.nights, ended].slice(-NIGHTS)
  return { ...state, night: newNight(state.probes.length), nights }
}

function told(state: ZoneWatchState, now: number, zone: RememberedZone): [ZoneWatchState, Diagnosis] {
  const { recent, water, drain } = ofShots(state, zone)
  const full = fullOrNot(state, now, zone)
  const byFull = full.known ? full.value : null
  const gauge = withDrain(state.gauge, drainOfLate(state, recent, drain), now)
  const beyond = oftenBeyond(gauge, now)
  const overcounts = gaugeLies(state, recent) || beyond !== null
  const leaks = suspectLeak(state, overcounts, now, zone)
  if (!water.has(byFull)) water.set(byFull, suspectWater(recent, state.usual, full))
  const timing = suspectTiming(state.timing)
  const found = [
    ...timing,
    ...(water.get(byFull) as readonly Suspicion[]),
    // Drain of a leak says nothing of the shots.
    ...(leaks.length > 0 && !overcounts ? [] : drain),
    ...stillAgainstGauge(gauge, beyond),
    ...leaks,
    ...suspectProbes(state, recent, now, zone),
    ...suspectReadings(state, now, zone),
    ...suspectRest(state, zone),
  ]
  const suspicions = timing.length > 0 ? found.filter(({ code }) => !BY_ORDERS.includes(code)) : found
  const causes: readonly Cause[] = ranked(suspicions, state.standing, now)
  const standing = causes.map(({ code, since }) => ({ code, since }))
  return [
    { ...state, standing, gauge },
    { causes, ...notTold(state, suspicions, recent, timing.length > 0, now, zone), full },
  ]
}

/** What rests on orders and on what came of them at their times. */
const BY_ORDERS: readonly CauseCode[] = [
  'no-water',
  'partial-water',
  'line-leak',
  'clogged-dripper',
  'channelling',
  'watered-by-hand',
  'drain-gauge-wrong',
  'flow-meter-wrong',
]

/** What the shots say, worked out once for each list of them. */
function ofShots(state: ZoneWatchState, zone: RememberedZone): OfShots {
  const { memo } = zone
  const jumped = jumpedLately(state)
  const old = memo.shots.get(state.shots)
  if (old !== undefined && old.usual === state.usual && jumped.every((one, i) => one === old.jumped[i])) return old
  const recent = recentShots(state, jumped, zone)
  const found = {
    usual: state.usual,
    jumped,
    recent,
    water: new Map(),
    drain: suspectDrain(recent, state.usual, state.standing),
  }
  memo.shots.set(state.shots, found)
  return found
}
