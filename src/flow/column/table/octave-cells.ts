/**
 * Cells in which every octave of a number is cut into equal parts. The cell of a number stands in the upper bits of its binary form, so
 * that finding it needs no logarithm.
 */
export interface OctaveCells {
  /** What is read: a number put into `bits` stands in `words`, its sign, exponent and first digits in that at `high`. */
  readonly bits: Float64Array
  readonly words: Uint32Array
  readonly high: number
  /** By how many bits that word is shifted for the number of the cell. */
  readonly shift: number
  readonly cellOf: (value: number) => number
  /** Where a cell begins. */
  readonly startOf: (cell: number) => number
}

/** Binary digits of the upper word that belong to the octave's part. */
const DIGITS = 20

/** Octaves cut into 2 to the power of `halvings` cells. */
export function octaveCells(halvings: number): OctaveCells {
  const bits = new Float64Array(1)
  const words = new Uint32Array(bits.buffer)
  bits[0] = 1
  const high = words[1] === 0 ? 0 : 1
  const shift = DIGITS - halvings
  return {
    bits,
    words,
    high,
    shift,
    cellOf: (value) => {
      bits[0] = value
      return words[high]! >>> shift
    },
    startOf: (cell) => {
      bits[0] = 0
      words[high] = cell << shift
      return bits[0]!
    },
  }
}
