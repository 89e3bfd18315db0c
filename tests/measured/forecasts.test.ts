import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'
import {
  coverOf,
  errorsOf,
  quietLimits,
  replicateMisses,
  shotLimits,
  slabRecord,
  useRecords,
  walkLevel,
  walkUse,
} from './walk-forward.js'

/**
 * Forecasts on open records, walking forward: a forecast has seen what came before its moment only.
 *
 * Hemming, S. et al. (2020), Autonomous Greenhouse Challenge, Second Edition, 4TU.ResearchData,
 * doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7 (four probes in slabs, and the water of two compartments); Hemming, S. et al.
 * (2018), First Edition, doi:10.4121/uuid:e4987a7b-04dd-4c89-9b18-883aad30ba9a (two compartments); Buck, J. S., Kubota, C. and Jensen,
 * M. H. (2008), HortTechnology 18:460-466, doi:10.21273/HORTTECH.18.3.460 (six lysimeters).
 */
const folder = process.env.POREWATER_DATA ?? ''

const at = (date: string) => Date.parse(`${date}T00:00Z`) / 1000
const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one / values.length, 0)
const geometricMean = (values: readonly number[]) => Math.exp(mean(values.map(Math.log)))

/**
 * What counts is the whole record: every night of every probe from the first one that is foreseen. The three months are those in which
 * settings were compared, so that they flatter. The last case takes the least rise of a shot from the noise of each probe: fewer small shots
 * are then counted as part of a dry-down.
 */
