import type { Permittivity, Temperature, WaterDensity } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { TEMPERATURE_IAPWS_R8, WATER_DENSITY } from './domains.js'

/** Constants that the release prescribes, in SI units. */
const AVOGADRO = 6.0221367e23
const BOLTZMANN = 1.380658e-23
const DIPOLE = 6.138e-30
const POLARISABILITY = 1.636e-40
const VACUUM = 8.854187817620389e-12
const MOLAR_MASS = 0.018015268
const CRITICAL_TEMPERATURE = 647.096
const CRITICAL_DENSITY = 322

/** Table 1 of the release: coefficient, power of density, power of inverse temperature. */
const TERMS: readonly (readonly [number, number, number])[] = [
  [0.978224486826, 1, 0.25],
  [-0.957771379375, 1, 1],
  [0.237511794148, 1, 2.5],
  [0.714692244396, 2, 1.5],
  [-0.298217036956, 3, 1.5],
  [-0.108863472196, 3, 2.5],
  [0.949327488264e-1, 4, 2],
  [-0.980469816509e-2, 5, 2],
  [0.16516763497e-4, 6, 5],
  [0.937359795772e-4, 7, 0.5],
  [-0.12317921872e-9, 10, 10],
]

/** Water at a temperature and density. */
export interface WaterState {
  /** Water temperature. Unit: °C. Range: [-35, 600]. */
  readonly temperature: Temperature
  /** Water density. Unit: g/cm³. Range: (0, 1.3]. */
  readonly density: WaterDensity
}

/** Where IAPWS R8-97 holds. */
export const validityIapwsR8: Validity = {
  of: 'waterPermittivityIapwsR8',
  note: 'fluid water up to 1000 MPa',
  inputs: {
    temperature: { min: -35, max: 600, unit: '°C' },
    density: { min: 0, max: 1.25, unit: 'g/cm³' },
  },
}

/**
 * Static permittivity of fluid water from temperature and density after IAPWS R8-97.
 *
 * @equation `\varepsilon_w = \frac{1 + A + 5B + \sqrt{9 + 2A + 18B + A^2 + 10AB + 9B^2}}{4 - 4B}, \quad A = \frac{N_A\mu^2\rho\,g}{M\varepsilon_0 kT}, \quad B = \frac{N_A\alpha\rho}{3M\varepsilon_0}`
 * @equation `g = 1 + \sum_{h=1}^{11} N_h\left(\frac{\rho}{\rho_c}\right)^{i_h}\left(\frac{T_c}{T}\right)^{j_h} + N_{12}\frac{\rho}{\rho_c}\left(\frac{T}{228} - 1\right)^{-1.2}`
 * @returns Relative permittivity. Unit: 1.
 * @validity Fluid water, 238 to 873 K, up to 1000 MPa, density up to 1.25 g/cm³.
 * @source iapws-r8-1997; fernandez-1997
 * @example
 * waterPermittivityIapwsR8({ temperature: celsius(0), density: kilogramsPerCubicMetre(999.843086) }) // => 87.903455
 */
export function waterPermittivityIapwsR8(water: WaterState): Permittivity {
  const kelvins = numberIn(optionsOf(water).temperature, TEMPERATURE_IAPWS_R8, 'temperature') + 273.15
  const density = numberIn(water.density, WATER_DENSITY, 'density') * 1000
  const reduced = density / CRITICAL_DENSITY
  const inverse = CRITICAL_TEMPERATURE / kelvins
  let g = 1 + 0.196096504426e-2 * reduced * (kelvins / 228 - 1) ** -1.2
  for (const [coefficient, i, j] of TERMS) g += coefficient * reduced ** i * inverse ** j
  const moles = (AVOGADRO * density) / MOLAR_MASS
  const a = (moles * DIPOLE ** 2 * g) / (VACUUM * BOLTZMANN * kelvins)
  const b = (moles * POLARISABILITY) / (3 * VACUUM)
  const root = Math.sqrt(9 + 2 * a + 18 * b + a * a + 10 * a * b + 9 * b * b)
  return ((1 + a + 5 * b + root) / (4 - 4 * b)) as Permittivity
}
