import fc from 'fast-check'
import { clearShotRises, findDryDowns, hours, instant, minutes, QUALITY, spikeTest, watchReadings } from 'porewater'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'
import { trendOf } from '../../src/record/compare/trend.js'
import { addReading, levelAt, MAX_POINTS, type RecentPoint } from '../../src/record/forecast/recent-level.js'
import { NO_SPREAD, restoredSpread, spreadOf, withSpread } from '../../src/record/quality/recent-spread.js'
import { stateReader } from '../../src/record/restore-state.js'
import { expectInputError } from '../support/refusals.js'

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('rises after shots', () => {
  it('are excused down from their peak, as long as they stand above the level before; falls below it are not', () => {
    const time = [0, 300, 600, 900, 1200, 1500]
    const value = [0.5, 0.5, 0.56, 0.55, 0.3, 0.549]
    const flags = Uint8Array.from([1, 1, 3, 3, 4, 4])
    expect([...clearShotRises({ time, value, flags, log: [310], responseTime: minutes(30) })]).toEqual([
      1, 1, 1, 1, 4, 1,
    ])
    // Without a shot, or long after it, nothing is.
    for (const log of [[], [-7200]])
      expect([...clearShotRises({ time, value, flags, log, responseTime: minutes(30) })]).toEqual([...flags])
    expect(spikeTest({ value, suspect: 0.02 as never, fail: 0.05 as never })[4]).toBe(QUALITY.fail)
  })
})

describe('the log of the valve beside a clock that was set back', () => {
  it('has entries that are still to come again, and excuses no rise before them', () => {
    const time = [0, 60, 120, 30, 60]
    const value = [0.5, 0.5, 0.5, 0.6, 0.6]
    const flags = Uint8Array.from([1, 1, 1, 4, 1])
    const excused = (log: readonly number[]) => [
      ...clearShotRises({ time, value, flags, log: log.map(instant), responseTime: minutes(1) }),
    ]
    expect(excused([100])).toEqual([1, 1, 1, 4, 1])
    expect(excused([20, 100])).toEqual([1, 1, 1, 1, 1])
  })
})

describe('dry-downs by day and night', () => {
  it('go by the clock of each reading, also where it was set back over the end of the light', () => {
    // Light from 0 to 6 h and from 12 to 18 h. The record runs from 1 to 17 h, then again from 2 to 10 h.
    const light = [
      { start: instant(0), end: instant(6 * 3600) },
      { start: instant(12 * 3600), end: instant(18 * 3600) },
    ]
    const stretch = (from: number, to: number) =>
      Array.from({ length: (to - from) * 12 + 1 }, (_, i) => from * 3600 + 300 * i)
    const time = Float64Array.from([...stretch(1, 17), ...stretch(2, 10)])
    const waterContent = Float64Array.from(time, (_, i) => 0.6 - 1e-4 * i)
    const found = findDryDowns({
      time,
      waterContent,
      shots: [],
      light,
      drainTime: minutes(0),
      maxStep: minutes(8),
      minDuration: hours(1),
    } as never)
    expect(found.map(({ regime }) => regime)).toEqual(['day', 'night', 'day', 'day', 'night'])
    for (const { start, regime } of found)
      expect(
        light.some((span) => start >= span.start && start < span.end),
        String(start),
      ).toBe(regime === 'day')
  })
})

describe('the newest readings put together', () => {
  it('keep the newest two after a gap of any length', () => {
    fc.assert(
      fc.property(fc.array(double(1, 20000), { maxLength: 30 }), (gaps) => {
        let time = 0
        const points: RecentPoint[] = []
        for (const [i, gap] of gaps.entries()) {
          time += gap
          addReading(points, time, 0.5 - 0.001 * i)
          expect(points.length).toBeGreaterThanOrEqual(1)
          expect(points.length).toBeLessThanOrEqual(MAX_POINTS)
        }
      }),
    )
    const late: RecentPoint[] = [[0, 0.5, 1]]
    addReading(late, 1e6, 0.4)
    expect(late).toEqual([
      [0, 0.5, 1],
      [1e6, 0.4, 1],
    ])
  })
  it('are means of what lies within two and a half minutes, and lie on the line that they came from', () => {
    const points: RecentPoint[] = []
    for (let time = 3000; time < 4800; time += 30) addReading(points, time, 0.6 - 1e-5 * time)
    for (const [time, waterContent] of points) expect(waterContent).toBeCloseTo(0.6 - 1e-5 * time, 12)
    expect(points.reduce((total, [, , count]) => total + count, 0)).toBe(60)
    expect(levelAt(points, 5000)).toBeCloseTo(0.55, 12)
  })
})

