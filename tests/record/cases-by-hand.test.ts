import {
  changeOfSlope,
  compareProbes,
  estimateNoise,
  explainRecordFinding,
  findClimbs,
  findDryDowns,
  findSteps,
  fitExponentialDryDown,
  matchShots,
  overnightDryDowns,
  saltDrift,
  timeToRefill,
} from 'porewater/record'
import { describe, expect, it } from 'vitest'
import { isMissing } from '../../src/quantity/missing.js'
import { asymptoteInterval, bestTimeConstant } from '../../src/record/dry-down/exponential-search.js'
import { independentShare } from '../../src/record/dry-down/independent-share.js'
import { forecastTimeToLevel } from '../../src/record/forecast/forecast-time-to-level.js'
import { learntFrom } from '../../src/record/forecast/learn-dry-down.js'
import { newLevelState } from '../../src/record/forecast/level-state.js'
import { newRing, restoredRing } from '../../src/record/forecast/score-ring.js'
import { addRepeat, MAX_REPEATS, pairsOf } from '../../src/record/quality/repeats.js'
import { stateReader } from '../../src/record/restore-state.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const call = <Result>(of: (input: never) => Result, input: object): Result => of(input as never)
const away = Number.NaN

/** A shot from one time to a later one of a series. */
const shotAt = (time: readonly number[], startIndex: number, peakIndex: number) => ({
  startIndex,
  peakIndex,
  start: time[startIndex]!,
  peak: time[peakIndex]!,
  before: 0.5,
  top: 0.6,
  rise: 0.1,
})

describe('dry-downs', () => {
  const found = (time: readonly number[], shots: readonly object[], more: object = {}) =>
    call(findDryDowns, {
      time,
      waterContent: time.map((_, i) => 0.6 - 0.001 * i),
      shots,
      drainTime: 600,
      maxStep: 900,
      minDuration: 600,
      ...more,
    }).map(({ first, last }) => [first, last])
  const every300 = Array.from({ length: 12 }, (_, i) => 300 * i)
  it('end before a shot with which the record ends, and not once more behind it', () => {
    expect(found(every300, [shotAt(every300, 7, 11)])).toEqual([[0, 7]])
  })
  it('of a clock that was set back begin at once: the peak before it is of another time', () => {
    const time = [...every300.map((t) => t + 9000), ...every300]
    const shot = shotAt(time, 8, 10)
    expect(found(time, [shot])).toEqual([
      [0, 8],
      [12, 23],
    ])
  })
  it('of a night in parts count by the longest', () => {
    const time = [0, 300, 600, 900, ...Array.from({ length: 60 }, (_, i) => 2100 + 300 * i)]
    const light = [
      { start: -7200, end: 0 },
      { start: 20_400, end: 30_000 },
    ]
    const series = { time, waterContent: time.map((t) => 0.6 - 1e-6 * t), shots: [], drainTime: 0, maxStep: 900 }
    expect(call(overnightDryDowns, { ...series, light })).toMatchObject([{ known: true, dark: 0, duration: 17_700 }])
  })
  it('tell when they come to a refill point from three readings on', () => {
    const line = { slopePerHour: -0.01, slopeError: 0.001, readings: 3, r2: 1, last: 0.5 }
    expect(call(timeToRefill, { line, refillPoint: 0.48 })).toEqual({ known: true, time: expect.closeTo(7200, 8) })
    const known = call(timeToRefill, { line: { ...line, readings: 2 }, refillPoint: 0.48 })
    expect(known).toEqual({ known: false, reason: 'few-readings' })
  })
})

describe('a climb', () => {
  const climbs = (step: number, waterContent: readonly number[]) =>
    call(findClimbs, {
      time: waterContent.map((_, i) => step * i),
      waterContent,
      dryDowns: [{ first: 0, last: waterContent.length - 1 }],
      minRise: 0.02,
    })
  it('ends where its mean is highest first', () => {
    // Of readings an hour apart each is put together with the one before it: lowest 0.46 at the third, 0.52 from the sixth on.
    expect(climbs(3600, [0.5, 0.46, 0.46, 0.48, 0.52, 0.52, 0.52, 0.52])).toMatchObject([
      { start: 7200, end: 18_000, rise: expect.closeTo(0.06, 12) },
    ])
  })
  it('is one of the mean, not of one reading that stands out', () => {
    expect(climbs(600, [0.5, 0.5, 0.5, 0.53, 0.5, 0.5, 0.5])).toEqual([])
  })
})

