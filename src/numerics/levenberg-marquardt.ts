import { ConvergenceError } from '../quantity/errors.js'
import { choleskyFactor, choleskySolve } from './cholesky.js'

/** A sum of squares to make as small as it gets inside a box. */
export interface LeastSquares {
  readonly start: readonly number[]
  /** Least and largest value of each parameter; one that has equal ends stays there. */
  readonly lower: readonly number[]
  readonly upper: readonly number[]
  /** How many residuals there are. */
  readonly count: number
  /** Writes the residuals at some parameters; NaN where there are none, which no search then goes to. */
  readonly residuals: (parameters: readonly number[], out: Float64Array) => void
  /** How far each parameter is moved for a derivative; a few millionths when left out. For residuals with rounding of their own. */
  readonly moves?: readonly number[]
  /** Share of the sum below which a step counts as the last; 1e-10 when left out. */
  readonly settled?: number
}

/** Where the sum of squares is smallest. */
export interface LeastSquaresMinimum {
  readonly parameters: readonly number[]
  readonly sumOfSquares: number
  /** The parameters that are not held by an end of the box, by position. */
  readonly free: readonly number[]
  /** Products of the derivatives of the residuals by every pair of parameters, the matrix JᵀJ. */
  readonly curvature: readonly (readonly number[])[]
  readonly iterations: number
}

const MAX_ITERATIONS = 300

/**
 * The method of Levenberg (1944) and Marquardt (1963) in a box. A parameter at an end of the box is left out of the step while
 * the slope presses it outwards; other steps are cut off at the box and kept only when the sum falls. Ends when no free
 * parameter has a slope left, when a step neither promises nor brings a share of the sum (1e-10 unless told otherwise), or when no step is left.
 */
export function nonlinearLeastSquares(problem: LeastSquares): LeastSquaresMinimum {
  const { lower, upper, count, residuals, moves, settled: share = 1e-10 } = problem
  let p = problem.start.map((value, j) => clip(value, lower[j]!, upper[j]!))
  let at = new Float64Array(count)
  residuals(p, at)
  let cost = squares(at)
  const negligible = cost * 1e-28
  let next = new Float64Array(count)
  let damping = 1e-3
  for (let iterations = 0; iterations < MAX_ITERATIONS; iterations++) {
    const columns = derivatives(problem, p, at)
    const slope = columns.map((column) => dot(column, at))
    const curvature = columns.map((a) => columns.map((b) => dot(a, b)))
    const free = freeParameters(problem, p, slope)
    const done = { parameters: p, sumOfSquares: cost, free, curvature, iterations }
    const flat = free.every((j) => Math.abs(slope[j]!) <= 1e-9 * Math.sqrt(curvature[j]![j]! * cost))
    if (flat || cost <= negligible) return done
    for (;;) {
      const step = dampedStep(curvature, slope, free, damping)
      const q = p.map((value, j) => clip(value + step[j]!, lower[j]!, upper[j]!))
      if (q.every((value, j) => Math.abs(value - p[j]!) <= (moves ? 1e-4 * moves[j]! : 1e-12 * (1 + Math.abs(value)))))
        return done
      residuals(q, next)
      const after = squares(next)
      if (after < cost) {
        const settled = cost - after <= share * cost && promised(curvature, slope, step) <= share * cost
        p = q
        ;[at, next] = [next, at]
        cost = after
        damping = Math.max(damping / 10, 1e-12)
        if (settled) return { ...done, parameters: p, sumOfSquares: cost }
        break
      }
      damping *= 5
    }
  }
  const miss = Math.sqrt(cost / count)
  throw new ConvergenceError('least squares', MAX_ITERATIONS, miss, 'start nearer, or fit fewer parameters')
}

/** Those that no end of the box holds while the slope presses them outwards. */
function freeParameters({ lower, upper }: LeastSquares, p: readonly number[], slope: readonly number[]): number[] {
  return [...p.keys()].filter((j) => {
    const [value, low, high] = [p[j]!, lower[j]!, upper[j]!]
    if (low === high) return false
    const g = slope[j]!
    return !((value <= low && g >= 0) || (value >= high && g <= 0))
  })
}

/** The step that would reach the minimum of the damped parabola; zero for parameters that are held. */
function dampedStep(
  curvature: readonly (readonly number[])[],
  slope: readonly number[],
  free: readonly number[],
  damping: number,
): number[] {
  const step = slope.map(() => 0)
  const damped = free.map((i) =>
    free.map((j) => {
      const entry = curvature[i]![j]!
      return i === j ? entry * (1 + damping) + Number.MIN_VALUE : entry
    }),
  )
  const factor = choleskyFactor(damped)
  // Damping keeps every pivot above zero; where none is a number, no step is the end of the search.
  if ('dependent' in factor) return step
  choleskySolve(
    factor.lower,
    free.map((j) => -slope[j]!),
  ).forEach((value, k) => {
    step[free[k]!] = value
  })
  return step
}

/** By how much the parabola falls along a step. */
function promised(
  curvature: readonly (readonly number[])[],
  slope: readonly number[],
  step: readonly number[],
): number {
  let fall = 0
  step.forEach((d, j) => {
    fall -= 2 * d * slope[j]!
    step.forEach((e, i) => {
      fall -= d * e * curvature[j]![i]!
    })
  })
  return fall
}

/** Derivatives of the residuals by each parameter, from differences to both sides, or to one side at an end of what there is. */
function derivatives(
  { lower, upper, count, residuals, moves }: LeastSquares,
  p: readonly number[],
  at: Float64Array,
): Float64Array[] {
  return p.map((value, j) => {
    if (lower[j] === upper[j]) return new Float64Array(count)
    const h = moves?.[j] ?? 6e-6 * (1 + Math.abs(value))
    const side = (to: number): readonly [number, Float64Array] => {
      const out = new Float64Array(count)
      residuals(
        p.map((other, i) => (i === j ? to : other)),
        out,
      )
      return Number.isNaN(squares(out)) ? [value, at] : [to, out]
    }
    const [high, after] = side(Math.min(value + h, upper[j]!))
    const [low, before] = side(Math.max(value - h, lower[j]!))
    return after.map((residual, i) => (high > low ? (residual - before[i]!) / (high - low) : 0))
  })
}

function clip(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high)
}

function dot(a: Float64Array, b: Float64Array): number {
  let total = 0
  for (let i = 0; i < a.length; i++) total += a[i]! * b[i]!
  return total
}

function squares(values: Float64Array): number {
  return dot(values, values)
}
