import * as porewater from 'porewater'
import {
  inKilogramsPerCubicMetre,
  kilogramsPerCubicMetre,
  type Temperature,
  validityOf,
  type WaterDensity,
  waterPermittivityIapwsR8,
  waterPermittivityIapwsSr6,
  waterPermittivitySlopeMalmbergMaryott1956,
  waterSurfaceTensionIapws,
  waterViscosityIapwsSr6,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { itRises } from '../support/round-trip.js'

type AtTemperature = (t: number) => number
const named = porewater as unknown as Record<string, AtTemperature & porewater.Validity>
const call = (name: string, t: number) => (named[name] as AtTemperature)(t)

const permittivities: [name: string, file: string, topic: string][] = [
  ['Kaatze1989', 'dielectric', 'water.permittivity.kaatze'],
  ['Weast1986', 'dielectric', 'water.permittivity.weast'],
  ['Crc2005', 'dielectric', 'water.permittivity.crc_kelvin'],
  ['IapwsSr6', 'dielectric', 'water.permittivity.iapws_sr6'],
]
for (const [name, file, topic] of permittivities)
  checkPublished(file, topic, ({ temperature }) => ({ eps: call(`waterPermittivity${name}`, temperature) }))
checkPublished('dielectric', 'water.permittivity.malmberg_maryott', ({ temperature }) => ({
  eps: call('waterPermittivityMalmbergMaryott1956', temperature),
  slope: waterPermittivitySlopeMalmbergMaryott1956(temperature),
}))
checkPublished('dielectric', 'water.permittivity.iapws_r8', ({ temperature, density }) => ({
  eps: waterPermittivityIapwsR8({ temperature, density: kilogramsPerCubicMetre(density) }),
}))
checkPublished('dielectric', 'water.viscosity.iapws_sr6', ({ temperature }) => ({
  viscosity: waterViscosityIapwsSr6(temperature),
}))
checkPublished('dielectric', 'water.surface_tension.iapws', ({ temperature }) => ({
  surface_tension: waterSurfaceTensionIapws(temperature),
}))
for (const [name, file, topic] of [
  ['Kell1975', 'dielectric', 'water.density.kell'],
  ['Tanaka2001', 'dielectric', 'water.density.tanaka'],
  ['JonesHarris1992', 'dielectric', 'water.density.its90_poly'],
] as const)
  checkPublished(file, topic, ({ temperature }) => ({
    density: inKilogramsPerCubicMetre(call(`waterDensity${name}`, temperature) as WaterDensity),
  }))

describe('permittivity of water', () => {
  // Printed in IAPWS R8-97 for 298.15 K and 0.1 MPa [not confirmed, source not seen].
  it('has the check value of IAPWS R8-97', () => {
    const density = kilogramsPerCubicMetre<WaterDensity>(997.047)
    expect(waterPermittivityIapwsR8({ temperature: 25 as Temperature, density })).toBeCloseTo(78.408, 2)
  })
  it('differs between the equations by no more than their sources say', () => {
    for (let t = 0; t <= 60; t += 5) {
      const best = waterPermittivityIapwsSr6(t as Temperature)
      for (const [name, most] of [
        ['MalmbergMaryott1956', 0.2],
        ['Kaatze1989', 0.06],
        ['Weast1986', 0.26],
        ['Crc2005', 0.25],
      ] as const)
        expect(Math.abs(call(`waterPermittivity${name}`, t) - best)).toBeLessThan(most)
    }
  })
  for (const name of ['MalmbergMaryott1956', ...permittivities.map(([first]) => first)])
    itRises(`the permittivity of cooling water (${name})`, -100, 0, (t) => call(`waterPermittivity${name}`, -t))
  it('has the slope of its curve (independent oracle: difference quotient)', () => {
    for (const t of [0, 25, 80]) {
      const rise =
        call('waterPermittivityMalmbergMaryott1956', t + 1e-3) - call('waterPermittivityMalmbergMaryott1956', t - 1e-3)
      expect(waterPermittivitySlopeMalmbergMaryott1956(t as Temperature)).toBeCloseTo(rise / 2e-3, 8)
    }
  })
})

describe('density of water', () => {
  it('differs between the equations by less than 0.02 kg/m³ from 5 to 40 °C', () => {
    for (let t = 5; t <= 40; t += 5) {
      const [a, b, c] = ['Kell1975', 'Tanaka2001', 'JonesHarris1992'].map((name) => call(`waterDensity${name}`, t))
      expect(Math.abs((a ?? 0) - (b ?? 9))).toBeLessThan(2e-5)
      expect(Math.abs((b ?? 0) - (c ?? 9))).toBeLessThan(2e-5)
    }
  })
  it('is greatest near 4 °C', () => {
    for (const name of ['Kell1975', 'Tanaka2001', 'JonesHarris1992']) {
      const at = (t: number) => call(`waterDensity${name}`, t)
      expect(at(4)).toBeGreaterThan(at(3))
      expect(at(4)).toBeGreaterThan(at(5))
    }
  })
  it('equals exact arithmetic on the coefficients of Kell 1975 at 20 °C (independent oracle)', () => {
    // All coefficients times 1e17, as whole numbers.
    const scaled = [
      99983952n * 10n ** 12n,
      16945176n * 10n ** 11n,
      -79870401n * 10n ** 7n,
      -46170461n * 10n ** 5n,
      10556302n * 10n ** 3n,
      -28054253n,
    ]
    const above = scaled.reduce((total, c, power) => total + c * 20n ** BigInt(power), 0n)
    const below = 10n ** 8n + 1687985n * 20n
    const density = Number((above * 10n ** 8n) / below) / 1e17
    expect(call('waterDensityKell1975', 20) * 1000).toBeCloseTo(density, 9)
  })
})

describe('viscosity and surface tension', () => {
  itRises('the viscosity of cooling water', -110, 20, (t) => waterViscosityIapwsSr6(-t as Temperature))
  itRises('the surface tension of cooling water', -370, 20, (t) => waterSurfaceTensionIapws(-t as Temperature))
  it('surface tension ends at the critical point', () => {
    expect(waterSurfaceTensionIapws(373.946 as Temperature)).toBeCloseTo(0, 12)
  })
  it('1.0016 mPa·s at 20 °C, the fixed point of viscometry (ISO/TR 3666)', () => {
    expect(waterViscosityIapwsSr6(20 as Temperature) * 1000).toBeCloseTo(1.0016, 4)
  })
})

describe('validity', () => {
  it.each([
    'MalmbergMaryott1956',
    'Kaatze1989',
    'Weast1986',
    'Crc2005',
    'IapwsSr6',
    'Kell1975',
    'Tanaka2001',
    'JonesHarris1992',
  ])('of %s is told', (name) => {
    const validity = named[`validity${name}`] as porewater.Validity
    expect(named[validity.of]).toBeTypeOf('function')
    expect(validityOf(validity, { temperature: 20 })).toEqual([])
    expect(validityOf(validity, { temperature: 200 })).toHaveLength(1)
  })
})
