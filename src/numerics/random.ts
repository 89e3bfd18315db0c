/** Random numbers that a seed fixes: the same seed gives the same numbers on every machine. */
export interface RandomNumbers {
  /** Evenly spread over [0, 1) in steps of 2^-53. */
  readonly uniform: () => number
  /** From the standard normal distribution. */
  readonly normal: () => number
}

/**
 * The generator xoshiro128** 1.1 of blackman-2021: whole numbers below
 * 2^32 from a state of four words that are not all zero.
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state
  return () => {
    const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = rotated(d, 11)
    return result
  }
}

/** Random numbers from a whole number below 2^32. */
export function randomNumbers(seed: number): RandomNumbers {
  const words = [1, 2, 3, 4].map((step) => scrambled((seed + Math.imul(step, 0x9e3779b9)) | 0))
  // Four different steps through a one-to-one scramble cannot all give zero.
  const next = xoshiro128(words as [number, number, number, number])
  const uniform = () => ((next() >>> 5) * 67108864 + (next() >>> 6)) / 9007199254740992
  let kept: number | undefined
  // box-1958: two normal numbers from two even ones.
  const normal = () => {
    if (kept !== undefined) {
      const value = kept
      kept = undefined
      return value
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()))
    const angle = 2 * Math.PI * uniform()
    kept = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
  return { uniform, normal }
}

function rotated(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by))
}

/** A one-to-one scramble of 32 bits, so that neighbouring seeds have nothing in common. */
function scrambled(word: number): number {
  let h = word
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return h ^ (h >>> 16)
}
