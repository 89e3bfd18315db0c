import fc from 'fast-check'
import {
  type AllowedSuction,
  bottomSuctionAtRest,
  boxContainer,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  cylinderContainer,
  fraction,
  fredlundXing1994,
  hasConductivity,
  irrigationLimits,
  type LimitsRequest,
  perCentimetre,
  percent,
  refillPointByDepletion,
  refillPointBySuction,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('irrigation', 'depletion.refill_point', ({ fc: full, wp, MAD }) => ({
  theta: refillPointByDepletion({
    fullPoint: waterContent(full),
    lowerLimit: waterContent(wp),
    depletion: fraction(MAD),
  }),
}))

// An invented peat-like medium.
const medium = vanGenuchten1980({
  residual: waterContent(0.12),
  saturated: waterContent(0.93),
  alpha: perCentimetre(0.1),
  n: 1.6,
})
const slab = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) })
const pot = cylinderContainer({ diameter: centimetres(20), height: centimetres(20) })
const capacity = containerCapacity({ container: slab, medium })
const codes = (request: LimitsRequest) => irrigationLimits(request).findings.map((finding) => finding.code)

describe('refill point', () => {
  it('by depletion is the full point with none of it used and the lower limit with all of it', () => {
    const points = { fullPoint: waterContent(0.6), lowerLimit: waterContent(0.2) }
    expect(refillPointByDepletion({ ...points, depletion: fraction(0) })).toBe(0.6)
    expect(refillPointByDepletion({ ...points, depletion: fraction(1) })).toBeCloseTo(0.2, 15)
    expectInputError(
      () => refillPointByDepletion({ ...points, lowerLimit: waterContent(0.6), depletion: fraction(0.5) }),
      'lowerLimit',
    )
    expectDomainError(() => refillPointByDepletion({ ...points, depletion: 1.1 as never }), { quantity: 'depletion' })
    expectDomainError(() =>
      refillPointByDepletion({ ...points, fullPoint: Number.NaN as never, depletion: fraction(0.5) }),
    )
  })
  it('by suction is the state of rest whose suction at that height is the limit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (s, z) => {
          const limits = { container: pot, medium, maxSuction: centimetresOfSuction(s), suctionHeight: centimetres(z) }
          const found = bottomSuctionAtRest({ container: pot, medium, waterContent: refillPointBySuction(limits) })
          expect(found + z).toBeCloseTo(s, 6)
        },
      ),
    )
  })
  it('by suction is container capacity when the limit is that of a drained container', () => {
    const limits: AllowedSuction = { container: pot, medium, maxSuction: centimetresOfSuction(10) }
    expect(refillPointBySuction(limits)).toBe(containerCapacity({ container: pot, medium }))
    expectInputError(() => refillPointBySuction({ ...limits, maxSuction: centimetresOfSuction(9.9) }), 'maxSuction')
    expectInputError(() => refillPointBySuction({ ...limits, suctionHeight: centimetres(21) }), 'suctionHeight')
    expectDomainError(() => refillPointBySuction({ ...limits, maxSuction: -1 as never }), { quantity: 'suction' })
    expectDomainError(() => refillPointBySuction({ ...limits, suctionHeight: -1 as never }), {
      argument: 'suctionHeight',
    })
  })
})

