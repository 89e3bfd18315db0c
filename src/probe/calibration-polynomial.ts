import { type LinearFit, leastSquares } from '../numerics/least-squares.js'
import { InputError } from '../quantity/errors.js'

/** A polynomial fitted in u = (x - centre) / halfWidth, where the columns are far from depending on each other. */
export interface PolynomialFit extends LinearFit {
  readonly centre: number
  readonly halfWidth: number
}

export function fitPolynomial(
  x: readonly number[],
  y: readonly number[],
  weights: readonly number[],
  degree: number,
): PolynomialFit {
  const [low, high] = [x.reduce((a, b) => Math.min(a, b), Infinity), x.reduce((a, b) => Math.max(a, b), -Infinity)]
  const centre = (low + high) / 2
  const halfWidth = (high - low) / 2
  const rows = x.map((value) => powers((value - centre) / halfWidth, degree))
  const fit = leastSquares(rows, y, weights)
  if (fit === undefined)
    throw new InputError(
      'samples',
      `their readings are not different enough for ${degree + 1} parameters`,
      'take samples at more water contents, or use a simpler form',
    )
  return { ...fit, centre, halfWidth }
}

/** 1, u, u² ... */
export function powers(u: number, degree: number): number[] {
  return Array.from({ length: degree + 1 }, (_, k) => u ** k)
}

/** How the coefficients in powers of x follow from those in powers of u: row k holds the shares of x^k. */
export function expansion({ centre, halfWidth }: PolynomialFit, degree: number): number[][] {
  const table = Array.from({ length: degree + 1 }, () => new Array<number>(degree + 1).fill(0))
  for (let j = 0; j <= degree; j++) {
    let binomial = 1
    for (let k = j; k >= 0; k--) {
      table[k]![j] = (binomial * (-centre) ** (j - k)) / halfWidth ** j
      binomial = (binomial * k) / (j - k + 1)
    }
  }
  return table
}

/** A place between -1 and 1 where a polynomial in u has no slope or another sign of it than at -1; undefined if it never turns. */
export function turningPoint([, b = 0, c = 0, d = 0]: readonly number[]): number | undefined {
  const slope = (u: number) => (3 * d * u + 2 * c) * u + b
  const vertex = -c / (3 * d)
  const places = Math.abs(vertex) < 1 ? [vertex, 1] : [1]
  if (slope(-1) === 0) return -1
  for (const place of places) {
    if (slope(place) * slope(-1) > 0) continue
    let [from, to] = [-1, place]
    for (let i = 0; i < 60; i++) {
      const middle = (from + to) / 2
      if (slope(middle) * slope(-1) > 0) from = middle
      else to = middle
    }
    return to
  }
  return undefined
}
