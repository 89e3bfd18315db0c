import { findTimeBreaks, minutes, newestReading, type TimeBreak } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

describe('the breaks of a record', () => {
  const breakOf = (step: number, expected = 5): TimeBreak | undefined =>
    findTimeBreaks({ time: [0, step], expectedStep: minutes(expected) })[0]
  it('are gaps, repeated times, steps back and times that are not there', () => {
    expect([300, 0, -300, Number.NaN, 86400].map((step) => breakOf(step)?.kind)).toEqual([
      undefined,
      'repeated-time',
      'step-back',
      'no-time',
      'gap',
    ])
    expect(breakOf(86400)).toEqual({ index: 1, kind: 'gap', seconds: 86400 })
    expect(breakOf(-7200)).toEqual({ index: 1, kind: 'step-back', seconds: -7200 })
    expect(findTimeBreaks({ time: [], expectedStep: minutes(5) })).toEqual([])
  })
  it('begin beyond the longest step that is allowed', () => {
    const gap = (step: number) => findTimeBreaks({ time: [0, step], expectedStep: minutes(5), factor: 2 }).length
    expect([600, 601].map(gap)).toEqual([0, 1])
  })
  it('may be a change of civil time when they are an hour off, to three steps and a quarter of an hour at most', () => {
    const may = (expected: number, steps: number[]) =>
      steps.map((step) => breakOf(step, expected)?.mayBeClockChange ?? '')
    // A step of 5 min: 3900 s forward and -3300 s back, to 900 s.
    expect(may(5, [2999, 3000, 3900, 4800, 4801])).toEqual(['', 'forward', 'forward', 'forward', ''])
    expect(may(5, [-4201, -4200, -3300, -2400, -2399])).toEqual(['', 'back', 'back', 'back', ''])
    // A step of 1 min: 3660 s forward and -3540 s back, to 180 s.
    expect(may(1, [3479, 3480, 3840, 3841])).toEqual(['', 'forward', 'forward', ''])
    expect(may(1, [-3721, -3720, -3360, -3359])).toEqual(['', 'back', 'back', ''])
    // A step of 10 min: to a quarter of an hour, not to half an hour.
    expect(may(10, [3299, 3300, 5100, 5101])).toEqual(['', 'forward', 'forward', ''])
  })
  it('are counted over readings that are missing, as if their rows were not there', () => {
    const time = [0, 300, 600, 900, 1200]
    const value = [Number.NaN, 0.5, Number.NaN, Number.NaN, 0.5]
    expect(findTimeBreaks({ time, expectedStep: minutes(5), value })).toEqual([{ index: 4, kind: 'gap', seconds: 900 }])
    expect(findTimeBreaks({ time, expectedStep: minutes(5) })).toEqual([])
    expectInputError(() => findTimeBreaks({ time, expectedStep: minutes(5), value: [0.5] }), /time|value/)
  })
})

describe('the newest reading', () => {
  const record = { time: [0, 300, 600], value: [0.54, 0.53, 0.52] }
  it('is the last one that passed, with its age', () => {
    expect(newestReading({ ...record, now: 600 })).toEqual({
      known: true,
      index: 2,
      value: 0.52,
      time: 600,
      age: 0,
      isLast: true,
    })
    const flags = Uint8Array.of(1, 1, 3)
    expect(newestReading({ ...record, flags, now: 900 })).toMatchObject({ index: 1, age: 600, isLast: false })
    expect(newestReading({ ...record, value: [0.54, Number.NaN, Number.NaN], now: 900 })).toMatchObject({ index: 0 })
  })
  it('is none that is missing, doubtful, without time or still to come', () => {
    const none = { known: false, reason: 'none-passed' }
    expect(newestReading({ ...record, flags: Uint8Array.of(2, 3, 4), now: 900 })).toEqual(none)
    expect(newestReading({ time: [], value: [], now: 0 })).toEqual(none)
    for (const time of [
      [0, 300, 601],
      [0, 300, Number.NaN],
    ])
      expect(newestReading({ ...record, time, now: 600 })).toMatchObject({
        known: false,
        reason: 'clock-ahead',
      })
  })
  it('is not asked with lists that do not belong together, or without a moment', () => {
    expectInputError(() => newestReading({ ...record, flags: Uint8Array.of(1, 1), now: 900 }), 'flags')
    expectInputError(() => newestReading({ time: [0], value: [0.5, 0.4], now: 900 }), /time|value/)
    expectDomainError(() => newestReading({ ...record, now: Number.NaN }), { argument: 'now' })
  })
})
