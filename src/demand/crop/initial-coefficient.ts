import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { CropCoefficient, CropET, GroundFraction, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import {
  CROP_COEFFICIENT,
  REFERENCE_ET,
  TYPICAL_RAIN,
  WATER_DEPTH,
  WETTED_GROUND,
  WETTING_INTERVAL,
} from '../domains.js'
import type { ReferenceDay, Wetting } from '../terms.js'

/** How coarse a soil is, as FAO-56 divides soils for evaporation after wetting. */
export type SoilTextureClass = 'coarse' | 'medium' | 'fine'

/** How often and how strongly a bare soil is wetted. */
export interface InitialCoefficientInput extends Wetting, ReferenceDay {
  /** Mean time between two wettings. Unit: d. Range: (0, 365]. */
  readonly daysBetweenWettings: number
  /** Texture of the soil; only wettings above 10 mm depend on it. */
  readonly texture: SoilTextureClass
  /** Share of the ground that is wetted; the whole by default. Unit: 1. Range: (0, 1]. */
  readonly wettedShare?: GroundFraction
}

/** The coefficient of the initial stage and what it was made from. */
export interface InitialCoefficient {
  /** Coefficient of the whole ground. Unit: 1. */
  readonly coefficient: CropCoefficient
  /** Coefficient of the wetted part. Unit: 1. */
  readonly wettedCoefficient: CropCoefficient
  /** Coefficient after light wettings of 10 mm. Unit: 1. */
  readonly lightCoefficient: CropCoefficient
  /** Coefficient after heavy wettings of 40 mm. Unit: 1. */
  readonly heavyCoefficient: CropCoefficient
  /** Depth of water on the wetted part. Unit: mm. */
  readonly wettedInfiltration: WaterDepth
  /** Evapotranspiration of the initial stage. Unit: mm/d. */
  readonly cropET: CropET
}

/**
 * Crop coefficient of the initial stage, when nearly all water leaves from the soil: the curves of Figures 29 and 30 by the
 * equations they were drawn from, with the depths between by a straight line.
 *
 * While the surface stays wet (interval up to t1) the coefficient is 1.15. Partial wetting raises the depth on the wetted part and
 * counts that part only.
 *
 * @equation `K_{c,ini} = \frac{TEW - (TEW - REW)\exp\left(\frac{-(t_w - t_1)\,E_{so}\left(1 + \frac{REW}{TEW - REW}\right)}{TEW}\right)}{t_w\,ET_o}, \quad E_{so} = 1.15\,ET_o, \quad t_1 = \frac{REW}{E_{so}}`
 * @param input - Interval, reference evapotranspiration, depth, texture and wetted share.
 * @returns Coefficients for the whole ground and for its parts.
 * @throws `DomainError` outside the ranges, `InputError` for an unknown texture.
 * @validity Bare or nearly bare field soil; a container with a covered surface loses less.
 * @source allen-1998, Eq. 59 to 61 and Annex 7, Eq. 7-3 and 7-4 with the parameters of Figures 29 and 30 on p. 267 and 268
 * @example
 * initialCropCoefficientFao56({
 *   daysBetweenWettings: 3.5, referenceET: millimetresPerDay(5), infiltration: millimetresOfDepth(20), texture: 'coarse',
 * }) // => { lightCoefficient: 0.533, heavyCoefficient: 0.750, coefficient: 0.605 }
 */
export function initialCropCoefficientFao56(input: InitialCoefficientInput): InitialCoefficient {
  const interval = numberIn(optionsOf(input).daysBetweenWettings, WETTING_INTERVAL, 'daysBetweenWettings')
  const reference = numberIn(input.referenceET, REFERENCE_ET, 'referenceET')
  const wettedShare = numberIn(optionOr(input.wettedShare, 1), WETTED_GROUND, 'wettedShare')
  const root = Math.sqrt(reference)
  const lightCoefficient = afterWetting(interval, reference, 10, Math.min(Math.max(2.5, 6 / root), 7))
  const [max, rise, readily] = heavySoil(input.texture)
  const evaporable = Math.min(max, rise * root)
  const heavyCoefficient = afterWetting(interval, reference, evaporable, Math.min(readily, evaporable - 0.01))
  const wettedInfiltration = (numberIn(input.infiltration, WATER_DEPTH, 'infiltration') / wettedShare) as WaterDepth
  const wettedCoefficient = initialCoefficientBetweenWettings({
    lightCoefficient,
    heavyCoefficient,
    infiltration: wettedInfiltration,
  })
  const coefficient = (wettedShare * wettedCoefficient) as CropCoefficient
  return {
    coefficient,
    wettedCoefficient,
    lightCoefficient,
    heavyCoefficient,
    wettedInfiltration,
    cropET: (coefficient * reference) as CropET,
  }
}

/** Coefficients after light and heavy wettings, and a depth between. */
export interface WettingDepthInput extends Wetting {
  /** Coefficient after wettings of 10 mm. Unit: 1. Range: [0, 3]. */
  readonly lightCoefficient: CropCoefficient
  /** Coefficient after wettings of 40 mm. Unit: 1. Range: [0, 3]. */
  readonly heavyCoefficient: CropCoefficient
}

/**
 * Coefficient of the initial stage for a depth of wetting between light (10 mm) and heavy (40 mm); beyond these it stays.
 *
 * @equation `K_{c,ini} = K_{10} + \frac{I - 10}{40 - 10}\,(K_{40} - K_{10})`
 * @returns Coefficient. Unit: 1.
 * @source allen-1998, Eq. 59
 * @example
 * initialCoefficientBetweenWettings({
 *   lightCoefficient: cropCoefficient(0.85), heavyCoefficient: cropCoefficient(1.15), infiltration: millimetresOfDepth(30),
 * }) // => 1.05
 */
export function initialCoefficientBetweenWettings(input: WettingDepthInput): CropCoefficient {
  const light = numberIn(optionsOf(input).lightCoefficient, CROP_COEFFICIENT, 'lightCoefficient')
  const heavy = numberIn(input.heavyCoefficient, CROP_COEFFICIENT, 'heavyCoefficient')
  const share = Math.min(Math.max((numberIn(input.infiltration, WATER_DEPTH, 'infiltration') - 10) / 30, 0), 1)
  return (light + share * (heavy - light)) as CropCoefficient
}

/** Rain and the size of a typical shower. */
export interface RainEventsInput {
  /** Rain in the time that is looked at. Unit: mm. Range: [0, 10000]. */
  readonly rain: WaterDepth
  /** Typical depth of one rain. Unit: mm. Range: (0, 10000]. */
  readonly typicalDepth: WaterDepth
}

/**
 * Number of rains that make up a sum, for the mean time between wettings where only sums are known.
 *
 * @equation `n = P / P_{typ}`
 * @returns Number of rains. Unit: 1.
 * @source allen-1998, Example 23
 * @example
 * rainEvents({ rain: millimetresOfDepth(300), typicalDepth: millimetresOfDepth(20) }) // => 15
 */
export function rainEvents(input: RainEventsInput): number {
  const rain = numberIn(optionsOf(input).rain, WATER_DEPTH, 'rain')
  return answerOf(rain / numberIn(input.typicalDepth, TYPICAL_RAIN, 'typicalDepth'), 'typicalDepth')
}

function afterWetting(interval: number, reference: number, evaporable: number, readily: number): CropCoefficient {
  const potential = 1.15 * reference
  const wetTime = readily / potential
  if (interval <= wetTime) return 1.15 as CropCoefficient
  const rest = evaporable - readily
  const decline = Math.exp((-(interval - wetTime) * potential * (1 + readily / rest)) / evaporable)
  return ((evaporable - rest * decline) / (interval * reference)) as CropCoefficient
}

/** Largest evaporable water, its rise with the root of ETo, and the readily evaporable water, all in mm. */
function heavySoil(texture: SoilTextureClass): readonly [number, number, number] {
  if (texture === 'coarse') return [15, 7, 6]
  if (texture === 'medium' || texture === 'fine') return [28, 13, 9]
  throw new InputError('texture', 'is none of the three', "give 'coarse', 'medium' or 'fine'")
}
