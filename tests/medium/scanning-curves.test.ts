import fc from 'fast-check'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  perCentimetre,
  rewettedCapacity,
  type SuctionHead,
  scanningCurvesScott1983,
  vanGenuchten1980,
  type WaterContent,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const peat = { residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6 }
const [drying, wetting] = [vanGenuchten1980(peat), wettingCurveKoolParker1987(peat)]

checkPublished('hydraulics', 'hysteresis.scanning', (given) => {
  const model = {
    residual: given.theta_r as WaterContent,
    saturated: given.theta_s as WaterContent,
    alpha: perCentimetre(given.alpha),
    n: given.n as number,
  }
  const main = {
    drying: vanGenuchten1980(model),
    wetting: wettingCurveKoolParker1987({ ...model, alphaRatio: given.alpha_ratio }),
  }
  const [dry, wet] = [given.dried_to as SuctionHead, given.wetted_to as SuctionHead]
  let theta_dried = main.drying.waterContent(dry)
  let theta_wetted = theta_dried
  for (let loop = 0; loop < given.loops; loop++) {
    theta_wetted = scanningCurvesScott1983({ ...main, suction: dry, waterContent: theta_dried }).whileWetting(wet)
    theta_dried = scanningCurvesScott1983({ ...main, suction: wet, waterContent: theta_wetted }).whileDraining(dry)
  }
  return { theta_wetted, theta_dried }
})

describe('scanning curves after Scott and others 1983', () => {
  const suctions = fc.double({ min: 0.1, max: 1000, noNaN: true }).map(centimetresOfSuction)
  it('pass through the turn and stay between the main curves, falling with suction', () => {
    fc.assert(
      fc.property(suctions, fc.double({ min: 0, max: 1, noNaN: true }), (suction, share) => {
        const [most, least] = [drying.waterContent(suction), wetting.waterContent(suction)]
        const content = waterContent(least + share * (most - least))
        const turned = scanningCurvesScott1983({ drying, wetting, suction, waterContent: content })
        expect(turned.whileDraining(suction)).toBeCloseTo(content, 12)
        expect(turned.whileWetting(suction)).toBeCloseTo(content, 12)
        for (const factor of [1.3, 3, 20]) {
          const [wetter, drier] = [centimetresOfSuction(suction / factor), centimetresOfSuction(suction * factor)]
          const [up, down] = [turned.whileWetting(wetter), turned.whileDraining(drier)]
          expect(up).toBeGreaterThanOrEqual(Math.max(content, wetting.waterContent(wetter)) - 1e-12)
          expect(up).toBeLessThanOrEqual(drying.waterContent(wetter) + 1e-12)
          expect(down).toBeLessThanOrEqual(Math.min(content, drying.waterContent(drier)) + 1e-12)
          expect(down).toBeGreaterThanOrEqual(wetting.waterContent(drier) - 1e-12)
        }
      }),
    )
  })
  it('are the main curves from their own ends', () => {
    const s = centimetresOfSuction(12)
    const wettest = scanningCurvesScott1983({ drying, wetting, suction: centimetresOfSuction(1e-9) })
    expect(wettest.whileDraining(s)).toBeCloseTo(drying.waterContent(s), 9)
    const content = wetting.waterContent(s)
    const onWetting = scanningCurvesScott1983({ drying, wetting, suction: s, waterContent: content })
    expect(onWetting.whileWetting(centimetresOfSuction(4))).toBeCloseTo(
      wetting.waterContent(centimetresOfSuction(4)),
      12,
    )
  })
  it('refuse a turn outside the main loop', () => {
    const at = { drying, wetting, suction: centimetresOfSuction(10) }
    expectInputError(() => scanningCurvesScott1983({ ...at, waterContent: waterContent(0.9) }), 'waterContent')
    expectInputError(() => scanningCurvesScott1983({ ...at, waterContent: waterContent(0.2) }), 'waterContent')
    expectInputError(() => scanningCurvesScott1983({ ...at, drying: wetting, wetting: drying }), 'waterContent')
    expectDomainError(() => scanningCurvesScott1983({ ...at, suction: -1 as SuctionHead }), {
      quantity: 'suction',
    })
  })
})

describe('capacity of a rewetted container', () => {
  const container = boxContainer({ length: centimetres(100), width: centimetres(7.5), height: centimetres(15) })
  // By scipy 1.11 `quad` over the closed form: 0.7975276491002852, 0.7275284947658162, and 0.792594393242623 after drying to 8 cm.
  it('is that of an independent quadrature', () => {
    const of = (driedTo: number) =>
      rewettedCapacity({ container, medium: drying, wetting, driedTo: centimetresOfSuction(driedTo) })
    expect(of(50).drained).toBeCloseTo(0.7975276491002852, 10)
    expect(of(50).rewetted).toBeCloseTo(0.7275284947658162, 10)
    expect(of(8).rewetted).toBeCloseTo(0.792594393242623, 10)
  })
  it('lies between the integrals of both curves, the lower the drier it was, and is that of the wetting curve from very dry', () => {
    const capacity = containerCapacity({ container, medium: drying })
    const least = containerCapacity({ container, medium: wetting })
    let before = capacity
    for (const driedTo of [5, 20, 50, 200, 1e4]) {
      const { drained, rewetted } = rewettedCapacity({
        container,
        medium: drying,
        wetting,
        driedTo: centimetresOfSuction(driedTo),
      })
      expect(drained).toBe(capacity)
      expect(rewetted).toBeLessThan(before)
      expect(rewetted).toBeGreaterThan(least - 1e-9)
      before = rewetted
    }
    const dry = rewettedCapacity({ container, medium: drying, wetting, driedTo: centimetresOfSuction(1e12) })
    expect(dry.rewetted).toBeCloseTo(least, 6)
  })
  it('refuses curves that are swapped and a medium that never dried', () => {
    const at = { container, medium: drying, wetting, driedTo: centimetresOfSuction(50) }
    expectInputError(() => rewettedCapacity({ ...at, medium: wetting, wetting: drying }), 'waterContent')
    expectDomainError(() => rewettedCapacity({ ...at, driedTo: centimetresOfSuction(0) }), { quantity: 'suction' })
  })
})
