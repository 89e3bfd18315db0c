import fc from 'fast-check'
import {
  combineFlags,
  estimateNoise,
  findClimbs,
  litres,
  overnightDryDowns,
  responseToShots,
  saltDrift,
  timeToRefill,
  utcFromLocal,
  watchReadings,
  waterContent,
  waterUseOfDryDown,
  wmoStepTest,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { fullLevelOf } from '../../src/record/shots/plateau.js'

describe('what is told only from enough readings', () => {
  const line = (slopePerHour: number, slopeError: number, readings: number) =>
    waterUseOfDryDown({
      line: { slopePerHour, slopeError, readings, rSquared: 1, last: waterContent(0.5) } as never,
      substrateVolume: litres(10),
    })
  it('is the water use of a line that falls by two standard errors, over three readings', () => {
    expect(line(-0.002, 0.001, 3)).toEqual({ known: true, use: 0.02, error: 0.01 })
    expect(line(-0.00199, 0.001, 3)).toEqual({ known: false, reason: 'within-noise' })
    expect(line(-0.002, 0.0001, 2)).toEqual({ known: false, reason: 'few-readings' })
    expect(line(0, 0, 9)).toEqual({ known: false, reason: 'not-falling' })
  })
  it('is what a probe sees of shots: half and one and a half are believed, two shots are few', () => {
    // 1 L into 10 L rises by 0.1.
    const seen = (...rises: number[]) =>
      responseToShots({ shots: rises.map((rise) => ({ rise, retained: 1 })) as never, substrateVolume: litres(10) })
    expect(seen(0.1, 0.1).findings).toEqual([{ code: 'few-shots', level: 'note', shots: 2 }])
    expect(seen(0.05, 0.05, 0.05)).toEqual({ share: 0.5, shots: 3, findings: [] })
    expect(seen(0.15, 0.15, 0.15).findings).toEqual([])
    expect(seen(0.0499, 0.0499, 0.0499).findings).toMatchObject([{ code: 'probe-sees-little', level: 'caution' }])
    expect(seen(0.151, 0.151, 0.151).findings).toMatchObject([{ code: 'probe-sees-much', level: 'caution' }])
  })
  it('is a trend from three days, with the error that three leave', () => {
    const trend = (levels: readonly number[]) =>
      saltDrift({
        day: levels.map((_, i) => i),
        plateau: levels,
        drainEC: levels,
        containerCapacity: waterContent(0.9),
      } as never)
    // Levels 0.5, 0.6, 0.8: slope 0.15 a day; squares about the line (0.05)²/6, over one degree of freedom and Σ(t - 1)² = 2.
    expect(trend([0.5, 0.6, 0.8])).toMatchObject({
      levelPerDay: expect.closeTo(0.15, 12),
      levelError: expect.closeTo(Math.sqrt(0.0025 / 1.5 / 2), 12),
    })
  })
  it('is a full level from three, with half the distance of its quarters', () => {
    expect(fullLevelOf([0.6, 0.7])).toBeUndefined()
    // The upper half of six: 0.6, 0.7 and 0.9, whose quarters are 0.65 and 0.8.
    const full = fullLevelOf([0.9, 0.1, 0.6, 0.2, 0.7, 0.3])!
    expect(full).toEqual({ level: 0.7, spread: expect.closeTo(0.075, 12), shots: 3 })
  })
})

describe('a night', () => {
  it('without readings is told as one of few readings', () => {
    const time = Array.from({ length: 20 }, (_, i) => 36_000 + 600 * i)
    const nights = overnightDryDowns({
      time,
      waterContent: time.map(() => 0.6),
      shots: [],
      drainTime: 0,
      maxStep: 900,
      light: [
        { start: 21_600, end: 72_000 },
        { start: 108_000, end: 158_400 },
      ],
    } as never)
    expect(nights).toEqual([{ known: false, dark: 72_000, reason: 'few-readings' }])
  })
  it('lies only where the light goes out: lit spans that touch have none between them', () => {
    const light = [
      { start: 0, end: 36_000 },
      { start: 36_000, end: 72_000 },
    ]
    const series = { time: [0, 600, 1200], waterContent: [0.6, 0.6, 0.6], shots: [], drainTime: 0, maxStep: 900 }
    expect(overnightDryDowns({ ...series, light } as never)).toEqual([])
  })
})

describe('flags of several tests', () => {
  it('leave the flags of each as they were', () => {
    const [first, second] = [Uint8Array.of(1, 2, 1), Uint8Array.of(3, 1, 4)]
    expect([...combineFlags([first, second])]).toEqual([3, 1, 4])
    expect([...first, ...second]).toEqual([1, 2, 1, 3, 1, 4])
  })
})

describe('readings that stuck at the end of what the probe can show', () => {
  it('keep no spread of readings where none is asked for', () => {
    const watch = watchReadings({ rateOfChange: { max: 0.01 }, expectedStep: 60 } as never)
    let state = watch.start
    for (let i = 0; i < 30; i++) state = watch.step(state, { time: 60 * i, value: 0.5 + 1e-3 * (i % 2) } as never)[0]
    expect(state.spread).toEqual(watch.start.spread)
  })
  it('stay stuck in a state that was written down', () => {
    const watch = watchReadings({ grossRange: { sensorMin: 0, sensorMax: 1 }, expectedStep: 60 } as never)
    let state = watch.start
    for (let i = 0; i < 6; i++) state = watch.step(state, { time: 60 * i, value: i === 0 ? 0.5 : 0 } as never)[0]
    expect(state.stuck).toBe(true)
    expect(watch.restore(JSON.parse(JSON.stringify(state)))).toEqual(state)
  })
})

describe('noise of a rounded record', () => {
  it('is the median of grouped values, where most bends are none', () => {
    // Four readings on each of two levels 0.1 apart: 21 of 41 bends are zero, the others half a step. Zeros stand for [0, 0.025), so that
    // the median lies 20.5 of 21 parts up, and a step over the root of twelve is less.
    const value = Array.from({ length: 43 }, (_, i) => 0.1 * (Math.floor(i / 4) % 2))
    const typical = (0.025 * 20.5) / 21
    expect(estimateNoise({ value })).toMatchObject({
      step: expect.closeTo(0.1, 12),
      standardDeviation: expect.closeTo((1.4826 * typical) / Math.sqrt(1.5), 12),
      readings: 41,
    })
  })
})

describe('a dry-down', () => {
  it('that never climbs has no climb', () => {
    const time = Array.from({ length: 13 }, (_, i) => 900 * i)
    const falling = time.map((_, i) => 0.6 - 0.002 * i)
    expect(
      findClimbs({ time, waterContent: falling, dryDowns: [{ first: 0, last: 12 }], minRise: 0.02 } as never),
    ).toEqual([])
  })
  it('at its refill point is there already, whether it falls or not', () => {
    const line = { slopePerHour: 0, slopeError: 0, readings: 9, rSquared: 1, last: waterContent(0.5) }
    expect(timeToRefill({ line, refillPoint: waterContent(0.5) } as never)).toEqual({ known: true, time: 0 })
    expect(timeToRefill({ line, refillPoint: waterContent(0.4) } as never)).toEqual({
      known: false,
      reason: 'not-falling',
    })
  })
})

describe('the step test of WMO', () => {
  it('marks what is missing, judges nothing beside it, and passes four standard deviations', () => {
    // 0, 2 and 1: a standard deviation of 1. From 3 the distances to 1 and to 1 are four in all.
    expect(Array.from(wmoStepTest({ value: [0, 2, 1, 3, 1], window: 3 }))).toEqual([2, 2, 2, 1, 2])
    expect(Array.from(wmoStepTest({ value: [0, 2, 1, 3.01, 1], window: 3 }))).toEqual([2, 2, 2, 3, 2])
    expect(Array.from(wmoStepTest({ value: [0, 2, 1, Number.NaN, 1, 1, 1], window: 3 }))).toEqual([2, 2, 2, 9, 2, 2, 2])
  })
})

describe('local times in any order', () => {
  it('are those that each has alone, where the clock shows an hour once', () => {
    const [spring, autumn] = [1_000_000, 20_000_000]
    const offsets = [
      { from: -1e9, ahead: 3600 },
      { from: spring, ahead: 7200 },
      { from: autumn, ahead: 3600 },
    ]
    const moments = fc
      .integer({ min: 0, max: 30_000_000 })
      .filter((moment) => Math.abs(moment - autumn) > 4000 && Math.abs(moment - spring) > 4000)
    fc.assert(
      fc.property(fc.array(moments, { minLength: 1, maxLength: 12 }), (list) => {
        const local = list.map((moment) => moment + (moment >= spring && moment < autumn ? 7200 : 3600))
        expect(Array.from(utcFromLocal({ local, offsets } as never).time)).toEqual(list)
      }),
    )
  })
})
