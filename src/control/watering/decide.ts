import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { acknowledged, canAcknowledge } from './acknowledge.js'
import { passBalance } from './balance.js'
import type { Limits } from './checked-settings.js'
import { clockMode, gapBefore, readingMoment, tick } from './clock.js'
import { heardPlants } from './clock-dispute.js'
import type { WateringDecision } from './decision.js'
import { countedTooMuch, countedVolume, judgeDelivery, runFor } from './delivery.js'
import { judgeDrain, judgeFlow, judgeShare, readFeedback } from './feedback.js'
import type { WateringReason } from './finding.js'
import { findingsOf, type Seen } from './findings.js'
import { judgePassing, sinceLeap, unbiased } from './full-zone.js'
import { addWater, givenInDay, givenInLongDay, passTime, takeWater } from './given-water.js'
import { inHours } from './hours.js'
import type { WateringInput } from './input.js'
import { forbidden, mayOpen, mustClose } from './opening.js'
import { takeOverride } from './override.js'
import { afterGap } from './pace.js'
import { type Moment, newestTime, type ProbeView, takeReading, viewProbe } from './probes.js'
import { passRefill, toGiveAgain } from './refill.js'
import { isSound, salvaged } from './restore-state.js'
import { beforeShot, judgeRise, shownBy, watchFall } from './rises.js'
import { isInVain, passSpell } from './spell.js'
import { startState } from './start.js'
import type { WateringFill, WateringProbe, WateringState, WateringValve } from './state.js'
import { addToTally, passTally } from './tally.js'
import { type ZoneLevel, zoneLevel } from './zone-level.js'

type Step = readonly [WateringState, WateringDecision]

/** One decision: what is known now is taken in, the valve is looked at, and only then is anything opened. */
export function decide(limits: Limits, stored: unknown, sent: WateringInput): Step {
  const isLost = !isSound(stored, limits)
  const input: Partial<WateringInput> = typeof sent === 'object' && sent !== null ? sent : {}
  const seen = look(limits, isLost ? salvaged(stored, startState(limits)) : stored, input)
  if (isLost) return answer(limits, close(limits, seen.state), 'state-lost', seen)
  const against = forbidden(seen.state, input.locked, input.valve, seen.overrideCloses)
  const { opened } = seen.state.valve
  const end = opened === null ? null : (against ?? mustClose(seen.state, seen.zone, limits))
  if (opened !== null && end === null) return answer(limits, seen.state, seen.state.valve.why, seen)
  const closed = opened === null ? seen.state : close(limits, seen.state)
  if (against !== null) return answer(limits, closed, against, seen)
  const choice =
    end === null || end === 'shot-given' ? mayOpen(closed, seen.zone, limits) : { open: false, reason: end }
  // A refill looks whether its last shot drained before it gives the next, however seldom decisions come.
  if (choice.open && !(choice.reason === 'refill' && opened !== null))
    return answer(limits, open(limits, closed, seen, choice.reason as WateringValve['why']), choice.reason, seen)
  return answer(limits, closed, end ?? choice.reason, seen)
}

interface Looked extends Seen {
  readonly state: WateringState
  readonly views: readonly ProbeView[]
  readonly zone: ZoneLevel
  /** Whether an order that could not be taken keeps the valve closed. */
  readonly overrideCloses: boolean
  /** Water that was counted before this decision. Unit: L. */
  readonly before: number
}

