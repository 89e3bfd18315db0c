/**
 * How far the water content falls in each half hour of the day, learnt from dry-downs that have ended; null where none was seen.
 * Unit: m³/m³ in half an hour.
 */
export type ClockFalls = readonly (number | null)[]

/** Half an hour. Unit: s. */
export const BIN = 1800
export const BINS = 48
/** A flat half hour of rounded readings is no slower than this share of the mean of all, unless the hours around it are slower. */
const SLOWEST = 0.5
/** Nor is any slower than this share: it falls a little in every night. */
const MIN = 0.1
/** So many half hours before and after one are around it. */
const AROUND = 6
/** How much the newest dry-down weighs. */
const NEWEST = 0.6
/** Nothing is foreseen beyond two days. Unit: s. */
export const FARTHEST = 172800

export function newFalls(): ClockFalls {
  return Array.from({ length: BINS }, () => null)
}

/** Learns the fall of one more half hour; the newest weighs most, because crops and light change. */
export function learnFall(falls: (number | null)[], time: number, fall: number): void {
  const b = binOf(time)
  const known = falls[b]!
  falls[b] = known === null ? fall : known + NEWEST * (fall - known)
}

/**
 * The fall that is expected in each half hour: where none was seen, that of the one before; no slower than half of the mean, or than the
 * hours around it where they are slower. Each is drawn half-way to its neighbours, because a half hour of rounded readings is known to a step or two only.
 */
export function expectedFalls(falls: ClockFalls): Float64Array {
  const seen = falls.filter((fall) => fall !== null)
  const mean = seen.length > 0 ? Math.max(0, seen.reduce((sum, fall) => sum + fall, 0) / seen.length) : 0
  const filled = new Float64Array(BINS)
  for (let b = 0; b < BINS; b++) {
    let k = b
    for (let j = 0; j < BINS && falls[k] === null; j++) k = (k + BINS - 1) % BINS
    filled[b] = falls[k] ?? 0
  }
  return smoothed(
    filled.map((fall, b) => Math.max(fall, MIN * mean, Math.min(SLOWEST * mean, meanAround(filled, b)))),
  )
}

/** The mean of a half hour and of those up to three hours before and after it. */
function meanAround(falls: Float64Array, b: number): number {
  let sum = 0
  for (let k = -AROUND; k <= AROUND; k++) sum += falls[(b + k + BINS) % BINS]!
  return sum / (2 * AROUND + 1)
}

function smoothed(falls: Float64Array): Float64Array {
  const drawn = new Float64Array(BINS)
  for (let b = 0; b < BINS; b++) drawn[b] = falls[b]! / 2 + (falls[(b + 1) % BINS]! + falls[(b + BINS - 1) % BINS]!) / 4
  return drawn
}

/** The fall that is expected between two times. */
export function fallBetween(expected: Float64Array, from: number, to: number): number {
  let fall = 0
  for (let time = from; time < to; ) {
    const end = Math.min(to, nextBorder(time))
    fall += (expected[binOf(time)]! * (end - time)) / BIN
    time = end
  }
  return fall
}

/** The time from a moment until so much has fallen, or undefined where that is not foreseen. */
export function timeToFall(expected: Float64Array, from: number, fall: number): number | undefined {
  if (fall <= 0) return 0
  let rest = fall
  for (let time = from; time < from + FARTHEST; ) {
    const end = Math.min(nextBorder(time), from + FARTHEST)
    const here = (expected[binOf(time)]! * (end - time)) / BIN
    if (here >= rest) return time - from + ((end - time) * rest) / here
    rest -= here
    time = end
  }
  return undefined
}

/** The first border between two half hours after a time. */
export function nextBorder(time: number): number {
  return (Math.floor(time / BIN) + 1) * BIN
}

function binOf(time: number): number {
  const bin = Math.floor(time / BIN) % BINS
  return bin < 0 ? bin + BINS : bin
}
