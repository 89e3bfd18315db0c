import fc from 'fast-check'
import {
  litres,
  overnightDryDowns,
  responseToShots,
  saltDrift,
  utcFromLocal,
  waterContent,
  waterUseOfDryDown,
  wmoStepTest,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { fullLevelOf } from '../../src/record/plateau.js'

describe('what is told only from enough readings', () => {
  const line = (slopePerHour: number, slopeError: number, readings: number) =>
    waterUseOfDryDown({
      line: { slopePerHour, slopeError, readings, r2: 1, last: waterContent(0.5) } as never,
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
      responseToShots({ shots: rises.map((rise) => ({ rise, kept: 1 })) as never, substrateVolume: litres(10) })
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
      settle: 0,
      maxStep: 900,
      light: [
        { start: 21_600, end: 72_000 },
        { start: 108_000, end: 158_400 },
      ],
    } as never)
    expect(nights).toEqual([{ known: false, dark: 72_000, reason: 'few-readings' }])
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
