import { choleskyFactor, choleskySolve } from '../../numerics/cholesky.js'
import type { StoreNumbers } from './quick-drain.js'
import { MAX_LAG, MIN_LAG } from './search-store.js'

/**
 * How well a record tells one number: about two thirds of like records come within the error, or it cannot be told, and every
 * value of the range, the other two numbers kept, drains alike to a ten-thousandth of the largest drain of a step.
 */
export type ToldBy =
  | { readonly known: true; readonly standardError: number }
  | {
      readonly known: false
      readonly reason: 'at-its-limit' | 'not-told-by-record'
      readonly range: { readonly min: number; readonly max: number }
    }

/** What counts as the same drain, as a share of the largest of a step: finer than drain is measured. */
const SAME = 1e-4
/** Widths of capacity, bypass and logarithm of the lag over which a number that changes nothing is not told. */
const WIDTHS: StoreNumbers = [0.002, 0.01, 0.02]
/** Moves for the differences. */
const MOVES: StoreNumbers = [1e-4, 6e-4, 0.01]

/** How well capacity, bypass and logarithm of the lag are told at a minimum, from differences there. */
export function toldByRecord(
  at: StoreNumbers,
  drainOf: (at: StoreNumbers) => Float64Array,
  squares: number,
  minCapacity: number,
): ToldBy[] {
  const ends = [
    [minCapacity, 1],
    [0, 1],
    [MIN_LAG, MAX_LAG],
  ] as const
  const ranges = ends.map((end, i) => sameDrain(at, i, end, drainOf))
  const reasons = ranges.map(({ min, max }, i) => {
    if (max - min > WIDTHS[i]!) return 'not-told-by-record'
    const [low, high] = ends[i]!
    const near = MOVES[i]!
    return at[i]! < low + near || at[i]! > high - near ? 'at-its-limit' : undefined
  })
  const free = [0, 1, 2].filter((i) => reasons[i] === undefined)
  const errors = standardErrors(at, free, drainOf, squares)
  return ranges.map((range, i) => {
    const standardError = errors?.[free.indexOf(i)]
    return standardError === undefined
      ? { known: false, reason: reasons[i] ?? 'not-told-by-record', range }
      : { known: true, standardError }
  })
}

/** The range of one number, the others kept, in which the drain stays the same. */
function sameDrain(
  at: StoreNumbers,
  i: number,
  [low, high]: readonly [number, number],
  drainOf: (at: StoreNumbers) => Float64Array,
): { readonly min: number; readonly max: number } {
  const drain = drainOf(at)
  const tolerance = SAME * drain.reduce((a, b) => Math.max(a, b), 0)
  const same = (value: number) => {
    const other = drainOf(moved(at, i, value))
    return other.every((volume, k) => Math.abs(volume - drain[k]!) <= tolerance)
  }
  const edge = (end: number) => {
    if (same(end)) return end
    let [inside, outside] = [at[i]!, end]
    for (let count = 0; count < 30; count++) {
      const middle = (inside + outside) / 2
      if (same(middle)) inside = middle
      else outside = middle
    }
    return inside
  }
  return { min: edge(low), max: edge(high) }
}

/** Standard errors of the numbers that are free, or none where one of them can stand for another. */
function standardErrors(
  at: StoreNumbers,
  free: readonly number[],
  drainOf: (at: StoreNumbers) => Float64Array,
  squares: number,
): number[] | undefined {
  const columns = free.map((i) => {
    const h = MOVES[i]!
    const [after, before] = [1, -1].map((sign) => drainOf(moved(at, i, at[i]! + sign * h)))
    return (after as Float64Array).map((volume, k) => (volume - before![k]!) / (2 * h))
  })
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)
  const factor = choleskyFactor(
    columns.map((a) => columns.map((b) => dot(a, b))),
    1e-9,
  )
  if ('dependent' in factor) return undefined
  const variance = squares / Math.max(drainOf(at).length - free.length, 1)
  return free.map((_, k) => {
    const unit = free.map((_, j) => (j === k ? 1 : 0))
    return Math.sqrt(variance * choleskySolve(factor.lower, unit)[k]!)
  })
}

function moved(at: StoreNumbers, i: number, value: number): StoreNumbers {
  return at.map((other, j) => (j === i ? value : other)) as unknown as StoreNumbers
}
