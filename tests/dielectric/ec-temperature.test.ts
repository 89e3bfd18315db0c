import {
  ecAsMeasured,
  ecAt25,
  ecTemperatureCoefficient,
  ecTemperatureFactorIso7888,
  ecTemperatureFactorLinear,
  ecTemperatureFactorSheetsHendrickx1995,
  ecTemperatureFactorViscosity,
  type MeasuredEC,
  type SolutionEC,
  type Temperature,
  validityEcTemperatureLinear,
  validityEcTemperatureSheetsHendrickx1995,
  validityOf,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { itIsUndone, itRises } from '../support/round-trip.js'

const both = (measured: number, factor: number) => ({
  factor,
  ec25: ecAt25({ measured: measured as MeasuredEC, factor }),
})
checkPublished('dielectric', 'ec.temperature.linear', ({ ec, temperature, alpha }) =>
  both(ec, ecTemperatureFactorLinear({ temperature, coefficient: alpha })),
)
checkPublished('dielectric', 'ec.temperature.iso7888', ({ ec, temperature }) =>
  both(ec, ecTemperatureFactorIso7888(temperature)),
)
checkPublished('dielectric', 'ec.temperature.sheets', ({ ec, temperature }) =>
  both(ec, ecTemperatureFactorSheetsHendrickx1995(temperature)),
)
checkPublished('dielectric', 'ec.temperature.viscosity', ({ ec, temperature, exponent }) =>
  both(ec, ecTemperatureFactorViscosity({ temperature, exponent })),
)
// The rows give µS/cm; the coefficient does not depend on the unit.
checkPublished('dielectric', 'ec.temperature.alpha', ({ ec1, ec2, t1, t2, ec25 }) => ({
  alpha: ecTemperatureCoefficient({
    first: ec1,
    firstTemperature: t1,
    second: ec2,
    secondTemperature: t2,
    at25: ec25,
  }),
}))

describe('temperature factors', () => {
  const at = (t: number) => t as Temperature
  itIsUndone('a factor', { ec: [0, 20], factor: [0.1, 10] }, 'ec', ({ ec, factor }) =>
    ecAsMeasured({ factor, at25: ecAt25<SolutionEC>({ factor, measured: ec as MeasuredEC }) }),
  )
  itRises('of ISO 7888 in a cooling sample', -35.9, 0, (t) => ecTemperatureFactorIso7888(at(-t)))
  itRises('of Sheets and Hendrickx 1995 in a cooling sample', -60, 5, (t) =>
    ecTemperatureFactorSheetsHendrickx1995(at(-t)),
  )
  itRises('linear, in a cooling sample', -100, 5, (t) =>
    ecTemperatureFactorLinear({ temperature: at(-t), coefficient: 0.019 }),
  )
  itRises('by viscosity, in a cooling sample', -110, 20, (t) =>
    ecTemperatureFactorViscosity({ temperature: at(-t), exponent: 1 }),
  )
  it('are 1 at 25 °C', () => {
    expect(ecTemperatureFactorLinear({ temperature: at(25), coefficient: 0.019 })).toBe(1)
    expect(ecTemperatureFactorIso7888(at(25))).toBe(1)
    expect(ecTemperatureFactorViscosity({ temperature: at(25), exponent: 0.93 })).toBe(1)
    expect(ecTemperatureFactorSheetsHendrickx1995(at(25))).toBeCloseTo(0.99944, 5)
  })
  it('agree as their sources say', () => {
    for (let t = 0; t <= 35; t += 1) {
      const iso = ecTemperatureFactorIso7888(at(t))
      const viscous = ecTemperatureFactorViscosity({ temperature: at(t), exponent: 0.93 })
      expect(Math.abs(viscous / iso - 1)).toBeLessThan(0.0026)
      expect(Math.abs(ecTemperatureFactorSheetsHendrickx1995(at(t)) / iso - 1)).toBeLessThan(0.036)
    }
  })
  it('tenths of a degree of the ISO 7888 table, rows 0, 10, 25 and 35 °C (read in a reprint)', () => {
    for (const [t, printed] of [
      [0.1, 1.912],
      [0.2, 1.906],
      [0.3, 1.899],
      [10.1, 1.424],
      [10.3, 1.416],
      [25.1, 0.998],
      [25.3, 0.994],
      [35.1, 0.82],
      [35.2, 0.819],
      [35.3, 0.817],
    ] as const)
      expect(Math.abs(ecTemperatureFactorIso7888(at(t)) - printed)).toBeLessThan(0.0016)
    // The last row is as its print says at its end.
    expect(ecTemperatureFactorIso7888(at(35.3))).toBeCloseTo(0.817, 9)
  })
  it('refuse what their sources do not cover', () => {
    expectDomainError(() => ecTemperatureFactorIso7888(at(36)), { quantity: 'temperature', min: 0, max: 35.9 })
    expectDomainError(() => ecTemperatureFactorIso7888(at(-0.1)), { quantity: 'temperature' })
    expectDomainError(() => ecTemperatureFactorLinear({ temperature: at(20), coefficient: 1.9 }), {
      quantity: 'temperature coefficient',
    })
    const one = 1 as MeasuredEC
    expectInputError(
      () =>
        ecTemperatureCoefficient({
          first: one,
          firstTemperature: at(20),
          second: one,
          secondTemperature: at(20),
          at25: 1 as SolutionEC,
        }),
      'firstTemperature, secondTemperature',
    )
  })
  it('say when they leave the span that was measured', () => {
    expect(validityOf(validityEcTemperatureLinear, { temperature: 30, coefficient: 0.019 })).toHaveLength(1)
    expect(validityOf(validityEcTemperatureSheetsHendrickx1995, { temperature: 2 })).toHaveLength(1)
  })
})
