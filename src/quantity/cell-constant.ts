import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Cell constant of a conductivity cell or probe. Unit: 1/m. */
export type CellConstant = number &
  Kind<'cell constant in 1/m, from cellConstantPerMetre() or cellConstantPerCentimetre()'>

const CELL_CONSTANT: Domain = {
  quantity: 'cell constant',
  unit: '1/m',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a cell constant above zero; common cells have about 100 1/m, which is 1 1/cm',
}

/**
 * Cell constant of a conductivity cell or probe, from a number in 1/m.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in 1/m. Unit: 1/m. Range: (0, ∞).
 * @returns Cell constant of a conductivity cell or probe. Unit: 1/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * cellConstantPerMetre(2) // => 2
 * ```
 */
export function cellConstantPerMetre(value: number): CellConstant {
  return numberIn(value, CELL_CONSTANT) as CellConstant
}

/**
 * The number of 1/m in a quantity that cellConstantPerMetre() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Cell constant of a conductivity cell or probe. Unit: 1/m. Range: any.
 * @returns Plain number. Unit: 1/m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inCellConstantPerMetre(cellConstantPerMetre(2)) // => 2
 * ```
 */
export function inCellConstantPerMetre(quantity: CellConstant): number {
  return quantity
}

/**
 * Cell constant of a conductivity cell or probe, from a number in 1/cm.
 *
 * ```math
 * q = v \times 100
 * ```
 *
 * @param value - Number in 1/cm. Unit: 1/cm. Range: (0, ∞).
 * @returns Cell constant of a conductivity cell or probe. Unit: 1/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * cellConstantPerCentimetre(2) // => 200
 * ```
 */
export function cellConstantPerCentimetre(value: number): CellConstant {
  return convertedIn(value, value * 100, '1/cm', CELL_CONSTANT) as CellConstant
}

/**
 * The number of 1/cm in a quantity that cellConstantPerCentimetre() makes.
 *
 * ```math
 * v = q / 100
 * ```
 *
 * @param quantity - Cell constant of a conductivity cell or probe. Unit: 1/m. Range: any.
 * @returns Plain number. Unit: 1/cm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inCellConstantPerCentimetre(cellConstantPerCentimetre(2)) // => 2
 * ```
 */
export function inCellConstantPerCentimetre(quantity: CellConstant): number {
  return quantity / 100
}
