import { InputError } from '../../quantity/errors.js'
import type { CropCoefficient, GroundFraction, Share } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import {
  COVER_EXPONENT,
  CROP_COEFFICIENT,
  CROP_HEIGHT,
  DENSE_COVER,
  GROUND_SHARE,
  HEIGHT_OVER_WIDTH,
  LEAF_RESISTANCE,
  PSYCHROMETRIC,
  SUN_ELEVATION,
  VAPOUR_SLOPE,
  WIND_AT_2_M,
} from '../domains.js'
import type { AerodynamicTerms, BareSoil, Cover } from '../terms.js'

import { type CropClimate, climateTerm } from './crop-climate.js'

/** Cover of a thin stand and of a dense one. */
export interface ThinStandInput extends Cover {
  /** Tabled coefficient of a dense stand, single or basal. Unit: 1. Range: [0, 3]. */
  readonly coefficient: CropCoefficient
  /** Cover of the dense stand; 1 by default. Unit: 1. Range: (0, 1]. */
  readonly denseCover?: GroundFraction
  /** Exponent: 0.5 for vigorous plants (default), 1 for weak ones. Unit: 1. Range: [0.5, 1]. */
  readonly exponent?: number
}

/**
 * Coefficient of a stand that is thinner than the table means, from the ratio of covers.
 *
 * @equation `K_{adj} = K_{tab} - A_{cm}, \quad A_{cm} = 1 - \left(\frac{f_c}{f_{c,dense}}\right)^n`
 * @param input - Tabled coefficient, cover of both stands and exponent.
 * @returns Coefficient, not below zero. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when the stand is denser than the dense one.
 * @validity Mid-season; the single coefficient applies while the soil between plants is dry.
 * @source allen-1998, Eq. 94 to 96
 * @example
 * thinStandCoefficient({ coefficient: cropCoefficient(1.1), cover: fraction(0.64) }) // => 0.90
 */
export function thinStandCoefficient(input: ThinStandInput): CropCoefficient {
  const cover = numberIn(optionsOf(input).cover, GROUND_SHARE, 'cover')
  const dense = numberIn(optionOr(input.denseCover, 1), DENSE_COVER, 'denseCover')
  if (cover > dense)
    throw new InputError('cover', 'it is above that of the dense stand', 'check that they are not swapped')
  const missing = 1 - (cover / dense) ** numberIn(optionOr(input.exponent, 0.5), COVER_EXPONENT, 'exponent')
  return Math.max(0, numberIn(input.coefficient, CROP_COEFFICIENT, 'coefficient') - missing) as CropCoefficient
}

/** Plants in the slanting sun. */
export interface EffectiveCoverInput {
  /** Share of the ground under leaves, seen from above. Unit: 1. Range: [0, 1]. */
  readonly cover: GroundFraction
  /** Height of the sun over the horizon about noon. Unit: rad. Range: (0, 1.570796327]. */
  readonly sunElevation: number
  /** Height of the plants over their width, for rows; without it, round crowns are meant. Unit: 1. Range: [0, 100]. */
  readonly heightOverWidth?: number
}

/**
 * Share of the ground that plants shade at the slant of the sun.
 *
 * @equation `f_{c,eff} = \min\left(1, \frac{f_c}{\sin\eta}\right) \qquad \text{rows:}\; \min\left(1, f_c \left(1 + \frac{HWR}{\tan\eta}\right)\right)`
 * @param input - Cover, elevation of the sun, and shape of the rows.
 * @returns Effective cover. Unit: 1.
 * @source allen-1998, Box 18 and Examples 41 to 43
 * @example
 * effectiveCover({ cover: fraction(0.5), sunElevation: 1.26, heightOverWidth: 1 }) // => 0.66
 */
export function effectiveCover(input: EffectiveCoverInput): GroundFraction {
  const { cover, sunElevation, heightOverWidth } = optionsOf(input)
  const share = numberIn(cover, GROUND_SHARE, 'cover')
  const sun = numberIn(sunElevation, SUN_ELEVATION, 'sunElevation')
  const shaded =
    heightOverWidth === undefined
      ? share / Math.sin(sun)
      : share * (1 + numberIn(heightOverWidth, HEIGHT_OVER_WIDTH, 'heightOverWidth') / Math.tan(sun))
  return Math.min(1, shaded) as GroundFraction
}

