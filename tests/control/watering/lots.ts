/** Marsaglia's xorshift of 32 bits: numbers from 0 to 1, the same for the same seed. */
export function lots(seed: number): () => number {
  let x = seed | 1
  return () => {
    x ^= x << 13
    x ^= x >>> 17
    x ^= x << 5
    return (x >>> 0) / 2 ** 32
  }
}
