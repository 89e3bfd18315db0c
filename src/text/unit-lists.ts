/** One way of writing a unit: as it is shown, as its UCUM code, and as the parser reads it. */
export interface UnitSpelling {
  readonly shown: string
  readonly ucum: string
  readonly parsed: string
}

/** The units of a kind. The first is the one in which numbers are kept. */
export type UnitList = readonly [UnitSpelling, ...UnitSpelling[]]

/** Units that several kinds share. */
export const VAPOUR_PRESSURE: UnitList = [
  { shown: 'kPa', ucum: 'kPa', parsed: 'kPa' },
  { shown: 'hPa', ucum: 'hPa', parsed: 'hPa' },
  { shown: 'mbar', ucum: 'mbar', parsed: 'mbar' },
  { shown: 'bar', ucum: 'bar', parsed: 'bar' },
]
export const CONDUCTIVITY: UnitList = [
  { shown: 'dS/m', ucum: 'dS/m', parsed: 'dS/m' },
  { shown: 'mS/cm', ucum: 'mS/cm', parsed: 'mS/cm' },
  { shown: 'µS/cm', ucum: 'uS/cm', parsed: 'uS/cm' },
  { shown: 'S/m', ucum: 'S/m', parsed: 'S/m' },
]
export const DENSITY: UnitList = [
  { shown: 'g/cm³', ucum: 'g/cm3', parsed: 'g/cm^3' },
  { shown: 'kg/m³', ucum: 'kg/m3', parsed: 'kg/m^3' },
]
export const DAILY_DEPTH: UnitList = [
  { shown: 'mm/d', ucum: 'mm/d', parsed: 'mm/d' },
  { shown: 'in/d', ucum: '[in_i]/d', parsed: 'in/d' },
]
export const HOURLY_DEPTH: UnitList = [
  { shown: 'mm/h', ucum: 'mm/h', parsed: 'mm/h' },
  { shown: 'in/h', ucum: '[in_i]/h', parsed: 'in/h' },
]
export const DAILY_RADIATION: UnitList = [
  { shown: 'MJ/m²/d', ucum: 'MJ/(m2.d)', parsed: 'MJ/(m^2 d)' },
  { shown: 'J/cm²/d', ucum: 'J/(cm2.d)', parsed: 'J/(cm^2 d)' },
  { shown: 'W/m²', ucum: 'W/m2', parsed: 'W/m^2' },
]
export const HOURLY_RADIATION: UnitList = [
  { shown: 'MJ/m²/h', ucum: 'MJ/(m2.h)', parsed: 'MJ/(m^2 h)' },
  { shown: 'W/m²', ucum: 'W/m2', parsed: 'W/m^2' },
]
export const SHARE: UnitList = [
  { shown: '1', ucum: '1', parsed: '' },
  { shown: '%', ucum: '%', parsed: '%' },
]
export const DEGREES: UnitList = [{ shown: '°', ucum: 'deg', parsed: 'deg' }]
export const PLAIN_RATIO: UnitList = [{ shown: '1', ucum: '1', parsed: '' }]