describe('irrigation limits', () => {
  it('take the drier full point and the wetter refill point, and name what binds', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(slab, pot),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 20, max: 90, noNaN: true }),
        (container, air, depletion, suction) => {
          const limits = irrigationLimits({
            container,
            medium,
            minAir: fraction(air),
            depletion: fraction(depletion),
            lowerLimit: waterContent(0.2),
            maxSuction: centimetresOfSuction(suction),
          })
          const of = (name: string) => limits.considered.find((limit) => limit.limit === name)?.waterContent as number
          expect(limits.fullPoint.waterContent).toBe(Math.min(of('container-capacity'), of('min-air')))
          expect(limits.refillPoint.waterContent).toBe(Math.max(of('depletion'), of('suction')))
          expect(of(limits.fullPoint.limit)).toBe(limits.fullPoint.waterContent)
          expect(of(limits.refillPoint.limit)).toBe(limits.refillPoint.waterContent)
          const room = limits.fullPoint.waterContent - limits.refillPoint.waterContent
          expect(limits.waterBetween).toBeCloseTo(room * container.volume, 12)
          expect(limits.findings.some((finding) => finding.code === 'no-room')).toBe(room <= 0)
          expect(limits.airAtFull).toBeCloseTo(0.93 - limits.fullPoint.waterContent, 14)
        },
      ),
    )
  })
  it('say when a drained container has less air than the roots need', () => {
    const request = { container: slab, medium, depletion: percent(20) as never, lowerLimit: waterContent(0.3) }
    const limits = irrigationLimits({ ...request, minAir: percent(15) })
    expect(limits.fullPoint).toEqual({ waterContent: 0.93 - 0.15, limit: 'min-air' })
    expect(limits.findings).toContainEqual(
      expect.objectContaining({ code: 'air-below-min', level: 'caution', value: 0.93 - capacity }),
    )
    expect(codes({ ...request, container: pot, minAir: percent(15) })).not.toContain('air-below-min')
    expect(codes({ ...request, minAir: percent(7) })).toContain('air-below-min')
    // Trapped air counts where the porosity is known.
    expect(codes({ ...request, minAir: percent(7), porosity: percent(95) })).not.toContain('air-below-min')
  })
  it('warn of field-soil numbers, of an assumed lower limit and of suction beyond the buffer', () => {
    expect(codes({ container: slab, medium, depletion: percent(20) })).toEqual([
      'field-soil-guide',
      'lower-limit-assumed',
      'drying-curve',
    ])
    expect(codes({ container: slab, medium, maxSuction: centimetresOfSuction(50) })).toEqual(['drying-curve'])
    expect(codes({ container: slab, medium, maxSuction: centimetresOfSuction(120) })).toEqual([
      'beyond-buffer',
      'drying-curve',
    ])
  })
  it('give the suction and the conductivity that are left at the refill point', () => {
    const limits = irrigationLimits({ container: slab, medium, maxSuction: centimetresOfSuction(50) })
    expect(limits.bottomSuctionAtRefill).toBeCloseTo(50 - 3.75, 8)
    expect(limits.conductivityAtRefill as number).toBeCloseTo(medium.relativeConductivity(centimetresOfSuction(50)), 10)
    const noConductivity = fredlundXing1994({
      saturated: waterContent(0.9),
      scaleSuction: centimetresOfSuction(12),
      n: 1.8,
      m: 0.7,
      residualSuction: centimetresOfSuction(15000),
    })
    expect(hasConductivity(noConductivity)).toBe(false)
    expect(hasConductivity(medium)).toBe(true)
    expect(irrigationLimits({ container: slab, medium: noConductivity, depletion: percent(30) })).not.toHaveProperty(
      'conductivityAtRefill',
    )
  })
  it('call a band without room a danger', () => {
    const limits = irrigationLimits({
      container: slab,
      medium,
      minAir: percent(40),
      maxSuction: centimetresOfSuction(5),
    })
    expect(limits.findings[0]).toMatchObject({ code: 'no-room', level: 'danger' })
    expect(limits.waterBetween).toBeLessThan(0)
  })
  it('refuse what contradicts itself', () => {
    expectInputError(() => irrigationLimits({ container: slab, medium }), 'depletion, maxSuction')
    const depletion = percent(20) as never
    expectInputError(
      () => irrigationLimits({ container: slab, medium, depletion, lowerLimit: waterContent(0.9) }),
      'lowerLimit',
    )
    expectInputError(
      () => irrigationLimits({ container: slab, medium, depletion: fraction(0.99), lowerLimit: waterContent(0) }),
      'lowerLimit',
    )
    expectInputError(() => irrigationLimits({ container: slab, medium, depletion, porosity: percent(90) }), 'porosity')
    expectDomainError(() => irrigationLimits({ container: slab, medium, depletion: 1 as never }), {
      quantity: 'depletion',
    })
    expectDomainError(() => irrigationLimits({ container: slab, medium, depletion, minAir: 1 as never }), {
      quantity: 'least air',
    })
  })
})
