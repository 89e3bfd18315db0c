import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  BIN,
  BINS,
  expectedFalls,
  FARTHEST,
  fallBetween,
  learnFall,
  newFalls,
  nextBorder,
  timeToFall,
} from '../../src/record/forecast/clock-rates.js'
import { newDailyUseState, restoredDailyUse } from '../../src/record/forecast/daily-use-state.js'
import { fallAhead, waterUseAhead } from '../../src/record/forecast/fall-ahead.js'
import { forecastDailyUse, waterUseOfNextDay } from '../../src/record/forecast/forecast-daily-use.js'
import { forecastTimeToLevel } from '../../src/record/forecast/forecast-time-to-level.js'
import { factorOf, fixedUnit, learntFrom, ringOf, unitOfMiss } from '../../src/record/forecast/learn-dry-down.js'
import { type DryDownSoFar, type LevelState, newLevelState } from '../../src/record/forecast/level-state.js'
import { whereNow } from '../../src/record/forecast/present-level.js'
import { bandsOf, newRing, type ScoreRing, sizesOf, withScore } from '../../src/record/forecast/score-ring.js'
import {
  followed,
  memberForecasts,
  radiationFactor,
  weighedForecast,
  withMisses,
} from '../../src/record/forecast/use-members.js'

// All worked by hand from what the functions say of themselves: the rules are our own, so that no print of them exists.

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const near = (got: readonly number[], wanted: readonly number[], digits = 12) => {
  expect(got).toHaveLength(wanted.length)
  wanted.forEach((one, i) => {
    expect(got[i]).toBeCloseTo(one, digits)
  })
}

describe('falls by the clock', () => {
  it('are learnt by three fifths of what is new, in the half hour of the day, also before 1970', () => {
    const falls = [...newFalls()]
    learnFall(falls, 3 * BIN + 100, 0.01)
    expect(falls[3]).toBe(0.01)
    learnFall(falls, 86400 + 4 * BIN - 1, 0.02)
    expect(falls[3]).toBeCloseTo(0.016, 15)
    learnFall(falls, -1, 0.005)
    expect(falls[47]).toBe(0.005)
    learnFall(falls, -86400, 0.007)
    expect(falls[0]).toBe(0.007)
    expect(falls.filter((fall) => fall !== null)).toHaveLength(3)
  })
  it('are those of the half hour before where none was seen, no slower than half of the mean or the hours around, and half-way to their neighbours', () => {
    expect([...expectedFalls(newFalls())]).toEqual(Array(BINS).fill(0))
    const falls = [...newFalls()]
    falls[10] = 0.008
    // One known half hour stands for all.
    near([...expectedFalls(falls)], Array(BINS).fill(0.008))
    falls[12] = 0
    falls[20] = 0.004
    // Mean 0.004: 0.008 in 10 and 11, 0.004 from 20 round to 9. From 12 to 16 half of the mean, for the thirteen half hours around are quicker;
    // those around 17, 18 and 19 add up to 0.024, 0.02 and 0.024.
    const expected = expectedFalls(falls)
    near([...expected.slice(8, 14)], [0.004, 0.005, 0.007, 0.0065, 0.0035, 0.002])
    const [slow, slower] = [0.024 / 13, 0.02 / 13]
    near([...expected.slice(18, 22)], [(slower + slow) / 2, slow / 2 + (slower + 0.004) / 4, 0.003 + slow / 4, 0.004])
    near([expected[47]!, expected[0]!], [0.004, 0.004])
    // In a night that is flat throughout a tenth of the mean is left.
    const flat = falls.map((_, b) => (b < 12 ? 0.01 : 0))
    expect(expectedFalls(flat)[30]).toBeCloseTo(0.1 * 0.0025, 12)
    const rising = [...newFalls()]
    rising[5] = -0.003
    expect([...expectedFalls(rising)]).toEqual(Array(BINS).fill(0))
  })
  it('add up over parts of half hours, and are undone by the time they take', () => {
    const rates = Float64Array.from({ length: BINS }, (_, b) => (b === 2 ? 0 : 0.001 * (b + 1)))
    expect(fallBetween(rates, 900, 900)).toBe(0)
    // Half of the first, all of the second and third, a third of the fourth.
    expect(fallBetween(rates, 900, 3 * BIN + 600)).toBeCloseTo(0.0005 + 0.002 + 0 + 0.004 / 3, 12)
    expect(fallBetween(rates, 86400 - 900, 86400 + 900)).toBeCloseTo(0.024 + 0.0005, 12)
    expect(timeToFall(rates, 900, 0)).toBe(0)
    expect(timeToFall(rates, 900, -1)).toBe(0)
    expect(timeToFall(new Float64Array(BINS), 900, 0)).toBe(0)
    expect(timeToFall(rates, 900, 0.0005)).toBe(900)
    expect(timeToFall(rates, 900, 0.0025 + 0.002)).toBeCloseTo(2 * BIN + BIN - 900 + 900, 9)
    fc.assert(
      fc.property(number(-1e6, 1e6), number(1, FARTHEST - 1), (from, long) => {
        const fall = fallBetween(rates, from, from + long)
        const time = timeToFall(rates, from, fall)!
        expect(fallBetween(rates, from, from + time)).toBeCloseTo(fall, 10)
        expect(time).toBeLessThanOrEqual(long + 1e-6)
      }),
    )
  })
  it('reach no further than two days', () => {
    const level = new Float64Array(BINS).fill(0.001)
    expect(FARTHEST).toBe(2 * 86400)
    expect(timeToFall(level, 700, 0.0959)).toBeCloseTo(95.9 * BIN, 6)
    expect(timeToFall(level, 700, 0.0961)).toBeUndefined()
    expect(timeToFall(new Float64Array(BINS), 0, 1e-9)).toBeUndefined()
    expect([nextBorder(0), nextBorder(1799), nextBorder(1800), nextBorder(-1)]).toEqual([1800, 1800, 3600, 0])
  })
})

