import { grainOf } from './steps-of-counter.js'

/** What is remembered of a counter. */
export interface CounterWatch {
  /** The count that was told last. Unit: L. */
  readonly count: number | null
  /** The count from which it fell back, until it is there again. Unit: L. */
  readonly top: number | null
  /** The count before one that leapt farther than water can: a slip, if it comes back there. Unit: L. */
  readonly slipped: number | null
  /** When it changed last. Unit: s. */
  readonly changed: number | null
  /** Until when it told what came. Unit: s. */
  readonly until: number | null
  /** Since when water of an order is awaited that it did not count yet. Unit: s. */
  readonly awaited: number | null
  /** How late it counts. Unit: s. */
  readonly lag: number
  /** What all that it counted are multiples of; zero before it counted. Unit: L. */
  readonly grain: number
  /** The same where more came at once than can flow: a pulse, or a tip of a bucket; else zero. Unit: L. */
  readonly step: number
}

export const newCounter: CounterWatch = {
  count: null,
  top: null,
  slipped: null,
  changed: null,
  until: null,
  awaited: null,
  lag: 0,
  grain: 0,
  step: 0,
}

/** One that is read or sends more seldom says nothing of when its water came. Chosen. Unit: s. */
export const MAX_LAG = 3600
/** One that counts later than that is none: its water came by another order. An hourly one may be half an hour late besides. Chosen. Unit: s. */
export const MAX_LATE = 7200
/** One that counts sooner than it did is followed over so many orders: what is read each quarter of an hour may be any time younger. Chosen. */
const ORDERS = 32
/** So many times what the valve passes is no water, but another unit or a slip. Chosen. */
const TOO_MUCH = 10

/** What a counter says of the time since it told something last. */
export interface Counted {
  readonly counter: CounterWatch
  /** Unit: L. */
  readonly came: number
  /** By how much the count itself changed: less than that where a slip is taken back. Unit: L. */
  readonly changed: number
  /** The time in which that came; zero where nothing is told. Unit: s. */
  readonly span: number
  /** Whether so much can have flowed. */
  readonly canBe: boolean
  /** Since when it may have come: its last change, if it stood still. Unit: s. */
  readonly since: number
}

/** The water that a counter stands in. */
export interface Stream {
  /** Flow of the valve. Unit: L/h. */
  readonly flow: number
  /** Share of it beyond which what comes at once came in a step. Unit: 1. */
  readonly atOnce: number
  /** Whether standing still says nothing for as long as it is late: drain may end, and then does so in time. */
  readonly waits: boolean
  /** When water of an order last began to run: what is counted then is no sign of being late. Unit: s. */
  readonly flowed: number
}

/** `passed` is the time since the last call. Unit: s. */
export function counted(
  before: CounterWatch,
  told: number | null,
  now: number,
  passed: number,
  { flow, atOnce, waits, flowed }: Stream,
): Counted {
  const { count, lag } = before
  const still = { came: 0, changed: 0, span: 0, canBe: true, since: now - passed }
  if (told === null) return { counter: before, ...still }
  if (count === null) return { counter: { ...before, count: told, until: now }, ...still }
  const silent = Math.max(passed, now - (before.until ?? now))
  const span = Math.min(Math.max(passed, MAX_LAG), silent)
  const bitByBit = (atOnce * flow * silent) / 3600
  const { came, changed, ...stood } = ranOn(count, before, told, bitByBit)
  const next = { ...before, count: told, ...stood }
  // One that is late may be twice as late, and says nothing by standing still.
  if (told === count && waits && silent < Math.min(MAX_LATE, 2 * lag) + passed) return { counter: next, ...still }
  if (!(came > 0)) return { counter: { ...next, until: now }, ...still, span, changed }
  // Before its first change nobody knows since when it stood.
  const since = Math.min(now - span, before.changed ?? Number.NEGATIVE_INFINITY)
  const canBe = came <= (TOO_MUCH * flow * Math.min(now - since, Math.max(passed, MAX_LAG))) / 3600
  const grain = canBe ? grainOf(next.grain, came) : next.grain
  // What may have come bit by bit is no step, and one that was told proves itself by being a multiple still.
  const isStep = next.step > 0 || came > bitByBit
  const heard = { ...next, until: now, changed: now, slipped: canBe ? null : count, grain, step: isStep ? grain : 0 }
  return { counter: heardBy(heard, now - passed, flowed), came, changed, span, canBe, since }
}

/** Whether it is there: one that stands still for an hour tells that nothing came. */
export function isCounting({ until }: CounterWatch, now: number): boolean {
  return until !== null && now - until <= 2 * MAX_LAG
}

/**
 * What was counted since, what that changes, and the count from which it fell back: one that comes back there has counted nothing meanwhile. What a slip
 * that is over had counted is taken back.
 */
function ranOn(last: number, { top, slipped }: CounterWatch, told: number, bitByBit: number) {
  if (slipped !== null && told < last && told >= slipped)
    return { came: told - slipped, changed: told - last, top: null, slipped: null }
  if (told < last) return { came: 0, changed: 0, top: Math.max(last, top ?? last), slipped: null }
  const isThere = top !== null && told >= top
  // One that was set back to an older count counts on from it.
  const leaps = told - last > bitByBit
  const came = told - (isThere && leaps ? top : last)
  return { came, changed: came, top: isThere ? null : top, slipped: null }
}

/** What was awaited is counted, since the call before at the soonest. After two hours it was the water that did not come. */
function heardBy(counter: CounterWatch, from: number, flowed: number): CounterWatch {
  if (counter.awaited === null) return counter
  const late = Math.max(0, from - Math.max(counter.awaited, flowed))
  if (late > MAX_LATE) return { ...counter, awaited: null }
  const lag = late > counter.lag ? late : counter.lag + (late - counter.lag) / ORDERS
  return { ...counter, awaited: null, lag }
}

/** The counter from which the water of an order is awaited. */
export function awaiting(counter: CounterWatch, now: number): CounterWatch {
  return counter.awaited === null ? { ...counter, awaited: now } : counter
}

/** After a leap of the clock: no time from before it counts. */
export function withoutTimes(counter: CounterWatch): CounterWatch {
  return { ...counter, changed: null, until: null, awaited: null }
}
