/** Uniform random numbers from 0 to 1 of a linear congruential generator (Numerical Recipes constants). */
export function uniformFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

/** Normal deviates: sums of twelve uniform numbers. */
export function normalFrom(seed: number): () => number {
  const uniform = uniformFrom(seed)
  return () => {
    let sum = -6
    for (let i = 0; i < 12; i++) sum += uniform()
    return sum
  }
}