describe('an exponential dry-down', () => {
  const time = Array.from({ length: 30 }, (_, i) => 600 * i)
  it('of readings that are all the same does not fall', () => {
    // A mean of 32 is exact.
    const level = Array(32).fill(0.5)
    const told = call(fitExponentialDryDown, { time: level.map((_, i) => 600 * i), waterContent: level })
    expect(told).toEqual({ known: false, reason: 'not-falling' })
  })
  it('has the interval that as many independent readings leave as its residuals show', () => {
    const share = time.map((t) => t / time.at(-1)!)
    const waterContent = share.map((t, i) => 0.3 + 0.2 * Math.exp(-3 * t) + 0.001 * Math.sin(5 * i * i))
    const best = bestTimeConstant(share, waterContent)
    const off = share.map((t, i) => waterContent[i]! - best.asymptote - best.slope * Math.exp(-t / best.constant))
    expect(off.reduce((sum, one) => sum + one * one, 0)).toBeCloseTo(best.rest, 12)
    const free = 30 * independentShare(off, best.rest) - 3
    const [low, high] = asymptoteInterval(share, waterContent, best, best.rest * (1 + 3.8415 / free))
    expect(call(fitExponentialDryDown, { time, waterContent })).toMatchObject({
      known: true,
      asymptoteLow: expect.closeTo(low, 12),
      asymptoteHigh: expect.closeTo(high, 12),
    })
  })
})

describe('a change of slope', () => {
  it('is the same to the last bit by a clock that began long ago', () => {
    const time = Array.from({ length: 40 }, (_, i) => 600 * i)
    const waterContent = time.map((_, i) => 0.6 - 0.002 * Math.min(i, 17) - 0.0004 * Math.max(0, i - 17))
    const early = call(changeOfSlope, { time, waterContent })
    const late = call(changeOfSlope, { time: time.map((t) => t + 1.7e9), waterContent })
    expect(early).toMatchObject({ known: true, index: 17 })
    expect({ ...late, time: 0 }).toEqual({ ...early, time: 0 })
  })
})

describe('probes side by side', () => {
  const compared = (differences: readonly number[], each: number, driftPerDay: number) => {
    const time = differences.map((_, i) => (86_400 / each) * i)
    const wave = time.map((_, i) => 0.5 + 2 ** -9 * (i % 2))
    return call(compareProbes, {
      time,
      probes: [
        { name: 'A', waterContent: wave.map((x, i) => x + differences[i]!) },
        { name: 'B', waterContent: wave },
        { name: 'C', waterContent: wave },
      ],
      driftPerDay,
    })[0]!
  }
  it('differ by the median of each day, not by its last reading', () => {
    const days = [0, 1, 2, 3].flatMap((day) => [0, 0, 0.02 * day])
    expect(compared(days, 3, 0.01)).toMatchObject({ driftPerDay: expect.closeTo(0, 12) })
  })
  it('drift where they go beyond the limit, not at it', () => {
    const steady = Array.from({ length: 32 }, (_, i) => 2 ** -7 * Math.floor(i / 4))
    const atLimit = compared(steady, 4, 2 ** -7)
    expect(atLimit).toMatchObject({ driftPerDay: 2 ** -7, findings: [] })
    expect(compared(steady, 4, 0.9 * 2 ** -7).findings).toMatchObject([{ code: 'rises-away' }])
  })
  it('are said to be so many times as noisy as their neighbours', () => {
    const finding = { code: 'noisy', level: 'caution', about: 'A', standardDeviation: 0.03, usual: 0.01 }
    expect(JSON.stringify(explainRecordFinding(finding as never))).toContain('3.0 times the noise')
  })
})

