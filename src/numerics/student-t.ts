import { logIncompleteBeta } from './incomplete-beta.js'
import { normalTailInverse } from './normal-tail.js'
import { rootBetween } from './root.js'

/** From here on Student's t is taken from the normal distribution and its expansion, which is then good to 1e-12. */
const MANY = 1e5

/** The share of Student's t distribution above t ≥ 0, for repeated use at one number of degrees of freedom. */
export function studentTail(degreesOfFreedom: number): (t: number) => number {
  const logShare = logIncompleteBeta(degreesOfFreedom / 2, 0.5)
  return (t) => {
    const square = (t * t) / degreesOfFreedom
    if (square === 0) return 0.5
    const beyond = -Math.log1p(square)
    return 0.5 * Math.exp(logShare(beyond, Math.log(square) + beyond))
  }
}

/**
 * The t that cuts off both tails and leaves `confidence` between -t and t. Degrees of freedom need not be whole and may be infinite.
 */
export function studentTwoSided(confidence: number, degreesOfFreedom: number): number {
  const tail = (1 - confidence) / 2
  if (tail >= 0.5) return 0
  const z = normalTailInverse(Math.log(tail))
  if (degreesOfFreedom > MANY) {
    // Abramowitz and Stegun 26.7.5.
    const first = (z ** 3 + z) / 4
    const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96
    return z + (first + second / degreesOfFreedom) / degreesOfFreedom
  }
  const above = studentTail(degreesOfFreedom)
  let high = 2 * z + 1
  while (above(high) > tail) high *= 2
  const density = logDensity(degreesOfFreedom)
  return rootBetween((t) => [above(t) - tail, -Math.exp(density(t))], 0, high)
}

function logDensity(n: number): (t: number) => number {
  // The slope only steers Newton's steps, so the large-n limit of the constant is good enough for all n.
  const constant = -0.5 * Math.log(2 * Math.PI) - 0.25 / n
  return (t) => constant - ((n + 1) / 2) * Math.log1p((t * t) / n)
}
