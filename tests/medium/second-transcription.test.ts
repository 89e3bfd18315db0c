import fc from 'fast-check'
import {
  drainedMediumRegression1991,
  fredlundXing1994,
  grams,
  inKilopascals,
  kilopascalsOfSuction,
  litres,
  type MassFraction,
  percent,
  soilFromTextureSaxtonRawls2006,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { attempt } from '../../src/quantity/attempt.js'

// A second transcription of printed coefficients, made apart from the one in the code: a slip of the finger in either shows.

/** Saxton and Rawls (2006), Table 1: coefficients of S, C, OM, S·OM, C·OM, S·C and 1; S and C as fractions, OM in percent. */
const TABLE_1 = {
  at1500: [-0.024, 0.487, 0.006, 0.005, -0.013, 0.068, 0.031],
  at33: [-0.251, 0.195, 0.011, 0.006, -0.027, 0.452, 0.299],
  saturatedLess33: [0.278, 0.034, 0.022, -0.018, -0.027, -0.584, 0.078],
}
/** The same for the air entry: S, C, D, S·D, C·D, S·C and 1, with D the water between saturation and 33 kPa. */
const AIR_ENTRY = [-21.67, -27.93, -81.97, 71.12, 8.29, 14.05, 27.16]

function byTable(S: number, C: number, OM: number) {
  const sum = (coefficients: readonly number[], third: number) =>
    [S, C, third, S * third, C * third, S * C, 1].reduce((total, one, i) => total + one * coefficients[i]!, 0)
  const first = sum(TABLE_1.at1500, OM)
  const second = sum(TABLE_1.at33, OM)
  const drained = 1.636 * sum(TABLE_1.saturatedLess33, OM) - 0.107
  const at1500 = 1.14 * first - 0.02
  const at33 = 1.283 * second ** 2 + 0.626 * second - 0.015
  const saturated = at33 + drained - 0.097 * S + 0.043
  const entry = sum(AIR_ENTRY, drained)
  const lambda = (Math.log(at33) - Math.log(at1500)) / (Math.log(1500) - Math.log(33))
  const millimetresAnHour = 1930 * (saturated - at33) ** (3 - lambda)
  return [at1500, at33, saturated, 0.02 * entry ** 2 + 0.887 * entry - 0.7, lambda, millimetresAnHour / 10]
}

describe('Saxton and Rawls (2006), Table 1', () => {
  it('gives water contents, air entry, slope and conductivity of any texture', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(number(0.05, 0.9), number(0.05, 0.6), number(0.5, 7), (share, clay, organic) => {
        const sand = share * (1 - clay)
        const texture = {
          sand: percent<MassFraction>(100 * sand),
          clay: percent<MassFraction>(100 * clay),
          organicMatter: percent<MassFraction>(organic),
        }
        const found = attempt(() => soilFromTextureSaxtonRawls2006(texture))
        if (!found.ok) return
        const { at1500kPa, at33kPa, saturated, airEntryTension, lambda, saturatedConductivity } = found.value
        const printed = byTable(sand, clay, organic)
        ;[at1500kPa, at33kPa, saturated, inKilopascals(airEntryTension), lambda, saturatedConductivity].forEach(
          (one, i) => {
            expect(Math.abs(one - printed[i]!)).toBeLessThan(1e-10 * Math.max(1, Math.abs(printed[i]!)))
          },
        )
      }),
    )
  })
})

describe('the regression on 238 substrates', () => {
  it('has pores of 96.72 less 0.038 of the volume weight, and air of 96.72 and 0.062 of it less a hundred wet densities', () => {
    for (const [dry, wet] of [
      [90, 700],
      [150, 640],
      [300, 900],
    ] as const) {
      const found = drainedMediumRegression1991({
        drainedVolume: litres(1),
        drainedMass: grams(wet),
        dryMass: grams(dry),
      })
      expect(100 * found.totalPorosity).toBeCloseTo(96.72 - 0.038 * dry, 10)
      expect(100 * found.airSpace).toBeCloseTo(96.72 + 0.062 * dry - wet / 10, 10)
      // What is left is the water that was weighed.
      expect(100 * found.containerCapacity).toBeCloseTo((wet - dry) / 10, 10)
    }
  })
})

describe('Fredlund and Xing (1994)', () => {
  it('is dry at 10⁶ kPa and nowhere before, by standard gravity', () => {
    const medium = fredlundXing1994({
      saturated: waterContent(0.9),
      scaleSuction: kilopascalsOfSuction(1.2),
      n: 2,
      m: 0.8,
      residualSuction: kilopascalsOfSuction(1500),
    })
    // A centimetre of water at 1000 kg/m³ and 9.80665 m/s² is 0.0980665 kPa.
    const dry = 1e6 / 0.0980665
    expect(medium.waterContent(dry as never)).toBe(0)
    expect(medium.waterContent((dry * (1 - 1e-12)) as never)).toBeGreaterThan(0)
  })
})