describe('a plateau', () => {
  it('above what the medium holds is told beside days without one', () => {
    const day = [0, 1, 2, 3, 4, 5]
    const { findings } = call(saltDrift, {
      day,
      plateau: [0.7, 0.72, away, 0.7, 0.7, away],
      drainEC: day.map(() => 2),
      containerCapacity: 0.71,
    })
    expect(findings).toEqual([{ code: 'above-capacity', level: 'caution', max: 0.72, containerCapacity: 0.71 }])
  })
})

describe('steps', () => {
  it('are found in the shortest record that has both sides, by no less than the least change', () => {
    const steps = (waterContent: readonly number[]) =>
      call(findSteps, {
        time: waterContent.map((_, i) => 300 * i),
        waterContent,
        shots: [],
        minChange: 0.0625,
        side: 3,
        maxStep: 480,
      })
    expect(steps([0.5, 0.5, 0.5, 0.5625, 0.5625, 0.5625])).toMatchObject([{ index: 3, change: 0.0625 }])
    expect(steps([0.5, 0.5, 0.5, 0.5624, 0.5624, 0.5624])).toEqual([])
  })
})

describe('a log', () => {
  it('is judged by the stretch that covers it, in whatever order stretches come', () => {
    const stretch = (start: number, end: number) => ({ start, end, first: 0, last: 1 })
    const matched = (segments: readonly object[]) =>
      call(matchShots, { shots: [], log: [500, 5000, 9000], segments, maxLag: 600, maxLead: 60 })
    const segments = [stretch(0, 2000), stretch(4000, 6000), stretch(8000, 8500)]
    for (const order of [segments, [...segments].reverse()])
      expect(matched(order)).toMatchObject({ withoutRise: [0, 1], notJudged: [2] })
  })
})

describe('a rise after the valve was opened', () => {
  it('is that which came next, in whatever order rises are given', () => {
    const rise = (start: number) => ({
      startIndex: 0,
      peakIndex: 1,
      start,
      peak: start + 100,
      before: 0.5,
      top: 0.6,
      rise: 0.1,
    })
    const segments = [{ start: 0, end: 20_000, first: 0, last: 1 }]
    const starts = [9100, 1100, 5100]
    const { matched } = call(matchShots, {
      shots: starts.map(rise),
      log: [1000, 5000, 9000],
      segments,
      maxLag: 600,
      maxLead: 60,
    })
    expect(matched).toEqual([
      { log: 0, shot: 1 },
      { log: 1, shot: 2 },
      { log: 2, shot: 0 },
    ])
  })
  it('belongs to it from its slack before to its longest lag behind, and either end with it', () => {
    const matched = (start: number) => {
      const shots = [{ startIndex: 0, peakIndex: 1, start, peak: start + 100, before: 0.5, top: 0.6, rise: 0.1 }]
      const segments = [{ start: 0, end: 9000, first: 0, last: 1 }]
      return call(matchShots, { shots, log: [5000], segments, maxLag: 600, maxLead: 60 }).matched
    }
    for (const start of [4940, 5000, 5600]) expect(matched(start)).toEqual([{ log: 0, shot: 0 }])
    for (const start of [4939, 5601]) expect(matched(start)).toEqual([])
  })
})

describe('noise', () => {
  it('rests on readings with two good neighbours alone', () => {
    // A quarter up and a quarter down: 38 of 40 readings have neighbours, less three at the gap.
    const value = Array.from({ length: 40 }, (_, i) => (i === 20 ? away : 0.25 * (i % 2)))
    const noise = call(estimateNoise, { value })
    // Each bends by a quarter, which is the step too: the median of sizes spread evenly about it.
    expect(noise).toMatchObject({ known: true, readings: 35, step: 0.25 })
    expect((noise as { standardDeviation: number }).standardDeviation).toBeCloseTo((1.4826 * 0.25) / Math.sqrt(1.5), 12)
  })
  it('counts no run of readings that are missing', () => {
    const value = [...Array.from({ length: 25 }, (_, i) => 0.5 + 0.1 * (i % 2)), ...Array(600).fill(away)]
    expect(call(estimateNoise, { value })).toMatchObject({ known: true, longRun: 1 })
  })
})

