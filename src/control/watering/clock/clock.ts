import { isMoment } from '../../moment.js'
import { type Hours, sharesEnough } from '../settings/hours.js'
import type { WateringClock } from '../state/state.js'
import { clockAdvance, isRefused } from './clock-advance.js'
import { isCaughtUp, maxSame, paidWith, passRun } from './equal-moments.js'
import { knowsPace, maxStep, STEPS_ALIKE } from './known-pace.js'
import { atNewPace, LONGS, learntFrom, passLonger, passStep } from './rarer-decisions.js'
import { owedAfter, paidBack } from './trembling-clock.js'

/** Longest step that is believed before the pace is known: no zone is decided on less often than hourly. Own judgement. Unit: s. */
const FIRST_STEP = 3600
/** A difference between clock and count that is mended without asking: less than any zone or summer time. Own judgement. Unit: s. */
const MENDED = 1200
/** A moment that cannot be read weighs more than two good ones make up for: where each third one is of that kind, decisions are counted. Own judgement. */
const UNREAD = 3
/** After a day, in which the hours of either had their turn, the clock is believed against the count, if both together leave too few. Own judgement. Unit: s. */
const BELIEVED = 86400

/**
 * The clock after a decision. Time is trusted while the clock runs on at the pace of the decisions. Where it stands still, leaps or
 * cannot be read, each decision counts for the mean time between decisions, so that limits still bind and time still passes. A clock that
 * moves in steps of several decisions is lent that time in between, and pays it back with its next step.
 */
export function tick(clock: WateringClock, now: unknown, sent: number | null, hours: readonly Hours[]): WateringClock {
  return vouch(tickAlone(clock, now, hours), sent)
}

function tickAlone(clock: WateringClock, now: unknown, hours: readonly Hours[]): WateringClock {
  if (!isMoment(now)) return failed(clock, clock.raw, UNREAD)
  if (clock.raw === null) return { ...clock, raw: now, base: now - clock.elapsed }
  const step = now - clock.raw
  if (step === 0) return repeated(clock)
  if (step > 0 && !isTooFar(clock, step)) return ran(clock, now, step, hours)
  const next = { ...failed(clock, now), ...passLonger(clock, step) }
  return next.longs < LONGS ? next : atNewPace(next, now)
}

function isTooFar(clock: WateringClock, step: number): boolean {
  if (!knowsPace(clock)) return step > FIRST_STEP
  if (isCaughtUp(clock, step)) return false
  const decisions = clock.same <= maxSame(clock) ? clock.same + 1 : 1
  return step > maxStep(decisions * clock.pace)
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
  const apart = runs ? Math.abs(clockAdvance(clock)) > MENDED : clock.bad >= 2
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
  return isOwn ? (clock.raw as number) + clock.lent : clock.base + clock.elapsed
}

