import { InputError } from '../../quantity/errors.js'
import type { CropCoefficient } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../../quantity/guard.js'
import { CROP_COEFFICIENT, DAYS_SINCE_PLANTING, STAGE_LENGTH } from '../domains.js'

/** Lengths of the four growth stages. */
export interface StageLengths {
  /** Planting to about 10 % cover. Unit: d. Range: [0, 1000]. */
  readonly initial: number
  /** To effective full cover. Unit: d. Range: [0, 1000]. */
  readonly development: number
  /** To the start of maturity. Unit: d. Range: [0, 1000]. */
  readonly middle: number
  /** To the end of the crop. Unit: d. Range: [0, 1000]. */
  readonly late: number
}

/** A season in stages, with a coefficient for each level part. */
export interface CoefficientCurveInput {
  /** Lengths of the stages. */
  readonly stages: StageLengths
  /** Coefficient of the initial stage. Unit: 1. Range: [0, 3]. */
  readonly initialCoefficient: CropCoefficient
  /** Coefficient of the mid-season. Unit: 1. Range: [0, 3]. */
  readonly middleCoefficient: CropCoefficient
  /** Coefficient at the end of the late season. Unit: 1. Range: [0, 3]. */
  readonly endCoefficient: CropCoefficient
  /** Days since planting. Unit: d. Range: [0, 4000]. */
  readonly daysSincePlanting: number
}

/**
 * Crop coefficient of a day on the curve through the growth stages, single or basal: level, rising, level, falling.
 *
 * @equation `K_{c,i} = K_{c,prev} + \frac{i - \sum L_{prev}}{L_{stage}}\,(K_{c,next} - K_{c,prev})`
 * @param input - Stage lengths, three coefficients and the day.
 * @returns Coefficient of the day. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` for a day after the season.
 * @source allen-1998, Eq. 66
 * @example
 * cropCoefficientOfDay({
 *   stages: { initial: 25, development: 25, middle: 30, late: 20 }, daysSincePlanting: 37,
 *   initialCoefficient: cropCoefficient(0.15), middleCoefficient: cropCoefficient(1.14), endCoefficient: cropCoefficient(0.25),
 * }) // => 0.63
 */
export function cropCoefficientOfDay(input: CoefficientCurveInput): CropCoefficient {
  const initial = numberIn(optionsOf(input).initialCoefficient, CROP_COEFFICIENT, 'initialCoefficient')
  const middle = numberIn(input.middleCoefficient, CROP_COEFFICIENT, 'middleCoefficient')
  const end = numberIn(input.endCoefficient, CROP_COEFFICIENT, 'endCoefficient')
  const day = numberIn(input.daysSincePlanting, DAYS_SINCE_PLANTING, 'daysSincePlanting')
  requireObject(input.stages, 'stages')
  const rise = numberIn(input.stages.initial, STAGE_LENGTH, 'initial')
  const full = rise + numberIn(input.stages.development, STAGE_LENGTH, 'development')
  const fall = full + numberIn(input.stages.middle, STAGE_LENGTH, 'middle')
  const last = fall + numberIn(input.stages.late, STAGE_LENGTH, 'late')
  if (day > last) {
    throw new InputError(
      'daysSincePlanting',
      `day ${day} is after the season of ${last} days`,
      'lengthen the last stage',
    )
  }
  if (day <= rise) return initial as CropCoefficient
  if (day < full) return (initial + ((day - rise) / (full - rise)) * (middle - initial)) as CropCoefficient
  if (day <= fall) return middle as CropCoefficient
  return (middle + ((day - fall) / (last - fall)) * (end - middle)) as CropCoefficient
}
