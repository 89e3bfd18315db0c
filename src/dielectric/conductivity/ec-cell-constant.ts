import { answerOf } from '../../quantity/answer.js'
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
 * The 10 takes dS/m to S/m. Read standard and cell at the same temperature, without correction.
 *
 * @equation `K = \frac{\sigma}{10\,G}`
 * @returns Cell constant. Unit: 1/m.
 * @source definition
 * @example
 * inCellConstantPerCentimetre(
 *   cellConstant({
 *     standard: molalPotassiumChloride({ molality: 0.01, temperature: celsius(25) }),
 *     conductance: millisiemens(1.352),
 *   }),
 * ) // => 1.04159
 */
export function cellConstant(reading: CellInStandard): CellConstant {
  return answerOf(
    numberIn(optionsOf(reading).standard, STANDARD_CONDUCTIVITY, 'standard') /
      (10 * numberIn(reading.conductance, CONDUCTANCE, 'conductance')),
    'conductance',
  ) as CellConstant
}

/**
 * Electrical conductivity of a sample from the conductance that a cell shows.
 *
 * @equation `\sigma = 10\,K\,G`
 * @returns Conductivity at the temperature of the sample. Unit: dS/m.
 * @source definition
 * @example
 * conductivityOfSample({ cellConstant: cellConstantPerCentimetre(1), conductance: millisiemens(2) }) // => 2
 */
export function conductivityOfSample(reading: CellInSample): MeasuredEC {
  return answerOf(
    10 *
      numberIn(optionsOf(reading).cellConstant, CELL_CONSTANT, 'cellConstant') *
      numberIn(reading.conductance, CONDUCTANCE, 'conductance'),
    'cellConstant',
  ) as MeasuredEC
}

/**
 * Conductance that a cell shows in water of known conductivity.
 *
 * @equation `G = \frac{\sigma}{10\,K}`
 * @returns Conductance. Unit: S.
 * @source definition
 * @example
 * inMillisiemens(conductanceOfCell({ cellConstant: cellConstantPerCentimetre(1), conductivity: decisiemensPerMetre(2) })) // => 2
 */
export function conductanceOfCell(cell: CellInWater): Conductance {
  return answerOf(
    numberIn(optionsOf(cell).conductivity, CONDUCTIVITY, 'conductivity') /
      (10 * numberIn(cell.cellConstant, CELL_CONSTANT, 'cellConstant')),
    'cellConstant',
  ) as Conductance
}
