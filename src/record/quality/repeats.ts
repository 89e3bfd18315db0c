/** Values that are remembered, at most: some 3 kB of JSON. */
export const MAX_REPEATS = 96

/** What later readings can still repeat, oldest first: values with how many readings they stand for. */
export type Repeats = readonly (readonly [value: number, times: number])[]

/** The same while it is changed in place: the numbers of all pairs in one list. */
export type RepeatNumbers = number[]

/** What readings of one row differ by, and how far back a row counts. */
interface RowLimits {
  readonly tolerance: number
  readonly failAfter: number
}

/**
 * Adds one more reading. An older value between newer ones breaks no row that reaches it, so that it is counted with the newer one beside
 * it; one that is too far from a newer one for any reading to be near both is forgotten, as is what the test does not look back to.
 */
export function addRepeat(repeats: RepeatNumbers, x: number, { tolerance, failAfter }: RowLimits): void {
  const end = repeats.length
  const frozen = end > 0 && repeats[end - 2] === x && repeats[end - 1]! >= failAfter
  if (frozen || Number.isNaN(x)) {
    forget(repeats, frozen ? end - 2 : end)
    return
  }
  // Most readings of a living probe lie beyond twice the tolerance of the one before: nothing else is kept.
  if (end === 2 && Math.abs(repeats[0]! - x) > 2.000001 * tolerance) {
    repeats[0] = x
    repeats[1] = 1
    return
  }
  // What is kept moves to the end of the list, newest last, and then to its beginning.
  let first = end
  let [min, max, times] = [x, x, 1]
  repeats.push(x, 1)
  for (let k = end - 2; k >= 0 && times < failAfter; k -= 2) {
    const value = repeats[k]!
    const more = repeats[k + 1]!
    times += more
    if (value >= min && value <= max) {
      repeats[first + 1]! += more
      continue
    }
    if (value < min) min = value
    else max = value
    // A little more than twice the tolerance, so that rounding forgets nothing that counts.
    if (max - min > 2.000001 * tolerance) break
    first -= 2
    repeats[first] = value
    repeats[first + 1] = more
  }
  forget(repeats, first)
  if (repeats.length > 2 * MAX_REPEATS) thin(repeats)
}

/** Lets go of the oldest numbers. */
function forget(repeats: RepeatNumbers, count: number): void {
  const kept = repeats.length - count
  for (let k = 0; k < kept; k++) repeats[k] = repeats[k + count]!
  while (repeats.length > kept) repeats.pop()
}

/** Joins the two nearest of the values above the newest, or of those below it, in the place and with the value of the older. */
function thin(repeats: RepeatNumbers): void {
  const newest = repeats.length - 2
  let [min, gone, into] = [Infinity, newest, newest]
  let [above, below] = [newest, newest]
  for (let k = newest - 2; k >= 0; k -= 2) {
    const up = repeats[k]! > repeats[newest]!
    const nearer = up ? above : below
    const apart = Math.abs(repeats[k]! - repeats[nearer]!)
    if (nearer < newest && apart < min) [min, gone, into] = [apart, nearer, k]
    if (up) above = k
    else below = k
  }
  repeats[into + 1]! += repeats[gone + 1]!
  repeats.splice(gone, 2)
}

/** The numbers of the pairs of a state. */
export function numbersOf(pairs: Repeats): RepeatNumbers {
  const repeats: RepeatNumbers = []
  for (const [value, times] of pairs) repeats.push(value, times)
  return repeats
}

/** The pairs, for a state. */
export function pairsOf(repeats: RepeatNumbers): Repeats {
  const pairs: [value: number, times: number][] = []
  for (let k = 0; k < repeats.length; k += 2) pairs.push([repeats[k]!, repeats[k + 1]!])
  return pairs
}