describe.skipIf(!folder).each([
  { name: 'the whole record', from: '2019-12-16', to: '2020-06-01', nights: 575, rise: () => shotLimits },
  { name: 'February to April', from: '2020-02-01', to: '2020-05-01', nights: 337, rise: () => shotLimits },
  { name: 'the whole record, rises above noise', from: '2019-12-16', to: '2020-06-01', nights: 575, rise: quietLimits },
])('time to a level and the coming hour, $name', ({ name, from, to, nights, rise }) => {
  const months = nights < 400
  const probes = !folder
    ? []
    : [2, 5].flatMap((compartment) => {
        const { time, probes } = slabRecord(folder, compartment)
        return probes.map((content) => walkLevel(time, content, at(from), at(to), rise(content)))
      })
  const times = probes.map((probe) => probe.times)
  const limit = !folder
    ? []
    : [2, 5]
        .flatMap((compartment) => {
          const { time, probes: columns } = slabRecord(folder, compartment)
          return replicateMisses(time, columns, at(from), at(to), rise)
        })
        .sort((a, b) => a - b)

  it('4 h: misses less than the better of the last night and the mean of seven, in every probe', () => {
    const asked = times.map((probe) => probe.filter((one) => one.kind === '4 h'))
    const all = asked.flat()
    expect(all.length).toBeGreaterThanOrEqual(nights - 10)
    const error = (of: typeof all, by: 'foreseen' | 'lastSlope' | 'meanSlope') =>
      errorsOf(of.map((one) => [one[by], one.real]))
    const ratio = (of: typeof all) =>
      error(of, 'foreseen').mean / Math.min(error(of, 'lastSlope').mean, error(of, 'meanSlope').mean)
    const widths = all.map(({ band90: [low, high] }) => high - low).sort((a, b) => a - b)
    const cover90 = asked.map((probe) => coverOf(probe, 'band90'))
    const cover50 = asked.map((probe) => coverOf(probe, 'band50'))
    const found = {
      ...error(all, 'foreseen'),
      ratio: ratio(all),
      worst: Math.max(...asked.map(ratio)),
      cover90: coverOf(all, 'band90'),
      cover50: coverOf(all, 'band50'),
      each90: cover90,
      each50: cover50,
      width: widths[widths.length >> 1],
      replicate: { median: limit[limit.length >> 1]!, mean: mean(limit) },
    }
    process.stdout.write(`4 h, ${name}: ${JSON.stringify(found)}\n`)
    expect(found.ratio).toBeLessThanOrEqual(0.72)
    expect(found.worst).toBeLessThanOrEqual(1.05)
    expect(found.cover90).toBeGreaterThanOrEqual(0.87)
    expect(found.cover90).toBeLessThanOrEqual(0.95)
    expect(found.cover50).toBeGreaterThanOrEqual(0.45)
    expect(found.cover50).toBeLessThanOrEqual(0.57)
    for (const cover of cover90) expect(Math.abs(cover - 0.91)).toBeLessThanOrEqual(0.07)
    for (const cover of cover50) expect(Math.abs(cover - 0.51)).toBeLessThanOrEqual(0.11)
    expect(found.width).toBeLessThanOrEqual(2.8)
    // The other probe of the compartment, on its own real course of the same night, misses by as much.
    expect(found.median).toBeLessThanOrEqual(1.05 * found.replicate.median)
    expect(found.mean).toBeLessThanOrEqual(1.05 * found.replicate.mean)
    if (rise === quietLimits) expect(found.mean).toBeLessThanOrEqual(0.61)
    if (!months) return
    expect(found.median).toBeLessThanOrEqual(0.4)
    expect(found.mean).toBeLessThanOrEqual(0.52)
  })

  /**
   * A table that was made elsewhere counts 341 forecasts of 4 h in which the slope of the last night misses by 1.23 h and the mean of seven by
   * 0.80 h, and 5,955 drops. The whole record has some 580 forecasts whatever the least rise (0.4 to 1 point), and the mean of seven misses by 1.7 h
   * or more there; February to April has 337 to 344, 1.04 to 1.25 and 0.73 to 0.79 h. Its drops, asked each hour from 1 to 6, are 7,000; asked at five
   * of those moments, as the method is scored at 1, 2, 3, 4.5 and 6 h, they are the 5,955 of the table within 3 %.
   */
  it('4 h: counts and slopes are those of a table of 341 forecasts in three months, not on the whole record', () => {
    const asked = times.flat().filter((one) => one.kind === '4 h')
    const by = (how: 'lastSlope' | 'meanSlope') => errorsOf(asked.map((one) => [one[how], one.real])).mean
    process.stdout.write(
      `the two slopes, ${name}: ${JSON.stringify([asked.length, by('lastSlope'), by('meanSlope')])}\n`,
    )
    if (!months) {
      expect(asked.length).toBeGreaterThan(550)
      expect(by('meanSlope')).toBeGreaterThan(1.6)
      return
    }
    expect(Math.abs(asked.length - 341)).toBeLessThanOrEqual(5)
    const five = times.flat().filter(({ kind, real, watched }) => kind === 'drop' && real > 0 && watched !== 5)
    process.stdout.write(`drops at five moments, ${name}: ${five.length}\n`)
    expect(Math.abs(five.length / 5955 - 1)).toBeLessThan(0.03)
    expect(Math.abs(by('meanSlope') - 0.8)).toBeLessThan(0.05)
    expect(Math.abs(by('lastSlope') - 1.23)).toBeLessThan(0.25)
  })

  /**
   * The table's own method, written down again from its description and walked over the same dry-downs: in the three months it gives the table's numbers
   * (0.37, 0.47 and 0.66 h for 4 h, 0.26, 0.43 and 0.70 h for drops: median, mean, root mean square) within a twelfth, and on the whole record it
   * meets the goals as little as the forecasts of the package, which miss by less everywhere.
   */
  it('misses by less than the fall by the clock times the factor of tonight, which gives the numbers of that table in three months only', () => {
    const found = (['4 h', 'drop'] as const).map((kind) => {
      const asked = times
        .flat()
        .filter((one) => one.kind === kind && !Number.isNaN(one.real) && !Number.isNaN(one.simple))
      const of = (by: 'foreseen' | 'simple') => {
        const errors = errorsOf(asked.map((one) => [one[by], one.real]))
        return [errors.median, errors.mean, Math.sqrt(mean(asked.map((one) => (one[by] - one.real) ** 2)))] as const
      }
      return { own: of('foreseen'), simple: of('simple') }
    })
    process.stdout.write(`beside the simple method, ${name}: ${JSON.stringify(found)}\n`)
    const table = [
      [0.37, 0.47, 0.66],
      [0.26, 0.43, 0.7],
    ]
    found.forEach(({ own, simple }, k) => {
      simple.forEach((error, i) => {
        const ratio = error / table[k]![i]!
        if (months) expect(Math.abs(ratio - 1)).toBeLessThan(1 / 12)
        else if (rise !== quietLimits) expect(ratio).toBeGreaterThan(1.2)
      })
      expect(own[0]).toBeLessThanOrEqual(1.02 * simple[0])
      expect(own[1]).toBeLessThanOrEqual(simple[1])
    })
  })

  it('from the fifteenth dry-down of a probe on, when the plants stand, misses are smaller', () => {
    const late = times.flat().filter(({ before, real }) => before >= 14 && !Number.isNaN(real))
    const of = (kind: '4 h' | 'drop') =>
      errorsOf(late.filter((one) => one.kind === kind).map((one) => [one.foreseen, one.real]))
    process.stdout.write(`from the fifteenth dry-down, ${name}: ${JSON.stringify([of('4 h'), of('drop')])}\n`)
    const [most, mostOfDrop] = months ? [0.52, 0.46] : rise === quietLimits ? [0.57, 0.5] : [0.64, 0.53]
    expect(of('4 h').mean).toBeLessThanOrEqual(most)
    expect(of('drop').mean).toBeLessThanOrEqual(mostOfDrop)
  })

  it('where the level rises nowhere by two steps of the probe, as nothing that dries does, misses are small all year', () => {
    const alone = times.flat().filter(({ climb, real }) => climb < 0.0015 && !Number.isNaN(real))
    const of = (kind: '4 h' | 'drop') =>
      errorsOf(alone.filter((one) => one.kind === kind).map((one) => [one.foreseen, one.real]))
    process.stdout.write(`undisturbed, ${name}: ${JSON.stringify([of('4 h'), of('drop')])}\n`)
    // More than half of all.
    expect(of('4 h').count).toBeGreaterThan(0.5 * times.flat().filter(({ kind }) => kind === '4 h').length)
    expect(of('4 h').median).toBeLessThanOrEqual(0.42)
    expect(of('4 h').mean).toBeLessThanOrEqual(0.52)
    expect(of('drop').median).toBeLessThanOrEqual(0.3)
    expect(of('drop').mean).toBeLessThanOrEqual(0.46)
  })

  it('drop: first passage of 1, 2, 3 and 5 points, asked 1 to 6 h after drain', () => {
    const all = times.flat().filter((one) => one.kind === 'drop')
    const reached = all.filter(({ real }) => !Number.isNaN(real))
    const by = (how: 'foreseen' | 'lastSlope' | 'meanSlope') => errorsOf(reached.map((one) => [one[how], one.real]))
    const found = {
      asked: all.length,
      ...by('foreseen'),
      ratio: by('foreseen').mean / Math.min(by('lastSlope').mean, by('meanSlope').mean),
      cover90: coverOf(reached, 'band90'),
      cover50: coverOf(reached, 'band50'),
      cover90WithCensored: coverOf(all, 'band90'),
    }
    const each = (band: 'band50' | 'band90', censored: boolean) =>
      times.map((probe) =>
        coverOf(
          probe.filter(({ kind, real }) => kind === 'drop' && (censored || !Number.isNaN(real))),
          band,
        ),
      )
    const covers = {
      each90: each('band90', false),
      each50: each('band50', false),
      each90WithCensored: each('band90', true),
    }
    process.stdout.write(`drop, ${name}: ${JSON.stringify({ ...found, ...covers })}\n`)
    for (const cover of covers.each90) expect(Math.abs(cover - 0.91)).toBeLessThanOrEqual(0.07)
    for (const cover of covers.each50) expect(Math.abs(cover - 0.51)).toBeLessThanOrEqual(0.11)
    // Where the next shot came first the late end must lie beyond: that is asked more often of the easy nights.
    for (const cover of [found.cover90WithCensored, ...covers.each90WithCensored]) {
      expect(cover).toBeGreaterThanOrEqual(0.84)
      expect(cover).toBeLessThanOrEqual(0.98)
    }
    expect(found.cover90).toBeGreaterThanOrEqual(0.87)
    expect(found.cover90).toBeLessThanOrEqual(0.95)
    expect(found.cover50).toBeGreaterThanOrEqual(0.45)
    expect(found.cover50).toBeLessThanOrEqual(0.57)
    expect(found.ratio).toBeLessThanOrEqual(0.6)
    if (!months && rise !== quietLimits) return
    expect(found.median).toBeLessThanOrEqual(0.3)
    if (!months) return
    expect(found.mean).toBeLessThanOrEqual(0.46)
  })

  it('the coming hour, outside 8 to 17 h: better than the last hour and than the same hour of the last night', () => {
    const asked = probes.flatMap(({ hoursAhead }) => hoursAhead)
    const by = (how: 'foreseen' | 'lastHour' | 'sameHour') => errorsOf(asked.map((one) => [one[how], one.real])).mean
    const inside = asked.filter(({ real, band90: [low, high] }) => real >= low && real <= high).length
    const found = {
      hours: asked.length,
      points: 100 * by('foreseen'),
      overLastHour: by('foreseen') / by('lastHour'),
      overSameHour: by('foreseen') / by('sameHour'),
      cover90: inside / asked.length,
    }
    process.stdout.write(`an hour ahead, ${name}: ${JSON.stringify(found)}\n`)
    expect(found.overLastHour).toBeLessThanOrEqual(0.75)
    expect(found.overSameHour).toBeLessThanOrEqual(0.88)
    expect(found.cover90).toBeGreaterThanOrEqual(0.85)
  })

  it('remembers a record of months in less than 6 kB', () => {
    for (const { state } of probes) expect(JSON.stringify(state).length).toBeLessThan(6000)
  })
})

