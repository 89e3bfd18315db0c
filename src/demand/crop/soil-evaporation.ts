import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type {
  CropCoefficient,
  GroundFraction,
  Length,
  Share,
  WaterContent,
  WaterDepth,
} from '../../quantity/generated/kinds.js'
import { booleanOf, numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import {
  CROP_COEFFICIENT,
  CROP_HEIGHT,
  EVAPORATION_REDUCTION,
  GROUND_SHARE,
  LAYER_DEPTH,
  TOTAL_EVAPORABLE,
  WATER_DEPTH,
  WETTED_GROUND,
} from '../domains.js'
import type { BareSoil, BasalCoefficient, Drip, FieldCapacity, MaxCoefficient } from '../terms.js'

import { dryingLine } from './drying-line.js'

/** The surface layer that dries by evaporation. */
export interface EvaporationLayer extends FieldCapacity {
  /** Water content at the wilting point. Unit: m³/m³. Range: [0, 1]. */
  readonly wiltingPoint: WaterContent
  /** Depth of the layer, 0.1 to 0.15 m. Unit: cm. Range: (0, 2000]. */
  readonly depth: Length
}

/**
 * The most water that can evaporate from the surface layer after it was wetted through.
 *
 * @equation `TEW = 1000\,(\theta_{FC} - 0.5\,\theta_{WP})\,Z_e`
 * @param layer - Water contents and depth (Ze, in metres in the equation).
 * @returns Total evaporable water. Unit: mm.
 * @throws `DomainError` outside the ranges, `InputError` when field capacity is zero or below the wilting point.
 * @source allen-1998, Eq. 73
 * @example
 * totalEvaporableWater({ fieldCapacity: waterContent(0.23), wiltingPoint: waterContent(0.1), depth: metres(0.1) }) // => 18
 */
export function totalEvaporableWater(layer: EvaporationLayer): WaterDepth {
  const { fieldCapacity, wiltingPoint, depth } = optionsOf(layer)
  const full = numberIn(fieldCapacity, WATER_CONTENT, 'fieldCapacity')
  const wilting = numberIn(wiltingPoint, WATER_CONTENT, 'wiltingPoint')
  if (full === 0 || wilting > full)
    throw new InputError(
      'fieldCapacity',
      'it is zero, or below the wilting point',
      'check that the two are not swapped',
    )
  const water = full - 0.5 * wilting
  return (10 * water * numberIn(depth, LAYER_DEPTH, 'depth')) as WaterDepth
}

/** How far the surface layer has dried. */
export interface EvaporationReductionInput {
  /** Total evaporable water. Unit: mm. Range: (0, 10000]. */
  readonly totalEvaporable: WaterDepth
  /** Readily evaporable water, below the total. Unit: mm. Range: [0, 10000]. */
  readonly readilyEvaporable: WaterDepth
  /** Water that has evaporated since the layer was full. Unit: mm. Range: [0, 10000]. */
  readonly depletion: WaterDepth
}

/**
 * Share of the potential evaporation that a drying surface still gives.
 *
 * @equation `K_r = \min\left(1, \max\left(0, \frac{TEW - D_e}{TEW - REW}\right)\right)`
 * @returns Reduction coefficient, 1 for a wet surface. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when the readily evaporable water is not below the total.
 * @source allen-1998, Eq. 74
 * @example
 * evaporationReduction({
 *   totalEvaporable: millimetresOfDepth(18), readilyEvaporable: millimetresOfDepth(8), depletion: millimetresOfDepth(13),
 * }) // => 0.5
 */
export function evaporationReduction(input: EvaporationReductionInput): Share {
  const total = numberIn(optionsOf(input).totalEvaporable, TOTAL_EVAPORABLE, 'totalEvaporable')
  const readily = numberIn(input.readilyEvaporable, WATER_DEPTH, 'readilyEvaporable')
  return dryingLine(total, readily, numberIn(input.depletion, WATER_DEPTH, 'depletion'), 'readilyEvaporable')
}

/** Coefficients and height from which cover follows. */
export interface CoverInput extends BareSoil, MaxCoefficient, BasalCoefficient {
  /** Mean plant height. Unit: cm. Range: [0, 10000]. */
  readonly height: Length
}

/**
 * Share of the ground that leaves cover, where it was not measured.
 *
 * @equation `f_c = \min\left[0.99, \left(\frac{K_{cb} - K_{c,min}}{K_{c,max} - K_{c,min}}\right)^{1 + 0.5 h}\right]`
 * @param input - Basal, lowest and highest coefficient, and plant height (in metres in the equation).
 * @returns Cover, at most 0.99; at least 0.01 of the difference of coefficients is used; both as the source advises. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when the coefficients are out of order.
 * @source allen-1998, Eq. 76
 * @example
 * coverFromCoefficient({
 *   basalCoefficient: cropCoefficient(0.9), maxCoefficient: cropCoefficient(1.3), height: metres(1),
 * }) // => 0.53
 */
export function coverFromCoefficient(input: CoverInput): GroundFraction {
  const min = numberIn(optionOr(optionsOf(input).minCoefficient, 0.15), CROP_COEFFICIENT, 'minCoefficient')
  const max = numberIn(optionsOf(input).maxCoefficient, CROP_COEFFICIENT, 'maxCoefficient')
  const basal = numberIn(input.basalCoefficient, CROP_COEFFICIENT, 'basalCoefficient')
  if (max <= min || basal > max) {
    throw new InputError('maxCoefficient', 'it is below another coefficient', 'use maxCropCoefficientFao56()')
  }
  const above = Math.max(basal - min, 0.01) / (max - min)
  const cover = Math.min(1, above) ** (1 + (0.5 * numberIn(input.height, CROP_HEIGHT, 'height')) / 100)
  return Math.min(0.99, cover) as GroundFraction
}

/** What wets the ground and what covers it. */
export interface ExposedWettedInput extends Drip {
  /** Share of the ground that leaves cover. Unit: 1. Range: [0, 1]. */
  readonly cover: GroundFraction
  /** Share of the ground that is wetted. Unit: 1. Range: (0, 1]. */
  readonly wettedShare: GroundFraction
}

/**
 * Share of the ground that is both wetted and exposed to the sun, from which most evaporation comes.
 *
 * @equation `f_{ew} = \min(1 - f_c,\; f_w) \qquad \text{drip:}\; \min\left(1 - f_c,\; (1 - \tfrac{2}{3} f_c)\,f_w\right)`
 * @returns Share, at least 0.01. Unit: 1.
 * @source allen-1998, Eq. 75 and the text below it
 * @example
 * exposedWettedShare({ cover: fraction(0.53), wettedShare: fraction(0.3), drip: true }) // => 0.194
 */
export function exposedWettedShare(input: ExposedWettedInput): GroundFraction {
  const { cover, wettedShare, drip } = optionsOf(input)
  const covered = numberIn(cover, GROUND_SHARE, 'cover')
  const wetted =
    numberIn(wettedShare, WETTED_GROUND, 'wettedShare') *
    (booleanOf(optionOr(drip, false), 'drip') ? 1 - (2 / 3) * covered : 1)
  return Math.max(0.01, Math.min(1 - covered, wetted)) as GroundFraction
}

/** What limits the evaporation from the soil on a day. */
export interface EvaporationCoefficientInput extends MaxCoefficient, BasalCoefficient {
  /** Reduction of a drying surface, from `evaporationReduction()`; 1 by default. Unit: 1. Range: [0, 1]. */
  readonly reduction?: Share
  /** Share of the ground that is wetted and exposed. Unit: 1. Range: (0, 1]. */
  readonly exposedWetted: GroundFraction
}

/**
 * Coefficient of evaporation from the soil, to be added to the basal coefficient.
 *
 * @equation `K_e = \min\left(K_r\,(K_{c,max} - K_{cb}),\; f_{ew}\,K_{c,max}\right)`
 * @returns Evaporation coefficient. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when the basal coefficient is above the highest.
 * @source allen-1998, Eq. 71
 * @example
 * evaporationCoefficient({
 *   basalCoefficient: cropCoefficient(0.9), maxCoefficient: cropCoefficient(1.3), exposedWetted: fraction(0.3),
 * }) // => 0.39
 */
export function evaporationCoefficient(input: EvaporationCoefficientInput): CropCoefficient {
  const max = numberIn(optionsOf(input).maxCoefficient, CROP_COEFFICIENT, 'maxCoefficient')
  const room = max - numberIn(input.basalCoefficient, CROP_COEFFICIENT, 'basalCoefficient')
  if (room < 0) {
    throw new InputError('maxCoefficient', 'it is below the basal coefficient', 'use maxCropCoefficientFao56()')
  }
  const reduction = numberIn(optionOr(input.reduction, 1), EVAPORATION_REDUCTION, 'reduction')
  return Math.min(
    reduction * room,
    numberIn(input.exposedWetted, WETTED_GROUND, 'exposedWetted') * max,
  ) as CropCoefficient
}
