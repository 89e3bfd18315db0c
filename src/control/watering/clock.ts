import { isMoment } from '../moment.js'
import { isRefused } from './clock-advance.js'
import { type Hours, sharesEnough } from './hours.js'
import type { WateringClock } from './state.js'

/** Longest step that is believed before the pace is known. Unit: s. */
const FIRST_STEP = 3600
/** A difference between clock and count that is mended without asking. Unit: s. */
const MENDED = 1200
/** After so long the clock is believed against the count, if both together leave too few hours. Unit: s. */
const BELIEVED = 86400

/**
 * The clock after a decision. Time is trusted while the clock runs on at the pace of the decisions. Where it stands still, leaps or
 * cannot be read, each decision counts for the mean time between decisions, so that limits still bind and time still passes.
 */
export function tick(clock: WateringClock, now: unknown, sent: number | null, hours: readonly Hours[]): WateringClock {
  return vouch(tickAlone(clock, now, hours), sent)
}

function tickAlone(clock: WateringClock, now: unknown, hours: readonly Hours[]): WateringClock {
  if (!isMoment(now)) return failed(clock, clock.raw)
  if (clock.raw === null) return { ...clock, raw: now, base: now - clock.elapsed }
  const step = now - clock.raw
  if (step === 0) return repeated(clock)
  const longest = clock.paces < 8 ? FIRST_STEP : Math.max(60, 8 * clock.pace)
  return step < 0 || step > longest ? failed(clock, now) : ran(clock, now, step, hours)
}

/**
 * Where clock and count differ, times that come with readings may tell that the count is right: probes and gateways have clocks of their
 * own. They never speak for a clock that leapt, because readings may be stamped by that very clock.
 */
function vouch(clock: WateringClock, sent: number | null): WateringClock {
  if (sent === null || clock.base === null || !(clock.sent === null || sent > clock.sent)) return clock
  // A time that is far ahead of everything must not stand in the way of all that come later.
  if (sent > Math.max(clock.raw as number, clock.base + clock.elapsed) + 7200) return clock
  const sentAt = clock.elapsed
  const runs = clock.steady >= 3
  const apart = runs ? Math.abs((clock.raw as number) - clock.base - clock.elapsed) > MENDED : clock.bad >= 2
  if (!apart) return { ...clock, sent, sentAt, vouched: 0 }
  const behind = sent - clock.base - clock.elapsed
  if (Math.abs(behind) > MENDED) return { ...clock, sent, sentAt, vouched: Math.max(0, clock.vouched - 1) }
  const vouched = Math.min(10, clock.vouched + 1)
  // Counted time follows the senders, never by more than decisions can be apart.
  const caught = runs || vouched < 3 ? 0 : Math.min(Math.max(0, behind), clock.pace)
  return {
    ...clock,
    elapsed: clock.elapsed + caught,
    sent,
    sentAt: sentAt + caught,
    vouched,
    doubt: vouched >= 3 ? 0 : clock.doubt,
  }
}

/** The moment by which ages of readings are told. */
export function readingMoment(clock: WateringClock): number | null {
  if (clock.base === null) return null
  const isOwn = clock.steady >= 1 && clock.vouched < 3
  return isOwn ? clock.raw : clock.base + clock.elapsed
}

function ran(clock: WateringClock, now: number, step: number, hours: readonly Hours[]): WateringClock {
  // A clock that gives any number now and then must not change what is known of the pace.
  const isPace = clock.paces < 8 || clock.steady >= 3
  // Of the first steps one may be a gap: a step that is far shorter begins the count again, and one that is far longer counts little.
  const isFirst = clock.paces < 8 && clock.paces > 0
  const before = isFirst && step < clock.pace / 3 ? 0 : clock.paces
  const taken = isFirst && before > 0 ? Math.min(step, 3 * clock.pace) : step
  const paces = isPace ? Math.min(32, before + 1) : clock.paces
  const pace = isPace ? (before === 0 ? taken : clock.pace + (taken - clock.pace) / paces) : clock.pace
  const elapsed = clock.elapsed + step
  const steady = Math.min(100, clock.steady + 1)
  const bad = Math.max(0, clock.bad - 1)
  const apart = now - (clock.base as number) - elapsed
  const mended =
    steady >= 3 &&
    (Math.abs(apart) <= MENDED ||
      (steady >= 20 && elapsed - clock.agreed >= BELIEVED && !sharesEnough(hours, apart) && !isRefused(clock)))
  return {
    raw: now,
    elapsed,
    base: mended ? now - elapsed : clock.base,
    pace,
    paces,
    steady,
    stalls: 0,
    bad,
    doubt: mended ? 0 : clock.doubt,
    agreed: mended ? elapsed : clock.agreed,
    sent: clock.sent,
    sentAt: clock.sentAt,
    vouched: mended ? 0 : clock.vouched,
    refused: mended ? null : clock.refused,
    byCount: mended ? 0 : clock.byCount,
    byClock: mended ? 0 : clock.byClock,
  }
}

function repeated(clock: WateringClock): WateringClock {
  const stalls = Math.min(100, clock.stalls + 1)
  // A message may come twice; a third time is a clock that stands still.
  if (stalls <= 2 && clock.bad < 10) return { ...clock, stalls }
  return { ...counted(clock), stalls, steady: 0, bad: Math.min(20, clock.bad + 1) }
}

function failed(clock: WateringClock, raw: number | null): WateringClock {
  const { base, elapsed } = clock
  // Gaps that follow each other are power cuts: the clock that ran steadily in between is taken, and only the last gap is in doubt.
  const isGap = raw !== null && clock.raw !== null && raw > clock.raw && clock.steady >= 50
  const isBack = raw !== null && base !== null && Math.abs(raw - base - elapsed) <= MENDED
  const taken = isGap && !isBack ? (clock.raw as number) - elapsed : base
  const fresh = { stalls: 0, steady: 0, byCount: 0, byClock: 0 }
  return { ...counted(clock), ...fresh, raw, base: taken, bad: Math.min(20, clock.bad + 2) }
}

function counted(clock: WateringClock): WateringClock {
  const credit = clock.paces < 8 ? 0 : clock.pace
  return { ...clock, elapsed: clock.elapsed + credit, doubt: clock.doubt + credit }
}

/** Whether the clock may be used as it is, only the count of decisions, or neither. */
export function clockMode(clock: WateringClock): 'runs' | 'counts' | 'settles' {
  if (clock.base === null) return 'settles'
  if (clock.bad >= 10) return clock.paces < 8 ? 'settles' : 'counts'
  return clock.steady >= 3 ? 'runs' : 'settles'
}