/** A stand of plants that does not cover the ground. */
export interface SparseBasalInput extends BareSoil, Cover, CropClimate {
  /** Tabled basal coefficient at full cover; without it one is made from the height. Unit: 1. Range: [0, 3]. */
  readonly fullCoverCoefficient?: CropCoefficient
  /** Share that is shaded at the slant of the sun, from `effectiveCover()`. Unit: 1. Range: [0, 1]. */
  readonly effectiveCover: GroundFraction
}

/** The basal coefficient of sparse plants. */
export interface SparseBasal {
  /** Coefficient at full cover in the climate. Unit: 1. */
  readonly fullCover: CropCoefficient
  /** Coefficient of the stand. Unit: 1. */
  readonly coefficient: CropCoefficient
}

/**
 * Basal coefficient of plants that leave ground bare, from cover and height.
 *
 * Without a tabled value the coefficient at full cover is min(1.0 + 0.1 h, 1.20), moved to the climate (h in metres).
 *
 * @equation `K_{cb} = K_{c,min} + (K_{cb,full} - K_{c,min})\,\min\left(1,\; 2 f_c,\; f_{c,eff}^{\,1/(1+h)}\right)`
 * @returns Coefficient of the stand and at full cover.
 * @validity Mid-season; leaf area index of the full cover above 3.
 * @source allen-1998, Eq. 98 to 101
 * @example
 * sparseBasalCoefficient({
 *   fullCoverCoefficient: cropCoefficient(1.15), cover: fraction(0.5), effectiveCover: fraction(0.66), height: metres(0.75),
 *   windSpeed: metresPerSecond(1.1), minHumidity: percent(30),
 * }) // => { fullCover: 1.17, coefficient: 0.95 }
 */
export function sparseBasalCoefficient(input: SparseBasalInput): SparseBasal {
  const height = numberIn(optionsOf(input).height, CROP_HEIGHT, 'height') / 100
  const min = numberIn(optionOr(input.minCoefficient, 0.15), CROP_COEFFICIENT, 'minCoefficient')
  const standard = numberIn(
    optionOr(input.fullCoverCoefficient, Math.min(1 + 0.1 * height, 1.2)),
    CROP_COEFFICIENT,
    'fullCoverCoefficient',
  )
  const fullCover = (standard + climateTerm(input)) as CropCoefficient
  const shade = numberIn(input.effectiveCover, GROUND_SHARE, 'effectiveCover') ** (1 / (1 + height))
  const share = Math.min(1, 2 * numberIn(input.cover, GROUND_SHARE, 'cover'), shade)
  return { fullCover, coefficient: (min + (fullCover - min) * share) as CropCoefficient }
}

/** Leaves that close their pores more than an annual crop. */
export interface StomatalControlInput extends AerodynamicTerms {
  /** Mean leaf resistance of the plants; 100 s/m is that of an annual crop. Unit: s/m. Range: [10, 10000]. */
  readonly leafResistance: number
}

/**
 * Factor on the basal coefficient of plants with more control over their pores than annual crops.
 *
 * @equation `F_r = \frac{\Delta + \gamma\,(1 + 0.34\,u_2)}{\Delta + \gamma\,\left(1 + 0.34\,u_2\,\frac{r_l}{100}\right)}`
 * @returns Factor. Unit: 1.
 * @source allen-1998, Eq. 102
 * @example
 * stomatalControlFactor({
 *   slope: kilopascalsPerKelvin(0.189), psychrometricConstant: kilopascalsPerKelvin(0.067), windSpeed: metresPerSecond(2),
 *   leafResistance: 420,
 * }) // => 0.67
 */
export function stomatalControlFactor(input: StomatalControlInput): Share {
  const slope = numberIn(optionsOf(input).slope, VAPOUR_SLOPE, 'slope')
  const gamma = numberIn(input.psychrometricConstant, PSYCHROMETRIC, 'psychrometricConstant')
  const wind = numberIn(input.windSpeed, WIND_AT_2_M, 'windSpeed')
  const own =
    slope + gamma * (1 + (0.34 * wind * numberIn(input.leafResistance, LEAF_RESISTANCE, 'leafResistance')) / 100)
  return ((slope + gamma * (1 + 0.34 * wind)) / own) as Share
}
