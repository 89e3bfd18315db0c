import {
  attempt,
  boxContainer,
  brooksCorey1964,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  fitRetention,
  formMilksFontenoLarson1989,
  measuredContainer,
  perCentimetre,
  rewettedCapacity,
  squareCentimetres,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'

const numbers = { residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.6 }
const peat = vanGenuchten1980(numbers)
const container = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(15) })
const messageOf = (call: () => unknown) => String((attempt(call) as { error?: unknown }).error)

describe('points that scatter', () => {
  it('are refused with an error in the unit of the parameter: of a scale that is not known to a factor of ten, 2.3 times itself or more', () => {
    const said = Array.from({ length: 13 }, (_, k) => {
      const points = [0, 5, 10, 20, 50, 100, 300, 1000].map((s, i) => {
        const wobble = 0.08 * Math.sin((k + 1) * 7 * (i + 1) ** 2)
        const content = peat.waterContent(centimetresOfSuction(s)) + wobble
        return {
          suction: centimetresOfSuction(s),
          waterContent: waterContent(Math.min(0.95, Math.max(0.02, content))),
        }
      })
      return messageOf(() => fitRetention({ form: formMilksFontenoLarson1989, points }))
    })
    const told = said.flatMap((message) => {
      const [, value, error] = /alpha: its value of (\S+) 1\/cm has a standard error of (\S+) 1\/cm/.exec(message) ?? []
      return value === undefined ? [] : [Number(error) / Number(value)]
    })
    expect(told.length).toBeGreaterThan(1)
    for (const ratio of told) {
      expect(ratio).toBeGreaterThan(2.2)
      expect(ratio).toBeLessThan(30)
    }
  })
})

describe('a container', () => {
  it('far drier than any medium dries holds what the medium keeps', () => {
    const sand = brooksCorey1964({ ...numbers, airEntry: centimetresOfSuction(8), lambda: 4 })
    for (const medium of [peat, sand])
      for (const bottomSuction of [1e20, 1e30, 1e100, 1e300])
        expect(
          containerCapacity({ container, medium, bottomSuction: centimetresOfSuction(bottomSuction) }),
        ).toBeCloseTo(0.1, 9)
  })
  it('that stands in water is full, whatever falls above it', () => {
    const steep = brooksCorey1964({ ...numbers, airEntry: centimetresOfSuction(40), lambda: 4 })
    expect(containerCapacity({ container, medium: steep })).toBeCloseTo(0.9, 12)
  })
  it('from a table says which height does not rise, and after which', () => {
    const areas = [3, 4, 5].map(squareCentimetres)
    const said = (...heights: number[]) =>
      messageOf(() => measuredContainer({ heights: heights.map(centimetres), areas }))
    expect(said(3, 10, 20)).toContain('height 0 is 3 cm after 0 cm')
    expect(said(0, 10, 10)).toContain('height 2 is 10 cm after 10 cm')
  })
  it('that had dried no further than to its own top holds after wetting what drained', () => {
    const wetting = wettingCurveKoolParker1987(numbers)
    const of = (driedTo: number) =>
      rewettedCapacity({ container, medium: peat, wetting, driedTo: centimetresOfSuction(driedTo) })
    // Above the place where it stands at the suction to which it dried it drains as ever.
    expect(of(1e-6).rewetted).toBeCloseTo(of(1e-6).drained, 9)
    for (const driedTo of [5, 15, 30, 100]) expect(of(driedTo).rewetted).toBeLessThan(of(driedTo).drained)
    const drier = [5, 15, 30, 100].map((driedTo) => of(driedTo).rewetted)
    expect(drier).toEqual([...drier].sort((a, b) => b - a))
  })
})
