import {
  type OxygenConcentration,
  oxygenSaturationBensonKrause1984,
  oxygenShareOfSaturation,
  type Pressure,
  type Salinity,
  type SolutionEC,
  salinityUsgs2011,
  type Temperature,
  validityBensonKrause1984,
  validityOf,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'
import { itRises } from '../support/round-trip.js'

// Rows give pressures in atmospheres and conductivity in µS/cm.
const water = (t: number, atmospheres?: number, salinity?: number) => ({
  temperature: t as Temperature,
  pressure: atmospheres === undefined ? undefined : ((atmospheres * 101.325) as Pressure),
  salinity: salinity as Salinity | undefined,
})
checkPublished('irrigation', 'oxygen.saturation', ({ T, S, P }) => ({
  DO: oxygenSaturationBensonKrause1984(water(T, P, S)),
}))
checkPublished('irrigation', 'oxygen.percent', ({ DO, T, S, P }) => ({
  percent: 100 * oxygenShareOfSaturation({ ...water(T, P, S), concentration: DO }),
}))
checkPublished('irrigation', 'oxygen.salinity', ({ SC }) => ({ S: salinityUsgs2011((SC / 1000) as SolutionEC) }))

describe('dissolved oxygen', () => {
  const at = (temperature: number, pressure = 101.325, salinity = 0) =>
    oxygenSaturationBensonKrause1984({
      temperature: temperature as Temperature,
      pressure: pressure as Pressure,
      salinity: salinity as Salinity,
    })
  itRises('in cooling water', -50, 0, (t) => at(-t))
  itRises('under rising pressure', 30, 200, (pressure) => at(20, pressure))
  itRises('as salt is taken away', -42, 0, (salinity) => at(20, 101.325, -salinity))
  it('takes sea level and fresh water where nothing is said', () => {
    expect(oxygenSaturationBensonKrause1984({ temperature: 20 as Temperature })).toBe(at(20))
  })
  it('may be more than saturation', () => {
    expect(
      oxygenShareOfSaturation({ temperature: 25 as Temperature, concentration: 12 as OxygenConcentration }),
    ).toBeGreaterThan(1.4)
  })
  it('says when it leaves the span that was measured', () => {
    expect(validityOf(validityBensonKrause1984, { temperature: 45, pressure: 101.325, salinity: 0 })).toHaveLength(1)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => at(-1), { quantity: 'water temperature', min: 0 })
    expectDomainError(() => at(20, 1), { quantity: 'pressure of the air' })
    expectDomainError(() => at(20, 101.325, 50), { quantity: 'salinity', max: 42 })
  })
})
