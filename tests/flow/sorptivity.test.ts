import fc from 'fast-check'
import {
  brooksCorey1964,
  type ConductiveModel,
  centimetresOfSuction,
  centimetresPerHour,
  centimetresPerSquareRootDay,
  centimetresPerSquareRootHour,
  gardner1958,
  hours,
  inCentimetresPerSquareRootDay,
  infiltrationPhilip1957,
  minutes,
  perCentimetre,
  soilWaterDiffusivity,
  sorptivityConstantDiffusivity,
  sorptivityParlange1975,
  sorptivityPhilip1957,
  squareCentimetresPerHour,
  vanGenuchten1980,
  waterContent,
  waterContentDifference,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('hydraulics', 'flow.sorptivity', (given, row) => {
  const limits = {
    residual: waterContent(given.theta_r),
    saturated: waterContent(given.theta_s),
    alpha: perCentimetre(given.alpha),
  }
  const suctions = {
    initialSuction: centimetresOfSuction(-given.h_initial),
    surfaceSuction: centimetresOfSuction(-given.h_surface),
  }
  if (row.expected.diffusivity === undefined) {
    const medium = vanGenuchten1980({ ...limits, n: given.n, poreConnection: given.l })
    const wetting = { medium, saturatedConductivity: centimetresPerHour(given.ks / 24), ...suctions }
    return {
      sorptivity: inCentimetresPerSquareRootDay(sorptivityPhilip1957(wetting)),
      sorptivity_parlange: inCentimetresPerSquareRootDay(sorptivityParlange1975(wetting)),
    }
  }
  const medium = gardner1958(limits)
  const state = { medium, saturatedConductivity: centimetresPerHour(given.ks) }
  const diffusivity = soilWaterDiffusivity({ ...state, suction: suctions.initialSuction })
  const rise = waterContentDifference(
    medium.waterContent(suctions.surfaceSuction),
    medium.waterContent(suctions.initialSuction),
  )
  const sorptivity = sorptivityConstantDiffusivity({ diffusivity, rise })
  // The search by the differential equation must find the same.
  expect(sorptivityPhilip1957({ ...state, ...suctions }) / sorptivity).toBeCloseTo(1, 7)
  return {
    diffusivity,
    sorptivity,
    infiltration_6min_no_gravity: infiltrationPhilip1957({ sorptivity, time: minutes(6) }) / 10,
  }
})

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const loam = vanGenuchten1980({
  residual: waterContent(0.078),
  saturated: waterContent(0.43),
  alpha: perCentimetre(0.036),
  n: 1.56,
})
const at = (medium: ConductiveModel, initial: number, surface = 0, conductivity = 1.04) => ({
  medium,
  saturatedConductivity: centimetresPerHour(conductivity),
  initialSuction: centimetresOfSuction(initial),
  surfaceSuction: centimetresOfSuction(surface),
})

describe('sorptivity', () => {
  it('is that of a constant diffusivity for an exponential medium, from wet to dry', () => {
    fc.assert(
      fc.property(numbers(0.01, 0.5), numbers(0.01, 20), numbers(0, 0.5), (alpha, dryness, wetness) => {
        const medium = gardner1958({
          residual: waterContent(0.1),
          saturated: waterContent(0.9),
          alpha: perCentimetre(alpha),
        })
        const [initial, surface] = [dryness / alpha, (dryness * wetness) / alpha]
        const rise = waterContentDifference(
          medium.waterContent(centimetresOfSuction(surface)),
          medium.waterContent(centimetresOfSuction(initial)),
        )
        const diffusivity = squareCentimetresPerHour(2 / (alpha * 0.8))
        const exact = sorptivityConstantDiffusivity({ diffusivity, rise })
        expect(sorptivityPhilip1957(at(medium, initial, surface, 2)) / exact).toBeCloseTo(1, 6)
      }),
      { numRuns: 10 },
    )
  })
  it('of a step so small that its diffusivity stays the same is that of this diffusivity', () => {
    // Down to differences of content of some 1e-9.
    for (const [initial, step] of [
      [10, 1e-3],
      [100, 1e-3],
      [1000, 1e-2],
      [15_000, 1e-2],
    ] as const) {
      const wetting = at(loam, initial, initial - step)
      const middle = centimetresOfSuction(initial - step / 2)
      const rise = waterContentDifference(
        loam.waterContent(wetting.surfaceSuction),
        loam.waterContent(wetting.initialSuction),
      )
      // D = K / C.
      const diffusivity = squareCentimetresPerHour((1.04 * loam.relativeConductivity(middle)) / loam.capacity(middle))
      const exact = sorptivityConstantDiffusivity({ diffusivity, rise })
      expect(sorptivityPhilip1957(wetting) / exact, `${initial} ${step}`).toBeCloseTo(1, 4)
    }
  })
  it('of a sharp front is that of Green and Ampt: S² = 2 Δθ ∫K ds', () => {
    // A very uniform medium is full up to its air entry and empty above, where hardly any water moves.
    const sharp = brooksCorey1964({
      residual: waterContent(0.05),
      saturated: waterContent(0.85),
      airEntry: centimetresOfSuction(10),
      lambda: 60,
    })
    const front = Math.sqrt(2 * 0.8 * (10 + 10 / (2 + 3 * 60 - 1)))
    expect(sorptivityPhilip1957(at(sharp, 30, 0, 1)) / front).toBeCloseTo(1, 2)
  })
  it('by the weighted integral is within two per cent', () => {
    for (const [medium, initial] of [
      [loam, 50],
      [loam, 15000],
      [
        vanGenuchten1980({
          residual: waterContent(0.02),
          saturated: waterContent(0.95),
          alpha: perCentimetre(0.08),
          n: 3.5,
        }),
        60,
      ],
      [
        brooksCorey1964({
          residual: waterContent(0.02),
          saturated: waterContent(0.437),
          airEntry: centimetresOfSuction(7.26),
          lambda: 0.592,
        }),
        500,
      ],
    ] as const) {
      const wetting = at(medium, initial)
      const ratio = sorptivityParlange1975(wetting) / sorptivityPhilip1957(wetting)
      expect(ratio).toBeGreaterThan(0.98)
      expect(ratio).toBeLessThan(1.02)
    }
  })
  it('rises with dryness, falls with suction at the surface, and goes with the root of the conductivity', () => {
    const dry = sorptivityPhilip1957(at(loam, 1000))
    expect(sorptivityPhilip1957(at(loam, 2000))).toBeGreaterThan(dry)
    expect(sorptivityPhilip1957(at(loam, 1000, 10))).toBeLessThan(dry)
    expect(sorptivityPhilip1957(at(loam, 1000, 0, 4 * 1.04)) / dry).toBeCloseTo(2, 9)
    expect(sorptivityPhilip1957(at(loam, 10, 10))).toBe(0)
    expect(sorptivityParlange1975(at(loam, 10, 10))).toBe(0)
    // So little drier than full that the difference of water contents is mostly rounding: still a number, and a small one.
    expect(sorptivityPhilip1957(at(loam, 1e-6))).toBeLessThan(1e-5)
  })
  it('scales with the height to which the medium lifts water', () => {
    const fine = vanGenuchten1980({
      ...(loam.parameters as never as Parameters<typeof vanGenuchten1980>[0]),
      alpha: perCentimetre(0.009),
    })
    // Four times the suctions at one conductivity are four times the square of the sorptivity.
    expect(sorptivityPhilip1957(at(fine, 4000)) / sorptivityPhilip1957(at(loam, 1000))).toBeCloseTo(2, 6)
  })
  it('refuses what has no meaning', () => {
    expectInputError(() => sorptivityPhilip1957(at(loam, 10, 20)), 'surfaceSuction')
    expectInputError(() => sorptivityParlange1975(at(loam, 10, 20)), 'surfaceSuction')
    expectDomainError(() => sorptivityPhilip1957(at(loam, -10 as never)), {})
    expectDomainError(() => sorptivityPhilip1957({ ...at(loam, 10), initialSuction: -10 as never }), {
      quantity: 'initial suction',
    })
    expectDomainError(() => sorptivityConstantDiffusivity({ diffusivity: -1 as never, rise: 0.1 as never }), {
      quantity: 'diffusivity',
    })
    expectDomainError(() => sorptivityConstantDiffusivity({ diffusivity: 1 as never, rise: Number.NaN as never }), {})
    expectInputError(
      () =>
        soilWaterDiffusivity({
          medium: loam,
          saturatedConductivity: centimetresPerHour(1),
          suction: centimetresOfSuction(0),
        }),
      'suction',
    )
  })
})

describe('absorption of Philip', () => {
  it('goes with the root of time, and with time by the term of gravity', () => {
    fc.assert(
      fc.property(numbers(0, 50), numbers(0, 5), numbers(0, 100), (s, a, t) => {
        const surface = {
          sorptivity: centimetresPerSquareRootHour(s),
          gravityTerm: centimetresPerHour(a),
          time: hours(t),
        }
        expect(infiltrationPhilip1957(surface)).toBeCloseTo(10 * (s * Math.sqrt(t) + a * t), 8)
      }),
    )
    expect(infiltrationPhilip1957({ sorptivity: centimetresPerSquareRootDay(3), time: hours(24) })).toBeCloseTo(30, 12)
  })
  it('refuses what has no meaning', () => {
    const surface = { sorptivity: centimetresPerSquareRootHour(1), time: hours(1) }
    expectDomainError(() => infiltrationPhilip1957({ ...surface, sorptivity: -1 as never }), { quantity: 'sorptivity' })
    expectDomainError(() => infiltrationPhilip1957({ ...surface, gravityTerm: -1 as never }), { unit: 'cm/h' })
    expectDomainError(() => infiltrationPhilip1957({ ...surface, time: Number.NaN as never }), { quantity: 'time' })
  })
})
