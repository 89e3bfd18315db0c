import { rootBetween } from './root.js'

/** x - ln(1 + x) for x from zero, with all digits where the two are nearly the same. */
export function logExcess(x: number): number {
  if (x > 0.5) return x - Math.log1p(x)
  // ln(1 + x) = 2 artanh(r), whose first term leaves x r.
  const r = x / (2 + x)
  let power = r * r * r
  let rest = 0
  for (let k = 3; k < 30; k += 2) {
    rest += power / k
    power *= r * r
  }
  return x * r - 2 * rest
}

/**
 * The x from zero for which x - ln(1 + x) is `excess`: -1 - W₋₁(-exp(-1 - excess)) of Lambert's function, which cannot be formed
 * that way when the excess is small or large. The bracket is the bound of chatzigeorgiou-2013.
 */
export function inverseLogExcess(excess: number): number {
  const root = Math.sqrt(2 * excess)
  return rootBetween(
    (x) => [logExcess(x) - excess, x / (1 + x)],
    (root + (2 / 3) * excess) * (1 - 1e-12),
    (root + excess) * (1 + 1e-12),
  )
}
