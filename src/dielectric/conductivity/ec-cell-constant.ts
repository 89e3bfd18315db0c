import type { CellConstant, Conductance, MeasuredEC } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { CELL_CONSTANT, CONDUCTANCE, CONDUCTIVITY, STANDARD_CONDUCTIVITY } from '../domains.js'
import type { CellConductance, CellConstantTerm } from '../terms.js'

/** A cell in a standard solution. */
export interface CellInStandard extends CellConductance {
  /** Conductivity of the standard at its temperature. Unit: dS/m. Range: (0, ∞). */
  readonly standard: MeasuredEC
}

/** A cell in a sample. */
export interface CellInSample extends CellConductance, CellConstantTerm {}

/** A cell and a water. */
export interface CellInWater extends CellConstantTerm {
  /** Conductivity at the temperature of the water. Unit: dS/m. Range: [0, ∞). */
  readonly conductivity: MeasuredEC
}

/**
 * Cell constant of a conductivity cell or probe from a reading in a standard solution.
 *
 * ```math
 * K = \frac{\sigma}{10\,G}
 * ```
 *
 * The 10 takes dS/m to S/m. Read standard and cell at the same temperature, without correction.
 *
 * @param reading - Conductivity of the standard and conductance of the cell.
 * @returns Cell constant. Unit: 1/m.
 * @throws `DomainError` outside the ranges.
 * @source definition
 * @example
 * ```ts
 * inCellConstantPerCentimetre(
 *   cellConstant({
 *     standard: molalPotassiumChloride({ molality: 0.01, temperature: celsius(25) }),
 *     conductance: millisiemens(1.352),
 *   }),
 * ) // => 1.04159
 * ```
 */
export function cellConstant(reading: CellInStandard): CellConstant {
  return (numberIn(optionsOf(reading).standard, STANDARD_CONDUCTIVITY, 'standard') /
    (10 * numberIn(reading.conductance, CONDUCTANCE, 'conductance'))) as CellConstant
}

/**
 * Electrical conductivity of a sample from the conductance that a cell shows.
 *
 * ```math
 * \sigma = 10\,K\,G
 * ```
 *
 * @param reading - Cell constant and conductance.
 * @returns Conductivity at the temperature of the sample. Unit: dS/m.
 * @throws `DomainError` outside the ranges.
 * @source definition
 * @example
 * ```ts
 * conductivityOfSample({ cellConstant: cellConstantPerCentimetre(1), conductance: millisiemens(2) }) // => 2
 * ```
 */
export function conductivityOfSample(reading: CellInSample): MeasuredEC {
  return (10 *
    numberIn(optionsOf(reading).cellConstant, CELL_CONSTANT, 'cellConstant') *
    numberIn(reading.conductance, CONDUCTANCE, 'conductance')) as MeasuredEC
}

/**
 * Conductance that a cell shows in water of known conductivity.
 *
 * ```math
 * G = \frac{\sigma}{10\,K}
 * ```
 *
 * @param cell - Cell constant and conductivity.
 * @returns Conductance. Unit: S.
 * @throws `DomainError` outside the ranges.
 * @source definition
 * @example
 * ```ts
 * inMillisiemens(conductanceOfCell({ cellConstant: cellConstantPerCentimetre(1), conductivity: decisiemensPerMetre(2) })) // => 2
 * ```
 */
export function conductanceOfCell(cell: CellInWater): Conductance {
  return (numberIn(optionsOf(cell).conductivity, CONDUCTIVITY, 'conductivity') /
    (10 * numberIn(cell.cellConstant, CELL_CONSTANT, 'cellConstant'))) as Conductance
}
