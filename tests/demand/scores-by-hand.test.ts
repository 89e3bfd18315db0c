import {
  coverFromCoefficient,
  fitDailyUse,
  forecastByFollowingLevel,
  forecastBySlidingFit,
  hourlyReferenceETAsce2005,
  hourlySeriesAsce2005,
  solarHourFao56,
  thinStandCoefficient,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { forecastScore } from '../../src/demand/record/forecast-score.js'

describe('the score of forecasts', () => {
  it('is worked out over the days that were forecast, the day before being the complete one before it', () => {
    // Days 1 and 4 are missing; day 2 is the first of the score, day 5 was not forecast.
    const use = Float64Array.of(3, Number.NaN, 4, 2, Number.NaN, 7, 6)
    const forecasts = Float64Array.of(9, 9, 5, 2, 9, Number.NaN, 3)
    const score = forecastScore(use, forecasts, [0, 2, 3, 5, 6], 1)
    expect(score.days).toBe(3)
    // Misses 1, 0 and -3; about the mean of 4: 0, -2 and 2; days before 3, 4 and 7, which miss by -1, 2 and 1.
    expect(score.error).toBeCloseTo(Math.sqrt(10 / 3), 12)
    expect(score.bias).toBeCloseTo(-2 / 3, 12)
    expect(score.explained).toBeCloseTo(1 - 10 / 8, 12)
    expect(score.yesterdayError).toBeCloseTo(Math.SQRT2, 12)
  })
  it('explains nothing of days that are all alike', () => {
    expect(forecastScore(Float64Array.of(2, 2, 2), Float64Array.of(0, 1, 3), [0, 1, 2], 1).explained).toBe(0)
  })
})

const sun = Float64Array.from({ length: 40 }, (_, i) => 1000 + 100 * ((i * 7) % 11))

describe('a level that is followed', () => {
  const use = sun.map((s) => 0.4 + 0.0015 * s)
  it('has no doubt of a cause that tells, and doubts one that does nothing', () => {
    const uneven = use.map((value, i) => value + 0.01 * Math.sin(9 * i))
    const nothing = Float64Array.from({ length: 40 }, (_, i) => 5 + Math.sin(i * i))
    const found = forecastByFollowingLevel({
      use: uneven,
      causes: [
        { name: 'radiation', values: sun },
        { name: 'nothing', values: nothing },
      ],
    })
    expect(found.findings.map(({ code, about }) => [code, about])).toEqual([['cannot-tell-cause', 'nothing']])
    expect(found.score.explained).toBeGreaterThan(0.9)
  })
  it('is refused where the days of training are fewer than two for each number and two more', () => {
    const asked = (causes: number, days: number) => () =>
      forecastByFollowingLevel({
        use: use.slice(0, days),
        causes: Array.from({ length: causes }, (_, k) => ({
          name: `cause ${k}`,
          values: sun.slice(0, days).map((s, i) => (k === 0 ? s : Math.cos(k * i * i))),
        })),
        trainingShare: 0.5 as never,
      })
    // Half of 16 days are 8: enough for a level and two causes, not for three.
    expect(asked(2, 16)).not.toThrow()
    expect(asked(3, 16)).toThrow('only 16 days are complete')
  })
})

describe('a fit that slides', () => {
  it('leaves out days that it cannot decide, and is refused only where it can decide none', () => {
    // In the first eight days the sun does not vary.
    const still = sun.map((s, i) => (i < 8 ? 1000 : s))
    const use = still.map((s) => 0.002 * s)
    const found = forecastBySlidingFit({ use, causes: [{ name: 'radiation', values: still }], window: 6 } as never)
    // The six days before the sixth, seventh and eighth.
    expect(found.undecidedDays).toBe(3)
    expect(found.score.days).toBe(31)
    expect(found.score.error).toBeLessThan(1e-9)
    const flat = sun.map(() => 1000)
    expect(() =>
      forecastBySlidingFit({ use, causes: [{ name: 'radiation', values: flat }], window: 6 } as never),
    ).toThrow('they move as one or do not vary')
  })
})

describe('a daily use that is fitted', () => {
  it('takes a day without end as one that is missing', () => {
    const hours = sun.map((_, i) => 3 + ((i * 5) % 7))
    const use = sun.map((s, i) => 0.001 * s + 0.02 * hours[i]!)
    const fitted = (value: number) =>
      fitDailyUse({ use: use.map((u, i) => (i === 9 ? value : u)), radiationSum: sun, deficitHours: hours } as never)
    expect(fitted(Number.POSITIVE_INFINITY)).toEqual(fitted(Number.NaN))
  })
})

describe('coefficients', () => {
  it('of a thin stand fall by the root of its cover over that of a dense one', () => {
    const found = thinStandCoefficient({ coefficient: 1.1, cover: 0.2, denseCover: 0.8 } as never)
    expect(found).toBeCloseTo(1.1 - 0.5, 12)
  })
  it('tell no cover where the greatest is no more than that of bare soil', () => {
    const cover = (max: number) => () =>
      coverFromCoefficient({ basalCoefficient: 0.15, minCoefficient: 0.15, maxCoefficient: max, height: 50 } as never)
    expect(cover(0.15)).toThrow('it is below another coefficient')
    expect(cover(0.16)).not.toThrow()
  })
})

describe('hours of a station', () => {
  const row = (t: number, ea: number, rs: number, speed: number) => {
    const list = (value: number) => Float64Array.of(value)
    const site = { latitude: 40, longitude: 0, elevation: 0, windHeight: 200 }
    const into = { short: new Float64Array(1), tall: new Float64Array(1) }
    // 21 June 2021, 12:00 to 13:00 UTC.
    const counts = hourlySeriesAsce2005({
      site,
      start: 1_624_276_800,
      temperature: list(t),
      vapourPressure: list(ea),
      solar: list(rs),
      wind: list(speed),
      ...into,
    } as never)
    return { ...counts, ...into }
  }
  const singleHour = (solar: number) =>
    hourlyReferenceETAsce2005({
      latitude: 40,
      longitude: 0,
      zoneLongitude: 0,
      elevation: 0,
      day: 172,
      middle: 12.5 * 3600,
      temperature: 20,
      vapourPressure: 1,
      solar,
      wind: { speed: 2, height: 200 },
    } as never)
  it('name only what is out of its range, not what stands at an end of its own', () => {
    const about = (...[t, ea, rs, speed]: readonly [number, number, number, number]) =>
      row(t, ea, rs, speed).refusals.map((one) => one.about)
    expect(about(-60, 0, -0.05, 121)).toEqual(['wind speed above its range'])
    expect(about(60, 10, 6, -1)).toEqual(['wind speed below its range'])
    expect(about(61, 10, 6, 120)).toEqual([expect.stringMatching(/ above its range$/)])
    expect(about(61, 10, 6, 120)).toHaveLength(1)
    expect(about(-61, 0, 0, 0)).toHaveLength(1)
  })
  it('are refused, not missing, where two readings are without end', () => {
    expect(row(20, 1, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)).toMatchObject({ missing: 0, refused: 1 })
    expect(row(20, 1, Number.NaN, 2)).toMatchObject({ missing: 1, refused: 0 })
  })
  it('take the wind of 2 m as it is, as a single hour does', () => {
    const single = singleHour(2)
    // The profile would make 2.0004 m/s of 2.
    expect(row(20, 1, 2, 2).tall[0]! / single.tall).toBeCloseTo(1, 10)
  })
  it('change their day at midnight of the sun, where it shines at midnight', () => {
    const hours = 48
    const list = (value: number) => new Float64Array(hours).fill(value)
    const [short, tall] = [list(0), list(0)]
    const site = { latitude: 86, longitude: 0, elevation: 0, windHeight: 200 }
    // From 9 June 2021, 0:00 UTC: days 160 and 161, the sun above 18 degrees throughout.
    const start = 1_623_196_800
    const weather = { temperature: 2, vapourPressure: 0.5, solar: 1 }
    const columns = { temperature: list(2), vapourPressure: list(0.5), solar: list(1), wind: list(3) }
    hourlySeriesAsce2005({ site, start, ...columns, short, tall } as never)
    for (let i = 0; i < hours; i++) {
      const single = hourlyReferenceETAsce2005({
        ...site,
        zoneLongitude: 0,
        day: 160 + Math.floor(i / 24),
        middle: ((i % 24) + 0.5) * 3600,
        ...weather,
        wind: { speed: 3, height: 200 },
      } as never)
      expect(short[i]! / single.short, String(i)).toBeCloseTo(1, 10)
    }
  })
  it('are told of light without sun from the end of the hour in which it sets', () => {
    const { seasonalCorrection } = solarHourFao56({
      latitude: 0,
      longitude: 0,
      zoneLongitude: 0,
      day: 172,
      middle: 43_200,
    } as never)
    // On the equator the sun sets six hours behind noon, and four minutes of time are a degree.
    const lit = (minutes: number) =>
      hourlySeriesAsce2005({
        site: { latitude: 0, longitude: minutes / 4 - seasonalCorrection / 240, elevation: 0, windHeight: 200 },
        // 21 June 2021, 17:30 to 18:30 UTC.
        start: 1_624_233_600 + 17.5 * 3600,
        ...Object.fromEntries(['temperature', 'solar', 'wind'].map((name) => [name, Float64Array.of(1)])),
        vapourPressure: Float64Array.of(0.5),
        short: new Float64Array(1),
        tall: new Float64Array(1),
      } as never).lightWithoutSun
    expect([29.5, 30.5].map(lit)).toEqual([0, 1])
  })
  it('are brighter than a clear sky from 1.15 times its light and 0.03 MJ/m² on, as a single hour says', () => {
    const single = singleHour(5.9)
    const clear = single.findings.find(({ code }) => code === 'brighter-than-clear-sky')!.limit!
    expect(row(20, 1, 1.15 * clear + 0.029, 2).brighterThanClearSky).toBe(0)
    expect(row(20, 1, 1.15 * clear + 0.031, 2).brighterThanClearSky).toBe(1)
  })
})
