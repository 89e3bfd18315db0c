import fc from 'fast-check'
import {
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  gardner1958,
  hours,
  type InfiltrationToWaterTable,
  infiltrationSrivastavaYeh1991,
  millimetresPerHour,
  perCentimetre,
  type WaterFlux,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { conductivityByImages } from '../../src/flow/srivastava-yeh-early.js'
import { conductivityBySeries } from '../../src/flow/srivastava-yeh-series.js'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('hydraulics', 'flow.srivastava_yeh', (given) => {
  const { suction, waterContent: content } = infiltrationSrivastavaYeh1991({
    residual: waterContent(given.theta_r),
    saturated: waterContent(given.theta_s),
    alpha: perCentimetre(given.alpha),
    saturatedConductivity: centimetresPerHour(given.ks),
    columnHeight: centimetres(given.length),
    fluxBefore: millimetresPerHour(10 * given.q_initial),
    fluxSince: millimetresPerHour(10 * given.q_surface),
    height: centimetres(given.z),
    time: hours(given.t),
  })
  return { h: -suction, theta: content }
})

const wetting: InfiltrationToWaterTable = {
  residual: waterContent(0.06),
  saturated: waterContent(0.4),
  alpha: perCentimetre(0.1),
  saturatedConductivity: centimetresPerHour(1),
  columnHeight: centimetres(100),
  fluxBefore: millimetresPerHour(1),
  fluxSince: millimetresPerHour(9),
  height: centimetres(80),
  time: hours(5),
}
const draining = { ...wetting, fluxBefore: wetting.fluxSince, fluxSince: wetting.fluxBefore }
const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const heights = numbers(0, 100).map(centimetres)
const times = numbers(-6, 3).map((power) => hours(10 ** power))
const at = (column: InfiltrationToWaterTable) => infiltrationSrivastavaYeh1991(column).suction

describe('Srivastava and Yeh 1991', () => {
  it('agree by series and by images, two independent ways, within their bounds, from wet to dry and early to late', () => {
    const columns = fc.record({ top: numbers(-2, 2.5), share: numbers(0, 1), time: numbers(-8, 4) })
    fc.assert(
      fc.property(
        columns,
        numbers(0, 1),
        numbers(0, 1),
        numbers(0, 1),
        ({ top, share, time }, bottom, before, since) => {
          const column = { height: 10 ** top, bottom, before, since }
          const series = conductivityBySeries(column, share * 10 ** top, 10 ** time)
          const images = conductivityByImages(column, share * 10 ** top, 10 ** time)
          expect(Math.abs(series.value - images.value)).toBeLessThanOrEqual(series.error + images.error)
          expect(Math.min(series.error, images.error)).toBeLessThan(1e-12)
        },
      ),
      { numRuns: 1000 },
    )
  })
  it('are the steady state where the flux does not change, by either way', () => {
    for (const flux of [5e-323, 1e-10, 0.5])
      for (const share of [0, 0.5, 1]) {
        const column = { height: 1, bottom: 0, before: flux, since: flux }
        const steady = -flux * Math.expm1(-share)
        for (const way of [conductivityBySeries, conductivityByImages]) {
          const { value, error } = way(column, share, 2)
          expect(Math.abs(value - steady)).toBeLessThanOrEqual(error)
          expect(error).toBeLessThanOrEqual(2e-14 * flux)
        }
      }
  })
  it('obey the equation that they solve, by differences', () => {
    for (const column of [wetting, draining]) {
      const k = (z: number, t: number) => Math.exp(-0.1 * at({ ...column, height: centimetres(z), time: hours(t) }))
      for (const [z, t] of [
        [80, 2],
        [50, 10],
        [20, 20],
        [95, 0.5],
      ] as const) {
        const [dz, dt] = [0.02, 1e-3]
        const rise = (k(z, t + dt) - k(z, t - dt)) / (2 * dt)
        const slope = (k(z + dz, t) - k(z - dz, t)) / (2 * dz)
        const bend = (k(z + dz, t) - 2 * k(z, t) + k(z - dz, t)) / dz ** 2
        // With K = k in cm/h and h = ln(k) / 0.1, C h_t = (K h_z + K)_z is 0.34 k_t = k_zz / 0.1 + k_z.
        expect(0.34 * rise).toBeCloseTo(bend / 0.1 + slope, 5)
      }
    }
  })
  it('let the flux through the surface that was asked for', () => {
    for (const [column, flux] of [
      [wetting, 0.9],
      [draining, 0.1],
    ] as const) {
      const k = (z: number) => Math.exp(-0.1 * at({ ...column, height: centimetres(z) }))
      // K (dh/dz + 1) at the surface, one-sided differences of second order.
      const slope = (3 * k(100) - 4 * k(100 - 1e-3) + k(100 - 2e-3)) / 2e-3
      expect(slope / 0.1 + k(100)).toBeCloseTo(flux, 6)
    }
  })
  it('begin and end in the steady states, and keep the suction at the bottom', () => {
    fc.assert(
      fc.property(heights, times, (height, time) => {
        const steady = (flux: number) => -10 * Math.log(flux - (flux - 1) * Math.exp(-0.1 * height))
        expect(at({ ...wetting, height, time: hours(0) })).toBeCloseTo(steady(0.1), 9)
        expect(at({ ...wetting, height, time: hours(1e-12) })).toBeCloseTo(steady(0.1), 4)
        expect(at({ ...wetting, height, time: hours(1e4) })).toBeCloseTo(steady(0.9), 9)
        const plate = { ...draining, bottomSuction: centimetresOfSuction(15) }
        expect(at({ ...plate, height: centimetres(0), time })).toBeCloseTo(15, 9)
      }),
    )
  })
  it('only wet when more comes, only dry when less comes, with the water content of the medium', () => {
    fc.assert(
      fc.property(heights, times, times, (height, a, b) => {
        fc.pre(a < b)
        const [early, late] = [a, b].map((time) => infiltrationSrivastavaYeh1991({ ...wetting, height, time }))
        expect(late?.suction).toBeLessThanOrEqual((early?.suction as number) + 1e-9)
        expect(at({ ...draining, height, time: b })).toBeGreaterThanOrEqual(at({ ...draining, height, time: a }) - 1e-9)
        expect(late?.waterContent).toBeCloseTo(gardner1958(wetting).waterContent(late?.suction as never), 12)
      }),
    )
  })
  it('keep scale: heights, suctions and times follow the units of length and time', () => {
    fc.assert(
      fc.property(heights, times, numbers(0.1, 10), numbers(0.1, 10), (height, time, length, pace) => {
        const scaled = at({
          ...wetting,
          alpha: perCentimetre(0.1 / length),
          saturatedConductivity: centimetresPerHour(length * pace),
          columnHeight: centimetres(100 * length),
          fluxBefore: millimetresPerHour(length * pace),
          fluxSince: millimetresPerHour(9 * length * pace),
          height: centimetres(Math.min(100, height) * length),
          time: hours(time / 3600 / pace),
        })
        expect(scaled / length).toBeCloseTo(at({ ...wetting, height, time }), 6)
      }),
    )
  })
  it('take evaporation as a negative flux, up to what the column can lift', () => {
    // K_s / (e^{αL} - 1) = 0.454e-4 cm/h for 100 cm; a column of 20 cm lifts 0.1565 cm/h.
    const dry = { ...wetting, columnHeight: centimetres(20), height: centimetres(20), time: hours(1e3) }
    expect(at({ ...dry, fluxSince: millimetresPerHour(-1.5) })).toBeCloseTo(
      -10 * Math.log(-0.15 + 1.15 * Math.exp(-2)),
      8,
    )
    expectInputError(() => at({ ...dry, fluxSince: millimetresPerHour(-1.6) }), 'fluxSince')
    expectInputError(() => at({ ...wetting, fluxBefore: millimetresPerHour(-1) }), 'fluxBefore')
  })
  it('stay numbers at the ends of their ranges', () => {
    for (const time of [5e-324, 1e-300, 1e9, 1e300])
      for (const height of [0, 1e-300, 50, 100]) {
        const { suction, waterContent } = infiltrationSrivastavaYeh1991({ ...wetting, time, height } as never)
        expect(suction).toBeGreaterThanOrEqual(0)
        expect(waterContent).toBeGreaterThanOrEqual(0.06)
      }
    expect(at({ ...wetting, fluxBefore: millimetresPerHour(10), fluxSince: millimetresPerHour(10) })).toBeLessThan(
      1e-12,
    )
  })
  it('refuse what has no meaning, and what cannot be told', () => {
    expectInputError(() => at({ ...wetting, height: centimetres(101) }), 'height')
    expectInputError(() => at({ ...wetting, fluxSince: millimetresPerHour(10.1) }), 'fluxSince')
    expectInputError(() => at({ ...wetting, residual: waterContent(0.5) }), 'residual')
    expectDomainError(() => at({ ...wetting, saturatedConductivity: centimetresPerHour(0) }), {
      quantity: 'saturated conductivity',
    })
    expectDomainError(() => at({ ...wetting, time: Number.NaN as never }), { quantity: 'time' })
    expectDomainError(() => at({ ...wetting, alpha: perCentimetre(0) }), { quantity: 'alpha' })
    // Nothing flows and the column is so high that its top is all but dry: the wave of the draining cannot be resolved there.
    const tall = {
      ...draining,
      columnHeight: centimetres(1e5),
      height: centimetres(1e5),
      fluxSince: millimetresPerHour<WaterFlux>(0),
    }
    expect(() => at({ ...tall, time: hours(1e4) })).toThrow(expect.objectContaining({ code: 'no-convergence' }))
    // Fifty times 1/α over the speed of a full column later a conductivity of 2e-8 is told to 3e-14 only.
    const full = { ...tall, columnHeight: centimetres(1e4), height: centimetres(1e4) }
    const pace = (0.1 * tall.saturatedConductivity) / (tall.saturated - tall.residual)
    expect(() => at({ ...full, fluxBefore: millimetresPerHour<WaterFlux>(5), time: hours(50 / pace) })).toThrow(
      expect.objectContaining({ code: 'no-convergence', residual: expect.closeTo(3.2e-14, 14) }),
    )
  })
})
