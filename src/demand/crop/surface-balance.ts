import { InputError } from '../../quantity/errors.js'
import type { CropCoefficient, CropET, GroundFraction, Share, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf, requireRows } from '../../quantity/guard.js'
import { CROP_COEFFICIENT, GROUND_SHARE, REFERENCE_ET, WATER_DEPTH, WETTED_GROUND } from '../domains.js'
import type { BasalCoefficient, Cover, DayDepletion, Drip, MaxCoefficient, ReferenceDay } from '../terms.js'

import { evaporationCoefficient, evaporationReduction, exposedWettedShare } from './soil-evaporation.js'

/** One day at the surface of a field. Rain and irrigation come early in the day. */
export interface SurfaceDay extends ReferenceDay, Drip, MaxCoefficient, BasalCoefficient, Cover {
  /** Rain less what runs off. Unit: mm. Range: [0, 10000]. */
  readonly rain: WaterDepth
  /** Irrigation as a depth on the part that it wets. Unit: mm. Range: [0, 10000]. */
  readonly irrigationOnWetted: WaterDepth
  /** Share of the ground that the last wetting reached. Unit: 1. Range: (0, 1]. */
  readonly wettedShare: GroundFraction
}

/** The surface layer and its days. */
export interface SurfaceBalanceInput {
  /** Total evaporable water, above the readily evaporable. Unit: mm. Range: [0, 10000]. */
  readonly totalEvaporable: WaterDepth
  /** Readily evaporable water. Unit: mm. Range: [0, 10000]. */
  readonly readilyEvaporable: WaterDepth
  /** Depletion before the first day; the total by default (a dry surface). Unit: mm. Range: [0, 10000]. */
  readonly startDepletion?: WaterDepth
  /** Days in order. */
  readonly days: readonly SurfaceDay[]
}

/** What a day did to the surface. */
export interface SurfaceDayResult extends DayDepletion {
  /** Share of the ground that is wetted and exposed. Unit: 1. */
  readonly exposedWetted: GroundFraction
  /** Evaporation reduction. Unit: 1. */
  readonly reduction: Share
  /** Evaporation coefficient. Unit: 1. */
  readonly evaporationCoefficient: CropCoefficient
  /** Basal and evaporation coefficient together. Unit: 1. */
  readonly cropCoefficient: CropCoefficient
  /** Evaporation from the soil over the whole ground. Unit: mm. */
  readonly evaporation: WaterDepth
  /** Water that went below the surface layer. Unit: mm. */
  readonly percolation: WaterDepth
  /** Evapotranspiration of the crop without stress. Unit: mm/d. */
  readonly cropET: CropET
}

/**
 * Evaporation from the soil day by day with the dual crop coefficient: the water balance of the surface layer.
 *
 * Water comes early in the day, so a day evaporates from the surface it has just wetted. Transpiration from the surface layer is left
 * out, as the source allows for all but shallow roots.
 *
 * @equation `D_{e,i} = D_{e,i-1} - P - \frac{I}{f_w} + \frac{E}{f_{ew}} + DP_e, \qquad E = K_e\,ET_o, \qquad 0 \le D_e \le TEW`
 * @returns One result for each day.
 * @throws `DomainError` outside the ranges, `InputError` when the readily evaporable water is not below the total.
 * @source allen-1998, Eq. 71 to 79, Example 35, numbers as listed in Annex 8, Box 8.1
 * @example
 * surfaceBalance({
 *   totalEvaporable: millimetresOfDepth(18), readilyEvaporable: millimetresOfDepth(9),
 *   days: [{
 *     referenceET: millimetresPerDay(4.5), rain: millimetresOfDepth(0), irrigationOnWetted: millimetresOfDepth(50),
 *     basalCoefficient: cropCoefficient(0.3), maxCoefficient: cropCoefficient(1.21), cover: fraction(0.08), wettedShare: fraction(0.8),
 *   }],
 * })[0].percolation // => 32
 */
export function surfaceBalance(input: SurfaceBalanceInput): SurfaceDayResult[] {
  const total = numberIn(optionsOf(input).totalEvaporable, WATER_DEPTH, 'totalEvaporable')
  if (numberIn(input.readilyEvaporable, WATER_DEPTH, 'readilyEvaporable') >= total) {
    throw new InputError('readilyEvaporable', 'it is not below the total', 'give less than the total evaporable water')
  }
  let depletion = numberIn(optionOr(input.startDepletion, total), WATER_DEPTH, 'startDepletion')
  requireRows(input.days, 'days')
  return input.days.map((day) => {
    const reference = numberIn(day.referenceET, REFERENCE_ET, 'referenceET')
    const water =
      numberIn(day.rain, WATER_DEPTH, 'rain') + numberIn(day.irrigationOnWetted, WATER_DEPTH, 'irrigationOnWetted')
    const percolation = Math.max(0, water - depletion) as WaterDepth
    const depletionAtStart = Math.max(0, depletion - water) as WaterDepth
    const exposedWetted = exposedWettedShare({
      cover: numberIn(day.cover, GROUND_SHARE, 'cover') as GroundFraction,
      wettedShare: numberIn(day.wettedShare, WETTED_GROUND, 'wettedShare') as GroundFraction,
      drip: optionOr(day.drip, false),
    })
    const reduction = evaporationReduction({ ...input, depletion: depletionAtStart })
    const coefficient = evaporationCoefficient({ ...day, reduction, exposedWetted })
    // The layer cannot lose more than it holds; the last day of a drying ends at the total.
    const drop = Math.min((coefficient * reference) / exposedWetted, Math.max(0, total - depletionAtStart))
    const evaporation = (drop * exposedWetted) as WaterDepth
    depletion = depletionAtStart + drop
    const evaporated = (evaporation / reference) as CropCoefficient
    const cropCoefficient = (numberIn(day.basalCoefficient, CROP_COEFFICIENT, 'basalCoefficient') +
      evaporated) as CropCoefficient
    return {
      exposedWetted,
      depletionAtStart,
      depletionAtEnd: depletion as WaterDepth,
      reduction,
      evaporationCoefficient: evaporated,
      cropCoefficient,
      evaporation,
      percolation,
      cropET: (cropCoefficient * reference) as CropET,
    }
  })
}
