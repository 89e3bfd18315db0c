import type { Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { LIQUID_WATER } from '../../water/domains.js'
import { waterViscosityIapwsSr6 } from '../../water/viscosity-iapws-sr6.js'
import { TEMPERATURE_COEFFICIENT, TEMPERATURE_LINEAR, TEMPERATURE_SHEETS, VISCOSITY_EXPONENT } from '../domains.js'

/** A temperature and a coefficient for it. */
export interface LinearTemperature {
  /** Temperature of the sample. Unit: °C. Range: [-5, 100]. */
  readonly temperature: Temperature
  /** Coefficient referred to 25 °C. Unit: 1/K. Range: [0, 0.03]. */
  readonly coefficient: number
}

/** A temperature and how strongly the viscosity counts. */
export interface ViscousTemperature {
  /** Temperature of the sample. Unit: °C. Range: [-20, 110]. */
  readonly temperature: Temperature
  /** Power of the ratio of viscosities. Unit: 1. Range: [0.5, 1.2]. */
  readonly exponent: number
}

/** Where a constant coefficient was found good enough. */
export const validityEcTemperatureLinear: Validity = {
  of: 'ecTemperatureFactorLinear',
  note: 'natural waters, coefficients 0.0175 to 0.0198, error below 2 %',
  inputs: { temperature: { min: 10, max: 25, unit: '°C' }, coefficient: { min: 0.0175, max: 0.0198, unit: '1/K' } },
}

/** Where the curve of Sheets and Hendrickx (1995) was fitted. */
export const validityEcTemperatureSheetsHendrickx1995: Validity = {
  of: 'ecTemperatureFactorSheetsHendrickx1995',
  note: 'a fit to Handbook 60, Table 15',
  inputs: { temperature: { min: 3, max: 47, unit: '°C' } },
}

/**
 * Factor that takes a conductivity to 25 °C with a constant coefficient.
 *
 * A coefficient belongs to its reference temperature: 2 % a kelvin at 25 °C is not 2 % at 20 °C.
 *
 * @equation `f = \frac{1}{1 + \alpha(t - 25)}`
 * @returns Factor. Unit: 1.
 * @validity Natural waters from 10 to 25 °C, within 2 %.
 * @source hayashi-2004
 * @example
 * ecTemperatureFactorLinear({ temperature: celsius(15), coefficient: 0.0187 }) // => 1.230012
 */
export function ecTemperatureFactorLinear(sample: LinearTemperature): number {
  const warmer = numberIn(optionsOf(sample).temperature, TEMPERATURE_LINEAR, 'temperature') - 25
  return 1 / (1 + numberIn(sample.coefficient, TEMPERATURE_COEFFICIENT, 'coefficient') * warmer)
}

/**
 * Factor that takes a conductivity to 25 °C by an exponential curve.
 *
 * 0.9994 at 25 °C; 3.5 % below ISO 7888 at 0 °C and 1.0 % below it at 10 °C.
 *
 * @equation `f = 0.4470 + 1.4034\,e^{-t/26.815}`
 * @param temperature - Temperature of the sample. Unit: °C. Range: [-5, 60].
 * @returns Factor. Unit: 1.
 * @validity A fit to Handbook 60, Table 15, 3 to 47 °C.
 * @source sheets-1995, as restated in corwin-2005
 * @example
 * ecTemperatureFactorSheetsHendrickx1995(celsius(5)) // => 1.611667
 */
export function ecTemperatureFactorSheetsHendrickx1995(temperature: Temperature): number {
  return 0.447 + 1.4034 * Math.exp(-numberIn(temperature, TEMPERATURE_SHEETS) / 26.815)
}

/**
 * Factor that takes a conductivity to 25 °C because ions move as the viscosity of the water lets them.
 *
 * With k = 1 it is 5 % too strong at 0 °C. A k of 0.93 stays within 0.25 % of the ISO 7888 table because it was chosen on that
 * table: a smooth stand-in for it, no independent evidence.
 *
 * @equation `f = \left(\frac{\mu(t)}{\mu(25\,^\circ\mathrm C)}\right)^k`
 * @returns Factor. Unit: 1.
 * @source definition: rule of Walden, with the viscosity of iapws-sr6-2011
 * @example
 * ecTemperatureFactorViscosity({ temperature: celsius(10), exponent: 1 }) // => 1.467311
 */
export function ecTemperatureFactorViscosity(sample: ViscousTemperature): number {
  const temperature = numberIn(optionsOf(sample).temperature, LIQUID_WATER, 'temperature') as Temperature
  const ratio = waterViscosityIapwsSr6(temperature) / waterViscosityIapwsSr6(25 as Temperature)
  return ratio ** numberIn(sample.exponent, VISCOSITY_EXPONENT, 'exponent')
}
