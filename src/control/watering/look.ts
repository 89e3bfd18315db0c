import { acknowledged, canAcknowledge } from './acknowledge.js'
import { clockMode, readingMoment, tick } from './clock/clock.js'
import { heardPlants } from './clock/clock-dispute.js'
import { passBalance } from './delivery/balance.js'
import { countedTooMuch } from './delivery/delivery.js'
import { passBehind } from './delivery/fall-behind.js'
import { readFeedback } from './delivery/feedback.js'
import { lateWater, stalled, waterByHand } from './delivery/late-water.js'
import { closeValve } from './delivery/move-valve.js'
import { takeOverride } from './delivery/override.js'
import { afterGap } from './delivery/pace.js'
import { passTally } from './delivery/tally.js'
import { gapBefore, isBack, isHeld, missedWater, passUneven, pausedUntil } from './delivery/unknown-time.js'
import type { Seen } from './findings.js'
import { lookAtProbes } from './probes/look-at-probes.js'
import { type Moment, newestTime, type ProbeView } from './probes/probes.js'
import { type ZoneLevel, zoneLevel } from './probes/zone-level.js'
import { hasRoom } from './refill/full-zone.js'
import { slipped } from './refill/lacking.js'
import { hedged, nearDispute, passRefill, toGiveAgain } from './refill/refill.js'
import { sinceLeap, unbiased } from './refill/set-by-full-zone.js'
import { isInVain, passSpell } from './refill/spell.js'
import type { Limits } from './settings/checked-settings.js'
import { inHours } from './settings/hours.js'
import { addWater, givenInDay, givenInLongDay, passTime, takeWater } from './state/given-water.js'
import type { WateringInput } from './state/input.js'
import type { WateringClock, WateringState, WateringZone } from './state/state.js'

/** No shot is given for less than this share of its rise below the upper limit: most of it would stand above. Own judgement. */
const SHORT_BY = 0.25

/** A leak that brings so many times what plants use tells nothing of what they drank: their use is lost in it. Own judgement, no source. */
const FLOODS = 2

/** A level that moves by more than this beyond what plants can drink between two decisions has leapt. Own judgement. Unit: m³/m³. */
const LEAP = 0.01
/** A calm level moves by no more than this beyond what plants can drink between two decisions: twice the scatter of a good probe, 0.002. Own judgement. Unit: m³/m³. */
const CALM = 0.004

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

/** Takes an input into the state: clock, water, feedback, readings, balance, people. */
export function look(limits: Limits, before: WateringState, input: Partial<WateringInput>): Looked {
  const refused = input.acknowledge !== undefined && !canAcknowledge(input.acknowledge)
  const state = input.acknowledge === undefined || refused ? before : acknowledged(before, input.acknowledge, limits)
  const ran = passed(limits, state, input)
  const { clock: ticked, valve, counters: fed } = ran
  const lasted = ticked.elapsed - state.clock.elapsed
  const moment: Moment = { now: readingMoment(ticked), elapsed: ticked.elapsed, closed: valve.closed }
  const { probes, views, unknown, shown } = lookAtProbes(limits, ran, input.readings, moment)
  // Taken back once: as soon as the probes have shown it.
  const counters = shown === null ? fed : { ...fed, shown: Math.max(shown, fed.shown ?? shown) }
  const surplus = shown === null || fed.shown !== null ? 0 : countedTooMuch(counters, valve.counted)
  const known = takeWater(ran.water, surplus, valve.closed)
  const late = lateWater(fed, { ...valve, counted: valve.counted - surplus }, givenInDay(known), limits)
  const measured = zoneLevel(unbiased(views, state.fill, ticked.elapsed), state.fill.apart, state.zone.disputed, limits)
  const told =
    valve.opened === null && ticked.elapsed >= valve.closed + limits.lag ? (measured.level ?? measured.mean) : null
  const fell = fellSince(state.zone.told, told, lasted, LEAP, limits)
  // Where nobody tells nothing fell; a level that scatters may fall by chance as plants drink.
  const isTold = state.zone.told !== null && told !== null
  const calm = isTold ? fellSince(state.zone.told, told, lasted, CALM, limits) : 0
  const clock = heardPlants(ticked, calm, limits)
  const isDay = clock.base !== null && inHours(limits.hours, clock.base + clock.elapsed + limits.ahead, 0, 0)
  const usual = isDay ? lasted * limits.use : 0
  const balance = passBalance(
    ran.zone,
    usual,
    {
      level: measured.level ?? measured.mean,
      drains: fed.drainedSince > 0.2 * limits.shot,
      leaks: late.ran > FLOODS * limits.use * lasted,
    },
    limits,
  )
  const zone = believed(measured, fed.delivery.partial ? 'flow-too-small' : balance.verdict)
  const order = takeOverride(state.override, input.override, input.now, clock.elapsed)
  const hand = waterByHand(input.byHand, limits)
  const water = addWater(known, late.volume + (hand ?? 0))
  const came = late.ran + (hand ?? 0) - surplus - (fed.drainedSince - state.counters.drainedSince)
  const next: WateringState = {
    made: state.made,
    clock,
    valve: { ...valve, counted: late.counted },
    water,
    spare: water,
    tally: passTally(state.tally, lasted, ticked, fell === null ? null : { fell, usual }, limits),
    probes,
    zone: {
      ...wanted(limits, state, zone, balance, usual),
      given: balance.given + late.ran + (hand ?? 0),
      told,
      behind: passBehind(ran, zone, state.zone.behind, lasted, limits),
    },
    fill: isLeap(state.clock, clock)
      ? sinceLeap(ran.fill, clock.elapsed)
      : { ...ran.fill, net: ran.fill.net + came, due: ran.fill.due + usual },
    counters,
    override: order.override,
  }
  return {
    state: passRefill(next, views, zone, limits),
    views,
    zone,
    ended: state.valve.opened !== null && valve.opened === null,
    held: isHeld(state, ran.clock, limits),
    unknown,
    byHandRefused: hand === null,
    overrideRefused: order.refused,
    overrideCloses: order.closes,
    before: givenInLongDay(passTime(state.water, ticked.elapsed)),
    acknowledgeRefused: refused,
  }
}

