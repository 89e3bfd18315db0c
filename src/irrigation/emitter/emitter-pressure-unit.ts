import { InputError } from '../../quantity/errors.js'
import { asName, hasRow } from '../../quantity/one-of.js'

/** The units of pressure to which a printed discharge coefficient may belong. */
export type EmitterPressureUnit = 'kPa' | 'bar' | 'psi' | 'metre-of-water'

const KILOPASCALS: Readonly<Record<EmitterPressureUnit, number>> = {
  kPa: 1,
  bar: 100,
  psi: 6.894757293168361,
  'metre-of-water': 9.80665,
}

/** How many kilopascals one unit of pressure is. */
export function kilopascalsIn(unit: EmitterPressureUnit): number {
  if (hasRow(KILOPASCALS, unit)) return KILOPASCALS[unit]
  const words = Object.keys(KILOPASCALS).join(', ')
  throw new InputError('pressureUnit', `${asName(unit)} is unknown`, `use one of ${words}`)
}
