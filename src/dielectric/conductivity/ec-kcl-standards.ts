import { InputError } from '../../quantity/errors.js'
import type { MeasuredEC, Temperature } from '../../quantity/generated/kinds.js'
import { booleanOf, optionOr, plain, requireObject } from '../../quantity/guard.js'
import { asName } from '../../quantity/one-of.js'

/** Temperature in °C; 0.01, 0.1 and 1 mol/kg; water saturated with the carbon dioxide of the air. All in µS/cm. Zero marks a value that the table does not have. */
const MOLAL: readonly (readonly [number, number, number, number, number])[] = [
  [0, 772.92, 7116.85, 63488, 0.58],
  [5, 890.96, 8183.7, 72030, 0.68],
  [10, 1013.95, 9291.72, 80844, 0.79],
  [15, 1141.45, 10437.1, 89900, 0.89],
  [18, 1219.93, 11140.6, 0, 0.95],
  [20, 1273.03, 11615.9, 99170, 0.99],
  [25, 1408.23, 12824.6, 108620, 1.1],
  [30, 1546.63, 14059.2, 118240, 1.2],
  [35, 1687.79, 15316, 127970, 1.3],
  [40, 1831.27, 16591, 137810, 1.4],
  [45, 1976.62, 17880.6, 147720, 1.51],
  [50, 2123.43, 19180.9, 157670, 1.61],
]
/** Temperature in °C; solutions A, B and C in dS/m. The row at 0 °C is not confirmed. */
const DEMAL: readonly (readonly [number, number, number, number])[] = [
  [0, 65.14, 7.134, 0.7733],
  [15, 92.12, 10.455, 1.1414],
  [18, 97.8, 11.163, 1.22],
  [20, 101.7, 11.644, 1.2737],
  [25, 111.31, 12.852, 1.4083],
  [35, 131.1, 15.353, 1.6876],
]

/** A potassium chloride solution made up by mole of salt and kilogram of water. */
export interface MolalStandard {
  /** Moles of potassium chloride per kilogram of water. */
  readonly molality: 0.01 | 0.1 | 1
  /** Temperature, one of the rows of the table. Unit: °C. Range: any of 0, 5, 10, 15, 18, 20, 25, 30, 35, 40, 45, 50. */
  readonly temperature: Temperature
  /** Whether the conductivity of the water itself is added, as a cell shows it; it is not if left out. */
  readonly withWater?: boolean | undefined
}

/** A potassium chloride solution of OIML R 56: A has 71.1352 g, B 7.41913 g and C 0.745263 g in a kilogram of solution. */
export interface DemalStandard {
  /** Name of the solution in the recommendation. */
  readonly solution: 'A' | 'B' | 'C'
  /** Temperature, one of the rows of the table. Unit: °C. Range: any of 0, 15, 18, 20, 25, 35. */
  readonly temperature: Temperature
}

/**
 * Electrical conductivity of a molal potassium chloride solution for calibrating conductivity cells.
 *
 * Good to 0.03 % (0.01 mol/kg) and 0.04 %. The conductivity of water in balance with the air has been taken off; a cell filled with
 * the solution shows it too, 1.10 µS/cm at 25 °C. Only the printed temperatures are given: thermostat the solution.
 *
 * @procedure Looks up the printed value of the temperature; there is no interpolation.
 * @returns Conductivity at that temperature. Unit: dS/m.
 * @throws `InputError` for a molality or temperature that the table does not have.
 * @source pratt-2001; the table of the CRC Handbook of Chemistry and Physics was read
 * @example
 * molalPotassiumChloride({ molality: 0.01, temperature: celsius(25) }) // => 1.40823
 */
export function molalPotassiumChloride(standard: MolalStandard): MeasuredEC {
  requireObject(standard, 'standard')
  const column = [0.01, 0.1, 1].indexOf(standard.molality) + 1
  const row = rowAt(MOLAL, standard.temperature)
  const value = row[column]!
  if (column === 0 || value === 0)
    throw new InputError(
      'molality',
      `the table has no ${plain(standard.molality)} mol/kg at ${plain(standard.temperature)} °C`,
      'it has 0.01 and 0.1 at every temperature, and 1 at every one but 18 °C',
    )
  const water = booleanOf(optionOr(standard.withWater, false), 'withWater') ? row[4] : 0
  return ((value + water) / 1000) as MeasuredEC
}

/**
 * Electrical conductivity of a potassium chloride solution of OIML R 56.
 *
 * They are weighed in another way than the molal solutions of nearly the same number: take one table or the other.
 *
 * @procedure Looks up the printed value of the temperature; there is no interpolation.
 * @returns Conductivity at that temperature. Unit: dS/m.
 * @throws `InputError` for a solution or temperature that the table does not have.
 * @source oiml-r56-1981; 15 to 35 °C seen in a reprint, 0 °C [not confirmed, source not seen]
 * @example
 * demalPotassiumChloride({ solution: 'C', temperature: celsius(25) }) // => 1.4083
 */
export function demalPotassiumChloride(standard: DemalStandard): MeasuredEC {
  requireObject(standard, 'standard')
  const column = ['A', 'B', 'C'].indexOf(standard.solution) + 1
  if (column === 0)
    throw new InputError('solution', `${asName(standard.solution)} is not in the table`, 'take A, B or C')
  return rowAt(DEMAL, standard.temperature)[column]! as MeasuredEC
}

function rowAt<Row extends readonly number[]>(table: readonly Row[], temperature: number): Row {
  const row = table.find(([printed]) => printed === temperature)
  if (row === undefined)
    throw new InputError(
      'temperature',
      `the table has no ${plain(temperature)} °C`,
      `thermostat the solution to one of ${table.map(([printed]) => printed).join(', ')} °C`,
    )
  return row
}
