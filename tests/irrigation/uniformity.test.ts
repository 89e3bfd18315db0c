import fc from 'fast-check'
import {
  catchTest,
  christiansenUniformity,
  designEmissionUniformity,
  emitterGrade,
  explainIrrigationFinding,
  flowVariation,
  flowVariationCoefficient,
  fraction,
  inPercent,
  litresPerHour,
  lowQuarterUniformity,
  minutes,
  percent,
  runTimeForDriestQuarter,
  seconds,
  statisticalUniformity,
  uniformityGrade,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('irrigation', 'uniformity.du_lq', ({ q }) => ({ DUlq: lowQuarterUniformity(q) }))
checkPublished('irrigation', 'uniformity.cu', ({ q }) => ({ CU: inPercent(christiansenUniformity(q)) }))
checkPublished('irrigation', 'uniformity.cv', ({ q }) => ({ CV: flowVariationCoefficient(q) }))
checkPublished('irrigation', 'uniformity.us', ({ q }) => ({
  Us: inPercent(statisticalUniformity(q)),
  class: uniformityGrade(statisticalUniformity(q)),
}))
checkPublished('irrigation', 'uniformity.us_grade', ({ Us }) => ({ class: uniformityGrade(percent(Us)) }))
checkPublished('irrigation', 'uniformity.cv_grade', ({ CV }) => ({ class: emitterGrade(CV) }))
checkPublished('irrigation', 'uniformity.qvar', ({ q }) => ({ qvar: inPercent(flowVariation(q)) }))
checkPublished('irrigation', 'uniformity.eu_design', ({ CVm, n, qmin, qavg }) => ({
  EU: inPercent(
    designEmissionUniformity({
      variation: CVm,
      emitters: n,
      minFlow: litresPerHour(qmin),
      meanFlow: litresPerHour(qavg),
    }),
  ),
}))

const catches = fc.array(fc.double({ min: 0.001, max: 1000, noNaN: true }), { minLength: 4, maxLength: 60 })

describe('uniformity', () => {
  it('of the low quarter is the mean of whole values where the number is a multiple of four', () => {
    expect(lowQuarterUniformity([1, 2, 3, 4, 5, 6, 7, 8])).toBeCloseTo(1.5 / 4.5, 15)
  })
  it('of the low quarter does not change when every catch is listed four times, which makes the quarter whole', () => {
    fc.assert(
      fc.property(catches, (list) => {
        const four = [...list, ...list, ...list, ...list]
        expect(lowQuarterUniformity(four)).toBeCloseTo(lowQuarterUniformity(list), 9)
      }),
    )
  })
  it('does not depend on the unit or the order', () => {
    fc.assert(
      fc.property(catches, fc.double({ min: 0.01, max: 100, noNaN: true }), (list, unit) => {
        const other = list.map((x) => x * unit).reverse()
        for (const index of [lowQuarterUniformity, christiansenUniformity, statisticalUniformity, flowVariation])
          expect(index(other)).toBeCloseTo(index(list), 9)
      }),
    )
  })
  it('is 1 for equal catches and never better', () => {
    fc.assert(
      fc.property(catches, (list) => {
        for (const index of [lowQuarterUniformity, christiansenUniformity, statisticalUniformity])
          expect(index(list)).toBeLessThanOrEqual(1 + 1e-12)
        expect(flowVariation(list)).toBeGreaterThanOrEqual(0)
      }),
    )
    expect(lowQuarterUniformity([2, 2, 2, 2, 2])).toBe(1)
    expect(christiansenUniformity([2, 2, 2, 2, 2])).toBe(1)
  })
  it('follows the known relations of a normal spread', () => {
    // Quantiles of the normal distribution (Abramowitz and Stegun 26.2.23, good to 4.5e-4) stand for a large sample.
    const quantile = (p: number) => {
      const t = Math.sqrt(-2 * Math.log(Math.min(p, 1 - p)))
      const z =
        t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3)
      return p < 0.5 ? -z : z
    }
    const list = Array.from({ length: 4000 }, (_, i) => 1 + 0.1 * quantile((i + 0.5) / 4000))
    expect(lowQuarterUniformity(list)).toBeCloseTo(1 - 1.27 * 0.1, 3)
    expect(christiansenUniformity(list)).toBeCloseTo(1 - 0.798 * 0.1, 3)
  })
  it('refuses too few catches, dry zones and what is not a volume', () => {
    expectInputError(() => lowQuarterUniformity([1, 2, 3]), 'catches')
    expectInputError(() => christiansenUniformity([0, 0]), 'catches')
    expectDomainError(() => flowVariationCoefficient([1, Number.NaN]), { quantity: 'catch' })
    expectDomainError(() => flowVariation([1, -1]), { quantity: 'catch', min: 0 })
  })
})

