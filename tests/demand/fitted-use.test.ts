import { cropCoefficientOfDay, explainDemandFinding, fitDailyUse, layeredWater, metres, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

/** Twenty days that no line fits exactly; the last six are kept back. */
const light = Array.from({ length: 20 }, (_, i) => 1000 + 137 * ((i * 7) % 11))
const dry = Array.from({ length: 20 }, (_, i) => 8 + ((i * 5) % 9))
const use = light.map((s, i) => 0.0018 * s + 0.06 * dry[i]! + 0.2 * Math.sin(3 * i))
const fitOf = (changes: object = {}) =>
  fitDailyUse({ use, radiationSum: light, deficitHours: dry, ...changes } as never)
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
const times = (a: readonly number[], b: readonly number[]) => sum(a.map((value, i) => value * b[i]!))

describe('coefficients of daily use', () => {
  const [s, d, u] = [light.slice(0, 14), dry.slice(0, 14), use.slice(0, 14)]
  // The two normal equations, solved by Cramer's rule.
  const [ss, sd, dd, su, du] = [times(s, s), times(s, d), times(d, d), times(s, u), times(d, u)]
  const determinant = ss * dd - sd * sd
  const [joule, hour] = [(su * dd - du * sd) / determinant, (ss * du - sd * su) / determinant]
  const left = u.map((value, i) => joule * s[i]! + hour * d[i]! - value)

  it('solve the normal equations, with the intervals of Student', () => {
    const fit = fitOf()
    expect(fit).toMatchObject({ fittedDays: 14, testDays: 6, skippedDays: 0 })
    expect(fit.perJoule.value).toBeCloseTo(joule, 12)
    expect(fit.perDeficitHour.value).toBeCloseTo(hour, 10)
    expect(fit.fittedError).toBeCloseTo(Math.sqrt(times(left, left) / 14), 10)
    // t(0.975) with 12 degrees of freedom is 2.1788128, by scipy and by the sum that ends for even degrees.
    const half = 2.1788128 * Math.sqrt((times(left, left) / 12) * (dd / determinant))
    expect(fit.perJoule.high - fit.perJoule.value).toBeCloseTo(half, 9)
    expect(fit.perJoule.value - fit.perJoule.low).toBeCloseTo(half, 9)
  })
  it('are tried on the days kept back', () => {
    const fit = fitOf()
    const real = use.slice(14)
    const misses = real.map((value, i) => joule * light[14 + i]! + hour * dry[14 + i]! - value)
    const mean = sum(real) / 6
    const about = real.map((value) => value - mean)
    expect(fit.testBias).toBeCloseTo(sum(misses) / 6, 10)
    expect(fit.testError).toBeCloseTo(Math.sqrt(times(misses, misses) / 6), 10)
    expect(fit.testExplained).toBeCloseTo(1 - times(misses, misses) / times(about, about), 9)
  })
  it('tell how the causes of the fitted days move together', () => {
    const [ms, md] = [sum(s) / 14, sum(d) / 14]
    const [ds, ddry] = [s.map((value) => value - ms), d.map((value) => value - md)]
    expect(fitOf().correlation).toBeCloseTo(times(ds, ddry) / Math.sqrt(times(ds, ds) * times(ddry, ddry)), 12)
    expect(fitOf({ deficitHours: dry.map(() => 5) }).correlation).toBe(0)
  })
  it('leave out days with a gap or a number below zero, and keep those without use', () => {
    const some = use.map((value, i) => (i === 3 ? Number.NaN : i === 5 ? -0.1 : i === 7 ? 0 : value))
    expect(fitOf({ use: some })).toMatchObject({ skippedDays: 2, fittedDays: 13, testDays: 5 })
    expect(fitOf({ use: use.map((value, i) => (i < 14 ? value : 3)) }).testExplained).toBe(0)
  })
  it('doubt what the record cannot tell', () => {
    const noise = light.map((_, i) => 3 + 2.9 * Math.sin(5 * i * i))
    const codes = fitOf({ use: noise }).findings.map(({ code }) => code)
    expect(codes).toContain('fails-new-days')
    expect(fitOf({ use: noise }).usable).toBe(false)
    const alike = light.map((value, i) => value / 100 + 0.1 * (i % 2))
    const [finding] = fitOf({ deficitHours: alike }).findings.filter(({ code }) => code === 'causes-move-together')
    expect(finding).toMatchObject({ level: 'caution', about: 'correlation', limit: 0.95, unit: '1' })
    // Two waves that have nothing in common over fourteen days, mixed: from 0.95 on they move together.
    const mixed = (share: number) => {
      const wave = (i: number, times: number) => Math.cos((Math.PI * times * (2 * i + 1)) / 28)
      const causes = { radiationSum: light.map((_, i) => 1000 + 100 * wave(i, 2)) }
      const other = Math.sqrt(1 - share ** 2)
      const fit = fitOf({ ...causes, deficitHours: light.map((_, i) => 10 + share * wave(i, 2) + other * wave(i, 3)) })
      expect(fit.correlation).toBeCloseTo(share, 9)
      return fit.findings.some(({ code }) => code === 'causes-move-together')
    }
    expect([mixed(0.949), mixed(0.951), mixed(-0.951)]).toEqual([false, true, true])
    // Light that does nothing, among dryness that does all.
    const onlyDry = fitOf({ use: dry.map((value, i) => 0.3 * value + 0.1 * Math.sin(3 * i)) })
    expect(onlyDry.perJoule.low).toBeLessThanOrEqual(0)
    expect(onlyDry.findings.map(({ code }) => code)).toContain('cannot-tell-radiation')
  })
  it('were a ten-thousandth where radiation came in J/m²', () => {
    expectDomainError(() => fitOf({ radiationSum: light.map((sum) => 10_000 * sum) }), {
      argument: 'radiationSum',
      unit: 'J/cm²',
      max: 5000,
    })
    // Two such days among twenty are left out and counted.
    expect(fitOf({ radiationSum: light.map((sum, i) => (i < 2 ? 10_000 * sum : sum)) })).toMatchObject({
      skippedDays: 2,
      fittedDays: 13,
    })
    // Of twelve others four are kept back, and eight are too few: what is wrong is the unit.
    const some = light.map((sum, i) => (i < 8 ? 10_000 * sum : sum))
    expectDomainError(() => fitOf({ radiationSum: some }), { argument: 'radiationSum', unit: 'J/cm²', max: 5000 })
    expect(fitOf({ radiationSum: light.map((sum, i) => (i === 0 ? 5000 : sum)) }).skippedDays).toBe(0)
  })
  it('were a hundred times too great where radiation came in MJ/m², and a dark winter is doubted as well', () => {
    const told = (factor: number) => {
      const { usable, findings } = fitOf({ radiationSum: light.map((sum) => factor * sum) })
      return { usable, doubt: findings.find(({ code }) => code === 'hardly-any-light') }
    }
    // From 10 to 24 MJ/m²; the brightest day is 2370 J/cm².
    expect(told(0.01)).toEqual({
      usable: false,
      doubt: {
        code: 'hardly-any-light',
        level: 'caution',
        about: 'radiationSum',
        value: 23.7,
        limit: 50,
        unit: 'J/cm²',
      },
    })
    expect(explainDemandFinding(told(0.01).doubt!).message).toMatch(/brightest day has 23\.7 .*1 MJ\/m² is 100 J\/cm²/)
    expect([told(49.9 / 2370).doubt?.level, told(50.1 / 2370).doubt, told(1).usable]).toEqual([
      'caution',
      undefined,
      true,
    ])
  })
  it('want series of one length', () => {
    for (const name of ['radiationSum', 'deficitHours'])
      expectInputError(() => fitOf({ [name]: light.slice(1) }), 'use')
  })
})

describe('words on use', () => {
  const said = (code: string, value: number) =>
    explainDemandFinding({ code, level: 'caution', about: 'a', value, limit: 0.5, unit: '1' } as never)
  it('carry their numbers and their source', () => {
    expect(said('fails-new-days', 0.31).message).toMatch(/explains 31 % of/)
    expect(said('fails-new-days', 0.31).source).toBe('common practice, no source')
    expect(said('above-latent-heat', 5).source).toBe('allen-1998, Table 3')
  })
})

describe('what contradicts itself', () => {
  it('is a layer that wilts above its capacity, and a day after the season', () => {
    const layer = (wiltingPoint: number) => () =>
      layeredWater([
        {
          fieldCapacity: waterContent(0.3),
          wiltingPoint: waterContent(wiltingPoint),
          waterContent: waterContent(0.3),
          thickness: metres(1),
        },
      ])
    expect(layer(0.3)()).toMatchObject({ totalAvailable: 0, depletion: 0 })
    expectInputError(layer(0.301), 'wiltingPoint')
    const day = (daysSincePlanting: number) => () =>
      cropCoefficientOfDay({
        initialCoefficient: 0.3,
        middleCoefficient: 1.15,
        endCoefficient: 0.6,
        stages: { initial: 20, development: 30, middle: 40, late: 10 },
        daysSincePlanting,
      } as never)
    expect(day(100)()).toBeCloseTo(0.6, 12)
    expectInputError(day(100.5), 'daysSincePlanting')
  })
})