describe.skipIf(!folder)('use of the next day', () => {
  const series = folder ? useRecords(folder) : []
  const { normal } = randomNumbers(20)
  it.each([
    { light: 'known radiation', expected: (light: number) => light, ratio: 0.82, worst: 1.02 },
    { light: 'no radiation', expected: () => Number.NaN, ratio: 1, worst: 1.1 },
    {
      light: 'radiation with an error of a fifth',
      expected: (light: number) => light * Math.max(0, 1 + 0.2 * normal()),
      ratio: 0.9,
      worst: 1.05,
    },
  ])('$light', ({ light, expected, ratio, worst }) => {
    const walked = series.map((one) => walkUse(one, expected))
    walked.forEach((one, k) => {
      process.stdout.write(`${light}, ${series[k]?.name}: ${JSON.stringify(one)}\n`)
    })
    const ratios = walked.map((one) => one.ratio)
    expect(geometricMean(ratios)).toBeLessThanOrEqual(ratio)
    expect(Math.max(...ratios)).toBeLessThanOrEqual(worst)
    const covers = walked.map(({ cover90 }) => cover90)
    expect(Math.abs(mean(covers) - 0.9)).toBeLessThanOrEqual(0.03)
    for (const cover of covers) expect(Math.abs(cover - 0.9)).toBeLessThanOrEqual(0.04)
    expect(Math.abs(mean(walked.map(({ cover50 }) => cover50)) - 0.5)).toBeLessThanOrEqual(0.05)
    if (light === 'known radiation') expect(mean(walked.map(({ width }) => width))).toBeLessThanOrEqual(0.65)
  })
})
