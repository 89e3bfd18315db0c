import type { LeastSquaresMinimum } from '../../numerics/levenberg-marquardt.js'
import type { HydraulicConductivity, WaterContentChange } from '../../quantity/generated/kinds.js'
import type { RetentionModel } from '../curves/retention-model.js'
import type { MediumFinding } from '../medium-finding.js'
import type { FitProblem } from './fit-problem.js'
import { type FittedParameter, type Knowledge, parameterKnowledge } from './fit-statistics.js'

/** A fitted curve and how well the points support it. */
export interface RetentionFit {
  /** The curve, ready for use. */
  readonly model: RetentionModel
  /** Its numbers with their standard errors. */
  readonly parameters: readonly FittedParameter[]
  /** Correlations between the parameters that have a standard error, in their order. */
  readonly correlation: readonly (readonly number[])[]
  /** Root of the mean squared difference of the water contents. Unit: m³/m³. */
  readonly rmse: WaterContentChange
  /** The same of the decimal logarithm of the conductivities, if there were any. Unit: 1. */
  readonly rmseLogConductivity?: number
  /** Fitted conductivity at saturation, if conductivities were measured. Unit: cm/h. */
  readonly saturatedConductivity?: HydraulicConductivity
  /** Akaike's information criterion for few points (AICc); the lower of two fits to the same points is the better. Unit: 1. */
  readonly aicc: number
  /** Number of points. Unit: 1. */
  readonly points: number
  /** Steps that the search took. Unit: 1. */
  readonly iterations: number
  /** What to mind when the curve is used. */
  readonly findings: readonly MediumFinding[]
}

/** The smallest mean square that counts, in units of the uncertainty of a point: far below any reading. */
const EXACT = 1e-12

/** The curve at the end of a search, with its statistics. */
export function fitResult(problem: FitProblem, end: LeastSquaresMinimum): RetentionFit {
  const { points, count, form, waterContentUncertainty, logConductivityUncertainty } = problem
  const knowledge = parameterKnowledge(problem, end)
  const residuals = new Float64Array(count)
  problem.residuals(end.parameters, residuals)
  const conducting = count > points
  const k = end.free.length + 1
  return {
    model: problem.modelAt(end.parameters),
    parameters: knowledge.parameters,
    correlation: knowledge.correlation,
    rmse: (waterContentUncertainty * rootMeanSquare(residuals.subarray(0, points))) as WaterContentChange,
    ...(conducting && {
      rmseLogConductivity: logConductivityUncertainty * rootMeanSquare(residuals.subarray(points)),
      saturatedConductivity: Math.exp(end.parameters[2 + form.shape.length]!) as HydraulicConductivity,
    }),
    aicc: count * Math.log(Math.max(end.sumOfSquares / count, EXACT)) + 2 * k + (2 * k * (k + 1)) / (count - k - 1),
    points,
    iterations: end.iterations,
    findings: findingsOf(problem, end, knowledge),
  }
}

function findingsOf(
  { covered, form }: FitProblem,
  end: LeastSquaresMinimum,
  { parameters }: Knowledge,
): MediumFinding[] {
  const found: MediumFinding[] = parameters
    .filter(({ standardError, fixed }) => standardError === undefined && !fixed)
    .map(({ name, value, unit }) => ({ code: 'at-limit', level: 'note', about: name, value, unit }))
  const [saturated = 0, residual = 0] = end.parameters
  const share = (water: number) => water / (saturated - residual)
  const left = share(covered.minWaterContent - residual)
  if (form.hasResidual && left > 0.3)
    found.push({
      code: 'residual-extrapolated',
      level: 'caution',
      about: 'residual',
      value: left,
      max: covered.maxSuction,
      unit: '1',
    })
  const lacking = share(saturated - covered.maxWaterContent)
  if (lacking > 0.1)
    found.push({ code: 'saturation-extrapolated', level: 'caution', about: 'saturated', value: lacking, unit: '1' })
  return found
}

function rootMeanSquare(values: Float64Array): number {
  let total = 0
  for (const value of values) total += value * value
  return Math.sqrt(total / values.length)
}
