import { choleskyFactor, choleskyInverse } from '../../numerics/cholesky.js'
import type { LeastSquaresMinimum } from '../../numerics/levenberg-marquardt.js'
import { InputError } from '../../quantity/errors.js'
import type { FitProblem } from './fit-problem.js'
import type { ShapeParameter } from './retention-form.js'
import { naturalSlope, naturalValue } from './retention-search.js'

/** A number of a fitted curve. */
export interface FittedParameter {
  /** Its name in the model. */
  readonly name: string
  /** Its value. Unit: as in `unit`. */
  readonly value: number
  readonly unit: string
  /** Standard error; absent when it was fixed or ended at a limit. Unit: as in `unit`. */
  readonly standardError?: number
  /** Whether the caller fixed it. */
  readonly fixed: boolean
}

/** What the points tell of the parameters. */
export interface Knowledge {
  readonly parameters: readonly FittedParameter[]
  readonly correlation: readonly (readonly number[])[]
}

/** One place of a search in the words of its model. */
interface Axis {
  readonly name: string
  readonly unit: string
  readonly role: ShapeParameter['role'] | 'waterContent' | 'conductivity' | 'connection'
  readonly value: number
  /** How much the value moves for each unit of the search scale. */
  readonly slope: number
}

/** The standard error on the search scale beyond which a parameter counts as unknown; 2.3 is a factor of ten. */
const UNKNOWN = {
  waterContent: 0.2,
  share: 0.5,
  connection: 10,
  suction: 2.3,
  'inverse-suction': 2.3,
  exponent: 2.3,
  conductivity: 4.6,
}

/** Standard errors and correlations at the end of a search; refuses when the points leave a parameter open. */
export function parameterKnowledge(problem: FitProblem, end: LeastSquaresMinimum): Knowledge {
  const { lower, upper, count } = problem
  const axes = axesOf(problem, end.parameters)
  axes.forEach((axis, j) => {
    if (end.free.includes(j) || lower[j] === upper[j] || axis.role === 'waterContent' || axis.role === 'connection')
      return
    refuse(axis.name, `it runs to ${axis.value.toPrecision(4)} ${axis.unit}, the end of what these points could show`)
  })
  const scales = end.free.map((j) => Math.sqrt(end.curvature[j]![j]!))
  end.free.forEach((j, a) => {
    if (!(scales[a]! > 0)) refuse(axes[j]?.name as string, 'no point depends on it')
  })
  const scaled = end.free.map((i, a) => end.free.map((j, b) => end.curvature[i]![j]! / (scales[a]! * scales[b]!)))
  const factor = choleskyFactor(scaled, 1e-10)
  if ('dependent' in factor) {
    const name = axes[end.free[factor.dependent]!]?.name as string
    return refuse(name, 'other parameters can make up for any change of it')
  }
  const inverse = choleskyInverse(factor.lower)
  const variance = end.sumOfSquares / (count - end.free.length)
  const spread = (a: number) => Math.sqrt(inverse[a]![a]!)
  const parameters = axes.flatMap((axis, j) => {
    const a = end.free.indexOf(j)
    const fixed = lower[j] === upper[j]
    // An equation without residual water or pore connection has nothing to say of it.
    if (fixed && !Object.hasOwn(problem.given, axis.name)) return []
    const { name, value, unit } = axis
    if (a < 0) return [{ name, value, unit, fixed }]
    const error = (Math.sqrt(variance) * spread(a)) / scales[a]!
    if (!(error <= UNKNOWN[axis.role]))
      refuse(
        name,
        `its value of ${value.toPrecision(4)} ${unit} has a standard error of ${(error * axis.slope).toPrecision(2)} ${unit}`,
      )
    return [{ name, value, unit, standardError: error * axis.slope, fixed }]
  })
  const correlation = inverse.map((row, a) => row.map((entry, b) => (a === b ? 1 : entry / (spread(a) * spread(b)))))
  return { parameters, correlation }
}

function axesOf({ form }: FitProblem, place: readonly number[]): Axis[] {
  const [saturated = 0, residual = 0, ...rest] = place
  const axes: Axis[] = [
    { name: 'saturated', unit: 'm³/m³', role: 'waterContent', value: saturated, slope: 1 },
    { name: 'residual', unit: 'm³/m³', role: 'waterContent', value: residual, slope: 1 },
  ]
  form.shape.forEach((parameter, i) => {
    const t = rest[i]!
    const unit = { suction: 'cm', 'inverse-suction': '1/cm', exponent: '1', share: '1' }[parameter.role]
    const [value, slope] = [naturalValue(parameter, t), naturalSlope(parameter, t)]
    axes.push({ name: parameter.name, unit, role: parameter.role, value, slope })
  })
  const [logSaturated, connection] = rest.slice(form.shape.length)
  if (logSaturated !== undefined && connection !== undefined) {
    const value = Math.exp(logSaturated)
    axes.push(
      { name: 'saturatedConductivity', unit: 'cm/h', role: 'conductivity', value, slope: value },
      { name: 'poreConnection', unit: '1', role: 'connection', value: connection, slope: 1 },
    )
  }
  return axes
}

function refuse(name: string, reason: string): never {
  throw new InputError(
    'points',
    `they cannot tell ${name}: ${reason}`,
    'measure where the curve bends, fix saturated or residual, or fit a model with fewer parameters',
  )
}
