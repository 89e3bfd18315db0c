import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Number of plants (or containers) on an area. Unit: 1/m². */
export type PlantDensity = number & Kind<'plants per square metre, from plantsPerSquareMetre()'>

/** Area of leaves (one side) per area of ground. Unit: m²/m². */
export type LeafAreaIndex = number & Kind<'leaf area index, from leafAreaIndex()'>

/** Crop evapotranspiration per reference evapotranspiration. Unit: 1. */
export type CropCoefficient = number & Kind<'crop coefficient, from cropCoefficient()'>

/** Volume of water that one plant uses in a day. Unit: L/d. */
export type PlantWaterUse = number & Kind<'water use in litres per plant and day, from litresPerPlantDay()'>

const PLANTS_PER_SQUARE_METRE: Domain = {
  quantity: 'plant density',
  unit: '1/m²',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a density above zero',
}

const LEAF_AREA_INDEX: Domain = {
  quantity: 'leaf area index',
  unit: 'm²/m²',
  min: 0,
  max: 20,
  ends: '[]',
  hint: 'give one-sided leaf area over ground area; canopies lie below 20',
}

const CROP_COEFFICIENT: Domain = {
  quantity: 'crop coefficient',
  unit: '1',
  min: 0,
  max: 3,
  ends: '[]',
  hint: 'crop coefficients lie between 0 and about 1.4',
}

const LITRES_PER_PLANT_DAY: Domain = {
  quantity: 'water use of a plant',
  unit: 'L/d',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a volume of zero or more',
}

/**
 * Number of plants, from a plain number.
 *
 * ```math
 * N = v
 * ```
 *
 * @param value - Number of plants. Unit: 1/m². Range: (0, ∞).
 * @returns Number of plants. Unit: 1/m².
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * plantsPerSquareMetre(2.5) // => 2.5
 * ```
 */
export function plantsPerSquareMetre(value: number): PlantDensity {
  return numberIn(value, PLANTS_PER_SQUARE_METRE) as PlantDensity
}

/**
 * Area of leaves, from a plain number.
 *
 * ```math
 * LAI = v
 * ```
 *
 * @param value - Area of leaves. Unit: m²/m². Range: [0, 20].
 * @returns Area of leaves. Unit: m²/m².
 * @throws `DomainError` outside the range.
 * @source FAO Irrigation and Drainage Paper 56 (1998), chapter 2
 * @example
 * ```ts
 * leafAreaIndex(3) // => 3
 * ```
 */
export function leafAreaIndex(value: number): LeafAreaIndex {
  return numberIn(value, LEAF_AREA_INDEX) as LeafAreaIndex
}

/**
 * Crop evapotranspiration per reference evapotranspiration, from a plain number.
 *
 * ```math
 * K_c = v
 * ```
 *
 * @param value - Crop evapotranspiration per reference evapotranspiration. Unit: 1. Range: [0, 3].
 * @returns Crop evapotranspiration per reference evapotranspiration. Unit: 1.
 * @throws `DomainError` outside the range.
 * @source FAO Irrigation and Drainage Paper 56 (1998), Eq. 58
 * @example
 * ```ts
 * cropCoefficient(1.15) // => 1.15
 * ```
 */
export function cropCoefficient(value: number): CropCoefficient {
  return numberIn(value, CROP_COEFFICIENT) as CropCoefficient
}

/**
 * Volume of water that one plant uses in a day, from a plain number.
 *
 * ```math
 * W = v
 * ```
 *
 * @param value - Volume of water that one plant uses in a day. Unit: L/d. Range: [0, ∞).
 * @returns Volume of water that one plant uses in a day. Unit: L/d.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * litresPerPlantDay(1.8) // => 1.8
 * ```
 */
export function litresPerPlantDay(value: number): PlantWaterUse {
  return numberIn(value, LITRES_PER_PLANT_DAY) as PlantWaterUse
}