/** A dry-down of so much in each half hour from 0.6, begun a quarter of an hour before its first border. */
const dryDown = (falls: readonly number[], more: Partial<DryDownSoFar> = {}): DryDownSoFar => {
  const levels = [0.6]
  for (const fall of falls) levels.push(levels.at(-1)! - fall)
  return { start: 900, from: 0.602, border: 1800, levels, recent: [[900, 0.602, 1]], replay: [], ...more }
}
const shots = { last: 1800, rise: null } as LevelState['shots']
const state = (more: Partial<LevelState> = {}): LevelState => ({ ...newLevelState(shots), settled: 0, ...more })

describe('a dry-down that has ended', () => {
  const steady = (count: number, fall = 0.002) => Array<number>(count).fill(fall)
  it('teaches the falls of its half hours, and what a usual one falls if it was two hours long', () => {
    const short = learntFrom(state(), dryDown(steady(2)))
    expect(short.falls.slice(0, 4)).toEqual([null, expect.closeTo(0.002, 12), expect.closeTo(0.002, 12), null])
    expect(short).toMatchObject({ dryDowns: 0, usualFall: 0 })
    // From its first reading at 900 s four half hours reach to 9000 s: 8100 s. Three reach to 6300 s.
    expect(learntFrom(state(), dryDown(steady(3))).dryDowns).toBe(0)
    const long = learntFrom(state(), dryDown(steady(4)))
    expect(long.dryDowns).toBe(1)
    expect(long.usualFall).toBeCloseTo(0.602 - 0.592, 12)
    expect(learntFrom(state(), dryDown(steady(3), { start: 0 })).dryDowns).toBe(1)
    const next = learntFrom({ ...long, usualFall: 0.02 }, dryDown(steady(4)))
    expect(next.usualFall).toBeCloseTo(0.02 + 0.2 * (0.01 - 0.02), 12)
    expect(learntFrom(state(), dryDown(steady(8, 0), { from: 0.6 })).usualFall).toBe(0.002)
    const none = state()
    expect(learntFrom(none, dryDown([]))).toBe(none)
  })
  it('scores the forecasts that would have been made in it, from the fourth dry-down on', () => {
    const falls = Array<number | null>(BINS).fill(0.001)
    const replay = [{ time: 3600, level: 0.598 }]
    const known = state({ falls, usualFall: 0.01, dryDowns: 3 })
    const told = dryDown(steady(12), { replay })
    const after = learntFrom(known, told)
    // Quicker than usual: (0.602 - 0.598 + 0.01) / (1.5 half hours of 0.001 + 0.01) is 14/11.5.
    const factor = 0.014 / 0.0115
    expect(factorOf(known, expectedFalls(falls), told, 3600, 0.598)).toBeCloseTo(factor, 12)
    // An hour ahead 0.004 fell, and two of 0.001 times the factor were foreseen; a tenth of the usual fall is added to the measure.
    const scoreAhead = (halves: number) => {
      const forecast = factor * 0.001 * halves
      return (0.002 * halves - forecast) / (forecast + 0.001)
    }
    const newest = (k: number) => after.rings[k]!.scores.at(-1)!
    expect(newest(0)).toBeCloseTo(scoreAhead(2), 10)
    expect(newest(1)).toBeCloseTo(scoreAhead(4), 10)
    expect(newest(2)).toBeCloseTo(scoreAhead(8), 10)
    // Eight hours ahead it had ended.
    expect(after.rings[3]).toBe(known.rings[3])
    expect(learntFrom({ ...known, dryDowns: 2 }, told).rings).toBe(known.rings)
    // Between two borders the level is on the line.
    const between = learntFrom(known, dryDown(steady(12), { replay: [{ time: 4500, level: 0.597 }] }))
    const quicker = 0.015 / 0.012
    expect(between.rings[0]!.scores.at(-1)).toBeCloseTo((0.004 - quicker * 0.002) / (quicker * 0.002 + 0.001), 10)
  })
  it('goes by no factor below three quarters and none above 1.33', () => {
    const known = state({ usualFall: 0.01 })
    const expected = new Float64Array(BINS).fill(0.001)
    const factor = (level: number) => factorOf(known, expected, dryDown([]), 3600, level)
    expect(factor(0.602 - 0.0015)).toBeCloseTo(1, 12)
    expect(factor(0.55)).toBe(1.33)
    expect(factor(0.61)).toBe(0.75)
  })
  it('is measured by how far ahead it was seen: to 1.5, 3 and 6 hours, and farther', () => {
    expect([60, 5399, 5400, 10799, 10800, 21599, 21600, 172800].map(ringOf)).toEqual([0, 0, 1, 1, 2, 2, 3, 3])
    expect(unitOfMiss(state({ usualFall: 0.02 }), 0.003)).toBeCloseTo(0.005, 12)
    expect(fixedUnit(state({ usualFall: 0.02 }))).toBeCloseTo(0.002, 12)
  })
})

