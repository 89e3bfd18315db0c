import { rootBetween } from './root.js'

/** Coefficients of a polynomial of up to the third degree, lowest power first. */
export type Cubic = readonly [number, number, number, number]

export function cubicAt([c0, c1, c2, c3]: Cubic, x: number): number {
  return ((c3 * x + c2) * x + c1) * x + c0
}

/** The place between `low` and `high` where a cubic that rises all the way between them takes a value. */
export function cubicRoot(cubic: Cubic, value: number, low: number, high: number): number {
  const [, c1, c2, c3] = cubic
  return rootBetween((x) => [cubicAt(cubic, x) - value, (3 * c3 * x + 2 * c2) * x + c1], low, high)
}
