import fc from 'fast-check'
import {
  airSpaceAtContainerCapacity,
  boxContainer,
  brooksCorey1964,
  type Container,
  campbell1974,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  cylinderContainer,
  durner1994,
  fraction,
  fredlundXing1994,
  frustumContainer,
  kosugi1996,
  logLogisticRetention,
  measuredContainer,
  perCentimetre,
  type RetentionModel,
  roundedSquareContainer,
  squareCentimetres,
  stackedContainer,
  taperedBoxContainer,
  vanGenuchten1980,
  waterAndAirAtRest,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { waterByPanels } from '../support/water-by-panels.js'

const vanGenuchten = (theta_r: number, theta_s: number, alpha: number, n: number) =>
  vanGenuchten1980({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    alpha: perCentimetre(alpha),
    n,
  })
const inCubicCentimetres = (container: Container, medium: RetentionModel) => {
  const { water, waterContent: mean, airFilledPorosity } = waterAndAirAtRest({ container, medium })
  return {
    volume: container.volume * 1000,
    water: water * 1000,
    container_capacity: mean,
    air_space: airFilledPorosity,
  }
}
const pot = (bottom: number, top: number, height: number) =>
  frustumContainer({
    bottomDiameter: centimetres(bottom),
    topDiameter: centimetres(top),
    height: centimetres(height),
  })
const cell = (bottom: number, top: number, height: number) =>
  taperedBoxContainer({
    bottomLength: centimetres(bottom),
    bottomWidth: centimetres(bottom),
    topLength: centimetres(top),
    topWidth: centimetres(top),
    height: centimetres(height),
  })

checkPublished('hydraulics', 'container.frustum', ({ theta_r, theta_s, alpha, n, radius_bottom, radius_top, height }) =>
  inCubicCentimetres(pot(2 * radius_bottom, 2 * radius_top, height), vanGenuchten(theta_r, theta_s, alpha, n)),
)
checkPublished(
  'hydraulics',
  'container.box',
  ({ theta_r, theta_s, alpha, n, length_bottom, width_bottom, length_top, width_top, height }) =>
    inCubicCentimetres(
      taperedBoxContainer({
        bottomLength: centimetres(length_bottom),
        bottomWidth: centimetres(width_bottom),
        topLength: centimetres(length_top),
        topWidth: centimetres(width_top),
        height: centimetres(height),
      }),
      vanGenuchten(theta_r, theta_s, alpha, n),
    ),
)
checkPublished('hydraulics', 'container.other_curves', ({ height, ...curve }) => ({
  container_capacity: containerCapacity({
    container: cylinderContainer({ diameter: centimetres(10), height: centimetres(height) }),
    medium: curveOf(curve),
  }),
}))

// biome-ignore lint/suspicious/noExplicitAny: rows hold the numbers of several models
function curveOf(given: any): RetentionModel {
  const limits = {
    residual: waterContent(given.theta_r ?? given.theta_low ?? 0),
    saturated: waterContent(given.theta_s ?? given.theta_high),
  }
  switch (given.model) {
    case 'brooks-corey':
      return brooksCorey1964({ ...limits, airEntry: centimetresOfSuction(given.bubbling), lambda: given.lambda })
    case 'campbell':
      return campbell1974({ ...limits, airEntry: centimetresOfSuction(given.air_entry), b: given.b })
    case 'kosugi':
      return kosugi1996({ ...limits, medianSuction: centimetresOfSuction(given.median_suction), sigma: given.sigma })
    case 'log-logistic':
      return logLogisticRetention({
        ...limits,
        halfSuction: centimetresOfSuction(given.suction_half),
        slope: given.slope,
      })
    case 'durner':
      return durner1994({
        ...limits,
        coarseShare: fraction(given.w1),
        coarse: { alpha: perCentimetre(given.alpha1), n: given.n1 },
        fine: { alpha: perCentimetre(given.alpha2), n: given.n2 },
      })
    default:
      throw new Error(`no model ${given.model}`)
  }
}

describe('container capacity in three shapes and five media', () => {
  const shapes = {
    cylinder: cylinderContainer({ diameter: centimetres(12), height: centimetres(15) }),
    frustum: pot(11, 15, 12),
    taperedBox: cell(3.2, 4, 5.5),
  }
  // The integrals in closed form, H^(k+1)/(k+1) 2F1(m, (k+1)/n; 1+(k+1)/n; -(αH)^n) for k = 0, 1, 2, with mpmath at 40 digits.
  const table: [keyof typeof shapes, [number, number, number, number], number][] = [
    ['cylinder', [0.045, 0.43, 0.145, 2.68], 0.28645966355744734],
    ['cylinder', [0.078, 0.43, 0.036, 1.56], 0.41363908155413515],
    ['cylinder', [0.12, 0.93, 0.1, 1.6], 0.7975276490970945],
    ['cylinder', [0.02, 0.95, 0.08, 3.5], 0.7923782004202531],
    ['cylinder', [0.07, 0.36, 0.005, 1.09], 0.35933336832327656],
    ['frustum', [0.045, 0.43, 0.145, 2.68], 0.3033371487111037],
    ['frustum', [0.078, 0.43, 0.036, 1.56], 0.4164440614446546],
    ['frustum', [0.12, 0.93, 0.1, 1.6], 0.8135000759750258],
    ['frustum', [0.02, 0.95, 0.08, 3.5], 0.8402394518571653],
    ['frustum', [0.07, 0.36, 0.005, 1.09], 0.35941884233022636],
    ['taperedBox', [0.045, 0.43, 0.145, 2.68], 0.3976954322687124],
    ['taperedBox', [0.078, 0.43, 0.036, 1.56], 0.42581422222503407],
    ['taperedBox', [0.12, 0.93, 0.1, 1.6], 0.8875328978825364],
    ['taperedBox', [0.02, 0.95, 0.08, 3.5], 0.9407253514964252],
    ['taperedBox', [0.07, 0.36, 0.005, 1.09], 0.3597559663123238],
  ]
  it.each(table)('%s, medium %j: %d', (shape, [theta_r, theta_s, alpha, n], closed) => {
    const state = { container: shapes[shape], medium: vanGenuchten(theta_r, theta_s, alpha, n) }
    expect(Math.abs(containerCapacity(state) - closed)).toBeLessThan(1e-13)
    expect(Math.abs(airSpaceAtContainerCapacity(state) - (theta_s - closed))).toBeLessThan(1e-13)
  })
})

const lengths = fc.double({ min: 1, max: 60, noNaN: true }).map(centimetres)
const anyContainer: fc.Arbitrary<Container> = fc.letrec<{ whole: Container; plain: Container }>((tie) => ({
  plain: fc.oneof(
    fc.record({ diameter: lengths, height: lengths }).map(cylinderContainer),
    fc.record({ length: lengths, width: lengths, height: lengths }).map(boxContainer),
    fc.record({ bottomDiameter: lengths, topDiameter: lengths, height: lengths }).map(frustumContainer),
    fc
      .record({ bottomLength: lengths, bottomWidth: lengths, topLength: lengths, topWidth: lengths, height: lengths })
      .map(taperedBoxContainer),
    fc
      .record({
        bottomSide: lengths,
        topSide: lengths,
        height: lengths,
        round: fc.double({ min: 0, max: 0.5, noNaN: true }),
      })
      .map(({ round, ...square }) =>
        roundedSquareContainer({
          ...square,
          cornerRadius: centimetres(round * Math.min(square.bottomSide, square.topSide)),
        }),
      ),
    fc.array(fc.record({ step: lengths, area: lengths }), { minLength: 2, maxLength: 6 }).map((rows) => {
      const heights = [0]
      for (const { step } of rows.slice(1)) heights.push((heights.at(-1) as number) + step)
      return measuredContainer({
        heights: heights.map(centimetres),
        areas: rows.map(({ area }) => squareCentimetres(10 * area)),
      })
    }),
  ),
  whole: fc.oneof(
    tie('plain'),
    fc.array(tie('plain'), { minLength: 1, maxLength: 3 }).map((parts) => stackedContainer(parts as Container[])),
  ),
})).whole

const limits = { residual: waterContent(0.1), saturated: waterContent(0.85) }
const suctions = fc.double({ min: 0.5, max: 60, noNaN: true }).map(centimetresOfSuction)
const exponents = fc.double({ min: 1.1, max: 5, noNaN: true })
const alphas = fc.double({ min: 0.005, max: 0.5, noNaN: true }).map(perCentimetre)
const anyMedium: fc.Arbitrary<RetentionModel> = fc.oneof(
  fc.record({ alpha: alphas, n: exponents }).map((p) => vanGenuchten1980({ ...limits, ...p })),
  fc.record({ airEntry: suctions, lambda: exponents }).map((p) => brooksCorey1964({ ...limits, ...p })),
  fc.record({ airEntry: suctions, b: exponents }).map((p) => campbell1974({ ...limits, ...p })),
  fc.record({ medianSuction: suctions, sigma: exponents }).map((p) => kosugi1996({ ...limits, ...p })),
  fc.record({ halfSuction: suctions, slope: exponents }).map((p) => logLogisticRetention({ ...limits, ...p })),
  fc
    .record({ scaleSuction: suctions, n: exponents, m: exponents })
    .map((p) => fredlundXing1994({ ...limits, ...p, residualSuction: centimetresOfSuction(15000) })),
  fc
    .record({ coarse: fc.record({ alpha: alphas, n: exponents }), fine: fc.record({ alpha: alphas, n: exponents }) })
    .map((p) => durner1994({ ...limits, ...p, coarseShare: fraction(0.4) })),
)

describe('any medium in any container', () => {
  it('makes up the whole volume with water, air and solids', () => {
    fc.assert(
      fc.property(anyContainer, anyMedium, fc.double({ min: 0, max: 80, noNaN: true }), (container, medium, s0) => {
        const held = waterAndAirAtRest({
          container,
          medium,
          bottomSuction: centimetresOfSuction(s0),
          porosity: fraction(0.9),
        })
        expect((held.water + held.air + held.solid) / container.volume).toBeCloseTo(1, 12)
        for (const part of [held.water, held.air, held.solid]) expect(part).toBeGreaterThanOrEqual(0)
        expect(held.waterContent).toBeLessThanOrEqual(held.bottomWaterContent * (1 + 1e-12))
        expect(held.waterContent).toBeGreaterThanOrEqual(held.topWaterContent * (1 - 1e-12))
      }),
    )
  })
  it('holds the water that an independent rule of many panels finds', () => {
    fc.assert(
      fc.property(anyContainer, anyMedium, fc.double({ min: 0, max: 20, noNaN: true }), (container, medium, s0) => {
        const { water } = waterAndAirAtRest({ container, medium, bottomSuction: centimetresOfSuction(s0) })
        expect(Math.abs(water - waterByPanels(container, medium, s0, 300)) / container.volume).toBeLessThan(1e-9)
      }),
      { numRuns: 60 },
    )
  })
  it('has the volume that its own sections add up to', () => {
    const full = { ...vanGenuchten(0, 1, 0.1, 2), waterContent: () => waterContent(1), breakpoints: [] }
    fc.assert(
      fc.property(anyContainer, (container) => {
        expect(waterByPanels(container, full, 0, 50) / container.volume).toBeCloseTo(1, 12)
      }),
    )
  })
})

describe('shapes', () => {
  it('are one shape where their measures coincide', () => {
    expect(pot(10, 10, 20).volume).toBeCloseTo(
      cylinderContainer({ diameter: centimetres(10), height: centimetres(20) }).volume,
      12,
    )
    const square = { bottomSide: centimetres(8), topSide: centimetres(12), height: centimetres(10) }
    expect(roundedSquareContainer({ ...square, cornerRadius: centimetres(0) }).volume).toBeCloseTo(
      cell(8, 12, 10).volume,
      12,
    )
    const round = { bottomSide: centimetres(8), topSide: centimetres(8), height: centimetres(10) }
    expect(roundedSquareContainer({ ...round, cornerRadius: centimetres(4) }).volume).toBeCloseTo(
      pot(8, 8, 10).volume,
      12,
    )
    const cut = stackedContainer([pot(8, 10, 10), pot(10, 12, 10)])
    expect(cut.volume).toBeCloseTo(pot(8, 12, 20).volume, 12)
    expect(cut.area(centimetres(7))).toBeCloseTo(pot(8, 12, 20).area(centimetres(7)), 15)
    expect(cut.area(centimetres(20))).toBeCloseTo(pot(8, 12, 20).area(centimetres(20)), 15)
  })
  it('do not change with the lists they were made from', () => {
    const heights = [0, 10].map(centimetres)
    const areas = [100, 100].map(squareCentimetres)
    const container = measuredContainer({ heights, areas })
    areas[1] = squareCentimetres(500)
    heights[1] = centimetres(1)
    expect(container.area(centimetres(10))).toBe(0.01)
    expect(container.height).toBe(10)
  })
  it('know no section outside', () => {
    expectDomainError(() => pot(10, 12, 20).area(centimetres(20.1)), { quantity: 'height above the bottom', max: 20 })
    expectDomainError(() => pot(10, 12, 20).area(Number.NaN as never))
  })
  it('refuse what has no meaning', () => {
    expectDomainError(() => pot(0, 12, 20), { quantity: 'bottom diameter' })
    expectDomainError(() => pot(10, Number.NaN, 20), { quantity: 'length' })
    expectDomainError(() => cell(1e-200, 1e-200, 1e-200), { quantity: 'volume of the container' })
    expectDomainError(() => cell(1e200, 1e200, 1), { quantity: 'volume of the container' })
    const square = { bottomSide: centimetres(8), topSide: centimetres(12), height: centimetres(10) }
    expectInputError(() => roundedSquareContainer({ ...square, cornerRadius: centimetres(4.1) }), 'cornerRadius')
    expectInputError(() => stackedContainer([]), 'parts')
    const heights = [0, 10].map(centimetres)
    const areas = [100, 100].map(squareCentimetres)
    expectInputError(() => measuredContainer({ heights, areas: areas.slice(1) }), 'heights, areas')
    expectInputError(() => measuredContainer({ heights: heights.slice(1), areas: areas.slice(1) }), 'heights, areas')
    expectInputError(() => measuredContainer({ heights: [1, 10].map(centimetres), areas }), 'heights')
    expectInputError(() => measuredContainer({ heights: [0, 0].map(centimetres), areas }), 'heights')
    expectInputError(() => measuredContainer({ heights, areas: [0, 0].map(squareCentimetres) }), 'areas')
    expectDomainError(() => measuredContainer({ heights, areas: [-1, 1] as never }), { quantity: 'area' })
    expectInputError(
      () =>
        waterAndAirAtRest({ container: pot(8, 8, 8), medium: vanGenuchten(0.1, 0.9, 0.1, 2), porosity: fraction(0.8) }),
      'porosity',
    )
  })
})
