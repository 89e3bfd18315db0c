import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareProbes } from '../../src/record/compare/compare-probes.js'
import { fitExponentialDryDown } from '../../src/record/dry-down/exponential-dry-down.js'
import { asymptoteInterval, bestTimeConstant } from '../../src/record/dry-down/exponential-search.js'
import { findClimbs } from '../../src/record/dry-down/find-climbs.js'
import { addReading, type RecentPoint } from '../../src/record/forecast/recent-level.js'
import { QUALITY } from '../../src/record/quality/flags.js'
import { flatLineTest } from '../../src/record/quality/flat-line-test.js'
import { addRepeat, MAX_REPEATS, numbersOf, pairsOf } from '../../src/record/quality/repeats.js'
import { wmoStepTest } from '../../src/record/quality/wmo-step-test.js'
import { findSteps } from '../../src/record/shots/find-steps.js'
import { watchShots } from '../../src/record/shots/watch-shots.js'

const limits = { tolerance: 0.1, failAfter: 5, suspectAfter: 3 }
const kept = (values: readonly number[], more: object = {}) => {
  const repeats: number[] = []
  for (const value of values) addRepeat(repeats, value, { ...limits, ...more })
  return pairsOf(repeats)
}

describe('what later readings can still repeat', () => {
  it('is each value with its readings, the newest last, and no more than the test looks back to', () => {
    expect(kept([0.5])).toEqual([[0.5, 1]])
    expect(kept([0.5, 0.6, 0.55])).toEqual([
      [0.5, 1],
      [0.6, 1],
      [0.55, 1],
    ])
    // Between newer ones: counted with the newer beside it.
    expect(kept([0.55, 0.5, 0.6])).toEqual(
      [
        [0.5, 1],
        [0.6, 1],
      ].map(([value, times], i) => [value, times! + (i === 0 ? 1 : 0)]),
    )
    expect(kept([0.5, 0.5, 0.5])).toEqual([[0.5, 3]])
    expect(kept(Array(9).fill(0.5))).toEqual([[0.5, 5]])
    expect(kept([])).toEqual([])
    expect(
      pairsOf(
        numbersOf([
          [1, 2],
          [3, 4],
        ]),
      ),
    ).toEqual([
      [1, 2],
      [3, 4],
    ])
  })
  it('is nothing that no reading can be near together with a newer one', () => {
    expect(kept([0.5, 0.69])).toEqual([
      [0.5, 1],
      [0.69, 1],
    ])
    expect(kept([0.5, 0.71])).toEqual([[0.71, 1]])
    expect(kept([0.5, 0.29])).toEqual([[0.29, 1]])
    expect(kept([0.5, 9, 0.5])).toEqual([[0.5, 1]])
    expect(kept([0.5, Number.NaN])).toEqual([])
  })
  it('is joined, where there are too many, in the two nearest on one side of the newest', () => {
    const many = { tolerance: 10, failAfter: 1e6 }
    // Rising by a tenth, so that the newest is the highest, and two that lie closer.
    const rising = Array.from({ length: MAX_REPEATS }, (_, i) => 0.1 * i)
    rising[40] = 0.1 * 39 + 0.01
    expect(kept(rising, many)).toHaveLength(MAX_REPEATS)
    const joined = kept([...rising, 0.1 * MAX_REPEATS], many)
    expect(joined).toHaveLength(MAX_REPEATS)
    expect(joined[39]).toEqual([0.1 * 39, 2])
    expect(joined[40]).toEqual([0.1 * 41, 1])
    expect(joined.at(-1)).toEqual([0.1 * MAX_REPEATS, 1])
    expect(joined.reduce((sum, [, times]) => sum + times, 0)).toBe(MAX_REPEATS + 1)
    // Going apart on both sides of the newest: neighbours of one side are joined, never those across it.
    const apart = Array.from({ length: MAX_REPEATS }, (_, i) => 0.04 * (MAX_REPEATS - i) * (i % 2 ? 1 : -1))
    const across = kept([...apart, 0], many)
    expect(across).toHaveLength(MAX_REPEATS)
    const twice = across.filter(([, times]) => times === 2)
    expect(twice).toHaveLength(1)
    expect(across.at(-1)).toEqual([0, 1])
    // The value of the older of the two stands for both.
    expect(apart).toContain(twice[0]![0])
  })
  it('gives every flag of the plain rule: how many readings in a row before this one lie within the tolerance', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 6 }), { maxLength: 60 }), (steps) => {
        const value = steps.map((step) => step * 0.04)
        const flags = flatLineTest({ value, ...limits } as never)
        value.forEach((x, i) => {
          let same = 0
          while (same < i && Math.abs(value[i - 1 - same]! - x) < 0.1) same++
          expect(flags[i]).toBe(same >= 5 ? QUALITY.fail : same >= 3 ? QUALITY.suspect : QUALITY.pass)
        })
      }),
    )
  })
})

