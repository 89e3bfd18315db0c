import fc from 'fast-check'
import {
  airFilledPorosity,
  bottomSuctionAtRest,
  boxContainer,
  brooksCorey1964,
  capacityByHeight,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  cylinderContainer,
  drainageAfterShot,
  fraction,
  frustumContainer,
  inCentimetresOfSuction,
  inKilopascalsOfSuction,
  inPF,
  kilopascalsOfSuction,
  layersAtRest,
  litres,
  type Porosity,
  perCentimetre,
  percent,
  percentWaterContent,
  perchedWaterTable,
  sharePerPlant,
  stackedContainer,
  vanGenuchten1980,
  waterAndAirAtRest,
  waterContent,
  waterProfile,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const vanGenuchten = (theta_r: number, theta_s: number, alpha: number, n: number) =>
  vanGenuchten1980({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    alpha: perCentimetre(alpha),
    n,
  })
const peat = vanGenuchten(0.12, 0.93, 0.1, 1.6)
const coarse = vanGenuchten(0.02, 0.95, 0.08, 3.5)
const box = (length: number, width: number, height: number) =>
  boxContainer({ length: centimetres(length), width: centimetres(width), height: centimetres(height) })

checkPublished('hydraulics', 'units.head_pressure', ({ head, pressure }) => {
  const suction = head === undefined ? kilopascalsOfSuction(pressure) : centimetresOfSuction(head)
  return { head: inCentimetresOfSuction(suction), pressure: inKilopascalsOfSuction(suction), pF: inPF(suction) }
})
checkPublished('hydraulics', 'container.air_height', ({ theta_r, theta_s, alpha, n, air_fraction }) => ({
  height_above_bottom: perchedWaterTable({
    container: box(10, 10, 10),
    medium: vanGenuchten(theta_r, theta_s, alpha, n),
    minAir: fraction(air_fraction),
  }).height,
}))
checkPublished('hydraulics', 'container.deficit', ({ theta_r, theta_s, alpha, n, height, bottom_suction, shot }) => {
  // A section of 1000 cm² makes 1 cm of water 1 L.
  const after = drainageAfterShot({
    container: box(25, 40, height),
    medium: vanGenuchten(theta_r, theta_s, alpha, n),
    bottomSuction: centimetresOfSuction(bottom_suction),
    shot: litres(shot),
  })
  return { deficit: after.deficit, final_drainage: after.drainage, final_mean_theta: after.waterContent }
})
// Of prints without a curve only what follows from the print itself is asserted; `tests/published/not-testable.json` lists the rest.
checkPublished('hydraulics', 'container.published', ({ pot_height }, row) => {
  if (pot_height !== undefined) {
    const { topSuction } = waterAndAirAtRest({ container: box(10, 10, pot_height / 10), medium: peat })
    return { suction_top: inKilopascalsOfSuction(topSuction) }
  }
  const printed = (name: string) => Number(row.expected[name]?.[0])
  const [porosity, water] = [percent<Porosity>(printed('total_porosity')), percentWaterContent(printed('water'))]
  return {
    air_space: 100 * airFilledPorosity({ porosity, waterContent: water }),
    water: 100 * water,
    total_porosity: 100 * porosity,
  }
})

const suctions = fc.double({ min: 0, max: 200, noNaN: true })

describe('bottom suction from the mean water content', () => {
  it('is undone by the mean water content at rest', () => {
    const containers = [
      cylinderContainer({ diameter: centimetres(10), height: centimetres(12) }),
      stackedContainer([box(100, 15, 7.5), box(10, 10, 6.5)]),
    ]
    const media = [
      peat,
      brooksCorey1964({
        residual: waterContent(0.1),
        saturated: waterContent(0.8),
        airEntry: centimetresOfSuction(9),
        lambda: 0.7,
      }),
    ]
    fc.assert(
      fc.property(suctions, fc.constantFrom(...containers), fc.constantFrom(...media), (s0, container, medium) => {
        const state = { container, medium, bottomSuction: centimetresOfSuction(s0) }
        const found = bottomSuctionAtRest({ container, medium, waterContent: containerCapacity(state) })
        expect(Math.abs(found - s0)).toBeLessThan(1e-8 * (1 + s0))
      }),
    )
  })
  it('refuses water that is not at rest', () => {
    const container = box(10, 10, 12)
    expectDomainError(() => bottomSuctionAtRest({ container, medium: peat, waterContent: waterContent(0.9) }), {
      max: containerCapacity({ container, medium: peat }),
    })
    expectDomainError(() => bottomSuctionAtRest({ container, medium: peat, waterContent: waterContent(0.12) }), {
      min: 0.12,
    })
  })
})

describe('drainage after a shot', () => {
  it('keeps what it does not drain and never exceeds container capacity', () => {
    fc.assert(
      fc.property(suctions, fc.double({ min: 0, max: 20, noNaN: true }), (s0, shot) => {
        const state = { container: box(100, 15, 7.5), medium: peat, bottomSuction: centimetresOfSuction(s0) }
        const after = drainageAfterShot({ ...state, shot: litres(shot) })
        expect(after.retained + after.drainage).toBeCloseTo(shot, 12)
        expect(after.waterContent).toBeLessThanOrEqual(
          containerCapacity({ ...state, bottomSuction: centimetresOfSuction(0) }) + 1e-12,
        )
        expect(after.retained).toBeLessThanOrEqual(after.deficit + 1e-12)
      }),
    )
    expectDomainError(() => drainageAfterShot({ container: box(1, 1, 1), medium: peat, shot: -1 as never }), {
      quantity: 'water given',
      argument: 'shot',
    })
  })
})

describe('perched water table', () => {
  it('is as high in every container, and takes all of one that is lower', () => {
    const minAir = fraction(0.1) as never
    const tall = perchedWaterTable({ container: box(10, 10, 20), medium: peat, minAir })
    const low = perchedWaterTable({ container: box(10, 10, 5), medium: peat, minAir })
    expect(low.height).toBe(tall.height)
    expect(low.share).toBe(1)
    expect(tall.share).toBeCloseTo(tall.height / 20, 14)
  })
  it('is the air entry for the layer without air, and nothing where a curve has none', () => {
    const medium = brooksCorey1964({
      residual: waterContent(0.1),
      saturated: waterContent(0.8),
      airEntry: centimetresOfSuction(9),
      lambda: 0.7,
    })
    const container = box(10, 10, 12)
    expect(perchedWaterTable({ container, medium, minAir: fraction(0) })).toEqual({ height: 9, share: 0.75 })
    expect(perchedWaterTable({ container, medium: peat, minAir: fraction(0) })).toEqual({ height: 0, share: 0 })
  })
  it('takes the volume below it, in a container that widens and in one of steps', () => {
    const minAir = fraction(0.1) as never
    const height = perchedWaterTable({ container: box(10, 10, 20), medium: peat, minAir }).height as number
    // A cone of radius 5 cm at the bottom and 8 cm at 12 cm: the volume below z is π/3 z (a² + a b + b²).
    const below = (z: number) => (Math.PI / 3) * z * (25 + 5 * (5 + z / 4) + (5 + z / 4) ** 2)
    const pot = frustumContainer({
      bottomDiameter: centimetres(10),
      topDiameter: centimetres(16),
      height: centimetres(12),
    })
    expect(height).toBeLessThan(12)
    expect(perchedWaterTable({ container: pot, medium: peat, minAir }).share).toBeCloseTo(below(height) / below(12), 10)
    // 4 cm of 10 cm by 10 cm below 8 cm of 20 cm by 10 cm, and the same the other way round.
    const steps = (low: number, high: number) => stackedContainer([box(low, 10, 4), box(high, 10, 8)])
    expect(height).toBeGreaterThan(4)
    for (const [low, high] of [
      [10, 20],
      [20, 10],
    ] as const) {
      const share = (low * 4 + high * (height - 4)) / (low * 4 + high * 8)
      expect(perchedWaterTable({ container: steps(low, high), medium: peat, minAir }).share).toBeCloseTo(share, 12)
    }
  })
  it('refuses air that the medium never has', () => {
    expectDomainError(() => perchedWaterTable({ container: box(1, 1, 1), medium: peat, minAir: fraction(0.9) }))
    expectDomainError(() => perchedWaterTable({ container: box(1, 1, 1), medium: peat, minAir: 1 as never }), {
      quantity: 'least air',
    })
  })
})

describe('layers of different media', () => {
  it('are one stack when the medium is the same', () => {
    const parts = [box(100, 15, 7.5), box(10, 10, 6.5), box(4, 4, 4)]
    const whole = waterAndAirAtRest({ container: stackedContainer(parts), medium: peat })
    const layers = layersAtRest({ layers: parts.map((container) => ({ container, medium: peat })) })
    expect(layers.reduce((sum, layer) => sum + layer.water, 0)).toBeCloseTo(whole.water, 12)
    expect(layers[2]?.topSuction).toBe(18)
  })
  it('make a cube drier on a slab than on a tray, whatever the slab is made of', () => {
    const cube = { container: box(10, 10, 6.5), medium: coarse }
    const onTray = layersAtRest({ layers: [cube] })
    const onSlab = layersAtRest({ layers: [{ container: box(100, 15, 7.5), medium: peat }, cube] })
    expect(onSlab[1]?.waterContent).toBeLessThan(onTray[0]?.waterContent as number)
    expect(onSlab[1]?.bottomWaterContent).toBe(coarse.waterContent(centimetresOfSuction(7.5)))
  })
  it('refuse an empty stack', () => {
    expectInputError(() => layersAtRest({ layers: [] }), 'layers')
  })
})

describe('water by height', () => {
  it('runs from the bottom to the surface along the curve', () => {
    const container = box(10, 10, 15)
    const profile = waterProfile({
      container,
      medium: peat,
      points: 31,
      porosity: fraction(0.95),
      bottomSuction: centimetresOfSuction(3),
    })
    expect([profile.height[0], profile.height[30]]).toEqual([0, 15])
    expect([profile.suction[0], profile.suction[30]]).toEqual([3, 18])
    for (let i = 0; i < 31; i++) {
      expect(profile.waterContent[i]).toBe(peat.waterContent(centimetresOfSuction(profile.suction[i]!)))
      expect(profile.waterContent[i]! + profile.airFilledPorosity[i]!).toBeCloseTo(0.95, 15)
    }
    expectDomainError(() => waterProfile({ container, medium: peat, points: 1 }), { quantity: 'points' })
    expectDomainError(() => waterProfile({ container, medium: peat, points: 2.5 }), { quantity: /points/ })
  })
})

describe('capacity by height', () => {
  it('is container capacity in a straight container of that height', () => {
    const heights = [5, 10, 20].map(centimetres)
    const rows = capacityByHeight({ medium: peat, heights })
    rows.forEach((row, i) => {
      const container = box(3, 4, heights[i]!)
      expect(row.containerCapacity).toBeCloseTo(containerCapacity({ container, medium: peat }), 13)
      expect(row.containerCapacity + row.airFilledPorosity).toBeCloseTo(0.93, 14)
    })
    expectDomainError(() => capacityByHeight({ medium: peat, heights: [0 as never] }), { quantity: 'height' })
  })
})

describe('share per plant', () => {
  it('divides and refuses broken plants', () => {
    expect(sharePerPlant({ volume: litres(11.25), plants: 3 })).toBe(3.75)
    expectDomainError(() => sharePerPlant({ volume: litres(1), plants: 0 }), { min: 1 })
    expectDomainError(() => sharePerPlant({ volume: litres(1), plants: 1.5 }))
    expectDomainError(() => sharePerPlant({ volume: -1 as never, plants: 1 }), { quantity: 'volume' })
  })
})
