import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Dry mass of medium per volume of medium. Unit: g/cm³. */
export type BulkDensity = number &
  Kind<'bulk density in g/cm³, from gramsPerCubicCentimetre() or kilogramsPerCubicMetre()'>

/** Dry mass of solids per volume of solids. Unit: g/cm³. */
export type ParticleDensity = number &
  Kind<'particle density in g/cm³, from gramsPerCubicCentimetre() or kilogramsPerCubicMetre()'>

/** Density of water or nutrient solution. Unit: g/cm³. */
export type WaterDensity = number &
  Kind<'water density in g/cm³, from gramsPerCubicCentimetre() or kilogramsPerCubicMetre()'>

/** What a unit constructor gives when nothing says which kind is meant; no function takes it. */
export type UnnamedDensity = number &
  Kind<'density of something unnamed: annotate it as BulkDensity, ParticleDensity or WaterDensity'>

/** Any kind that is given in g/cm³. The place where a value is used says which one it is. */
export type AnySolidDensity = BulkDensity | ParticleDensity | WaterDensity

const DENSITY: Domain = {
  quantity: 'density',
  unit: 'g/cm³',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a density above zero; check whether it is in g/cm³ or kg/m³',
}

/**
 * Density from a number in g/cm³; its kind is that of the place where it is used.
 *
 * ```math
 * \rho = v
 * ```
 *
 * @param value - Number in g/cm³. Unit: g/cm³. Range: (0, ∞).
 * @returns Density. Unit: g/cm³.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * gramsPerCubicCentimetre(2) // => 2
 * ```
 */
export function gramsPerCubicCentimetre<Q extends AnySolidDensity | UnnamedDensity = UnnamedDensity>(value: number): Q {
  return numberIn(value, DENSITY) as Q
}

/**
 * The number of g/cm³ in a quantity that gramsPerCubicCentimetre() makes.
 *
 * ```math
 * v = \rho
 * ```
 *
 * @param quantity - Density. Unit: g/cm³. Range: any.
 * @returns Plain number. Unit: g/cm³.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inGramsPerCubicCentimetre(gramsPerCubicCentimetre(2)) // => 2
 * ```
 */
export function inGramsPerCubicCentimetre(quantity: AnySolidDensity | UnnamedDensity): number {
  return quantity
}

/**
 * Density from a number in kg/m³; its kind is that of the place where it is used.
 *
 * ```math
 * \rho = v / 1000
 * ```
 *
 * @param value - Number in kg/m³. Unit: kg/m³. Range: (0, ∞).
 * @returns Density. Unit: g/cm³.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * kilogramsPerCubicMetre(2) // => 0.002
 * ```
 */
export function kilogramsPerCubicMetre<Q extends AnySolidDensity | UnnamedDensity = UnnamedDensity>(value: number): Q {
  return convertedIn(value, value / 1000, 'kg/m³', DENSITY) as Q
}

/**
 * The number of kg/m³ in a quantity that kilogramsPerCubicMetre() makes.
 *
 * ```math
 * v = \rho \times 1000
 * ```
 *
 * @param quantity - Density. Unit: g/cm³. Range: any.
 * @returns Plain number. Unit: kg/m³.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inKilogramsPerCubicMetre(kilogramsPerCubicMetre(2)) // => 2
 * ```
 */
export function inKilogramsPerCubicMetre(quantity: AnySolidDensity | UnnamedDensity): number {
  return quantity * 1000
}