describe('steps of neighbouring places', () => {
  const found = (content: readonly number[], side = 3) =>
    findSteps({
      time: content.map((_, i) => 300 * i),
      waterContent: content,
      shots: [],
      minChange: 0.02,
      side,
      maxStep: 480,
    } as never).map(({ index, before, after }) => [index, before, after])
  it('count once, where the medians differ most', () => {
    // It goes down in two readings: the medians of three differ by 0.05 behind the second, by 0.04 at the first.
    expect(found([0.5, 0.5, 0.5, 0.46, 0.45, 0.45, 0.45])).toEqual([[3, 0.5, 0.45]])
    // Over three places: by 0.035 at the first, by 0.04 at the second.
    expect(found([0.5, 0.5, 0.5, 0.48, 0.46, 0.465, 0.455, 0.455])).toEqual([[4, 0.5, 0.46]])
    expect(found([0.5, 0.5, 0.5, 0.47, 0.44, 0.44, 0.44, 0.44])).toHaveLength(1)
  })
  it('count both where they are as far apart as a side is long', () => {
    const two = [0.5, 0.5, 0.5, 0.45, 0.45, 0.45, 0.4, 0.4, 0.4]
    expect(found(two).map(([index]) => index)).toEqual([3, 6])
    const near = [0.5, 0.5, 0.5, 0.45, 0.45, 0.39, 0.39, 0.39, 0.39]
    expect(found(near)).toHaveLength(1)
  })
})

describe('an exponential', () => {
  const times = Array.from({ length: 40 }, (_, i) => i / 39)
  const falling = (constant: number, noise = 0) =>
    times.map((t, i) => 0.3 + 0.2 * Math.exp(-t / constant) + noise * Math.sin(7 * i * i))
  it('is found with its constant, asymptote and slope', () => {
    for (const constant of [0.1, 0.5, 2]) {
      const best = bestTimeConstant(times, falling(constant))
      expect(best.constant / constant).toBeCloseTo(1, 6)
      expect(best.asymptote).toBeCloseTo(0.3, 6)
      expect(best.slope).toBeCloseTo(0.2, 6)
      expect(best.rest).toBeLessThan(1e-12)
      expect(best.atEnd).toBe(false)
      expect(best.lineRest).toBeGreaterThan(best.rest)
    }
  })
  it('is at an end where readings do not bound the constant', () => {
    // A fall within the first reading, and one without a bend.
    expect(
      bestTimeConstant(
        times,
        times.map((_, i) => (i === 0 ? 0.5 : 0.3)),
      ).atEnd,
    ).toBe(true)
    expect(
      bestTimeConstant(
        times,
        times.map((t) => 0.5 - 0.1 * t - 1e-9 * t * t),
      ).atEnd,
    ).toBe(true)
    const told = fitExponentialDryDown({
      time: times.map((t) => 86400 * t),
      waterContent: times.map((_, i) => (i === 0 ? 0.5 : 0.3)),
    } as never)
    expect(told).toEqual({ known: false, reason: 'no-time-constant' })
  })
  it('has an interval of asymptotes that holds those of all constants which fit as well', () => {
    const x = falling(0.5, 0.002)
    const best = bestTimeConstant(times, x)
    const rest = best.rest * 1.2
    const [low, high] = asymptoteInterval(times, x, best, rest)
    expect(low).toBeLessThan(best.asymptote)
    expect(high).toBeGreaterThan(best.asymptote)
    // For any constant the asymptotes that leave so much at most, by least squares with that asymptote held.
    let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let log = -1.5; log < 2.5; log += 0.01) {
      const u = times.map((t) => Math.exp(-t / Math.exp(log)))
      const square = u.reduce((sum, one) => sum + one * one, 0)
      for (let a = 0.1; a < 0.4; a += 0.0002) {
        const slope = u.reduce((sum, one, i) => sum + one * (x[i]! - a), 0) / square
        const left = u.reduce((sum, one, i) => sum + (x[i]! - a - slope * one) ** 2, 0)
        if (left <= rest) [lowest, highest] = [Math.min(lowest, a), Math.max(highest, a)]
      }
    }
    expect(Math.abs(low - lowest)).toBeLessThan(0.05 * (highest - lowest))
    expect(Math.abs(high - highest)).toBeLessThan(0.05 * (highest - lowest))
  })
})