describe('what is foreseen', () => {
  const falls = Array<number | null>(BINS).fill(0.002)
  const ring: ScoreRing = { scores: Array.from({ length: 39 }, (_, i) => (i - 19) / 50), miss50: 0.5, miss90: 0.1 }
  const now = state({
    falls,
    usualFall: 0.01,
    dryDowns: 3,
    dryDown: dryDown([], {
      recent: [
        [900, 0.602, 1],
        [1800, 0.601, 1],
      ],
    }),
    rings: [ring, ring, ring, ring],
  })
  it('is not known before a reading, in a shot, while it drains, and before three dry-downs', () => {
    const why = (more: Partial<LevelState>) => {
      const told = whereNow({ ...now, ...more })
      return told.known ? 'known' : told.reason
    }
    expect(why({})).toBe('known')
    expect(why({ settled: null })).toBe('no-reading')
    expect(why({ shots: { ...shots, last: null } })).toBe('no-reading')
    expect(why({ shots: { ...shots, rise: {} as never } })).toBe('shot')
    expect(why({ dryDown: null })).toBe('draining')
    expect(why({ dryDowns: 2 })).toBe('few-dry-downs')
  })
  it('is the fall of the half hours ahead, with the misses of the ring around it', () => {
    // At the last reading: 0.001 fell where 0.001 was foreseen.
    const ahead = fallAhead({ state: now, ahead: 3600 as never })
    if (!ahead.known) throw new Error(ahead.reason)
    expect(ahead.fall).toBeCloseTo(0.004, 12)
    const unit = 0.004 + 0.001
    // Of 39 misses the tenth and the thirtieth, and the second and the 38th, by ranks of (n + 1) p.
    near(ahead.band50 as never, [0.004 - 0.2 * unit, 0.004 + 0.2 * unit])
    near(ahead.band90 as never, [0.004 - 0.36 * unit, 0.004 + 0.36 * unit])
    const use = waterUseAhead({ state: now, ahead: 3600 as never, substrateVolume: 10 as never })
    if (!use.known) throw new Error(use.reason)
    expect(use.use).toBeCloseTo(0.04, 12)
    near(use.band50 as never, [0.03, 0.05])
    near(use.band90 as never, [0.022, 0.058])
  })
  it('is when a level is reached, with the misses turned round', () => {
    const told = forecastTimeToLevel({ state: now, level: 0.597 as never })
    if (!told.known) throw new Error(told.reason)
    expect(told.from).toBeCloseTo(0.601, 12)
    expect(told.time).toBeCloseTo(2 * BIN, 6)
    // (0.004 - 0.001 u) / (1 + u) fall at misses u of ±0.2 and ±0.36, by 0.002 in half an hour.
    const when = (u: number) => ((0.004 - 0.001 * u) / (1 + u) / 0.002) * BIN
    expect(told.band50.earliest).toBeCloseTo(when(0.2), 6)
    expect(told.band50.latest).toBeCloseTo(when(-0.2), 6)
    expect(told.band90.earliest).toBeCloseTo(when(0.36), 6)
    expect(told.band90.latest).toBeCloseTo(when(-0.36), 6)
    const there = forecastTimeToLevel({ state: now, level: 0.601 as never })
    expect(there).toMatchObject({ known: true, time: 0, band50: { earliest: 0, latest: 0 }, band90: { earliest: 0 } })
  })
  it('is beyond two days, with or without an earliest time, or has no latest one', () => {
    // 96 half hours of 0.002.
    const at = (fall: number) => forecastTimeToLevel({ state: now, level: (0.601 - fall) as never })
    expect(at(0.4)).toEqual({ known: false, reason: 'beyond-two-days' })
    const late = at(0.2)
    expect(late).toMatchObject({ known: false, reason: 'beyond-two-days' })
    expect((late as { earliest: number }).earliest).toBeCloseTo(((0.2 - 0.00036) / 1.36 / 0.002) * BIN, 3)
    const open = at(0.15)
    if (!open.known) throw new Error(open.reason)
    expect(open.band50.latest).toBeCloseTo(((0.15 + 0.0002) / 0.8 / 0.002) * BIN, 3)
    expect(open.band90).not.toHaveProperty('latest')
    // Misses of nearly all leave no latest time, and no division by nothing.
    const wild: ScoreRing = { ...ring, scores: ring.scores.map((one) => 5 * one) }
    const wide = forecastTimeToLevel({ state: { ...now, rings: [wild, wild, wild, wild] }, level: 0.597 as never })
    if (!wide.known) throw new Error(wide.reason)
    expect(wide.band50.latest).toBeUndefined()
    // A fall of all but a fiftieth less is the last that tells a time: 70.9 half hours for 0.002, and 78.4 beyond it, within two days either.
    const always = (miss: number) => {
      const one: ScoreRing = { ...ring, scores: ring.scores.map(() => miss) }
      return forecastTimeToLevel({ state: { ...now, rings: [one, one, one, one] }, level: 0.599 as never })
    }
    const last = ((0.002 + 0.001 * 0.979) / 0.021 / 0.002) * BIN
    expect(always(-0.979)).toMatchObject({ known: true, band90: { latest: expect.closeTo(last, 6) } })
    expect(always(-0.981)).toEqual({ known: false, reason: 'beyond-two-days' })
  })
})