/** Takes an input into the state: clock, water, feedback, readings, balance, people. */
function look(limits: Limits, before: WateringState, input: Partial<WateringInput>): Looked {
  const refused = input.acknowledge !== undefined && !canAcknowledge(input.acknowledge)
  const state = input.acknowledge === undefined || refused ? before : acknowledged(before, input.acknowledge)
  const ticked = tick(state.clock, input.now, newestTime(input.readings), limits.hours)
  const span = { from: state.clock.elapsed, to: ticked.elapsed }
  const { valve, again } = stalled(state.valve, ticked)
  const fed = readFeedback(state.counters, input, state.valve, span, limits)
  const ring = passTime(state.water, ticked.elapsed)
  const paced = afterGap(ring, gapBefore(state.clock, ticked), ticked.elapsed, limits)
  const passed = addWater(paced, again * limits.litresPerSecond)
  const moment: Moment = { now: readingMoment(ticked), elapsed: ticked.elapsed, closed: state.valve.closed }
  const { probes, views, unknown, shown } = lookAtProbes(limits, state, input.readings, moment)
  // Taken back once: as soon as the probes have shown it.
  const counters = shown === null ? fed : { ...fed, shown: Math.max(shown, fed.shown ?? shown) }
  const surplus = shown === null || fed.shown !== null ? 0 : countedTooMuch(counters, valve.counted)
  const known = takeWater(passed, surplus, valve.closed)
  const late = lateWater(fed, { ...valve, counted: valve.counted - surplus }, givenInDay(known), limits)
  const measured = zoneLevel(unbiased(views, state.fill, ticked.elapsed), limits)
  const told = valve.opened === null && ticked.elapsed >= valve.closed + limits.lag ? measured.level : null
  const clock = heardPlants(ticked, fellSince(state.zone.told, told, span.to - span.from, limits), limits)
  const isDay = clock.base !== null && inHours(limits.hours, clock.base + clock.elapsed + limits.ahead, 0, 0)
  const usual = isDay ? (span.to - span.from) * limits.use : 0
  const balance = passBalance(state.zone, usual, measured.level, limits)
  const zone = believed(measured, fed.delivery.partial ? 'flow-too-small' : balance.verdict)
  const order = takeOverride(state.override, input.override, input.now, clock.elapsed)
  const least = zone.level === null ? 0 : zone.level - toGiveAgain(state.fill, zone, limits) / limits.substrate
  const { best, spell } = passSpell(state.zone, least, usual, limits)
  const isAsked = balance.dry && least < limits.upper && !isInVain(spell, limits)
  const dry = zone.level === null ? false : least <= limits.lower || isAsked
  const lastWet = Math.max(balance.lastWet, zone.wet ?? balance.lastWet)
  const { use, given, level, verdict } = balance
  const hand = waterByHand(input.byHand, limits)
  const water = addWater(known, late.volume + (hand ?? 0))
  const came = late.volume + (hand ?? 0) - surplus - (fed.drainedSince - state.counters.drainedSince)
  const next: WateringState = {
    clock,
    valve: { ...valve, counted: late.counted + again * limits.litresPerSecond },
    water,
    spare: water,
    tally: passTally(state.tally, span.to - span.from, ticked),
    probes,
    zone: { dry, best, spell, lastWet, use, given: given + (hand ?? 0), level, told, verdict },
    fill: isLeap(state.clock, clock)
      ? sinceLeap(state.fill, clock.elapsed)
      : { ...state.fill, net: state.fill.net + came, due: state.fill.due + usual },
    counters,
    override: order.override,
  }
  return {
    state: passRefill(next, views, zone, limits),
    views,
    zone,
    unknown,
    byHandRefused: hand === null,
    overrideRefused: order.refused,
    overrideCloses: order.closes,
    before: givenInLongDay(ring),
    acknowledgeRefused: refused,
  }
}

/** Whether the clock was set by more than an hour: the state is an old one, or nothing was decided for so long. */
function isLeap(before: WateringState['clock'], now: WateringState['clock']): boolean {
  return before.base !== null && now.base !== null && Math.abs(now.base - before.base) > 3600
}

/**
 * An opening in which the same moment comes again: a message that came twice, or a clock that stands still while water runs. Half of what is
 * left may go on and is counted again; the second time it ends.
 */
