import {
  celsius,
  conductivityOfSalt,
  demalPotassiumChloride,
  ecTemperatureFactorIso7888,
  isPorewaterError,
  molalPotassiumChloride,
  percent,
  waterViscosityIapwsSr6,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkEveryCell } from '../support/printed-table.js'

/** The value in µS/cm, or null where the table has none. */
const orNull = (value: () => number): number | null => {
  try {
    return value() * 1000
  } catch (error) {
    if (isPorewaterError(error)) return null
    throw error
  }
}

describe('tables of conductivity', () => {
  checkEveryCell('potassiumChlorideMolal', 12, (degrees) => {
    const at = (molality: 0.01 | 0.1 | 1, withWater?: boolean) =>
      orNull(() => molalPotassiumChloride({ molality, temperature: celsius(degrees), withWater }))
    return [at(0.01), at(0.1), at(1), Number((at(0.01, true)! - at(0.01)!).toFixed(9))]
  })
  checkEveryCell('potassiumChlorideDemal', 5, (degrees) => {
    const of = (solution: 'A' | 'B' | 'C') => demalPotassiumChloride({ solution, temperature: celsius(degrees) })
    return [of('A'), of('B'), 1000 * of('C')]
  })
  checkEveryCell('saltsInWater', 8, (salt) =>
    [0.5, 1, 2, 5, 10, 15, 20, 25, 30, 40]
      .map((mass) => orNull(() => conductivityOfSalt({ salt, massFraction: percent(mass) })))
      .flatMap((value) => (value === null ? [] : [value / 1000])),
  )

  // No second print of the whole table of ISO 7888 was found: it is transcribed once, from a reprint. But it lies on a power of the
  // viscosity of water (IAPWS R12-08) that hardly changes with temperature. Three numbers were fitted to the 36 of the table (scipy's
  // least_squares, largest residual 0.00045); a last digit that is off by one then lies outside the rounding of the print.
  it('ISO 7888 lies on a smooth power of the viscosity of water, to the rounding of its print', () => {
    const viscosity = (t: number) => waterViscosityIapwsSr6(celsius(t))
    for (let t = 0; t <= 35; t++) {
      const exponent = 0.924405 - 3.38022e-4 * (t - 25) - 3.202e-6 * (t - 25) ** 2
      const smooth = (viscosity(t) / viscosity(25)) ** exponent
      expect(Math.abs(ecTemperatureFactorIso7888(celsius(t)) - smooth), `${t} °C`).toBeLessThan(0.0005)
    }
  })
})
