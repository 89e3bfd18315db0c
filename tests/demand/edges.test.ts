import {
  decisiemensPerMetre,
  explainDemandFinding,
  fitDailyUse,
  forecastByFollowingLevel,
  hourlySeriesAsce2005,
  instant,
  latitude,
  longitude,
  metres,
  metresAboveSeaLevel,
  millimetresOfDepth,
  type SaturatedExtractEC,
  saltAndWaterStress,
  tabledStagesFao56,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { CROP_NAMES } from '../../src/demand/crop/crop-names-fao56.js'
import { randomNumbers } from '../../src/numerics/random.js'
import { expectInputError } from '../support/refusals.js'

const mean = (values: readonly number[]) => values.reduce((total, value) => total + value, 0) / values.length

describe('crops of FAO-56', () => {
  it('lead only to names of Table 11, which have stages', () => {
    for (const [crop, names] of CROP_NAMES)
      for (const name of names) expect(tabledStagesFao56(name).length, `${crop}: ${name}`).toBeGreaterThan(0)
  })
})

describe('salt and dryness together', () => {
  // FAO-56 (1998), Eq. 91, written out again for an ample root zone: beans have 19 % for each dS/m above 1 dS/m.
  it.each([0.85, 1, 1.15, 1.5])('divide the loss of yield by the response of yield: Ky %f', (yieldResponse) => {
    const ec = (value: number) => decisiemensPerMetre<SaturatedExtractEC>(value)
    const share = saltAndWaterStress({
      extractEC: ec(2),
      thresholdEC: ec(1),
      lossPerDecisiemens: 19,
      yieldResponse,
      totalAvailable: millimetresOfDepth(110),
      readilyAvailable: millimetresOfDepth(44),
      depletion: millimetresOfDepth(44),
    })
    expect(share).toBeCloseTo(1 - 0.19 / yieldResponse, 12)
  })
})

describe('a fit of the use of days', () => {
  const { uniform, normal } = randomNumbers(11)
  const radiationSum = Float64Array.from({ length: 60 }, () => 500 + 2000 * uniform())
  const deficitHours = radiationSum.map((sum) => 4 + 0.002 * sum + 8 * uniform())
  const use = radiationSum.map((sum, i) => 0.0012 * sum + 0.05 * deficitHours[i]! + 0.02 * normal())
  it('needs ten days besides those that test it', () => {
    const first = (days: number) => ({
      use: use.slice(0, days),
      radiationSum: radiationSum.slice(0, days),
      deficitHours: deficitHours.slice(0, days),
      testShare: 0.17,
    })
    expect(fitDailyUse(first(12))).toMatchObject({ fittedDays: 10, testDays: 2 })
    expectInputError(() => fitDailyUse(first(11)), 'use')
  })
  it('tells how the causes move together by the product-moment formula', () => {
    const { correlation, fittedDays } = fitDailyUse({ use, radiationSum, deficitHours })
    const [a, b] = [[...radiationSum.slice(0, fittedDays)], [...deficitHours.slice(0, fittedDays)]]
    const products = mean(a.map((value, i) => value * b[i]!)) - mean(a) * mean(b)
    const spread = (values: number[]) => Math.sqrt(mean(values.map((value) => value ** 2)) - mean(values) ** 2)
    expect(correlation).toBeCloseTo(products / (spread(a) * spread(b)), 9)
    expect(Math.abs(correlation)).toBeGreaterThan(0.1)
    expect(Math.abs(correlation)).toBeLessThan(0.95)
  })
})

describe('a forecast by a following level', () => {
  const { uniform, normal } = randomNumbers(12)
  const sun = Float64Array.from({ length: 60 }, () => 500 + 2000 * uniform())
  const nothing = Float64Array.from({ length: 60 }, () => normal())
  const use = sun.map((sum) => 0.5 + 0.001 * sum + 0.03 * normal())
  const found = forecastByFollowingLevel({
    use,
    causes: [
      { name: 'sun', values: sun },
      { name: 'nothing', values: nothing },
    ],
  })
  it('names its coefficients and doubts only those whose interval holds zero', () => {
    expect(found.coefficients.map(({ name }) => name)).toEqual(['level', 'sun', 'nothing'])
    const [, known, unknown] = found.coefficients
    expect(known!.low).toBeGreaterThan(0)
    expect(unknown!.low * unknown!.high).toBeLessThan(0)
    const doubted = found.findings.filter(({ code }) => code === 'cannot-tell-cause').map(({ about }) => about)
    expect(doubted).toEqual(['nothing'])
  })
  it('scores the days after the training by error, bias and what it explains', () => {
    const { days, error, bias, explained, yesterdayError } = found.score
    const scored = Array.from({ length: days }, (_, i) => 60 - days + i)
    const misses = scored.map((day) => found.forecasts[day]! - use[day]!)
    const middle = mean(scored.map((day) => use[day]!))
    const squared = (values: readonly number[]) => mean(values.map((value) => value ** 2))
    expect(days).toBe(18)
    expect(error).toBeCloseTo(Math.sqrt(squared(misses)), 12)
    expect(bias).toBeCloseTo(mean(misses), 12)
    expect(explained).toBeCloseTo(1 - squared(misses) / squared(scored.map((day) => use[day]! - middle)), 12)
    expect(yesterdayError).toBeCloseTo(Math.sqrt(squared(scored.map((day) => use[day - 1]! - use[day]!))), 12)
  })
  it('explains nothing of days that are all alike', () => {
    const same = new Float64Array(40).fill(2)
    const { score } = forecastByFollowingLevel({ use: same, causes: [{ name: 'sun', values: sun.slice(0, 40) }] })
    expect(score.explained).toBe(0)
  })
  it('takes use without end for missing', () => {
    const torn = use.slice()
    torn[20] = Number.POSITIVE_INFINITY
    torn[21] = -1
    const gaps = use.slice()
    gaps[20] = Number.NaN
    gaps[21] = Number.NaN
    const causes = [{ name: 'sun', values: sun }]
    expect(forecastByFollowingLevel({ use: torn, causes })).toEqual(forecastByFollowingLevel({ use: gaps, causes }))
  })
})

describe('a series of hours', () => {
  const hours = (length: number) => ({
    site: {
      latitude: latitude(40),
      longitude: longitude(0),
      elevation: metresAboveSeaLevel(100),
      windHeight: metres(2),
    },
    start: instant(Date.UTC(2025, 5, 1) / 1000),
    temperature: new Float64Array(length).fill(20),
    vapourPressure: new Float64Array(length).fill(1.2),
    solar: Float64Array.from({ length }, (_, i) => Math.max(0, 2.4 * Math.sin((((i % 24) - 5) / 14) * Math.PI))),
    wind: new Float64Array(length).fill(2),
    short: new Float64Array(length),
    tall: new Float64Array(length),
  })
  it('takes rows at the very ends of the ranges', () => {
    for (const [name, low, high] of [
      ['temperature', -60, 60],
      ['vapourPressure', 0, 10],
      ['solar', -0.05, 6],
      ['wind', 0, 120],
    ] as const) {
      const series = hours(6)
      series[name].set([low, high, low - 1e-9, high + 1e-9])
      expect(hourlySeriesAsce2005(series), name).toMatchObject({ converted: 4, refused: 2, missing: 0 })
    }
  })
  it('assumes the cloudiness of the hours before the first high sun, and of no night after it', () => {
    const one = hourlySeriesAsce2005(hours(24)).cloudinessAssumed
    expect(one).toBeGreaterThan(3)
    expect(one).toBeLessThan(8)
    expect(hourlySeriesAsce2005(hours(24 * 5)).cloudinessAssumed).toBe(one)
  })
})

describe('words on weather', () => {
  it('say why a cloudiness was assumed', () => {
    const words = (sunElevation: number) =>
      explainDemandFinding({ code: 'assumed-cloudiness', level: 'caution', value: 0.7, sunElevation } as never)
    expect(words(-0.2).message).toMatch(/^the sun is down .* 0\.7 of the clear-sky radiation/)
    expect(words(0.1).message).toMatch(/^the sun is low /)
    expect(words(0.1).source).toMatch(/^allen-1998, chapter 4/)
  })
})