function ran(clock: WateringClock, now: number, step: number, hours: readonly Hours[]): WateringClock {
  const { lent, same, usual } = passRun(clock, step)
  const { made, owed } = paidBack(clock, step)
  const elapsed = clock.elapsed + believedStep(clock, made)
  const steady = Math.min(100, clock.steady + 1)
  const bad = Math.max(0, clock.bad - 1)
  const apart = now - (clock.base as number) - elapsed + lent
  const mended = steady >= 3 && (Math.abs(apart) <= MENDED || isOverruled(clock, steady, elapsed, apart, hours))
  const { pace, paces, longer, longs } = paceAfter(clock, made, step)
  // Copies of parts in the middle of a literal are slow, and this runs at each decision.
  return {
    raw: now,
    elapsed,
    base: mended ? now - elapsed + lent : clock.base,
    pace,
    paces,
    longer,
    longs,
    steady,
    stalls: 0,
    same,
    usual,
    lent,
    owed,
    uneven: clock.uneven,
    unproven: clock.unproven,
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

/** Whether a clock that has run on for a day is believed against the count, as both together would leave too few hours. */
function isOverruled(clock: WateringClock, steady: number, elapsed: number, apart: number, hours: readonly Hours[]) {
  return steady >= 20 && elapsed - clock.agreed >= BELIEVED && !sharesEnough(hours, apart) && !isRefused(clock)
}

/** How far a step takes trusted time. A clock that gives any number may step by next to nothing: while only decisions are believed, one counts in full. */
function believedStep(clock: WateringClock, step: number): number {
  const on = step - paidWith(clock, step)
  return clockMode(clock) === 'counts' && on < clock.pace / 2 ? clock.pace : on
}

/** The pace after a step of the clock. */
function paceAfter(
  clock: WateringClock,
  made: number,
  step: number,
): Pick<WateringClock, 'pace' | 'paces' | 'longer' | 'longs'> {
  const { longer, longs } = passStep(clock, step)
  if (longs >= LONGS) return learntFrom(longer)
  const { pace, paces } = learntPace(clock, made)
  return { pace, paces, longer, longs }
}

/** The same by a step that belongs to all decisions since the one before. */
function learntPace(clock: WateringClock, step: number): Pick<WateringClock, 'pace' | 'paces'> {
  // A clock that gives any number now and then must not change what is known of the pace.
  if (knowsPace(clock) && clock.steady < 3) return { pace: clock.pace, paces: clock.paces }
  const decisions = clock.same + 1
  const each = step / decisions
  if (clock.paces === 0) return { pace: each, paces: Math.min(7, decisions) }
  // Of the first steps one may be a gap: a step that is far shorter begins the count again, and one that is far longer counts little.
  const isFirst = !knowsPace(clock)
  if (isFirst && each < clock.pace / 3) return { pace: each, paces: Math.min(7, decisions) }
  const taken = isFirst ? Math.min(each, 3 * clock.pace) : each
  const paces = Math.min(32, clock.paces + decisions)
  const share = isFirst ? decisions / paces : Math.max(1 / paces, Math.min(8, decisions) / 32)
  return { pace: clock.pace + (taken - clock.pace) * Math.min(1, share), paces }
}

function repeated(clock: WateringClock): WateringClock {
  const same = Math.min(1e9, clock.same + 1)
  // Before the pace is known nothing can be counted: a message may come twice, a third time is a clock that stands still.
  if (!knowsPace(clock)) {
    const stalls = Math.min(100, clock.stalls + 1)
    return { ...clock, same, stalls, steady: stalls > 2 ? 0 : clock.steady }
  }
  const lent = clock.lent + clock.pace
  if (same <= maxSame(clock) && clock.bad < 10) return { ...clock, same, lent, elapsed: clock.elapsed + clock.pace }
  return { ...counted(clock), same, lent, steady: 0, bad: Math.min(20, clock.bad + 1) }
}

function failed(clock: WateringClock, raw: number | null, weight = 2): WateringClock {
  const { base, elapsed } = clock
  // Gaps that follow each other are power cuts: the clock that ran steadily in between is taken, and only the last gap is in doubt.
  const isGap = raw !== null && clock.raw !== null && raw > clock.raw && clock.steady >= STEPS_ALIKE
  const isBack = raw !== null && base !== null && Math.abs(raw - base - elapsed) <= MENDED
  const taken = isGap && !isBack ? (clock.raw as number) + clock.lent - elapsed : base
  const owed = raw === null || clock.raw === null ? 0 : owedAfter(clock, raw - clock.raw)
  const fresh = { stalls: 0, same: 0, lent: 0, owed, longer: 0, longs: 0, steady: 0, byCount: 0, byClock: 0 }
  // A clock that gives any number teaches no pace: eight decisions without a leap have to follow each other.
  const learnt = knowsPace(clock) ? {} : { pace: 0, paces: 0 }
  return { ...counted(clock), ...fresh, ...learnt, raw, base: taken, bad: Math.min(20, clock.bad + weight) }
}

function counted(clock: WateringClock): WateringClock {
  const credit = knowsPace(clock) ? clock.pace : 0
  return { ...clock, elapsed: clock.elapsed + credit, doubt: clock.doubt + credit }
}

/** Whether the clock may be used as it is, only the count of decisions, or neither. */
export function clockMode(clock: WateringClock): 'runs' | 'counts' | 'settles' {
  if (clock.base === null) return 'settles'
  if (clock.bad >= 10) return knowsPace(clock) ? 'counts' : 'settles'
  return clock.steady >= 3 ? 'runs' : 'settles'
}
