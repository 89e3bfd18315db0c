import {
  type BulkDensity,
  type MassFraction,
  type Permittivity,
  type Porosity,
  permittivityDobson1985,
  permittivityFourPhase,
  permittivityOfMixture,
  permittivityRoth1990,
  permittivityTwoPhase,
  permittivityWangSchmugge1980,
  porosityTwoPhase,
  type Share,
  type Temperature,
  temperatureErrorPepin1995,
  temperatureErrorRoth1990,
  type WaterContent,
  waterContentFourPhase,
  waterContentRoth1990,
  waterContentWangSchmugge1980,
  waterPermittivityWeast1986,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { itIsUndone, itRises } from '../support/round-trip.js'

// Rows that give a temperature use the water permittivity of the CRC Handbook (1986), as the source of the model does.
const waterOf = (given: Permittivity | undefined, temperature: Temperature) =>
  given ?? waterPermittivityWeast1986(temperature)

checkPublished(
  'dielectric',
  'vwc.mixing.permittivity',
  ({ alpha, eps_a, eps_s, eps_w, porosity, temperature, theta }) => ({
    eps: permittivityRoth1990({
      waterContent: theta,
      porosity,
      solids: eps_s,
      air: eps_a,
      water: waterOf(eps_w, temperature),
      exponent: alpha,
    }),
  }),
)
checkPublished('dielectric', 'vwc.mixing.theta', ({ alpha, eps, eps_a, eps_s, eps_w, porosity, temperature }) => ({
  theta: waterContentRoth1990({
    apparent: eps,
    porosity,
    solids: eps_s,
    air: eps_a,
    water: waterOf(eps_w, temperature),
    exponent: alpha,
  }),
}))
checkPublished(
  'dielectric',
  'vwc.mixing.temperature_error',
  ({ alpha, eps_a, eps_s, porosity, t_medium, t_reference, theta }) => {
    const { apparent, error } = temperatureErrorRoth1990({
      waterContent: theta,
      porosity,
      solids: eps_s,
      air: eps_a,
      exponent: alpha,
      mediumTemperature: t_medium,
      referenceTemperature: t_reference,
    })
    return { theta_apparent: apparent, error }
  },
)
checkPublished('dielectric', 'temperature.pepin1995', ({ theta }) => ({ dtheta_dT: temperatureErrorPepin1995(theta) }))
checkPublished('dielectric', 'vwc.wang_schmugge', ({ clay, eps_w, rho_b, sand, theta }) => {
  const result = permittivityWangSchmugge1980({
    waterContent: theta,
    sand,
    clay,
    bulkDensity: rho_b,
    water: eps_w,
  })
  return {
    eps: result.permittivity,
    theta_transition: result.transition,
    wilting_point: result.wiltingPoint,
    gamma: result.gamma,
  }
})
checkPublished('dielectric', 'vwc.dobson', ({ clay, frequency, rho_b, sand, temperature, theta }) => {
  const { permittivity, beta, solids } = permittivityDobson1985({
    waterContent: theta,
    sand,
    clay,
    bulkDensity: rho_b,
    frequency,
    temperature,
  })
  return { eps: permittivity, beta, eps_solid: solids }
})

const three = {
  porosity: 0.9 as Porosity,
  solids: 5 as Permittivity,
  air: 1 as Permittivity,
  water: 80 as Permittivity,
  exponent: 0.5,
}
const four = { ...three, boundWaterContent: 0.05 as WaterContent, boundWater: 20 as Permittivity }
const loam = {
  sand: 0.4 as MassFraction,
  clay: 0.2 as MassFraction,
  bulkDensity: 1.4 as BulkDensity,
  water: 79.5 as Permittivity,
}

describe('round trips', () => {
  itIsUndone(
    'the three-phase model',
    { waterContent: [0, 0.6], porosity: [0.6, 0.97], solids: [2, 8], exponent: [0.3, 1], water: [60, 90] },
    'waterContent',
    (x) => {
      const phases = { ...x, air: 1 } as unknown as typeof three
      const apparent = permittivityRoth1990({ ...phases, waterContent: x.waterContent as WaterContent })
      return waterContentRoth1990({ ...phases, apparent })
    },
    1,
  )
  itIsUndone(
    'the four-phase model',
    { waterContent: [0, 0.6], boundWaterContent: [0, 0.3], boundWater: [3.2, 60], exponent: [0.3, 1] },
    'waterContent',
    (x) => {
      const phases = { ...four, ...x } as unknown as typeof four & { waterContent: WaterContent }
      return waterContentFourPhase({ ...phases, apparent: permittivityFourPhase(phases) })
    },
    1,
  )
  itIsUndone(
    'the two-phase model',
    { porosity: [0, 1], solids: [2, 8], exponent: [0.3, 1] },
    'porosity',
    (x) => {
      const phases = { ...x, filling: 80 } as never as Parameters<typeof permittivityTwoPhase>[0]
      return porosityTwoPhase({ ...phases, apparent: permittivityTwoPhase(phases) })
    },
    1,
  )
  itIsUndone(
    'Wang and Schmugge 1980',
    { waterContent: [0, 0.38], sand: [0, 0.5], clay: [0, 0.5] },
    'waterContent',
    (x) => {
      const soil = {
        ...loam,
        sand: x.sand as MassFraction,
        clay: x.clay as MassFraction,
        bulkDensity: 1.6 as BulkDensity,
      }
      const { permittivity } = permittivityWangSchmugge1980({ ...soil, waterContent: x.waterContent as WaterContent })
      return waterContentWangSchmugge1980({ ...soil, apparent: permittivity })
    },
    1,
  )
})

describe('monotone', () => {
  itRises('the three-phase model', 0, 0.9, (content) =>
    permittivityRoth1990({ ...three, waterContent: content as WaterContent }),
  )
  itRises('the four-phase model', 0, 0.9, (content) =>
    permittivityFourPhase({ ...four, waterContent: content as WaterContent }),
  )
  itRises(
    'Wang and Schmugge 1980',
    0,
    0.47,
    (content) => permittivityWangSchmugge1980({ ...loam, waterContent: content as WaterContent }).permittivity,
  )
})

describe('independent oracles', () => {
  it('mixtures of square permittivities at an exponent of one half are squares of whole numbers', () => {
    // Shares in hundredths, roots of the permittivities: air 1, solids 2, bound water 5, free water 9.
    for (const [air, solids, bound, free] of [
      [50, 20, 10, 20],
      [0, 40, 20, 40],
      [85, 5, 10, 0],
    ] as const) {
      const root = BigInt(air) + 2n * BigInt(solids) + 5n * BigInt(bound) + 9n * BigInt(free)
      const expected = Number(root * root) / 1e4
      const phases = [
        [air, 1],
        [solids, 4],
        [bound, 25],
        [free, 81],
      ].map(([share = 0, e = 0]) => ({ share: (share / 100) as Share, permittivity: e as Permittivity }))
      expect(permittivityOfMixture({ phases, exponent: 0.5 })).toBeCloseTo(expected, 11)
      const medium = {
        waterContent: ((bound + free) / 100) as WaterContent,
        boundWaterContent: (bound / 100) as WaterContent,
        porosity: (1 - solids / 100) as Porosity,
        solids: 4 as Permittivity,
        boundWater: 25 as Permittivity,
        water: 81 as Permittivity,
        air: 1 as Permittivity,
        exponent: 0.5,
      }
      expect(permittivityFourPhase(medium)).toBeCloseTo(expected, 11)
    }
  })
  it('four phases without bound water are three, and three that are saturated are two', () => {
    const content = 0.4 as WaterContent
    const none = permittivityFourPhase({ ...four, boundWaterContent: 0 as WaterContent, waterContent: content })
    expect(none).toBeCloseTo(permittivityRoth1990({ ...three, waterContent: content }), 12)
    const saturated = permittivityRoth1990({ ...three, waterContent: 0.9 as WaterContent })
    expect(saturated).toBeCloseTo(permittivityTwoPhase({ ...three, filling: three.water }), 12)
  })
  it('Wang and Schmugge 1980 is continuous where water becomes free', () => {
    const { transition } = permittivityWangSchmugge1980({ ...loam, waterContent: 0.1 as WaterContent })
    const at = (content: number) =>
      permittivityWangSchmugge1980({ ...loam, waterContent: content as WaterContent }).permittivity
    expect(at(transition + 1e-9) - at(transition - 1e-9)).toBeLessThan(1e-6)
  })
  it('the mixing model in light media stays within 0.1 of the peat curve of Kellner and Lundin 2001', () => {
    // Porosity 0.95 and solids of 6 are assumptions; ε of 20, 35, 50 gives 0.51, 0.71, 0.82 there.
    for (const [e, peat] of [
      [20, 0.5138],
      [35, 0.7087],
      [50, 0.824],
    ] as const) {
      const light = { ...three, porosity: 0.95 as Porosity, solids: 6 as Permittivity }
      expect(Math.abs(waterContentRoth1990({ ...light, apparent: e as Permittivity }) - peat)).toBeLessThan(0.1)
    }
  })
})

describe('refusals', () => {
  it('more water than pores', () => {
    expectInputError(
      () => permittivityRoth1990({ ...three, waterContent: 0.95 as WaterContent }),
      'waterContent, porosity',
    )
    expectInputError(
      () => permittivityFourPhase({ ...four, waterContent: 0.95 as WaterContent }),
      'waterContent, porosity',
    )
    expectInputError(
      () => permittivityWangSchmugge1980({ ...loam, waterContent: 0.6 as WaterContent }),
      'waterContent, bulkDensity',
    )
  })
  it('shares that do not add up', () => {
    const phases = [{ share: 0.5 as Share, permittivity: 4 as Permittivity }]
    expectInputError(() => permittivityOfMixture({ phases, exponent: 0.5 }), 'phases')
  })
  it('sand and clay beyond the whole', () => {
    const sandy = { ...loam, sand: 0.9 as MassFraction }
    expectInputError(() => permittivityWangSchmugge1980({ ...sandy, waterContent: 0.1 as WaterContent }), 'sand, clay')
    expectInputError(
      () =>
        permittivityDobson1985({
          ...sandy,
          waterContent: 0.1 as WaterContent,
          frequency: 5e9 as never,
          temperature: 20 as Temperature,
        }),
      'sand, clay',
    )
  })
  it('a reading that no porosity or water content explains', () => {
    const phases = { solids: 4 as Permittivity, filling: 80 as Permittivity, exponent: 0.5 }
    expectInputError(() => porosityTwoPhase({ ...phases, apparent: 2 as Permittivity }), 'apparent')
    expectInputError(
      () => porosityTwoPhase({ ...phases, filling: 4 as Permittivity, apparent: 4 as Permittivity }),
      'solids, filling',
    )
    expectInputError(() => waterContentWangSchmugge1980({ ...loam, apparent: 1.5 as Permittivity }), 'apparent')
  })
  it('a frequency below the microwaves in the model of Dobson 1985', () => {
    expectDomainError(
      () =>
        permittivityDobson1985({
          ...loam,
          waterContent: 0.1 as WaterContent,
          frequency: 70e6 as never,
          temperature: 20 as Temperature,
        }),
      { quantity: 'frequency' },
    )
  })
  it('Dobson 1985 below 1.4 GHz is corrected after Peplinski 1995', () => {
    const soil = { ...loam, waterContent: 0.2 as WaterContent, temperature: 20 as Temperature }
    const microwave = permittivityDobson1985({ ...soil, frequency: 1.4e9 as never }).permittivity
    const below = permittivityDobson1985({ ...soil, frequency: 1.3999999e9 as never }).permittivity
    expect(below).toBeCloseTo(1.15 * microwave - 0.68, 6)
  })
})
