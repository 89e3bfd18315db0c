import { rootBetween } from '../numerics/root.js'
import { type Bounded, type ExponentialColumn, steadyConductivity, steadyRounding } from './exponential-profile.js'

/** Later than about a hundredth of the square of the height, far fewer roots leave nothing of the digits to be wrong. */
export const MAX_ROOTS = 60

/**
 * Relative conductivity by the series of Srivastava and Yeh (1991), with a bound of what the roots left out and rounding can
 * amount to. Made for late times; at early ones the bound says that too few roots were taken.
 */
export function conductivityBySeries(column: ExponentialColumn, height: number, time: number): Bounded {
  const { height: top, bottom, before, since } = column
  let sum = 0
  let magnitude = 0
  let left = Infinity
  for (let n = 1; n <= MAX_ROOTS && left > 1e-17 * magnitude; n++) {
    // tan(y) = -2 y / top has one root y in each half period below nπ.
    const y = rootBetween(
      (y) => [y - n * Math.PI + Math.atan2(2 * y, top), 1 + (2 * top) / (top * top + 4 * y * y)],
      (n - 0.5) * Math.PI,
      n * Math.PI,
    )
    const x = y / top
    const sine = (n % 2 ? 1 : -1) / Math.hypot(1, 0.5 / x)
    const weight = Math.exp(-x * x * time) / (1 + top / 2 + 2 * x * x * top)
    sum += sine * Math.sin(x * height) * weight
    magnitude += weight
    left = afterRoot(n, top, time)
  }
  const scale = 4 * Math.abs(since - before) * Math.exp((top - height) / 2 - time / 4)
  return {
    value: steadyConductivity(since, bottom, height) - Math.sign(since - before) * scale * sum,
    error: scale * (left + 1e-14 * magnitude) + steadyRounding(since, bottom, height),
  }
}

/** Bound of all terms after the nth: their roots are above (n - ½)π/top, and the exponents grow faster than a line. */
export function afterRoot(n: number, top: number, time: number): number {
  const next = ((n + 0.5) * Math.PI) / top
  const gap = (2 * (n + 1) * Math.PI * Math.PI) / (top * top)
  return Math.exp(-next * next * time) / (2 * next * next * top * -Math.expm1(-gap * time))
}
