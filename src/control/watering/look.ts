import { acknowledged, canAcknowledge } from './acknowledge.js'
import { askedFor } from './asked-for.js'
import { readingMoment } from './clock/clock.js'
import { heardPlants, heardSilence } from './clock/clock-dispute.js'
import { passBalance, withoutSilence } from './delivery/balance.js'
import { passBehind } from './delivery/fall-behind.js'
import { takeOverride } from './delivery/override.js'
import { passTally } from './delivery/tally.js'
import { isHeld } from './delivery/unknown-time.js'
import type { Seen } from './findings.js'
import { levelTold } from './level-told.js'
import { lookAtProbes } from './probes/look-at-probes.js'
import type { ProbeView } from './probes/probes.js'
import { fellInSilence } from './probes/silence.js'
import type { ZoneLevel } from './probes/zone-level.js'
import { owed } from './refill/owed.js'
import { passRefill } from './refill/refill.js'
import { sinceLeap } from './refill/set-by-full-zone.js'
import type { Limits } from './settings/checked-settings.js'
import { inHours } from './settings/hours.js'
import { givenInLongDay, passTime } from './state/given-water.js'
import type { WateringInput } from './state/input.js'
import type { WateringClock, WateringFill, WateringState } from './state/state.js'
import { timePassed } from './time-passed.js'
import { type WaterCame, waterCame } from './water-came.js'

/** A leak that brings so many times what plants use tells nothing of what they drank: their use is lost in it. Own judgement, no source. */
const FLOODS = 2

/** What is known once an input was taken in. */
export interface Looked extends Seen {
  readonly state: WateringState
  readonly views: readonly ProbeView[]
  readonly zone: ZoneLevel
  /** Whether the valve closed by itself since the decision before. */
  readonly ended: boolean
  /** Whether decisions may be missing before this one, so that it opens nothing. */
  readonly held: boolean
  /** Whether an order that could not be taken keeps the valve closed. */
  readonly overrideCloses: boolean
  /** Water that was counted before this decision. Unit: L. */
  readonly before: number
}

/** Takes an input into the state, one after the other: people, time, readings, water, balance, and what they ask for. */
export function look(limits: Limits, before: WateringState, input: Partial<WateringInput>): Looked {
  const refused = input.acknowledge !== undefined && !canAcknowledge(input.acknowledge)
  const state = input.acknowledge === undefined || refused ? before : acknowledged(before, input.acknowledge, limits)
  const ran = timePassed(limits, state, input)
  const { elapsed } = ran.clock
  const lasted = elapsed - state.clock.elapsed
  const moment = { now: readingMoment(ran.clock), elapsed, closed: ran.valve.closed }
  const { probes, views, unknown, shown } = lookAtProbes(limits, ran, input.readings, moment)
  const came = waterCame(ran, state.counters, shown, input.byHand, limits)
  const { measured, told, fell, calm } = levelTold(state, ran, views, limits)
  const silence = fellInSilence(state.probes, probes)
  const clock = silence === null ? heardPlants(ran.clock, calm, limits) : heardSilence(ran.clock, silence, limits)
  const usual = usualUse(clock, lasted, limits)
  const drains = ran.counters.drainedSince > 0.2 * limits.shot
  const leaks = came.late > FLOODS * limits.use * lasted
  const known = silence === null ? ran.zone : withoutSilence(ran.zone, told)
  const witness = { level: measured.level ?? measured.mean, drains, leaks, share: ran.fill.usual }
  const balance = passBalance(known, usual, witness, limits)
  const zone = believed(measured, ran.counters.delivery.partial ? 'flow-too-small' : balance.verdict)
  const order = takeOverride(state.override, input.override, input.now, clock.elapsed)
  const next: WateringState = {
    made: state.made,
    clock,
    valve: came.valve,
    water: came.water,
    spare: came.water,
    tally: passTally(state.tally, lasted, ran.clock, fell === null ? null : { fell, usual }, limits),
    probes,
    zone: {
      ...askedFor(limits, state, zone, balance, usual),
      given: balance.given + came.given,
      told,
      behind: passBehind(ran, zone, state.zone.behind, lasted, limits),
    },
    fill: filled(ran.fill, state.clock, clock, came, usual, limits),
    counters: came.counters,
    override: order.override,
  }
  return {
    state: passRefill(next, views, zone, limits),
    views,
    zone,
    ended: state.valve.opened !== null && ran.valve.opened === null,
    held: isHeld(state, ran.clock, limits),
    unknown,
    byHandRefused: came.byHandRefused,
    overrideRefused: order.refused,
    overrideCloses: order.closes,
    before: givenInLongDay(passTime(state.water, elapsed)),
    acknowledgeRefused: refused,
  }
}

/** What plants usually use in so long a time up to now: they use it while water may flow. Unit: L. */
function usualUse(clock: WateringClock, lasted: number, limits: Limits): number {
  const isDay = clock.base !== null && inHours(limits.hours, clock.base + clock.elapsed + limits.ahead, 0, 0)
  return isDay ? lasted * limits.use : 0
}

/** What is known of a full zone, with the water that stayed and drained since and the usual use. */
function filled(
  fill: WateringFill,
  before: WateringClock,
  now: WateringClock,
  came: WaterCame,
  usual: number,
  limits: Limits,
) {
  if (isLeap(before, now)) return sinceLeap(fill, now.elapsed)
  const { given, drained, stayed } = came
  return { ...fill, net: fill.net + stayed, due: fill.due + usual, owed: owed(fill, given, drained, limits) }
}

/** Whether the clock was set by more than an hour: the state is an old one, or nothing was decided for so long. */
function isLeap(before: WateringClock, now: WateringClock): boolean {
  return before.base !== null && now.base !== null && Math.abs(now.base - before.base) > 3600
}

/** A level that the balance or the meter speaks against is not believed. */
function believed(zone: ZoneLevel, verdict: WateringState['zone']['verdict'] | 'flow-too-small'): ZoneLevel {
  if (verdict === 'plausible') return zone
  const wet = verdict === 'use-too-large' ? zone.wet : null
  return { ...zone, level: null, doubt: zone.doubt ?? verdict, wet, dry: null }
}