describe('a ring of misses', () => {
  const counted: ScoreRing = { scores: Array.from({ length: 40 }, (_, i) => (i * 7) % 40), miss50: 0.5, miss90: 0.1 }
  it('gives its quantiles by rank, and lines beyond its ends', () => {
    near([...bandsOf(counted).half], [9.25, 29.75])
    near([...bandsOf(counted).ninety], [1.05, 37.95])
    // Rank 41 · 0.002/2 lies 0.959 before the first: the line through the first three falls by 1 a place.
    near([...bandsOf({ ...counted, miss90: 0.002 }).ninety], [-0.959, 39.959])
    expect(sizesOf(counted).half).toBeCloseTo(19.5, 12)
    expect(sizesOf(counted).ninety).toBeCloseTo(35.9, 12)
    expect(sizesOf({ ...counted, miss50: 0.1, miss90: 0.5 })).toEqual({
      half: expect.closeTo(35.9, 9),
      ninety: expect.closeTo(35.9, 9),
    })
    near([...bandsOf({ ...counted, miss50: 0.1, miss90: 0.5 }).ninety], [1.05, 37.95])
  })
  it('widens a band by three hundredths of what it missed, and narrows it by what it held', () => {
    const inside = withScore(counted, 20, 'both')
    expect(inside.miss50).toBeCloseTo(0.5 + 0.03 * 0.5, 12)
    expect(inside.miss90).toBeCloseTo(0.1 + 0.03 * 0.1, 12)
    expect(inside.scores).toHaveLength(40)
    expect(inside.scores[0]).toBe(7)
    expect(inside.scores.at(-1)).toBe(20)
    const between = withScore(counted, 35, 'both')
    expect(between.miss50).toBeCloseTo(0.5 - 0.03 * 0.5, 12)
    expect(between.miss90).toBeCloseTo(0.1 + 0.03 * 0.1, 12)
    for (const far of [-5, 45]) expect(withScore(counted, far, 'both').miss90).toBeCloseTo(0.1 - 0.03 * 0.9, 12)
    // Sizes have no lower end but zero.
    expect(withScore(counted, 0.5, 'size').miss50).toBeCloseTo(0.515, 12)
    expect(withScore(counted, 30, 'size').miss50).toBeCloseTo(0.485, 12)
    expect(withScore({ ...counted, miss90: 0.003 }, 99, 'both').miss90).toBe(0.002)
    expect(withScore({ ...counted, miss50: 0.945 }, 20, 'size').miss50).toBeLessThanOrEqual(0.95)
    expect(newRing(0.1, 'both').scores).toHaveLength(20)
    expect(Math.min(...newRing(0.1, 'size').scores)).toBeGreaterThan(0)
  })
})