describe('other rules', () => {
  it('a probe beside which none was read at the same time moves by nothing that is known', () => {
    const time = Array.from({ length: 30 }, (_, i) => 3600 * i)
    const missing = time.map(() => Number.NaN)
    const [alone] = compareProbes({
      time,
      probes: [
        { name: 'A', waterContent: time.map((_, i) => 0.5 + 0.001 * (i % 3)) },
        { name: 'B', waterContent: missing },
        { name: 'C', waterContent: missing },
      ],
      driftPerDay: 0.01,
    } as never)
    expect(alone).toMatchObject({ name: 'A', driftPerDay: Number.NaN, driftError: Number.NaN, readings: 0 })
  })
  it('a probe moves as it does against the middle one of those that were read beside it', () => {
    // Six days by the hour. A rises by 0.001 a day against B and by 0.003 against C; D was never read with any of them.
    const time = Array.from({ length: 144 }, (_, i) => 3600 * i)
    const line = (perDay: number) => time.map((at, i) => (i < 143 ? 0.5 + perDay * Math.floor(at / 86400) : Number.NaN))
    const compared = compareProbes({
      time,
      probes: [
        { name: 'A', waterContent: line(0) },
        { name: 'B', waterContent: line(-0.001) },
        { name: 'C', waterContent: line(-0.003) },
        { name: 'D', waterContent: time.map((_, i) => (i < 143 ? Number.NaN : 0.5)) },
      ],
      driftPerDay: 0.01,
    } as never)
    // Of two the smaller.
    const drifts = [0.001, -0.001, -0.002].map((drift) => expect.closeTo(drift, 10))
    expect(compared.slice(0, 3).map(({ driftPerDay }) => driftPerDay)).toEqual(drifts)
    expect(compared[3]!.driftPerDay).toBeNaN()
  })
  it('a probe is noisy beside the median of the others, among which it does not count', () => {
    const time = Array.from({ length: 60 }, (_, i) => 3600 * i)
    // Readings that swing by so much have a noise in proportion, whatever it is.
    const swings = (by: number) => time.map((_, i) => 0.5 + (i % 2 === 0 ? by : 0))
    const silent = time.map(() => Number.NaN)
    const noisy = (last: number) =>
      compareProbes({
        time,
        probes: [swings(0.001), swings(0.004), swings(last), silent].map((waterContent, k) => ({
          name: 'ABCD'[k],
          waterContent,
        })),
        driftPerDay: 1,
      } as never)
    const of = (found: ReturnType<typeof noisy>, k: number) => found[k]!.findings.find(({ code }) => code === 'noisy')
    // Three times the mean of 0.001 and 0.004.
    expect(of(noisy(0.0076), 2)).toBeDefined()
    expect(of(noisy(0.0074), 2)).toBeUndefined()
    const [one, other] = noisy(0.0076).map(({ noise }) => noise)
    expect(of(noisy(0.0076), 2)).toMatchObject({ about: 'C', usual: expect.closeTo((one! + other!) / 2, 12) })
  })
  it('a dry-down that hardly rises has no climb', () => {
    const waterContent = [0.5, 0.49, 0.495, 0.48]
    const time = waterContent.map((_, i) => 3600 * i)
    expect(findClimbs({ time, waterContent, dryDowns: [{ first: 0, last: 3 }], minRise: 0.02 } as never)).toEqual([])
    const climbing = [0.5, 0.48, 0.49, 0.5, 0.51, 0.52]
    const [climb] = findClimbs({
      time: climbing.map((_, i) => 3600 * i),
      waterContent: climbing,
      dryDowns: [{ first: 0, last: 5 }],
      minRise: 0.02,
    } as never)
    expect(climb).toMatchObject({ code: 'climbs-between-shots', level: 'caution' })
  })
  it('a foot is the last reading that was about as low as the lowest, and never one that stands much higher', () => {
    const rise = (values: readonly number[]) => {
      const watch = watchShots({ minRise: 0.04, maxRiseTime: 7200, maxStep: 600 } as never)
      let state = watch.start
      const found = []
      for (const [i, waterContent] of values.entries()) {
        const [next, shots] = watch.step(state, { time: 300 * i, waterContent } as never)
        state = next
        found.push(...shots)
      }
      return found.map(({ startIndex, peakIndex }) => [startIndex, peakIndex])
    }
    const down = [0.56, 0.55, 0.53, 0.53]
    expect(rise([0.5, 0.5, 0.5, 0.56, 0.57, ...down, 0.5, 0.5])).toEqual([[2, 4]])
    // A little higher, by less than a quarter of the least rise, is still the foot; more is part of the rise.
    expect(rise([0.5, 0.505, 0.56, 0.57, ...down, 0.5, 0.5])).toEqual([[1, 3]])
    expect(rise([0.5, 0.52, 0.56, 0.57, ...down, 0.5, 0.5])).toEqual([[0, 3]])
    expect(rise([0.5, 0.505, 0.52, 0.53, 0.56, 0.57, ...down, 0.5, 0.5])).toEqual([[1, 5]])
  })
  it('the reading behind a gap may be the foot of a rise', () => {
    const watch = watchShots({ minRise: 0.04, maxRiseTime: 7200, maxStep: 600 } as never)
    let state = watch.start
    for (const [time, waterContent] of [
      [0, 0.6],
      [9000, 0.5],
      [9300, 0.56],
      [9600, 0.57],
      [9900, 0.57],
    ] as const)
      state = watch.step(state, { time, waterContent } as never)[0]
    expect(watch.finish(state)).toMatchObject([{ startIndex: 1, peakIndex: 3, before: 0.5, top: 0.57 }])
  })
  it('a missing reading is missing for the test of steps, and one beside it is not evaluated', () => {
    const value = [0.5, 0.501, 0.5, 0.501, 0.5, 0.501, Number.NaN, 0.5, 0.501, 0.9, 0.5]
    const flags = wmoStepTest({ time: value.map((_, i) => 60 * i), value, window: 5 } as never)
    expect(flags[6]).toBe(QUALITY.missing)
    expect([flags[5], flags[7]]).toEqual([QUALITY.notEvaluated, QUALITY.notEvaluated])
  })
  it('the newest reading that is all there is stays where it is', () => {
    const points: RecentPoint[] = []
    addReading(points, 10, 0.5)
    expect(points).toEqual([[10, 0.5, 1]])
    addReading(points, 20, 0.4)
    expect(points).toEqual([[15, 0.45, 2]])
  })
})
