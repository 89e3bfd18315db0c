import { nelderMead } from '../../numerics/nelder-mead.js'
import { quickDrain, type StoreNumbers } from './quick-drain.js'
import { capacitiesAt, clip, possibleOnsets, waterContentsUnfilled } from './store-onsets.js'
import type { StoreRecord } from './store-record.js'

/** Ends of the logarithm of the lag: 1 s, and just below the day that the model allows. */
export const [MIN_LAG, MAX_LAG] = [0, 11.36]
const BYPASSES = [0, 0.02, 0.05, 0.08, 0.12, 0.16, 0.2, 0.25, 0.3, 0.4, 0.55, 0.75, 0.95]
const LAGS = [2, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 10]
/** First moves of bypass and lag, and how many onsets of each bypass are searched in full. */
const MOVES = [0.02, 0.3]
const PROMISING = 2

/**
 * Searches onset by onset. A store drains by overflow from the step at which it is first full; given that step, the capacity moves only
 * its overflow, in proportion, so that the best capacity is found exactly and two numbers are left. Between onsets the sum of
 * squares has a kink, and a minimum of its own on either side: a search over all three numbers stays behind the wrong one.
 */
export function searchStore(record: StoreRecord): { readonly at: StoreNumbers; readonly value: number } {
  const drainOf = quickDrain(record)
  const squares = (at: StoreNumbers) =>
    drainOf(at).reduce((sum, volume, k) => sum + (volume - record.drained[k]!) ** 2, 0)
  const onsets = possibleOnsets(record, BYPASSES)
  // The best onsets of each bypass: where the lag of the grid is off, a wrong bypass makes up for it, and would win everywhere.
  const starts = BYPASSES.flatMap((bypass) => {
    const waterContents = waterContentsUnfilled(record, bypass)
    const places = onsets.map((onset) => {
      const range = capacitiesAt(record, onset, waterContents)
      const pairs = LAGS.map((lag) => [bypass, lag] as const)
      const value = (pair: (typeof pairs)[0]) => squares([bestCapacity(record, drainOf, range, pair, 1), ...pair])
      return { onset, ...min(pairs.map((at) => ({ at, value: value(at) }))) }
    })
    return places.sort((a, b) => a.value - b.value).slice(0, PROMISING)
  })
  const numbersAt = (onset: number, [bypass, lag]: readonly number[]): StoreNumbers => {
    // Mirrored at zero, so that the simplex does not lie flat on the end of the range.
    const pair = [Math.min(Math.abs(bypass as number), 1), clip(lag as number, MIN_LAG, MAX_LAG)] as const
    const range = capacitiesAt(record, onset, waterContentsUnfilled(record, pair[0]))
    return [bestCapacity(record, drainOf, range, pair, 2), ...pair]
  }
  const best = min(
    starts.map(({ onset, at }) => ({ onset, ...nelderMead((pair) => squares(numbersAt(onset, pair)), at, MOVES) })),
  )
  return { at: numbersAt(best.onset, best.at), value: best.value }
}

/**
 * The capacity of least squares at one onset, by rounds of Newton from the highest: one is exact unless plants dry the store out.
 */
export function bestCapacity(
  { drained }: StoreRecord,
  drainOf: (at: StoreNumbers) => Float64Array,
  [low, high]: readonly [number, number],
  [bypass, lag]: readonly [number, number],
  rounds: number,
): number {
  let capacity = high
  for (let count = 0; count < rounds && high > low; count++) {
    const move = Math.min(0.002, high - low) * (capacity - low > (high - low) / 2 ? -1 : 1)
    const [here, there] = [drainOf([capacity, bypass, lag]), drainOf([capacity + move, bypass, lag])]
    let [along, length] = [0, 0]
    here.forEach((volume, k) => {
      const change = there[k]! - volume
      along += change * (drained[k]! - volume)
      length += change * change
    })
    if (length === 0) return low
    capacity = clip(capacity + (along / length) * move, low, high)
  }
  return capacity
}

function min<T extends { readonly value: number }>(all: readonly T[]): T {
  return all.reduce((a, b) => (b.value < a.value ? b : a))
}