describe('a catch test', () => {
  it('names the blocked emitter and what to do', () => {
    const sheet = catchTest({ catches: [100, 98, 103, 97, 101, 0, 99, 102], duration: minutes(3) })
    expect(sheet.weak).toEqual([5])
    expect(sheet.minFlow).toBe(0)
    expect(sheet.findings.map(({ code }) => code)).toEqual(['few-catches', 'uneven-zone', 'weak-emitters'])
    expect(sheet.findings.map((finding) => explainIrrigationFinding(finding).message)).toEqual([
      expect.stringMatching(/^8 catches say little .* take 16 or more/),
      expect.stringMatching(/^the driest quarter gets \d+ % of the mean/),
      expect.stringMatching(/^1 of 8 emitters give less/),
    ])
    expectInputError(() => explainIrrigationFinding({ ...sheet.findings[0], code: 'clogged' } as never), 'finding')
  })
  it('has no factor where the driest quarter is dry', () => {
    expect(catchTest({ catches: [0, 1, 1, 1], duration: minutes(1) }).runTimeFactor).toBeUndefined()
  })
  it('calls an emitter weak below three quarters of the mean, and a zone uneven below 0.8 for its driest quarter', () => {
    const sheetOf = (...parts: [times: number, caught: number][]) =>
      catchTest({ catches: parts.flatMap(([times, caught]) => Array(times).fill(caught)), duration: minutes(3) })
    // Sixteen catches of 1,600 mL in all: a mean of 100.
    expect(sheetOf([1, 75.5], [14, 100], [1, 124.5]).weak).toEqual([])
    expect(sheetOf([1, 74.5], [14, 100], [1, 125.5]).weak).toEqual([0])
    expect(sheetOf([4, 81], [8, 106], [4, 107])).toMatchObject({ lowQuarter: 0.81, findings: [] })
    expect(sheetOf([4, 79], [12, 107]).findings).toMatchObject([{ code: 'uneven-zone', value: 0.79, limit: 0.8 }])
  })
  it('is quiet about an even zone', () => {
    const sheet = catchTest({ catches: Array.from({ length: 16 }, (_, i) => 100 + (i % 3)), duration: minutes(3) })
    expect(sheet).toMatchObject({ grade: 'excellent', weak: [], findings: [] })
    expect(sheet.meanFlow).toBeCloseTo((100.9375 / 1000) * 20, 9)
  })
})

describe('a run for the driest quarter', () => {
  it('gives that quarter what the mean emitter gave before', () => {
    fc.assert(
      fc.property(catches, fc.double({ min: 30, max: 900, noNaN: true }), (list, time) => {
        const uniformity = lowQuarterUniformity(list)
        fc.pre(uniformity > 1e-6)
        const longer = runTimeForDriestQuarter({ runTime: seconds(time), uniformity, lineFill: seconds(20) })
        expect((longer - 20) * uniformity).toBeCloseTo(time - 20, 6)
      }),
    )
  })
  it('refuses a line that is not full before the valve closes', () => {
    expectInputError(
      () => runTimeForDriestQuarter({ runTime: seconds(10), uniformity: fraction(0.9), lineFill: seconds(20) }),
      'lineFill',
    )
    expect(runTimeForDriestQuarter({ runTime: seconds(0), uniformity: fraction(0.9), lineFill: seconds(20) })).toBe(0)
  })
})
