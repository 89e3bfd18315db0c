import { ConvergenceError } from '../quantity/errors.js'

/** Two unknowns, or their slopes. */
export type Pair = readonly [number, number]

/** Two differential equations: where they begin, how far they go, and when they may end early. */
export interface PairProblem {
  readonly slopes: (x: number, y: Pair) => Pair
  readonly from: number
  readonly to: number
  readonly start: Pair
  /** Most error of a step, as a share of each unknown or of its scale, whichever is more. */
  readonly tolerance: number
  readonly scale: Pair
  readonly ended: (y: Pair) => boolean
}

/**
 * Follows two differential equations by the fifth-order steps of dormand-1980, and returns the place where they ended and the unknowns there.
 */
export function followPair({ slopes, from, to, start, tolerance, scale, ended }: PairProblem): readonly [number, Pair] {
  let x = from
  let y = start
  let step = (to - from) * 1e-9
  let k1 = slopes(x, y)
  let count = 0
  while (count < 20000) {
    count++
    const last = x + step >= to
    const h = last ? to - x : step
    const k2 = slopes(x + h / 5, along(y, h, [[1 / 5, k1]]))
    const k3 = slopes(
      x + (3 * h) / 10,
      along(y, h, [
        [3 / 40, k1],
        [9 / 40, k2],
      ]),
    )
    const k4 = slopes(
      x + (4 * h) / 5,
      along(y, h, [
        [44 / 45, k1],
        [-56 / 15, k2],
        [32 / 9, k3],
      ]),
    )
    const k5 = slopes(
      x + (8 * h) / 9,
      along(y, h, [
        [19372 / 6561, k1],
        [-25360 / 2187, k2],
        [64448 / 6561, k3],
        [-212 / 729, k4],
      ]),
    )
    const k6 = slopes(
      x + h,
      along(y, h, [
        [9017 / 3168, k1],
        [-355 / 33, k2],
        [46732 / 5247, k3],
        [49 / 176, k4],
        [-5103 / 18656, k5],
      ]),
    )
    const next = along(y, h, [
      [35 / 384, k1],
      [500 / 1113, k3],
      [125 / 192, k4],
      [-2187 / 6784, k5],
      [11 / 84, k6],
    ])
    const k7 = slopes(x + h, next)
    const gap = along([0, 0], h, [
      [71 / 57600, k1],
      [-71 / 16695, k3],
      [71 / 1920, k4],
      [-17253 / 339200, k5],
      [22 / 525, k6],
      [-1 / 40, k7],
    ])
    const error = Math.max(share(gap[0], next[0], scale[0]), share(gap[1], next[1], scale[1]))
    if (error <= tolerance) {
      x = last ? to : x + h
      y = next
      k1 = k7
      if (last || ended(y)) return [x, y]
    }
    const factor = 0.9 * (tolerance / error) ** 0.2
    step = h * (factor > 0.2 ? Math.min(5, factor) : 0.2)
    if (x + step === x) break
  }
  throw new ConvergenceError('Runge-Kutta steps', count, to - x, 'the equations are too steep there')
}

function along(y: Pair, h: number, terms: readonly (readonly [number, Pair])[]): Pair {
  let [a, b] = y
  for (const [weight, k] of terms) {
    a += h * weight * k[0]
    b += h * weight * k[1]
  }
  return [a, b]
}

function share(error: number, value: number, scale: number): number {
  return Math.abs(error) / Math.max(Math.abs(value), scale)
}
