import fc from 'fast-check'
import { coverageFactor, meanWithConfidence, numberOfProbes, waterContent, zoneMean } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('dielectric', 'sampling.number', ({ cv, error, confidence }) => {
  const { probes, byNormal } = numberOfProbes({ standardDeviation: cv / 100, halfWidth: error / 100, confidence })
  return { n_normal: byNormal, n_t: probes }
})
checkPublished('dielectric', 'sampling.mean_ci', ({ values, confidence }) => {
  const found = meanWithConfidence({ waterContents: values.map(waterContent), confidence })
  return { ...found, sd: found.standardDeviation, cv: found.coefficientOfVariation, half_width: found.halfWidth }
})

describe('the number of probes', () => {
  it('is the smallest that is enough, found by trying every number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        fc.double({ min: 0.6, max: 0.99, noNaN: true }),
        (ratio, confidence) => {
          const { probes, byNormal, halfWidth } = numberOfProbes({
            standardDeviation: 0.1,
            halfWidth: Math.min(0.1 / ratio, 1),
            confidence,
          })
          const wanted = Math.min(1, 0.1 / ratio)
          let n = 2
          while (n < ((coverageFactor({ confidence, degreesOfFreedom: n - 1 }) * 0.1) / wanted) ** 2) n++
          expect(probes).toBe(n)
          expect(byNormal).toBeLessThanOrEqual(probes)
          expect(halfWidth).toBeLessThanOrEqual(wanted * (1 + 1e-9))
        },
      ),
      { numRuns: 60 },
    )
  })
  it('refuses what nobody would install, and numbers without meaning', () => {
    expectInputError(() => numberOfProbes({ standardDeviation: 1, halfWidth: 1e-4 }), 'halfWidth')
    expectDomainError(() => numberOfProbes({ standardDeviation: 0, halfWidth: 0.1 }), {})
    expectInputError(() => meanWithConfidence({ waterContents: [waterContent(0.5)] }), 'waterContents')
    expectInputError(() => meanWithConfidence({ waterContents: [0, 0].map(waterContent) }), 'waterContents')
  })
  it('notes how little few probes say', () => {
    expect(meanWithConfidence({ waterContents: [0.5, 0.6].map(waterContent) }).findings).toMatchObject([
      { code: 'few-probes' },
    ])
  })
})

describe('the mean of a zone', () => {
  const probe = (name: string, theta: number | undefined, weight = 1) => ({
    name,
    weight,
    ...(theta === undefined ? {} : { waterContent: waterContent(theta) }),
  })
  const probes = fc.array(fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.integer({ min: 1, max: 4 })), {
    minLength: 1,
    maxLength: 9,
  })
  it('counts a probe of whole weight as that many probes', () => {
    fc.assert(
      fc.property(probes, (list) => {
        const heavy = zoneMean({ probes: list.map(([theta, weight], i) => probe(`${i}`, theta, weight)) })
        const many = zoneMean({
          probes: list.flatMap(([theta, weight], i) =>
            Array.from({ length: weight }, (_, k) => probe(`${i}.${k}`, theta)),
          ),
        })
        expect(Math.abs(heavy.mean - many.mean)).toBeLessThan(1e-12)
        expect(heavy.median).toBe(many.median)
        expect(Math.abs(heavy.robustSpread - many.robustSpread)).toBeLessThan(1e-12)
        expect(heavy.apart).toEqual([...new Set(many.apart.map((name) => name.split('.')[0]))])
      }),
    )
  })
  it('has the ordinary median for equal weights', () => {
    fc.assert(
      fc.property(probes, (list) => {
        const values = list.map(([theta]) => theta).sort((a, b) => a - b)
        const middle = (values[(values.length - 1) >> 1]! + values[values.length >> 1]!) / 2
        expect(zoneMean({ probes: list.map(([theta], i) => probe(`${i}`, theta)) }).median).toBeCloseTo(middle, 14)
      }),
    )
  })
  it('names the probe apart, and says when too few report', () => {
    const steady = [0.54, 0.55, 0.56, 0.57].map((theta, i) => probe(`p${i}`, theta))
    const zone = zoneMean({ probes: [...steady, probe('dry', 0.2)] })
    expect(zone.apart).toEqual(['dry'])
    expect(zone.median).toBe(0.55)
    expect(zone.robustSpread).toBeCloseTo(1.4826 * 0.01, 10)
    expect(zoneMean({ probes: steady })).toMatchObject({ coverage: 1, apart: [], findings: [] })
    // Where all others say the same, five hundredths are apart.
    const alike = [0.55, 0.55, 0.55, 0.55].map((theta, i) => probe(`p${i}`, theta))
    for (const off of [-1, 1]) {
      expect(zoneMean({ probes: [...alike, probe('off', 0.55 + off * 0.049)] }).apart).toEqual([])
      expect(zoneMean({ probes: [...alike, probe('off', 0.55 + off * 0.051)] }).apart).toEqual(['off'])
    }
    const half = zoneMean({ probes: [probe('a', 0.5), probe('b', undefined, 3)] })
    expect(half.coverage).toBe(0.25)
    expect(half.findings).toMatchObject([{ code: 'probes-missing', level: 'danger' }])
    expectInputError(() => zoneMean({ probes: [probe('a', undefined)] }), 'probes')
    expectInputError(() => zoneMean({ probes: [] }), 'probes')
    expectDomainError(() => zoneMean({ probes: [probe('a', 0.5, 0)] }), { quantity: 'weight of a probe' })
  })
})
