import type { LeastSquares } from '../../numerics/levenberg-marquardt.js'
import { InputError } from '../../quantity/errors.js'
import type { WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { booleanOf, numberIn, optionOr, requireObject, requireRows } from '../../quantity/guard.js'
import { checkLimits } from '../curves/curve-limits.js'
import type { RetentionModel } from '../curves/retention-model.js'
import { CONTENT_UNCERTAINTY, LOG_UNCERTAINTY } from '../domains.js'
import type { RetentionForm } from './retention-form.js'
import { type Covered, checkPoints, type RetentionPoint } from './retention-points.js'
import { bestStarts, naturalValue, type SearchBox, type SearchRange, searchRange } from './retention-search.js'

/** What is fitted to what. */
export interface RetentionFitRequest {
  /** The measured points. */
  readonly points: readonly RetentionPoint[]
  /** How the model is fitted, such as `formVanGenuchten1980`. */
  readonly form: RetentionForm
  /** Saturated water content, where it is known and must not be fitted. Unit: m³/m³. Range: (0, 1]. */
  readonly saturated?: WaterContent
  /** Residual water content, where it is known and must not be fitted. Unit: m³/m³. Range: [0, 1). */
  readonly residual?: WaterContent
  /** Standard uncertainty of a measured water content, 0.01 when left out; it only weighs contents against conductivities. Unit: m³/m³. Range: [0.0001, 0.2]. */
  readonly waterContentUncertainty?: WaterContentChange
  /** Standard uncertainty of the decimal logarithm of a measured conductivity, 0.2 when left out. Unit: 1. Range: [0.001, 3]. */
  readonly logConductivityUncertainty?: number
}

/** A least-squares problem with its starts. A place is [saturated, residual, ...shape, ln Ks, pore connection]. */
export interface FitProblem extends Omit<LeastSquares, 'start'> {
  readonly form: RetentionForm
  /** What the caller fixed, by name. */
  readonly given: Readonly<Record<string, number>>
  readonly starts: readonly (readonly number[])[]
  readonly covered: Covered
  readonly points: number
  readonly waterContentUncertainty: number
  readonly logConductivityUncertainty: number
  readonly modelAt: (place: readonly number[]) => RetentionModel
}

/** Checks a request and turns it into numbers. */
export function fitProblem(request: RetentionFitRequest): FitProblem {
  const { points, form } = request
  requireRows(points, 'points')
  requireObject(form, 'form')
  requireRows(form.shape, 'form.shape')
  for (const what of ['conducts', 'hasResidual'] as const) booleanOf(form[what], `form.${what}`)
  const uncertainties = uncertaintiesOf(request)
  const covered = checkPoints(points)
  const box = searchBox(request, covered)
  const conducting = points.filter((point) => point.conductivity !== undefined)
  const ranges = [box.saturated, box.residual, ...box.shape]
  refuseTooFew(ranges, covered)
  if (conducting.length > 0) ranges.push(...conductionRanges(form, conducting.length))

  const modelAt = (place: readonly number[]) => {
    const shape = form.shape.map((parameter, i) => naturalValue(parameter, place[2 + i]!))
    const connection = conducting.length > 0 && form.minConnection !== undefined ? place[3 + shape.length] : undefined
    return form.make(place[0] as WaterContent, place[1] as WaterContent, shape, connection)
  }
  const starts = bestStarts(form, points, box, 3).map(({ saturated, residual, shape }) => {
    const place = [saturated, residual, ...shape]
    return conducting.length === 0 ? place : conductingStart(place, conducting, form, modelAt)
  })
  return {
    form,
    given: givenContents(request),
    starts,
    covered,
    points: points.length,
    ...uncertainties,
    modelAt,
    lower: ranges.map(({ low }) => low),
    upper: ranges.map(({ high }) => high),
    count: points.length + conducting.length,
    residuals: residualsOf(points, conducting, modelAt, uncertainties),
  }
}

function uncertaintiesOf(request: RetentionFitRequest) {
  const waterContentUncertainty = numberIn(
    optionOr(request.waterContentUncertainty, 0.01),
    CONTENT_UNCERTAINTY,
    'waterContentUncertainty',
  )
  const logConductivityUncertainty = numberIn(
    optionOr(request.logConductivityUncertainty, 0.2),
    LOG_UNCERTAINTY,
    'logConductivityUncertainty',
  )
  return { waterContentUncertainty, logConductivityUncertainty }
}

/** Of the contents first, then of the conductivities, each by its uncertainty. */
function residualsOf(
  points: readonly RetentionPoint[],
  conducting: readonly RetentionPoint[],
  modelAt: FitProblem['modelAt'],
  { waterContentUncertainty, logConductivityUncertainty }: ReturnType<typeof uncertaintiesOf>,
): LeastSquares['residuals'] {
  return (place, out) => {
    const model = modelAt(place)
    points.forEach((point, i) => {
      out[i] = (model.waterContent(point.suction) - point.waterContent) / waterContentUncertainty
    })
    // ln Ks stands before the pore connection, at the end.
    const logSaturated = place[place.length - 2]!
    conducting.forEach((point, i) => {
      out[points.length + i] =
        (logSaturated + logShare(model, point) - logMeasured(point)) / (Math.LN10 * logConductivityUncertainty)
    })
  }
}

/** What the caller fixed, as far as the form has it. */
function givenContents({ form, saturated, residual }: RetentionFitRequest): Readonly<Record<string, number>> {
  return {
    ...(saturated !== undefined && { saturated }),
    ...(form.hasResidual && residual !== undefined && { residual }),
  }
}

/** A start with the saturated conductivity that meets the measured ones on average. */
function conductingStart(
  start: readonly number[],
  conducting: readonly RetentionPoint[],
  form: RetentionForm,
  modelAt: FitProblem['modelAt'],
): number[] {
  const place = [...start, 0, form.minConnection === undefined ? 0 : 0.5]
  const model = modelAt(place)
  let logSaturated = 0
  for (const point of conducting) logSaturated += (logMeasured(point) - logShare(model, point)) / conducting.length
  place[start.length] = logSaturated
  return place
}

function logShare(model: RetentionModel, point: RetentionPoint): number {
  // A share that underflows is as good as the smallest number.
  return Math.log(Math.max(model.relativeConductivity?.(point.suction) ?? 1, 1e-300))
}

function logMeasured(point: RetentionPoint): number {
  return Math.log(point.conductivity as number)
}

/** The contents lie where a falling curve through the points can have them. */
function searchBox({ form, saturated, residual }: RetentionFitRequest, covered: Covered): SearchBox {
  checkLimits(optionOr(residual, 0) as WaterContent, optionOr(saturated, 1) as WaterContent)
  if (residual !== undefined && !form.hasResidual)
    throw new InputError('residual', `${form.kind} has no residual water content`, 'leave it out')
  const { minWaterContent, maxWaterContent, minSuction, maxSuction } = covered
  const wet = saturated ?? (minWaterContent + maxWaterContent) / 2
  const dry = residual ?? 0
  if (dry > minWaterContent || wet < minWaterContent) {
    const argument = wet < minWaterContent ? 'saturated' : 'residual'
    throw new InputError(
      argument,
      `the points go down to ${minWaterContent} m³/m³, which it does not fit`,
      'fix residual at or below the driest point and saturated above it',
    )
  }
  return {
    saturated: { low: wet, high: saturated ?? 1 },
    residual: { low: dry, high: form.hasResidual ? (residual ?? Math.min(minWaterContent, 0.99 * wet)) : dry },
    shape: form.shape.map((parameter) => searchRange(parameter, minSuction, maxSuction)),
  }
}

function refuseTooFew(ranges: readonly SearchRange[], { suctions }: Covered): void {
  const unknowns = ranges.filter(({ low, high }) => low < high).length
  if (suctions > unknowns) return
  throw new InputError(
    'points',
    `${suctions} different suctions cannot tell ${unknowns} parameters and their errors`,
    `measure at ${unknowns + 1} suctions or more, fix saturated or residual, or fit a simpler model`,
  )
}

function conductionRanges({ kind, conducts, minConnection }: RetentionForm, measured: number): SearchRange[] {
  if (!conducts) {
    throw new InputError(
      'form',
      `${kind} has no conductivity to fit`,
      'leave the conductivities out, or fit a model that has one',
    )
  }
  if (measured < 3) {
    throw new InputError(
      'points',
      `${measured} conductivities cannot tell the saturated conductivity and the pore connection`,
      'measure three or more, across the suctions of use',
    )
  }
  const connection = minConnection === undefined ? { low: 0, high: 0 } : { low: minConnection, high: 10 }
  return [{ low: Math.log(1e-12), high: Math.log(1e8) }, connection]
}