describe('what is missing', () => {
  it('is what is no number or has no end', () => {
    const missing = [away, Infinity, -Infinity, null, undefined] as number[]
    expect(missing.map((one) => isMissing(one, 'time'))).toEqual(Array(5).fill(true))
    expect([0, -1e300, 1e300].map((one) => isMissing(one, 'time'))).toEqual([false, false, false])
  })
})

describe('repeats', () => {
  it('are thinned at their oldest pair where that is the nearest', () => {
    const values = [0, 0.01, ...Array.from({ length: MAX_REPEATS - 1 }, (_, i) => 0.1 * (i + 1))]
    const repeats: number[] = []
    for (const value of values) addRepeat(repeats, value, { tolerance: 10, failAfter: 1e6 })
    expect(pairsOf(repeats).slice(0, 2)).toEqual([
      [0, 2],
      [0.1, 1],
    ])
  })
})

describe('what is foreseen of a level', () => {
  it('is scored up to the very end of a dry-down', () => {
    const levels = Array.from({ length: 18 }, (_, k) => 0.6 - 0.002 * k)
    const state = { ...newLevelState({ last: 1800, rise: null } as never), falls: Array(48).fill(0.001), dryDowns: 3 }
    const dryDown = {
      start: 900,
      from: 0.602,
      border: 1800,
      levels,
      recent: [],
      replay: [{ time: 3600, level: 0.598 }],
    }
    // Eight hours behind the replay is the last border.
    const scored = learntFrom({ ...state, usualFall: 0.01 } as never, dryDown)
    expect(scored.rings[3]!.scores).toHaveLength(state.rings[3]!.scores.length + 1)
    const shorter = learntFrom({ ...state, usualFall: 0.01 } as never, { ...dryDown, levels: levels.slice(0, 17) })
    expect(shorter.rings[3]!.scores).toHaveLength(state.rings[3]!.scores.length)
  })
  it('has the band of forecasts that looked as far ahead, and goes as much quicker as tonight does', () => {
    const ring = (spread: number) => newRing(spread, 'both')
    const state = {
      ...newLevelState({ last: 1800, rise: null } as never),
      settled: 0,
      dryDowns: 3,
      usualFall: 0.01,
      falls: Array(48).fill(0.002),
      // Tonight fell by 0.004 in a half hour where 0.002 are usual: (0.004 + 0.01) / (0.002 + 0.01) times as quick.
      dryDown: { start: 0, from: 0.604, border: 0, levels: [], recent: [[1800, 0.6, 1]], replay: [] },
      rings: [ring(0.01), ring(0.1), ring(0.2), ring(0.4)],
    }
    const told = (level: number) => call(forecastTimeToLevel, { state, level })
    const perHour = 0.004 * (0.014 / 0.012)
    const near = told(0.6 - perHour)
    const far = told(0.6 - 8 * perHour)
    expect(near).toMatchObject({ known: true, time: expect.closeTo(3600, 6) })
    expect(far).toMatchObject({ known: true, time: expect.closeTo(8 * 3600, 6) })
    // The quarters of the narrow ring lie 0.7 % off, those of the wide one 27 %.
    const width = (of: object) => {
      const { time, band50 } = of as { time: number; band50: { earliest: number; latest: number } }
      return (band50.latest - band50.earliest) / time
    }
    expect(width(near)).toBeLessThan(0.03)
    expect(width(far)).toBeGreaterThan(0.4)
    const there = { earliest: 0, latest: 0 }
    expect(told(0.6)).toMatchObject({ known: true, time: 0, band50: there, band90: there })
  })
  it('is kept with at least the misses that a ring begins with', () => {
    const { scores, ...more } = newRing(0.1, 'both')
    expect(restoredRing(stateReader({ scores, ...more })).scores).toEqual(scores)
    expect(() => restoredRing(stateReader({ scores: scores.slice(1), ...more }))).toThrow('fewer than it starts with')
  })
})