describe('the members of a forecast of use', () => {
  it('scale by powers of the radiation, no lower than a fifth, and not at all where it is not known', () => {
    near(memberForecasts(Array(8).fill(2), 0.25, 1), [
      2,
      2 * 0.25 ** 0.2,
      2 * 0.25 ** 0.4,
      2 * 0.25 ** 0.6,
      2,
      2 * 0.25 ** 0.2,
      2 * 0.25 ** 0.4,
      2 * 0.25 ** 0.6,
    ])
    expect(radiationFactor(3, 1e-9, 1)).toBe(0.2)
    for (const [radiation, usual] of [
      [null, 1],
      [1, null],
      [1, 0],
      [1, Number.NaN],
    ] as const)
      expect(radiationFactor(3, radiation, usual)).toBe(1)
  })
  it('weigh by how they did: e to the power of four times their loss over a usual one', () => {
    const forecasts = [1, 2, 3, 4, 5, 6, 7, 8]
    expect(weighedForecast(forecasts, { losses: Array(8).fill(0.3), usual: 0.02 })).toBeCloseTo(4.5, 12)
    const losses = [0.01, 0.02, ...Array<number>(6).fill(9)]
    const second = Math.exp((-4 * 0.01) / 0.02)
    expect(weighedForecast(forecasts, { losses, usual: 0.02 })).toBeCloseTo((1 + 2 * second) / (1 + second), 12)
  })
  it('forget a loss by seven hundredths a day, a wild one counted as sixteen usual ones', () => {
    const old = { losses: [0, 1, 0, 0, 0, 0, 0, 0], usual: 0.02 }
    // Misses of 0 … 0.7 over a forecast of 1: squares 0, 0.01 … 0.49, their median (0.09 + 0.16)/2.
    const forecasts = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3]
    const after = withMisses(old, forecasts, 1, 1, false)
    expect(after.usual).toBeCloseTo(0.022, 12)
    const squares = forecasts.map((one) => Math.min((1 - one) ** 2, 16 * 0.022))
    near(
      [...after.losses],
      old.losses.map((loss, k) => loss + 0.07 * (squares[k]! - loss)),
    )
    expect(withMisses(old, forecasts, 1, 2, true).usual).toBeCloseTo(0.125 / 4, 12)
    expect(withMisses(old, Array(8).fill(1), 1, 1, false).usual).toBeCloseTo(0.018, 12)
    expect(withMisses(old, Array(8).fill(1), 1, 1, true).usual).toBe(4e-4)
    expect(withMisses({ ...old, usual: 1.05e-4 }, Array(8).fill(1), 1, 1, false).usual).toBe(1e-4)
  })
  it('follow the days: slowly or quickly, at first by the share of a day, and by no more than three usual misses', () => {
    const at = (member: number, use: number, days = 100, spread = 0.1) => followed(2, spread, member, 1, use, days)
    expect(at(0, 2.2).level).toBeCloseTo(2 * (1 + 0.2 * 0.1), 12)
    expect(at(4, 2.2).level).toBeCloseTo(2 * (1 + 0.6 * 0.1), 12)
    expect(at(3, 2.2, 2).level).toBeCloseTo(2 * (1 + 0.5 * 0.1), 12)
    expect(at(0, 200).level).toBeCloseTo(2 * (1 + 0.2 * 0.3), 12)
    expect(at(0, 0.001).level).toBeCloseTo(2 * (1 - 0.2 * 0.3), 12)
    expect(followed(2, 5, 7, 1, 0, 1).level).toBeCloseTo(0.02, 12)
    expect(at(0, 2.2).spread).toBeCloseTo(0.1, 12)
    expect(at(0, 2.4).spread).toBeCloseTo(0.1 + 0.1 * 0.1, 12)
    expect(at(0, 1.6).spread).toBeCloseTo(0.1 + 0.1 * 0.1, 12)
    expect(at(0, 2, 100, 0.02).spread).toBe(0.02)
    // The use of a dark day, over its factor, is that of a usual one.
    expect(followed(2, 0.1, 0, 0.5, 1, 100).level).toBeCloseTo(2, 12)
  })
})

