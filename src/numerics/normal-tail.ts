import { rootBetween } from './root.js'

/**
 * Logarithm of the upper tail of the standard normal distribution, ln Q(z) with Q(z) = erfc(z/√2)/2, with all digits however far
 * out: the tail itself underflows beyond z = 38.
 */
export function logNormalTail(z: number): number {
  const x = z / Math.SQRT2
  if (x < -0.8) return Math.log1p(-Math.exp(-x * x) * farErfc(-x) * 0.5)
  if (x < 0.8) return Math.log(0.5 * (1 - erfSeries(x)))
  return -x * x + Math.log(0.5 * farErfc(x))
}

/** The z above zero whose upper tail has this logarithm, which is at most ln ½. */
export function normalTailInverse(logTail: number): number {
  const high = Math.sqrt(-2 * logTail) + 1e-9
  return rootBetween(
    (z) => {
      const value = logNormalTail(z)
      return [value - logTail, -Math.exp(-(z * z) / 2 - value) / Math.sqrt(2 * Math.PI)]
    },
    -1e-9,
    high,
  )
}

/** exp(x²) erfc(x) for x from zero, where erfc(x) alone would underflow. */
export function scaledErfc(x: number): number {
  return x < 0.8 ? Math.exp(x * x) * (1 - erfSeries(x)) : farErfc(x)
}

/** erf(x) for |x| below 1, by the series of positive terms of NIST DLMF 7.6.2. */
function erfSeries(x: number): number {
  let term = x
  let total = x
  for (let k = 1; k < 30; k++) {
    term *= (2 * x * x) / (2 * k + 1)
    total += term
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * total
}

/**
 * exp(x²) erfc(x) for x from 0.8: the trapezium rule on its integral (NIST DLMF 7.7.1), whose error exp(-π²/h²) is below rounding
 * for a step of one half, with the known contribution of the pole that small x bring inside.
 */
function farErfc(x: number): number {
  const h = 0.5
  let total = 0.5 / (x * x)
  for (let k = 1; k <= 13; k++) {
    const t = k * h
    total += Math.exp(-t * t) / (t * t + x * x)
  }
  const pole = x < Math.PI / h ? (2 * Math.exp(x * x)) / -Math.expm1((2 * Math.PI * x) / h) : 0
  return ((2 * h * x) / Math.PI) * total + pole
}
