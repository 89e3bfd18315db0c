import { flowIn } from './flow-in.js'
import { known, type WatchZoneInput } from './input.js'
import { awaiting, type Counted, type CounterWatch, counted, isCounting, newCounter } from './watch-counter.js'
import type { Watched } from './watched.js'

/** What is remembered of orders, meter and drain. */
export interface ValveWatch {
  /** The order under way. Unit: s. */
  readonly open: OpenOrder | null
  /** The shot that was given and not judged yet. */
  readonly shot: GivenShot | null
  /** End of the last shot, and from when on the probes are quiet after it. Unit: s. */
  readonly lastEnd: number | null
  readonly quietFrom: number | null
  readonly meter: CounterWatch
  readonly gauge: CounterWatch
  /** Whether they are there. */
  readonly hasMeter: boolean
  readonly hasDrain: boolean
  /** Drain since the last shot began. Unit: L. */
  readonly drainedSince: number
  /** Flow in closed time as a share of the flow, over about ten minutes, and how long it has been there. Unit: 1, s. */
  readonly closedFlow: number
  readonly closedFlowFor: number
  /** Water in closed time since the last shot. Unit: L. */
  readonly closedVolume: number
  /** Drain an hour and more after the last shot as a share of the flow, over about half an hour. Unit: 1. */
  readonly lateDrain: number
  readonly lateDrainFor: number
}

export interface OpenOrder {
  readonly start: number
  readonly until: number | null
}

export interface GivenShot {
  readonly start: number
  readonly end: number
  /** Level of each probe before. Unit: m³/m³. */
  readonly before: readonly (Before | null)[]
  /** What came through the meter since it began. Unit: L. */
  readonly metered: number
}

export interface Before {
  readonly level: number
  readonly time: number
}

export const newValve: ValveWatch = {
  open: null,
  shot: null,
  lastEnd: null,
  quietFrom: null,
  meter: newCounter,
  gauge: newCounter,
  hasMeter: false,
  hasDrain: false,
  drainedSince: 0,
  closedFlow: 0,
  closedFlowFor: 0,
  closedVolume: 0,
  lateDrain: 0,
  lateDrainFor: 0,
}

/** Time after the end of an order in which a valve may still close: chosen. Unit: s. */
const CLOSING = 90
/** Share of the flow from which on water in closed time counts: chosen, below any valve that weeps in the rehearsals. */
export const LEAK = 0.01
/** Share of the flow from which on drain long after a shot counts: chosen, half of that. */
const LATE = 0.005

/** Whether drain runs on long after a shot, and has done so for half an hour. */
export function drainsLate({ lateDrain, lateDrainFor }: ValveWatch): boolean {
  return lateDrain > LATE && lateDrainFor >= 1800
}

/** What passes and drains in one call is less than so much of the flow. Chosen. Unit: 1. */
const PASSES = 1.2
const DRAINS = 0.25

/** After so long a shot has drained. Chosen. Unit: s. */
const DRAINED = 5400

/** What both counters say. */
export interface Counts {
  readonly meter: Counted
  readonly gauge: Counted
}

export function countsOf(
  valve: ValveWatch,
  input: WatchZoneInput,
  now: number,
  passed: number,
  { flow }: Watched,
): Counts {
  const stream = { flow, flowed: lastFlowed(valve, now - passed) }
  return {
    meter: counted(valve.meter, known(input.metered), now, passed, { ...stream, atOnce: PASSES, waits: true }),
    gauge: counted(valve.gauge, known(input.drained), now, passed, { ...stream, atOnce: DRAINS, waits: false }),
  }
}

/** When water of the order under way, or of one that has just ended, began to run at the latest. */
function lastFlowed({ open, lastEnd }: ValveWatch, from: number): number {
  if (open !== null) return open.start
  return lastEnd !== null && from - lastEnd < CLOSING ? lastEnd : Number.NEGATIVE_INFINITY
}

/** Counts what meter and drain say of the time since the last call. */
export function withCounters(valve: ValveWatch, counts: Counts, now: number, passed: number, zone: Watched) {
  const { counter: meter, changed: came, since } = counts.meter
  const { counter: gauge, changed: left } = counts.gauge
  const next: ValveWatch = {
    ...valve,
    meter,
    gauge,
    hasMeter: isCounting(meter, now),
    hasDrain: isCounting(gauge, now),
  }
  // Clocks of fractions: nothing can be told of less than a millisecond, and its rates would be no numbers.
  if (passed < 1e-3) return next
  const during = ofShot(valve, since, now)
  const shot =
    valve.shot === null ? null : { ...valve.shot, metered: Math.max(0, valve.shot.metered + (during ? came : 0)) }
  return withClosed({ ...next, shot, drainedSince: Math.max(0, valve.drainedSince + left) }, during, counts, now, zone)
}

