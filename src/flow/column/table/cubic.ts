/** Moves of a search within a cell, and the length in cells of the last: the next would be its square. */
const MAX_MOVES = 60
const CLOSE = 1e-8

/** The same of a search that cubes its misses. */
const QUICK_MOVES = 3
const QUITE_CLOSE = 0.01

/** Writes down the cubic over one cell of length 1 from its values and slopes at both ends. */
export function hermite(
  into: Float64Array,
  at: number,
  left: number,
  right: number,
  leftSlope: number,
  rightSlope: number,
): void {
  const rise = right - left
  into[at] = left
  into[at + 1] = leftSlope
  into[at + 2] = 3 * rise - 2 * leftSlope - rightSlope
  into[at + 3] = leftSlope + rightSlope - 2 * rise
}

/** A cubic at a place from 0 to 1 in its cell. */
export function cubicAt(cubics: Float64Array, c: number, x: number): number {
  return cubics[c]! + x * (cubics[c + 1]! + x * (cubics[c + 2]! + x * cubics[c + 3]!))
}

/** Its slope there. */
export function cubicSlopeAt(cubics: Float64Array, c: number, x: number): number {
  return cubics[c + 1]! + x * (2 * cubics[c + 2]! + x * 3 * cubics[c + 3]!)
}

/** Its integral from the left end to there. */
export function cubicIntegral(cubics: Float64Array, c: number, x: number): number {
  return x * (cubics[c]! + x * (cubics[c + 1]! / 2 + x * (cubics[c + 2]! / 3 + (x * cubics[c + 3]!) / 4)))
}

/**
 * Puts down where in its cell a cubic that falls has a value: Newton's method kept between two ends that close in. Takes and fills lists,
 * because numbers on their own would be boxed.
 */
export function placeIn(cubics: Float64Array, c: number, values: Float64Array, into: Float64Array, i: number): void {
  const value = values[i]!
  let low = 0
  let high = 1
  const top = cubics[c]!
  const bottom = cubicAt(cubics, c, 1)
  let x = top > bottom ? Math.min(Math.max((top - value) / (top - bottom), 0), 1) : 0
  for (let move = 0; move < MAX_MOVES; move++) {
    const over = cubicAt(cubics, c, x) - value
    if (over > 0) low = x
    else high = x
    const slope = cubicSlopeAt(cubics, c, x)
    const newton = slope < 0 ? x - over / slope : -1
    const next = newton >= low && newton <= high ? newton : (low + high) / 2
    const close = Math.abs(next - x) < CLOSE
    x = next
    if (close) break
  }
  into[i] = x
}

/** The same by Halley's method from the chord, in a fraction of the time; tells whether it came there, and puts down nothing where it did not. */
export function placeAtOnce(
  cubics: Float64Array,
  c: number,
  values: Float64Array,
  into: Float64Array,
  i: number,
): boolean {
  const value = values[i]!
  const first = cubics[c + 1]!
  const second = cubics[c + 2]!
  const third = cubics[c + 3]!
  let x = (value - cubics[c]!) / (first + second + third)
  for (let k = 0; k < QUICK_MOVES && x >= 0 && x <= 1; k++) {
    const slope = first + x * (2 * second + x * 3 * third)
    const newton = (cubics[c]! - value + x * (first + x * (second + x * third))) / slope
    const move = newton / (1 - (newton * (second + 3 * third * x)) / slope)
    x -= move
    if (Math.abs(move) < QUITE_CLOSE && slope < 0) {
      into[i] = x
      return true
    }
  }
  return false
}
