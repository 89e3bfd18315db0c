import {
  type AmountConcentration,
  apparentPermittivityLossy,
  centimetres,
  conductivityOnsager1927,
  decisiemensPerMetre,
  demalPotassiumChloride,
  gigahertz,
  inSeconds,
  type MeasuredEC,
  molalPotassiumChloride,
  permittivity,
  permittivityFromTravelTime,
  type Temperature,
  travelTimeFromPermittivity,
} from 'porewater'
import { describe, expect, it } from 'vitest'

describe('conductivities of single ions at 25 °C, in S·cm²/mol', () => {
  // As the CRC Handbook's table of ionic conductivities is commonly quoted (hydrogen and hydroxide also in the tests of public code; the
  // rest from memory, the book was not seen).
  const CATIONS = { H: 349.65, Li: 38.66, Na: 50.08, K: 73.48, NH4: 73.5 } as const
  const ANIONS = { OH: 198, F: 55.4, Cl: 76.31, Br: 78.1, NO3: 71.42, HCO3: 44.5, H2PO4: 36 } as const
  it('add up to the limit of every salt', () => {
    for (const [cation, plus] of Object.entries(CATIONS))
      for (const [anion, minus] of Object.entries(ANIONS)) {
        const { limiting } = conductivityOnsager1927({
          cation: cation as 'K',
          anion: anion as 'Cl',
          concentration: 1 as AmountConcentration,
        })
        expect(limiting, `${cation} ${anion}`).toBeCloseTo(plus + minus, 10)
      }
  })
})

describe('potassium chloride made up by mass of solution', () => {
  // Makers of meters print 10.455, 92.12, 1141.4 and so on for 15 to 35 °C; no second print of the row at 0 °C was found. The solutions are
  // nearly those of the other standard, so that from 0 to 25 °C they must gain the same share.
  it.each([
    ['A', 1],
    ['B', 0.1],
    ['C', 0.01],
  ] as const)('solution %s at 0 °C is to that at 25 °C as it is for %s mol/kg', (solution, molality) => {
    const demal = (t: number) => demalPotassiumChloride({ solution, temperature: t as Temperature })
    const molal = (t: number) => molalPotassiumChloride({ molality, temperature: t as Temperature })
    expect(demal(0) / demal(25) / (molal(0) / molal(25))).toBeCloseTo(1, 2)
  })
})

describe('demal solutions at 0 °C', () => {
  // Jones and Bradshaw (1933), in international ohms, of which one is 1.000495 ohms. From memory; the paper was not seen.
  it.each([
    ['A', 65.176, 2],
    ['B', 7.1379, 3],
    ['C', 0.77364, 4],
  ] as const)('%s conducts what was measured first, in ohms of today', (solution, international, digits) => {
    const printed = demalPotassiumChloride({ solution, temperature: 0 as Temperature })
    expect(printed.toFixed(digits)).toBe((international / 1.000495).toFixed(digits))
  })
})

describe('the electric constant', () => {
  it('is that of CODATA 2018: one over 1.25663706212e-6 N/A² and the square of the speed of light', () => {
    const medium = { real: 1, loss: 0, conductivity: decisiemensPerMetre<MeasuredEC>(10), frequency: gigahertz(1) }
    // 1 S/m at 1 GHz in a real part of one.
    const { lossTangent } = apparentPermittivityLossy(medium)
    expect((lossTangent * 2 * Math.PI * 1e9) / (1.25663706212e-6 * 299_792_458 ** 2)).toBeCloseTo(1, 11)
  })
})

describe('light in a vacuum', () => {
  it('goes 299 792 458 m in a second (17th General Conference on Weights and Measures, 1983, resolution 1)', () => {
    const rodLength = centimetres(50)
    const time = travelTimeFromPermittivity({ rodLength, apparent: permittivity(1) })
    // There and back is a metre.
    expect(inSeconds(time) * 299_792_458).toBeCloseTo(1, 13)
    expect(permittivityFromTravelTime({ rodLength, travelTime: time })).toBeCloseTo(1, 13)
  })
})
