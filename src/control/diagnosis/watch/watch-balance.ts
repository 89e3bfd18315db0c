import { canJudge } from './can-judge.js'
import { type BalanceMark, type FoundWater, waterIn } from './found-water.js'
import { type DrainedShare, gaugeOvercounts } from './gauge-overcounts.js'
import { levelOf } from './level-of-probe.js'
import type { ProbeWatch } from './watch-probe.js'
import { type Counts, LEAK, type ValveWatch } from './watch-valve.js'
import type { Watched } from './watched.js'

/** What the zone holds and has drained, less what came by the valve: it falls as plants drink, and climbs by no shot. */
export interface BalanceWatch {
  /** Water through the valve, by the meter or the order, whichever is more, and drain. Unit: L. */
  readonly came: number
  readonly left: number
  /** The lowest balance of this half hour of quiet, and of the one before. */
  readonly low: BalanceMark | null
  readonly lowBefore: BalanceMark | null
  /** Since when this half hour runs. Unit: s. */
  readonly from: number
  /** When water came through the valve last, ordered or not. Unit: s. */
  readonly flowed: number | null
  /** Water that came by nothing that is known. */
  readonly found: FoundWater | null
}

export const newBalance: BalanceWatch = {
  came: 0,
  left: 0,
  low: null,
  lowBefore: null,
  from: 0,
  flowed: null,
  found: null,
}

/** The lowest balance is kept for half an hour to an hour: people pour in less, and plants drink little meanwhile. Unit: s. */
const HALF_HOUR = 1800
/** An older reading stands beside the drain of another time. Unit: s. */
const FRESH = 300
/** A probe that lags follows a shot for some minutes more. Unit: s. */
const FOLLOWS = 300

/** Water since the last call, by the order and by the meter. Unit: L. */
export interface Came {
  readonly ordered: number
  readonly metered: number
  /** What drained, and whether nobody knows when. */
  readonly left: number
  readonly leftBefore: boolean
}

/** What no water can be counts for none. */
export function cameIn(before: ValveWatch, { meter, gauge }: Counts, now: number, passed: number, zone: Watched): Came {
  return {
    ordered: orderedIn(before, now, passed, zone),
    metered: meter.canBe ? meter.came : 0,
    left: gauge.canBe ? gauge.came : 0,
    leftBefore: gauge.since < now - 1.5 * passed,
  }
}

/** Follows the balance over a call. */
export function withBalance(
  balance: BalanceWatch,
  { ordered, metered, left: drained, leftBefore }: Came,
  after: ValveWatch,
  { probes, usual }: { readonly probes: readonly ProbeWatch[]; readonly usual: DrainedShare },
  now: number,
  passed: number,
  zone: Watched,
): BalanceWatch {
  const through = Math.max(ordered, metered)
  const came = balance.came + through
  // A gauge that counts more than comes says nothing.
  const ran = gaugeOvercounts(usual, probes) ? 0 : drained
  const left = balance.left + ran
  const flowed = through > (LEAK * zone.flow * passed) / 3600 ? now : balance.flowed
  // What a gauge counts after it stood still may have drained before the lowest balance.
  const { low, lowBefore } = leftBefore ? withLeft(balance, ran, zone) : balance
  const next = { ...balance, came, left, flowed, low, lowBefore }
  const levels = probes.map((probe) => freshLevel(probe, now, zone))
  const told = levels.filter((level) => level !== null)
  if (told.length === 0) return next
  const level = told.reduce((sum, one) => sum + one / told.length, 0)
  const mark: BalanceMark = { time: now, balance: level + (left - came) / zone.volume, levels, came, left }
  const base = min(next.low, next.lowBefore)
  if (base !== null && !isAlike(base, mark)) return { ...next, low: null, lowBefore: null }
  const found = base === null ? null : waterIn(base, mark, probes, zone)
  if (found !== null) return { ...next, low: mark, lowBefore: null, from: now, found }
  return isQuiet(after, next, probes, levels, now, zone) ? withLow(next, mark) : next
}

function withLeft({ low, lowBefore }: BalanceWatch, ran: number, { volume }: Watched) {
  const moved = (mark: BalanceMark | null) =>
    mark === null ? null : { ...mark, balance: mark.balance + ran / volume, left: mark.left + ran }
  return { low: moved(low), lowBefore: moved(lowBefore) }
}

function orderedIn({ open }: ValveWatch, now: number, passed: number, { flow }: Watched): number {
  if (open === null) return 0
  const from = Math.max(now - passed, open.start)
  return (flow * Math.max(0, Math.min(now, open.until ?? now) - from)) / 3600
}

function freshLevel(probe: ProbeWatch, now: number, zone: Watched): number | null {
  const { times } = probe
  const isFresh = times.length >= 5 && now - times[times.length - 1]! <= Math.min(FRESH, zone.maxAge)
  return isFresh && canJudge(probe, now, zone) ? levelOf(probe) : null
}

/** Whether the same probes were asked. */
function isAlike(one: BalanceMark, other: BalanceMark): boolean {
  return one.levels.every((level, i) => (level === null) === (other.levels[i] === null))
}

function isQuiet(
  { shot, open, quietFrom }: ValveWatch,
  { flowed }: BalanceWatch,
  probes: readonly ProbeWatch[],
  levels: readonly (number | null)[],
  now: number,
  zone: Watched,
): boolean {
  if (shot !== null || open !== null || (flowed !== null && now - flowed < zone.responseTime + FOLLOWS)) return false
  const from = (quietFrom ?? Number.NEGATIVE_INFINITY) + FOLLOWS
  return probes.every(({ times }, i) => levels[i] === null || times[times.length - 5]! >= from)
}

function withLow(balance: BalanceWatch, mark: BalanceMark): BalanceWatch {
  const { low, from } = balance
  if (low === null || mark.time - from >= HALF_HOUR) return { ...balance, low: mark, lowBefore: low, from: mark.time }
  return mark.balance < low.balance ? { ...balance, low: mark } : balance
}

function min(one: BalanceMark | null, other: BalanceMark | null): BalanceMark | null {
  if (one === null || other === null) return one ?? other
  return other.balance < one.balance ? other : one
}
