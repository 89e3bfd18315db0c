import fc from 'fast-check'
import {
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  hours,
  infiltrationGreenAmpt1911,
  infiltrationMeinLarson1973,
  infiltrationTimeGreenAmpt1911,
  inHours,
  millimetresPerHour,
  pondingMeinLarson1973,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('hydraulics', 'flow.green_ampt', (given) => {
  const rise =
    given.delta_theta ??
    (given.theta_e === undefined
      ? given.theta_wet - given.theta_initial
      : (1 - given.effective_saturation) * given.theta_e)
  const front = {
    conductivity: centimetresPerHour(given.K),
    frontSuction: centimetresOfSuction(given.suction ?? -given.h_front),
    rise: waterContentChange(rise),
  }
  if (given.rain === undefined) {
    const { infiltrated, rate } = infiltrationGreenAmpt1911({ ...front, time: hours(given.t) })
    return { F: infiltrated / 10, rate: rate / 10, F_exact: infiltrated / 10, rate_exact: rate / 10 }
  }
  const ponding = pondingMeinLarson1973({ ...front, applicationRate: millimetresPerHour(10 * given.rain) })
  if (!ponding.ponds) throw new Error(ponding.reason)
  const [t, F] = [inHours(ponding.time), ponding.infiltrated / 10]
  return { t, F, front_depth_at_ponding: ponding.frontDepth, ponding_time: t, F_ponding: F }
})

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const fronts = fc.record({
  conductivity: numbers(-3, 3).map((power) => centimetresPerHour(10 ** power)),
  frontSuction: numbers(0.1, 200).map(centimetresOfSuction),
  rise: numbers(0.01, 0.9).map(waterContentChange),
})
const loam = {
  conductivity: centimetresPerHour(0.65),
  frontSuction: centimetresOfSuction(16.7),
  rise: waterContentChange(0.34),
}
const times = numbers(-6, 4).map((power) => hours(10 ** power))

describe('Green and Ampt 1911', () => {
  it('solves its equation, from the first moment to the end', () => {
    fc.assert(
      fc.property(fronts, times, (front, time) => {
        const { infiltrated } = infiltrationGreenAmpt1911({ ...front, time })
        expect(infiltrationTimeGreenAmpt1911({ ...front, infiltrated }) / time).toBeCloseTo(1, 10)
      }),
    )
  })
  it('has the rate at which it takes up water (differences), which falls to the conductivity', () => {
    fc.assert(
      fc.property(fronts, numbers(-3, 2), (front, power) => {
        const t = 10 ** power
        const at = (hour: number) => infiltrationGreenAmpt1911({ ...front, time: hours(hour) })
        const slope = (at(t * 1.0001).infiltrated - at(t * 0.9999).infiltrated) / (2e-4 * t)
        expect(slope / at(t).rate).toBeCloseTo(1, 6)
        expect(at(t).rate).toBeGreaterThanOrEqual(10 * front.conductivity)
        expect(at(2 * t).rate).toBeLessThanOrEqual(at(t).rate)
        expect(at(t).frontDepth * front.rise * 10).toBeCloseTo(at(t).infiltrated, 6)
      }),
    )
  })
  it('begins as absorption: F = √(2 K P t)', () => {
    const { infiltrated } = infiltrationGreenAmpt1911({ ...loam, time: hours(1e-8) })
    expect(infiltrated / 10 / Math.sqrt(2 * 0.65 * 16.7 * 0.34 * 1e-8)).toBeCloseTo(1, 4)
  })
  it('answers the ponded case of an open textbook: Ochsner (2019), Rain or Shine, problem set 6.5, problem 1', () => {
    // Front at 30 cm under 2.5 cm of water: f = K (h0 + 17 + 30) / 30 and F = 0.34 · 30 (hand calculation).
    const front = { ...loam, frontSuction: centimetresOfSuction(17), pondedDepth: centimetres(2.5) }
    const time = infiltrationTimeGreenAmpt1911({ ...front, infiltrated: 102 as never })
    expect(inHours(time)).toBeCloseTo((10.2 - 6.63 * Math.log(1 + 10.2 / 6.63)) / 0.65, 10)
    const then = infiltrationGreenAmpt1911({ ...front, time })
    expect(then.rate / 10).toBeCloseTo((0.65 * 49.5) / 30, 10)
    expect(then.frontDepth).toBeCloseTo(30, 9)
  })
  it('without any pull is the conductivity alone', () => {
    const front = { ...loam, frontSuction: centimetresOfSuction(0), time: hours(2) }
    expect(infiltrationGreenAmpt1911(front)).toMatchObject({ infiltrated: 13, rate: 6.5 })
    expect(infiltrationTimeGreenAmpt1911({ ...front, infiltrated: 13 as never })).toBeCloseTo(7200, 9)
    expect(infiltrationTimeGreenAmpt1911({ ...loam, infiltrated: 0 as never })).toBe(0)
  })
  it('refuses what has no meaning', () => {
    const call = (change: object) => () => infiltrationGreenAmpt1911({ ...loam, time: hours(1), ...change })
    expectDomainError(call({ time: 0 }), { quantity: 'time' })
    expectDomainError(call({ rise: 0 }), { quantity: 'rise of water content' })
    expectDomainError(call({ rise: 1.1 }), { max: 1 })
    expectDomainError(call({ conductivity: 0 }), { unit: 'cm/h' })
    expectDomainError(call({ frontSuction: -16.7 }), { quantity: 'suction at the front' })
    expectDomainError(call({ pondedDepth: Number.NaN }), { quantity: 'ponded depth' })
    expectInputError(call({ time: 5e-324 }), 'time')
    expectDomainError(() => infiltrationTimeGreenAmpt1911({ ...loam, infiltrated: -1 as never }), { unit: 'mm' })
  })
})

describe('Mein and Larson 1973', () => {
  it('lets all in until water stands, then less than falls and never more than a flooded surface takes', () => {
    fc.assert(
      fc.property(fronts, numbers(0.05, 30), times, (front, times, time) => {
        const applicationRate = millimetresPerHour<never>(10 * front.conductivity * times)
        const { infiltrated, rate, ponded } = infiltrationMeinLarson1973({ ...front, applicationRate, time })
        const fallen = (applicationRate as number) * inHours(time)
        const flooded = infiltrationGreenAmpt1911({ ...front, time })
        expect(infiltrated).toBeLessThanOrEqual(fallen * (1 + 1e-9))
        expect(infiltrated).toBeLessThanOrEqual(flooded.infiltrated * (1 + 1e-9))
        expect(rate).toBeLessThanOrEqual((applicationRate as number) * (1 + 1e-9))
        const ponding = pondingMeinLarson1973({ ...front, applicationRate })
        expect(ponding.ponds).toBe(times > 1)
        expect(ponded).toBe(ponding.ponds && time > ponding.time)
      }),
    )
  })
  it('gives the printed values of Chow, Maidment and Mays (1988), Examples 4.4.1 and 4.4.2, for rain of 5 cm/h [not confirmed, source not seen]', () => {
    const rain = { ...loam, applicationRate: millimetresPerHour<never>(50) }
    const ponding = pondingMeinLarson1973(rain)
    if (!ponding.ponds) throw new Error(ponding.reason)
    expect(inHours(ponding.time)).toBeCloseTo(0.17, 2)
    expect(ponding.infiltrated / 10).toBeCloseTo(0.85, 2)
    expect(infiltrationMeinLarson1973({ ...rain, time: hours(1) }).infiltrated / 10).toBeCloseTo(3.02, 2)
  })
  it('has no kink where water begins to stand, and has its rate as slope', () => {
    const rain = { ...loam, applicationRate: millimetresPerHour<never>(15) }
    const ponding = pondingMeinLarson1973(rain)
    if (!ponding.ponds) throw new Error(ponding.reason)
    const at = (factor: number) => infiltrationMeinLarson1973({ ...rain, time: (ponding.time * factor) as never })
    expect(at(1 + 1e-9).infiltrated).toBeCloseTo(ponding.infiltrated, 6)
    expect(at(1 + 1e-9).rate).toBeCloseTo(15, 6)
    // Until then the medium takes all that falls.
    expect(at(0.5).infiltrated).toBeCloseTo(15 * 0.5 * inHours(ponding.time), 9)
    for (const factor of [1.1, 2, 10]) {
      const slope =
        (at(factor * 1.0001).infiltrated - at(factor * 0.9999).infiltrated) / (2e-4 * factor * inHours(ponding.time))
      expect(slope / at(factor).rate).toBeCloseTo(1, 6)
    }
  })
  it('says why water never stands, and takes a medium without pull', () => {
    expect(pondingMeinLarson1973({ ...loam, applicationRate: millimetresPerHour(6.5) })).toMatchObject({
      ponds: false,
      reason: 'medium-conducts-all',
    })
    const front = { ...loam, frontSuction: centimetresOfSuction(0), applicationRate: millimetresPerHour<never>(13) }
    expect(pondingMeinLarson1973(front)).toMatchObject({ ponds: true, time: 0, infiltrated: 0 })
    expect(infiltrationMeinLarson1973({ ...front, time: hours(2) })).toMatchObject({ infiltrated: 13, rate: 6.5 })
    expect(infiltrationMeinLarson1973({ ...front, time: hours(0) })).toMatchObject({ infiltrated: 0, ponded: false })
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => pondingMeinLarson1973({ ...loam, applicationRate: 0 as never }), { unit: 'mm/h' })
    expectDomainError(
      () => infiltrationMeinLarson1973({ ...loam, applicationRate: 1 as never, time: Number.NaN as never }),
      { quantity: 'time' },
    )
  })
})
