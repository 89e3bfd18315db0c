import { ConvergenceError } from '../quantity/errors.js'

/**
 * Logarithm of the regularised incomplete beta function I(a, b) at x, from the logarithms of x and of 1 - x, so that neither end
 * loses digits. The complete beta function is the sum of the parts on both sides of one x and needs no gamma function.
 */
export function logIncompleteBeta(a: number, b: number): (logX: number, log1mX: number) => number {
  // Up to here the fraction is quick from the left, beyond from the right.
  const turn = (a + 1) / (a + b + 2)
  const left = logLowerPart(a, b, Math.log(turn), Math.log1p(-turn))
  const right = logLowerPart(b, a, Math.log1p(-turn), Math.log(turn))
  const top = Math.max(left, right)
  const logBeta = top + Math.log1p(Math.exp(-Math.abs(left - right)))
  return (logX, log1mX) => {
    if (Math.exp(logX) <= turn) return logLowerPart(a, b, logX, log1mX) - logBeta
    return Math.log1p(-Math.exp(logLowerPart(b, a, log1mX, logX) - logBeta))
  }
}

/** Logarithm of the unregularised integral from 0 to x, by the continued fraction of NIST DLMF 8.17.22 (Lentz's method). */
function logLowerPart(a: number, b: number, logX: number, log1mX: number): number {
  const x = Math.exp(logX)
  let c = 1
  let d = 1 / (1 - ((a + b) * x) / (a + 1))
  let fraction = d
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / (1 + even * d)
    c = 1 + even / c
    fraction *= c * d
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / (1 + odd * d)
    c = 1 + odd / c
    fraction *= c * d
    if (Math.abs(c * d - 1) < 3e-16) return a * logX + b * log1mX - Math.log(a) + Math.log(fraction)
  }
  throw new ConvergenceError('incomplete beta function', 500, Math.abs(c * d - 1), 'an exponent is extreme')
}
