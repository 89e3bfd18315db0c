import { ConvergenceError } from '../quantity/errors.js'

/** A function with its derivative at one place: `[value, slope]`. */
export type ValueAndSlope = readonly [value: number, slope: number]

/**
 * The root of a function that changes sign between `low` and `high`: Newton's steps, with bisection whenever a step
 * would leave the bracket or shrinks it too little. Bisection alone ends within 1100 halvings of any pair of doubles,
 * so convergence is certain; the bound below only catches a function that does not change sign.
 */
export function rootBetween(f: (x: number) => ValueAndSlope, low: number, high: number): number {
  const [atLow] = f(low)
  if (atLow === 0) return low
  const [atHigh] = f(high)
  if (atHigh === 0) return high
  if (atLow > 0 === atHigh > 0)
    throw new ConvergenceError(
      'root search',
      0,
      Math.min(Math.abs(atLow), Math.abs(atHigh)),
      'the function has the same sign at both ends',
    )
  let [negative, positive] = atLow < 0 ? [low, high] : [high, low]
  let x = (low + high) / 2
  let lastStep = Math.abs(high - low)
  for (let i = 0; i < 1100; i++) {
    const [value, slope] = f(x)
    if (value === 0) return x
    if (value < 0) negative = x
    else positive = x
    const newton = x - value / slope
    const step = Math.abs(newton - x)
    const inside = newton > Math.min(negative, positive) && newton < Math.max(negative, positive)
    const next = inside && step < lastStep / 2 ? newton : (negative + positive) / 2
    lastStep = Math.abs(next - x)
    if (next === x || lastStep <= 2e-16 * Math.abs(next)) return next
    x = next
  }
  throw new ConvergenceError('root search', 1100, lastStep, 'the function is not finite between the ends')
}