function stalled(valve: WateringValve, clock: WateringState['clock']): { valve: WateringValve; again: number } {
  if (valve.opened === null || clock.stalls === 0 || clockMode(clock) === 'counts') return { valve, again: 0 }
  const ran = clock.elapsed - valve.opened
  const again = clock.stalls === 1 ? Math.max(0, valve.lasts - ran) / 2 : 0
  return { valve: { ...valve, lasts: ran + again }, again }
}

/**
 * Water that ran after an opening, or without one: it first fills what the opening was short of. What leaked never takes so much of the day that
 * plants which fall dry afterwards get nothing.
 */
function lateWater(
  { ordered, meteredSince, leaked, delivery }: WateringState['counters'],
  { opened, counted }: WateringValve,
  given: number,
  limits: Limits,
): { readonly volume: number; readonly counted: number } {
  if (opened !== null || leaked === 0) return { volume: 0, counted }
  const due = countedVolume(ordered, meteredSince + leaked, delivery)
  const room = Math.max(0, limits.perDay - limits.usual / 2 - given)
  return { volume: Math.min(room, Math.max(0, due - counted)), counted: Math.max(counted, due) }
}

/** Water that somebody says to have given; null where that cannot be: a slip of the pen must not stop the water of a day. Unit: L. */
function waterByHand(volume: unknown, { perDay }: Limits): number | null {
  if (volume === undefined || volume === null) return 0
  return typeof volume === 'number' && volume >= 0 && volume <= perDay ? volume : null
}

/** What plants drank since the decision before; nothing where the level leapt. Unit: L. */
function fellSince(before: number | null, now: number | null, lasted: number, { use, substrate }: Limits): number {
  if (before === null || now === null) return 0
  const fell = (before - now) * substrate
  return Math.abs(fell) > 4 * use * lasted + 0.01 * substrate ? 0 : fell
}

/** A level that the balance or the meter speaks against is not believed. */
function believed(zone: ZoneLevel, verdict: WateringState['zone']['verdict'] | 'flow-too-small'): ZoneLevel {
  if (verdict === 'plausible') return zone
  const wet = verdict === 'use-too-large' ? zone.wet : null
  return { ...zone, level: null, doubt: zone.doubt ?? verdict, wet, dry: null }
}

function lookAtProbes(limits: Limits, { probes, valve, counters }: WateringState, readings: unknown, moment: Moment) {
  const list: readonly WateringInput['readings'][number][] = Array.isArray(readings) ? readings : []
  const next: WateringProbe[] = []
  const views: ProbeView[] = []
  let shown: number | null = null
  const { delivery, meteredSince, leaked, ordered } = counters
  const meter = { isBacked: delivery.agreed >= 4, sawNone: meteredSince + leaked < 0.2 * ordered }
  for (let i = 0; i < limits.probes.length; i++) {
    const { name, offset } = limits.probes[i]!
    let probe = probes[i]!
    for (const reading of list)
      if ((reading?.probe ?? '') === name) probe = takeReading(probe, reading, offset, moment, limits)
    const view = viewProbe(probe, offset, moment, limits)
    if (valve.opened === null) {
      const rose = shownBy(probe, view, valve.closed, limits)
      if (rose !== null) shown = Math.max(rose, shown ?? rose)
      probe = watchFall(judgeRise(probe, view, valve.closed, meter, limits), view, limits)
    }
    next.push(probe)
    views.push(viewProbe(probe, offset, moment, limits))
  }
  const isKnown = (reading: unknown) =>
    limits.probes.some(({ name }) => name === ((reading as { probe?: unknown } | null)?.probe ?? ''))
  return { probes: next, views, unknown: !list.every(isKnown), shown }
}