/** The state after the time since the decision before: clock, meters, and the valve, which may have closed by itself. */
function passed(limits: Limits, state: WateringState, input: Partial<WateringInput>): WateringState {
  const ticked = tick(state.clock, input.now, newestTime(input.readings), limits.hours)
  const clock = { ...ticked, ...passUneven(state, ticked, limits) }
  const missed = missedWater(state, clock, limits)
  const { valve, again } = stalled(state.valve, clock, limits)
  const back = isBack(state.clock, clock)
  const gap = back ? 0 : gapBefore(state, clock)
  const counters = readFeedback(
    state.counters,
    input,
    state.valve,
    { from: state.clock.elapsed, to: clock.elapsed, gap },
    limits,
  )
  const more = again * limits.litresPerSecond
  const ring = passTime(state.water, clock.elapsed)
  const water = addWater(afterGap(ring, { gap, missed, back }, clock, limits), more)
  const ran = { ...state, clock, valve: { ...valve, counted: valve.counted + more }, water, spare: water, counters }
  // However seldom decisions come, what follows an opening is judged from its end.
  const isOver = limits.closesByItself && valve.opened !== null && clock.elapsed - valve.opened >= valve.duration
  const closed = isOver && clockMode(clock) === 'runs' ? closeValve(limits, ran) : ran
  if (missed === 0 || closed.valve.opened !== null) return closed
  return { ...closed, valve: { ...closed.valve, closed: pausedUntil(closed.valve, clock, limits) } }
}

/** Whether the zone asks for water by its level and by what came of the shots before. */
function wanted(
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

/** Whether the clock was set by more than an hour: the state is an old one, or nothing was decided for so long. */
function isLeap(before: WateringClock, now: WateringClock): boolean {
  return before.base !== null && now.base !== null && Math.abs(now.base - before.base) > 3600
}

/** What plants drank since the decision before; null where nothing tells or the level moved by so much more than they can drink. Unit: L. */
function fellSince(
  before: number | null,
  now: number | null,
  lasted: number,
  scatter: number,
  { use, substrate }: Limits,
): number | null {
  if (before === null || now === null) return null
  const fell = (before - now) * substrate
  return Math.abs(fell) > 4 * use * lasted + scatter * substrate ? null : fell
}

/** A level that the balance or the meter speaks against is not believed. */
function believed(zone: ZoneLevel, verdict: WateringState['zone']['verdict'] | 'flow-too-small'): ZoneLevel {
  if (verdict === 'plausible') return zone
  const wet = verdict === 'use-too-large' ? zone.wet : null
  return { ...zone, level: null, doubt: zone.doubt ?? verdict, wet, dry: null }
}
