/** Water that passed at an even rate. Unit: s, s, L. */
export interface Passage {
  readonly from: number
  readonly until: number
  readonly volume: number
}

/**
 * The most water in any window of a length. The sum over a moving window is largest where the window begins with a passage or ends
 * with one, so only these places are looked at.
 */
export function worstWindow(passages: readonly Passage[], length: number): number {
  let worst = 0
  for (const { from, until } of passages) {
    worst = Math.max(worst, between(passages, from, from + length), between(passages, until - length, until))
  }
  return worst
}

/** Passages lie in order and do not overlap, so that those outside the window are at both ends of the list. */
function between(passages: readonly Passage[], from: number, until: number): number {
  let low = 0
  let high = passages.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (passages[middle]!.until <= from) low = middle + 1
    else high = middle
  }
  let sum = 0
  for (let i = low; i < passages.length && passages[i]!.from < until; i++) {
    const { from: a, until: b, volume } = passages[i]!
    const share = b > a ? (Math.min(b, until) - Math.max(a, from)) / (b - a) : 1
    sum += volume * share
  }
  return sum
}
