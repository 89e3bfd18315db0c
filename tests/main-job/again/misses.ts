import { sorted } from './raw.js'

/** Quantiles of a normal distribution at (i + 1/2)/20, with which a list of misses begins. */
export const NORMAL = [1.96, 1.44, 1.15, 0.935, 0.755, 0.598, 0.454, 0.319, 0.189, 0.0627]

/** The number at rank (n + 1)p; past the ends the line through the first or last three goes on. */
function ranked(list: readonly number[], p: number): number {
  const all = sorted(list)
  const n = all.length
  const rank = (n + 1) * p - 1
  const at = (k: number) => all[k]!
  if (rank < 0) return at(0) + (rank * (at(2) - at(0))) / 2
  if (rank > n - 1) return at(n - 1) + ((rank - n + 1) * (at(n - 1) - at(n - 3))) / 2
  const low = Math.min(n - 2, Math.floor(rank))
  return at(low) + (rank - low) * (at(low + 1) - at(low))
}

/** The last forty misses, and the shares that the bands of 50 and 90 % leave out, which follow their own cover. */
export class Misses {
  #list: number[]
  #left = { half: 0.5, ninety: 0.1 }
  readonly #ends: (share: number) => readonly [number, number]
  constructor(list: readonly number[], twoSided: boolean) {
    this.#list = [...list]
    this.#ends = (left) =>
      twoSided
        ? [ranked(this.#list, left / 2), ranked(this.#list, 1 - left / 2)]
        : [0, Math.max(0, ranked(this.#list, 1 - left))]
  }
  add(miss: number): void {
    const adapted = (left: number, wanted: number) => {
      const [low, high] = this.#ends(left)
      return Math.min(0.95, Math.max(0.002, left + 0.03 * (wanted - (miss < low || miss > high ? 1 : 0))))
    }
    this.#left = { half: adapted(this.#left.half, 0.5), ninety: adapted(this.#left.ninety, 0.1) }
    this.#list = [...this.#list, miss].slice(-40)
  }
  /** Ends of both bands; the wide one holds the narrow one. */
  get bands() {
    const [half, ninety] = [this.#ends(this.#left.half), this.#ends(this.#left.ninety)]
    return { half, ninety: [Math.min(half[0], ninety[0]), Math.max(half[1], ninety[1])] as const }
  }
}
