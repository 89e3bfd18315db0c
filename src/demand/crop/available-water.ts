import { answerOf } from '../../quantity/answer.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { CropET, DepletionFraction, Share, WaterContent, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { CROP_ET, DEPLETION, LAYER_DEPTH, SOME_CROP_ET, TOTAL_AVAILABLE, WATER_DEPTH } from '../domains.js'
import type { CropUse, FieldCapacity, RootDepth, SoilWater, WaterShortage } from '../terms.js'

/** A root zone of one soil. */
export interface RootZone extends RootDepth, SoilWater {}

/**
 * Water that a full root zone holds above the wilting point.
 *
 * @equation `TAW = 1000\,(\theta_{FC} - \theta_{WP})\,Z_r`
 * @param zone - Water contents and root depth (in metres in the equation).
 * @returns Total available water. Unit: mm.
 * @throws `DomainError` outside the ranges, `InputError` when the wilting point is not below field capacity.
 * @source allen-1998, Eq. 82
 * @example
 * totalAvailableWater({ fieldCapacity: waterContent(0.25), wiltingPoint: waterContent(0.12), rootDepth: metres(0.5) }) // => 65
 */
export function totalAvailableWater(zone: RootZone): WaterDepth {
  const { fieldCapacity, wiltingPoint, rootDepth } = optionsOf(zone)
  const water =
    numberIn(fieldCapacity, WATER_CONTENT, 'fieldCapacity') - numberIn(wiltingPoint, WATER_CONTENT, 'wiltingPoint')
  if (water <= 0) {
    throw new InputError('wiltingPoint', 'it is not below field capacity', 'check that the two are not swapped')
  }
  return (10 * water * numberIn(rootDepth, LAYER_DEPTH, 'rootDepth')) as WaterDepth
}

/** Available water and the share that may be used. */
export interface ReadilyAvailableInput {
  /** Total available water. Unit: mm. Range: [0, 10000]. */
  readonly totalAvailable: WaterDepth
  /** Share of it that may be used without stress. Unit: 1. Range: [0, 1). */
  readonly depletionFraction: DepletionFraction
}

/**
 * Water that roots can take before the crop is short of it.
 *
 * @equation `RAW = p\,TAW`
 * @returns Readily available water. Unit: mm.
 * @source allen-1998, Eq. 83
 * @example
 * readilyAvailableWater({ totalAvailable: millimetresOfDepth(160), depletionFraction: fraction(0.4) }) // => 64
 */
export function readilyAvailableWater(input: ReadilyAvailableInput): WaterDepth {
  const { totalAvailable, depletionFraction } = optionsOf(input)
  return (numberIn(depletionFraction, DEPLETION, 'depletionFraction') *
    numberIn(totalAvailable, WATER_DEPTH, 'totalAvailable')) as WaterDepth
}

/** A tabled depletion fraction and the demand of the day. */
export interface DepletionAdjustmentInput extends CropUse {
  /** Tabled depletion fraction, for 5 mm/d. Unit: 1. Range: [0, 1). */
  readonly tabled: DepletionFraction
}

/**
 * Depletion fraction for the demand of a day: on hot, dry days stress begins with more water left. Kept within 0.1 and 0.8.
 *
 * @equation `p = \min\left(0.8, \max\left(0.1,\; p_{tab} + 0.04\,(5 - ET_c)\right)\right)`
 * @returns Depletion fraction. Unit: 1.
 * @source allen-1998, Table 22, footnote 2
 * @example
 * adjustedDepletionFraction({ tabled: fraction(0.4), cropET: millimetresPerDay(2) }) // => 0.52
 */
export function adjustedDepletionFraction(input: DepletionAdjustmentInput): DepletionFraction {
  const { tabled, cropET } = optionsOf(input)
  const moved = numberIn(tabled, DEPLETION, 'tabled') + 0.04 * (5 - numberIn(cropET, CROP_ET, 'cropET'))
  return Math.min(0.8, Math.max(0.1, moved)) as DepletionFraction
}

/** How dry a root zone is. */
export interface StressInput extends WaterShortage {
  /** Share of the available water that may be used without stress. Unit: 1. Range: [0, 1). */
  readonly depletionFraction: DepletionFraction
}

/**
 * Share of the full transpiration that a dry root zone still allows: the water stress coefficient.
 *
 * @equation `K_s = \min\left(1, \max\left(0, \frac{TAW - D_r}{(1 - p)\,TAW}\right)\right)`
 * @returns Stress coefficient, 1 without stress. Unit: 1.
 * @source allen-1998, Eq. 84
 * @example
 * waterStressCoefficient({
 *   totalAvailable: millimetresOfDepth(160), depletion: millimetresOfDepth(67), depletionFraction: fraction(0.4),
 * }) // => 0.97
 */
export function waterStressCoefficient(input: StressInput): Share {
  const { totalAvailable, depletion, depletionFraction } = optionsOf(input)
  const total = numberIn(totalAvailable, TOTAL_AVAILABLE, 'totalAvailable')
  const left = total - numberIn(depletion, WATER_DEPTH, 'depletion')
  return Math.min(
    1,
    Math.max(0, left / ((1 - numberIn(depletionFraction, DEPLETION, 'depletionFraction')) * total)),
  ) as Share
}

/** A measured water content and the root zone it belongs to. */
export interface RootZoneDepletionInput extends RootDepth, FieldCapacity {
  /** Mean water content of the root zone. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/**
 * Water that is missing in a root zone to field capacity; negative while it is wetter.
 *
 * @equation `D_r = 1000\,(\theta_{FC} - \theta)\,Z_r`
 * @param input - Field capacity, water content and root depth (in metres in the equation).
 * @returns Depletion. Unit: mm.
 * @source allen-1998, Eq. 87
 * @example
 * rootZoneDepletion({ fieldCapacity: waterContent(0.3), waterContent: waterContent(0.24), rootDepth: metres(0.5) }) // => 30.0
 */
export function rootZoneDepletion(input: RootZoneDepletionInput): WaterDepth {
  const { fieldCapacity, waterContent, rootDepth } = optionsOf(input)
  return (10 *
    (numberIn(fieldCapacity, WATER_CONTENT, 'fieldCapacity') - numberIn(waterContent, WATER_CONTENT, 'waterContent')) *
    numberIn(rootDepth, LAYER_DEPTH, 'rootDepth')) as WaterDepth
}

/** Water at hand and how fast it goes. */
export interface DaysOfWaterInput {
  /** Water that may be used. Unit: mm. Range: [0, 10000]. */
  readonly available: WaterDepth
  /** Crop evapotranspiration. Unit: mm/d. Range: (0, 90]. */
  readonly cropET: CropET
}

/**
 * How long available water lasts, the longest interval between irrigations.
 *
 * @equation `t = RAW / ET_c`
 * @returns Time. Unit: d.
 * @source allen-1998, chapter 8
 * @example
 * daysOfWater({ available: millimetresOfDepth(23.6), cropET: millimetresPerDay(4) }) // => 5.9
 */
export function daysOfWater(input: DaysOfWaterInput): number {
  const { available, cropET } = optionsOf(input)
  return answerOf(numberIn(available, WATER_DEPTH, 'available') / numberIn(cropET, SOME_CROP_ET, 'cropET'), 'cropET')
}