describe('the use of a day', () => {
  it('begins with a state that can be written down, and knows nothing', () => {
    const state = newDailyUseState()
    expect(restoredDailyUse(JSON.parse(JSON.stringify(state)))).toEqual(state)
    expect(state).toMatchObject({ days: 0, levels: [], spreads: [], litDays: 0, usualRadiation: null })
  })
  const { step } = forecastDailyUse()
  const day = (use: number | null, radiation?: number | null, expectedRadiation?: number | null) =>
    ({
      use,
      ...(radiation === undefined ? {} : { radiation }),
      ...(expectedRadiation === undefined ? {} : { expectedRadiation }),
    }) as never
  it('is that of the first day for all members, and scored from the second', () => {
    const [first, none] = step(newDailyUseState(), day(2))
    expect(first).toMatchObject({ days: 1, levels: Array(8).fill(2), spreads: Array(8).fill(0.15), litDays: 0 })
    expect(none).toEqual({})
    const [second, told] = step(first, day(2.5))
    expect(told.miss).toBeCloseTo(0.25, 12)
    expect(second.days).toBe(2)
    // The second day counts half, and a miss of 0.25 is below three usual ones.
    near([...second.levels.slice(0, 4)], Array(4).fill(2 * 1.125))
    near([...second.levels.slice(4)], Array(4).fill(2 * 1.15))
    expect(second.without.ring.scores.at(-1)).toBeCloseTo(0.25, 12)
    expect(second.withRadiation).toBe(first.withRadiation)
    for (const nothing of [null, Number.NaN, 0, -1]) expect(step(first, day(nothing as never))).toEqual([first, {}])
  })
  it('learns the usual radiation as a mean at first, then by three hundredths a day, also of days without use', () => {
    let [known] = step(newDailyUseState(), day(null, 10))
    expect(known).toMatchObject({ days: 0, litDays: 1, usualRadiation: 10 })
    ;[known] = step(known, day(null, 20))
    expect(known.usualRadiation).toBeCloseTo(15, 12)
    ;[known] = step(known, day(null, null))
    expect(known).toMatchObject({ litDays: 2, usualRadiation: 15 })
    const [late] = step({ ...known, litDays: 99 }, day(null, 25))
    expect(late.usualRadiation).toBeCloseTo(15.3, 12)
  })
  it('is told after seven days, with radiation after six that had one expected', () => {
    let known = newDailyUseState()
    for (let k = 0; k < 7; k++) {
      expect(waterUseOfNextDay({ state: known }).known).toBe(false)
      ;[known] = step(known, day(2, 10, 10))
    }
    const plain = waterUseOfNextDay({ state: known })
    if (!plain.known) throw new Error('is not known')
    expect(plain.use).toBeCloseTo(2, 12)
    const dark = waterUseOfNextDay({ state: known, expectedRadiation: 2.5 })
    if (!dark.known) throw new Error('is not known')
    const mean = [0, 0.2, 0.4, 0.6].reduce((sum, power) => sum + 0.25 ** power / 4, 0)
    expect(dark.use).toBeCloseTo(2 * mean, 12)
    expect((dark.band50[0] + dark.band50[1]) / 2).toBeCloseTo(dark.use, 12)
    expect(dark.band90[0]).toBeLessThanOrEqual(dark.band50[0])
    // Misses with radiation are not known yet: it is left out.
    const few = { ...known, withRadiation: newDailyUseState().withRadiation }
    expect(waterUseOfNextDay({ state: few, expectedRadiation: 2.5 })).toEqual(plain)
  })
})