describe('the spread of the newest readings', () => {
  it('is the standard deviation with n - 1', () => {
    fc.assert(
      fc.property(fc.array(double(-5, 5), { minLength: 10, maxLength: 60 }), (values) => {
        const spread = values.reduce((before, value, i) => withSpread(before, 60 * i, value, 86400), NO_SPREAD)
        const mean = values.reduce((total, value) => total + value, 0) / values.length
        const variance = values.reduce((total, value) => total + (value - mean) ** 2, 0) / (values.length - 1)
        if (variance > 1e-12) expect(spreadOf(spread)!).toBeCloseTo(Math.sqrt(variance), 9)
      }),
    )
  })
  it('is untold for nine readings, for readings that are alike, and begins anew where the clock was set back', () => {
    const many = (count: number, step: number) =>
      Array.from({ length: count }, (_, i) => i).reduce((s, i) => withSpread(s, 60 * i, step * i, 86400), NO_SPREAD)
    expect(spreadOf(NO_SPREAD)).toBeUndefined()
    expect(spreadOf(many(9, 1))).toBeUndefined()
    expect(spreadOf(many(10, 1))).toBeCloseTo(Math.sqrt(55 / 6), 12)
    expect(spreadOf(many(30, 0))).toBeUndefined()
    const late = withSpread(NO_SPREAD, 1e6, 3, 86400)
    expect(withSpread(late, 0, 5, 86400)).toEqual({ parts: [], sum: [0, 0, 0], open: [0, 1, 5, 0] })
    expect(withSpread(late, Number.NaN, 5, 86400)).toBe(late)
  })
  it('is that of the readings of its parts and no others, to the last bit whether or not it was kept as JSON', () => {
    const { uniform } = randomNumbers(3)
    const [long, over] = [3600, 90000]
    let [time, spread, kept] = [1e6, NO_SPREAD, NO_SPREAD]
    const all: [number, number][] = []
    for (let i = 0; i < 2000; i++) {
      time += uniform() < 0.02 ? 40000 * uniform() : 300
      const value = 0.5 + 0.1 * Math.sin(i / 60) + 0.01 * uniform()
      spread = withSpread(spread, time, value, over)
      const before = JSON.parse(JSON.stringify({ spread: kept }))
      kept = withSpread(stateReader(before).inside('spread', restoredSpread), time, value, over)
      all.push([time, value])
      expect(Object.is(spreadOf(kept), spreadOf(spread))).toBe(true)
      if (i % 50 !== 49) continue
      const begin = Math.floor(time / long) * long - over
      const newest = all.filter(([t]) => t >= begin).map(([, x]) => x)
      const mean = newest.reduce((sum, x) => sum + x, 0) / newest.length
      const squares = newest.reduce((sum, x) => sum + (x - mean) ** 2, 0)
      if (newest.length >= 10) expect(spreadOf(spread)! / Math.sqrt(squares / (newest.length - 1))).toBeCloseTo(1, 9)
    }
    const torn = (part: object) => () =>
      stateReader({ spread: { ...spread, ...part } }).inside('spread', restoredSpread)
    expectInputError(torn({ open: null }), 'state.spread.open')
    expectInputError(torn({ parts: [...spread.parts].reverse() }), 'state.spread.parts')
    expectInputError(torn({ parts: [[0, 1.5, 0, 0]] }), 'state.spread.parts\\[0\\].1')
    // What the parts sum up to is not taken from what was kept.
    expect(torn({ sum: [1, 2, 3] })()).toEqual(spread)
  })
  it('lets go of what is older than its time', () => {
    let spread = NO_SPREAD
    for (let i = 0; i < 200; i++) spread = withSpread(spread, 3600 * i, i < 100 ? 1000 * i : i % 2, 86400)
    expect(spreadOf(spread)).toBeLessThan(0.6)
  })
})

describe('a straight trend', () => {
  // x 0, 1, 2, 3; y 1, 3, 5, 6: slope 1.7, squares of the residuals 0.3, s² 0.15, error sqrt(0.15/5).
  it('has the slope and standard error of least squares (worked by hand)', () => {
    expect(trendOf([0, 1, 2, 3], [1, 3, 5, 6])).toEqual({
      slope: expect.closeTo(1.7, 12),
      error: expect.closeTo(Math.sqrt(0.15 / 5), 12),
      count: 4,
    })
  })
  it('is none for two readings, or for readings of one moment', () => {
    expect(trendOf([0, 1], [1, 2])).toEqual({ slope: Number.NaN, error: Number.NaN, count: 2 })
    expect(trendOf([2, 2, 2, 2], [1, 2, 3, 4])).toEqual({ slope: Number.NaN, error: Number.NaN, count: 4 })
    expect(trendOf([0, 1, 2, Number.NaN], [1, 2, Number.NaN, 4]).count).toBe(2)
  })
})

describe('readings that are watched', () => {
  it('are judged with the time at which they came', () => {
    const { start, step } = watchReadings({
      expectedStep: minutes(5),
      grossRange: { sensorMin: 0, sensorMax: 1 },
    } as never)
    let state = start
    const times: number[] = []
    for (const time of [600, 900, 1200, 1500]) {
      const [after, verdicts] = step(state, { time: instant(time), value: 0.5 })
      state = after
      times.push(...verdicts.map((verdict) => verdict.time))
    }
    expect(times).toEqual([600, 900, 1200])
  })
})