function open(limits: Limits, state: WateringState, { views }: Looked, why: WateringValve['why']): WateringState {
  const { clock, valve } = state
  // Of a zone that is filled until it drains, probes and drain show less than came.
  const delivery = valve.why === 'refill' ? state.counters.delivery : judgeDelivery(state.counters, limits)
  const run = runFor(state.counters.delivery, limits)
  const shot = run * limits.litresPerSecond
  return {
    ...state,
    // Counted at once and in full: an order that was sent may have been carried out.
    ...volumes(addWater(state.water, shot)),
    valve: { ...valve, opened: clock.elapsed, lasts: run, counted: shot, why, openings: valve.openings + 1 },
    probes: state.probes.map((probe, i) => beforeShot(probe, views[i]!, limits)),
    zone: { ...state.zone, given: state.zone.given + shot, spell: state.zone.spell + shot },
    fill: { ...filled(judgePassing(state, limits), shot), before: views.map(({ seen }) => seen) },
    counters: {
      ...judgeShare(judgeDrain(state.counters, valve.why === 'dry' ? valve.counted : 0, limits), delivery),
      ordered: 0,
      shown: null,
      meteredSince: 0,
      drainedSince: 0,
      leaked: 0,
    },
  }
}

/** Closes the valve and counts what it gave: as long as it was open, or as much as the meter says if that is more. */
function close(limits: Limits, state: WateringState): WateringState {
  const { clock, valve } = state
  if (valve.opened === null) return state
  const lps = limits.litresPerSecond
  const ran = clock.elapsed - valve.opened
  const isSure = clockMode(clock) === 'runs' && clock.doubt === 0 && lps * valve.lasts >= valve.counted * (1 - 1e-9)
  // After a leap the clock may be right: nothing closed such a valve in the meantime.
  const gap = Math.min(86400, Math.max(0, (clock.raw ?? 0) - (clock.base ?? 0) - clock.elapsed))
  const lasted = limits.closesByItself ? Math.min(ran, valve.lasts) : ran + gap
  // Where the clock failed nobody knows how long it was: the whole shot stands, or the longest opening where nothing closed it.
  const doubtful = limits.closesByItself ? valve.counted : limits.maxRun * lps
  const timed = isSure ? lasted * lps : Math.max(doubtful, lasted * lps)
  const given = countedVolume(timed, state.counters.meteredSince, state.counters.delivery)
  return {
    ...state,
    // Taken back from the quarter in which it was counted, which may be another one by now.
    ...volumes(
      given < valve.counted
        ? takeWater(state.water, valve.counted - given, valve.opened)
        : addWater(state.water, given - valve.counted),
    ),
    valve: { ...valve, opened: null, counted: given, closed: valve.opened + (isSure ? lasted : ran) },
    zone: {
      ...state.zone,
      given: Math.max(0, state.zone.given + given - valve.counted),
      spell: state.zone.spell + given - valve.counted,
    },
    fill: filled(state.fill, given - valve.counted),
    counters: { ...judgeFlow(state.counters, timed), ordered: timed },
  }
}

/** Water that was given, in the balance since the zone was full and in a refill. */
function filled(fill: WateringFill, volume: number): WateringFill {
  const under = fill.under === null ? null : Math.max(0, fill.under + volume)
  return { ...fill, net: fill.net + volume, under }
}

function volumes(water: WateringState['water']): Pick<WateringState, 'water' | 'spare'> {
  return { water, spare: water }
}

function answer(limits: Limits, state: WateringState, reason: WateringReason, seen: Looked): Step {
  const { valve, clock } = state
  const { level, doubt } = seen.zone
  return [
    { ...state, tally: addToTally(state.tally, givenInLongDay(state.water) - seen.before) },
    {
      open: valve.opened !== null,
      closeAfter: (valve.opened === null ? 0 : valve.lasts - (clock.elapsed - valve.opened)) as Duration,
      opening: valve.openings,
      reason,
      waterContent:
        level === null
          ? { known: false, reason: doubt ?? 'reading-missing' }
          : { known: true, value: level as WaterContent },
      givenInDay: givenInDay(state.water) as Volume,
      findings: findingsOf(state, seen, limits.probes),
    },
  ]
}
