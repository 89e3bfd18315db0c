import { sumsAboutMeans } from '../../../numerics/sums-about-means.js'
import { maxOf } from '../../../quantity/extremes.js'

/** Water by the order and by the meter, and mean change of the probes, in a quarter of an hour. */
export interface Quarter {
  /** Unit: L. */
  readonly ordered: number
  /** Null without a meter. Unit: L. */
  readonly metered: number | null
  /** Null where no probe can tell. Unit: m³/m³. */
  readonly change: number | null
}

/** Quarters with an order that make a comparison, and how many pairs of quarters. Chosen on rehearsals. */
const ORDERED = 7
const ENOUGH = 8
/** Clocks are wrong by an hour, or half of one: quarters by which series are moved against each other. */
const MIN_MOVED = 2
const MAX_MOVED = 8
/** Correlation of what is moved at least, and of what comes in time at most. Chosen on rehearsals. */
const FITS = 0.6
const NONE = 0.25
/** Least share of the ordered water that the probes show, moved: without water there is nothing to be late. Chosen. Unit: 1. */
const SHOWN = 0.5

/** What the answers to the latest orders show. */
export interface Answers {
  /** By how many quarters probes or meter answer late; null where they do not. */
  readonly moved: number | null
  /** Whether the probes answer in time. */
  readonly inTime: boolean
}

/**
 * Orders that the probes, or the meter, answer an hour too early or too late: their times come from clocks that differ, as where one of them
 * changes to summer time. Then no shot can be judged by them.
 */
export function answersOf(kept: readonly Quarter[], volume: number): Answers {
  const quarters = lately(kept)
  const orders = quarters.map(({ ordered }) => ordered / volume)
  const max = maxOf(orders)
  // A probe that jumps shows more than any shot can.
  const changes = quarters.map(({ change }) => (change === null ? null : Math.max(-max, Math.min(max, change))))
  const levels = answer(orders, changes)
  const meter = answer(
    orders,
    quarters.map(({ metered }) => (metered === null ? null : metered / volume)),
  )
  return { moved: levels.moved ?? meter.moved, inTime: levels.inTime && meter.moved === null }
}

/** From before the last few quarters with an order on: an older answer hides that they come otherwise now. */
function lately(quarters: readonly Quarter[]): readonly Quarter[] {
  let [first, ordered] = [quarters.length, 0]
  while (first > 0 && ordered < ORDERED) if (quarters[--first]!.ordered > 0) ordered++
  return ordered < ORDERED ? [] : quarters.slice(Math.max(0, first - MAX_MOVED))
}

/** By how many quarters a series answers the orders late, if it answers at all. */
function answer(orders: readonly number[], answers: readonly (number | null)[]): Answers {
  const fits: { moved: number; fit: number; shown: number }[] = []
  for (let moved = -MAX_MOVED; moved <= MAX_MOVED; moved++) fits.push({ moved, ...fitOf(orders, answers, moved) })
  const still = maxOf(fits.filter(({ moved }) => Math.abs(moved) < MIN_MOVED).map(({ fit }) => fit))
  const best = fits
    .filter(({ moved }) => Math.abs(moved) >= MIN_MOVED)
    .reduce((one, other) => (other.fit > one.fit ? other : one))
  const isMoved = best.fit > FITS && still < NONE && best.shown > SHOWN
  return { moved: isMoved ? best.moved : null, inTime: still > FITS }
}

/** Correlation of orders with what comes in that quarter and the next, which probes that lag need; and its slope. */
function fitOf(
  orders: readonly number[],
  answers: readonly (number | null)[],
  moved: number,
): { readonly fit: number; readonly shown: number } {
  const pairs = orders.flatMap((order, i) => {
    const [now, next] = [answers[i + moved], answers[i + moved + 1]]
    return now == null || next == null ? [] : [[order, now + next] as const]
  })
  if (pairs.length < ENOUGH) return { fit: 0, shown: 0 }
  const { xx, xy, yy } = sumsAboutMeans(
    pairs.map(([order]) => order),
    pairs.map(([, came]) => came),
  )
  return xx > 0 && yy > 0 ? { fit: xy / Math.sqrt(xx * yy), shown: xy / xx } : { fit: 0, shown: 0 }
}