/** Whether the valve may have been open in a span. */
function ofShot({ open, lastEnd, meter }: ValveWatch, from: number, until: number): boolean {
  if (open !== null && open.start < until) return true
  return lastEnd !== null && lastEnd + CLOSING + meter.lag > from
}

function withClosed(valve: ValveWatch, during: boolean, { meter, gauge }: Counts, now: number, zone: Watched) {
  let next = valve
  const came = during ? null : flowIn(meter, now, zone.flow, LEAK)
  if (came !== null) {
    const { share, span } = came
    const closedFlow = valve.closedFlow + (1 - Math.exp(-span / 600)) * (share - valve.closedFlow)
    const closedFlowFor = share > LEAK ? valve.closedFlowFor + span : Math.max(0, valve.closedFlowFor - 3 * span)
    next = { ...next, closedFlow, closedFlowFor, closedVolume: valve.closedVolume + meter.came }
  }
  const left = flowIn(gauge, now, zone.flow, LATE)
  // A tip of a bucket is of all the time since the one before.
  const from = gauge.came > 0 ? gauge.since : now - gauge.span
  if (left === null || valve.open !== null || from - gauge.counter.lag < (valve.lastEnd ?? -Infinity) + DRAINED)
    return next
  const { share, span } = left
  const lateDrain = valve.lateDrain + (1 - Math.exp(-span / 1800)) * (share - valve.lateDrain)
  const lateDrainFor = share > LATE ? valve.lateDrainFor + span : Math.max(0, valve.lateDrainFor - 3 * span)
  return { ...next, lateDrain, lateDrainFor }
}

/** What an order changes: a shot begins, ends, or goes on. */
export interface OrderChange {
  readonly valve: ValveWatch
  readonly begins: boolean
}

/** Follows the order; `before` is read when a shot begins. */
export function withOrder(
  valve: ValveWatch,
  input: WatchZoneInput,
  now: number,
  before: () => readonly (Before | null)[],
): OrderChange {
  const ended = ending(valve, input, now)
  const after = ended === null ? valve : closed(valve, ended)
  if (input.open !== true || after.open !== null)
    return {
      valve: input.open === true ? { ...after, open: lengthened(after.open as OpenOrder, input, now) } : after,
      begins: false,
    }
  const open: OpenOrder = lengthened({ start: now, until: null }, input, now)
  const merged = after.shot !== null && now - after.shot.end < 120
  const shot: GivenShot = merged
    ? { ...(after.shot as GivenShot), end: now }
    : { start: now, end: now, before: before(), metered: 0 }
  return {
    valve: {
      ...after,
      open,
      shot,
      meter: awaiting(after.meter, now),
      // Drain comes soon after its own shot, or not at all.
      gauge: { ...after.gauge, awaited: now },
      closedVolume: 0,
      drainedSince: merged ? after.drainedSince : 0,
    },
    begins: !merged,
  }
}

function lengthened(open: OpenOrder, input: WatchZoneInput, now: number): OpenOrder {
  const after = known(input.closeAfter)
  return { start: open.start, until: after === null || after < 0 ? open.until : now + after }
}

/** The valve with an order that ended by itself since the last call, which may lie far back, as ended. */
export function withEnd(valve: ValveWatch, now: number): ValveWatch {
  const until = valve.open?.until ?? null
  return until === null || until > now ? valve : closed(valve, until)
}

/** When the order under way ended, or null while it lasts. */
function ending({ open }: ValveWatch, input: WatchZoneInput, now: number): number | null {
  if (open === null) return null
  if (open.until !== null && open.until <= now) return open.until
  return input.open === true ? null : now
}

function closed(valve: ValveWatch, end: number): ValveWatch {
  const { open, shot } = valve
  const start = (open as OpenOrder).start
  const given = shot === null ? null : { ...shot, end: Math.max(shot.end, end) }
  return { ...valve, open: null, shot: given, lastEnd: Math.max(start, end) }
}
