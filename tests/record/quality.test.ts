import fc from 'fast-check'
import {
  combineFlags,
  countFlags,
  findTimeBreaks,
  flatLineTest,
  grossRangeTest,
  hours,
  minutes,
  rateOfChangeTest,
  seconds,
  spikeTest,
  timeGapTest,
  wmoLimits,
  wmoStepConsistency,
  wmoStepTest,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const list = (flags: Uint8Array) => Array.from(flags)
checkPublished('irrigation', 'qc.gross_range', ({ x, sensor_min, sensor_max, user_min, user_max }) => ({
  flags: list(
    grossRangeTest({
      value: x,
      sensorMin: sensor_min,
      sensorMax: sensor_max,
      expectedMin: user_min,
      expectedMax: user_max,
    }),
  ),
}))
checkPublished('irrigation', 'qc.spike', ({ x, low, high }) => ({
  flags: list(spikeTest({ value: x, suspect: low, fail: high })),
}))
checkPublished('irrigation', 'qc.rate_of_change', ({ t, x, threshold }) => ({
  flags: list(rateOfChangeTest({ time: t, value: x, max: threshold })),
}))
checkPublished('irrigation', 'qc.flat_line', ({ x, eps, n_suspect, n_fail }) => ({
  flags: list(flatLineTest({ value: x, tolerance: eps, suspectAfter: n_suspect, failAfter: n_fail })),
}))
checkPublished('irrigation', 'qc.gap', ({ t, expected, factor }) => ({
  flags: list(timeGapTest({ time: t, expectedStep: seconds(expected), factor })),
}))

checkPublished('irrigation', 'qc.wmo_step', ({ x, index, s }) => {
  const step = wmoStepConsistency({ before: x[index - 1], value: x[index], after: x[index + 1], standardDeviation: s })
  return { sum: step.distance, limit: step.limit, consistent: Number(step.consistent) }
})

const readings = fc.array(
  fc.oneof(
    { weight: 9, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  ),
  { maxLength: 200 },
)

describe('quality tests', () => {
  it('give every reading a flag, and a missing one the flag for missing', () => {
    fc.assert(
      fc.property(readings, (value) => {
        const time = value.map((_, i) => 300 * i)
        const tests = [
          grossRangeTest({ value, sensorMin: 0, sensorMax: 1, expectedMin: 0.2, expectedMax: 0.9 }),
          spikeTest({ value, suspect: 0.02, fail: 0.05, direction: 'fall' }),
          rateOfChangeTest({ time, value, max: 0.001, direction: 'fall' }),
          flatLineTest({ value, tolerance: 1e-4, suspectAfter: 3, failAfter: 5 }),
        ]
        for (const flags of tests) {
          expect(flags).toHaveLength(value.length)
          value.forEach((x, i) => {
            expect(flags[i] === 9).toBe(Number.isNaN(x))
          })
        }
        const counts = countFlags(combineFlags(tests))
        expect(counts.pass + counts.notEvaluated + counts.suspect + counts.fail + counts.missing).toBe(value.length)
        expect(counts.missing).toBe(value.filter(Number.isNaN).length)
      }),
    )
  })
  it('do not take a rise by irrigation for a fault when only falls are tested', () => {
    const value = [0.5, 0.5, 0.56, 0.56, 0.5]
    expect(list(spikeTest({ value, suspect: 0.02, fail: 0.05, direction: 'fall' }))).toEqual([2, 1, 1, 1, 2])
    expect(list(rateOfChangeTest({ time: [0, 300, 600, 900, 1200], value, max: 0.0001, direction: 'fall' }))).toEqual([
      2, 1, 1, 1, 3,
    ])
    expect(list(rateOfChangeTest({ time: [0, 300, 600, 900, 1200], value, max: 0.0001, direction: 'rise' }))).toEqual([
      2, 1, 3, 1, 1,
    ])
    expect(list(spikeTest({ value: [0.5, 0.58, 0.5], suspect: 0.02, fail: 0.05, direction: 'rise' }))).toEqual([
      2, 4, 2,
    ])
  })
  it('let pass what is at a limit and not beyond it (QARTOD 2.0: fail and suspect are strict)', () => {
    const range = { sensorMin: 0, sensorMax: 1, expectedMin: 0.25, expectedMax: 0.75 }
    expect(list(grossRangeTest({ ...range, value: [-0.01, 0, 0.24, 0.25, 0.75, 0.76, 1, 1.01] }))).toEqual([
      4, 3, 3, 1, 1, 3, 3, 4,
    ])
    expect(list(grossRangeTest({ value: [-1, 0, 1, 2], sensorMin: 0, sensorMax: 1 }))).toEqual([4, 1, 1, 4])
    const spike = (height: number, direction: 'both' | 'rise' | 'fall') =>
      list(spikeTest({ value: [0.5, 0.5 + height, 0.5], suspect: 0.125, fail: 0.25, direction }))[1]
    expect([0.125, 0.126, 0.25, 0.251].map((height) => spike(height, 'both'))).toEqual([1, 3, 3, 4])
    expect([-0.125, -0.126, -0.25, -0.251].map((height) => spike(height, 'both'))).toEqual([1, 3, 3, 4])
    expect([0.375, -0.375].map((height) => spike(height, 'rise'))).toEqual([4, 1])
    expect([0.375, -0.375].map((height) => spike(height, 'fall'))).toEqual([1, 4])
    const rate = (value: number[]) => list(rateOfChangeTest({ time: [0, 2], value, max: 0.125 }))[1]
    expect([rate([0.5, 0.75]), rate([0.5, 0.76]), rate([0.75, 0.5]), rate([0.76, 0.5])]).toEqual([1, 3, 1, 3])
    expect(list(timeGapTest({ time: [0, 450, 901, 901, 900], expectedStep: seconds(300) }))).toEqual([2, 1, 3, 4, 4])
    expect(list(timeGapTest({ time: [], expectedStep: seconds(300) }))).toEqual([])
  })
  it('stand out from both neighbours, where a spike may point one way only', () => {
    const middle = (value: number[], direction: 'rise' | 'fall') =>
      list(spikeTest({ value, suspect: 0.01, fail: 0.02, direction }))[1]
    expect(middle([0.5, 0.5, 0.4], 'rise')).toBe(1)
    expect(middle([0.4, 0.5, 0.5], 'rise')).toBe(1)
    expect(middle([0.5, 0.5, 0.6], 'fall')).toBe(1)
    expect(middle([0.6, 0.5, 0.5], 'fall')).toBe(1)
  })
  it('call readings equal that are the same or differ by less than the tolerance, back to a missing one', () => {
    const flat = (value: number[], tolerance: number) =>
      list(flatLineTest({ value, tolerance, suspectAfter: 2, failAfter: 3 }))
    expect(flat([0.5, 0.5, 0.5, 0.5, 0.5], 0)).toEqual([1, 1, 3, 4, 4])
    expect(flat([0.5, 0.75, 0.5, 0.75], 0.25)).toEqual([1, 1, 1, 1])
    expect(flat([0.5, 0.74, 0.5, 0.74], 0.25)).toEqual([1, 1, 3, 4])
    expect(flat([0.5, 0.5, Number.NaN, 0.5, 0.5, 0.5], 0)).toEqual([1, 1, 9, 1, 1, 3])
    expect(() => flatLineTest({ value: [1], tolerance: 0, suspectAfter: 3, failAfter: 3 })).not.toThrow()
    expect(() => spikeTest({ value: [1], suspect: 1, fail: 1 })).not.toThrow()
    expect(() => grossRangeTest({ value: [1], sensorMin: 1, sensorMax: 1 })).not.toThrow()
  })
  it('are counted by their flags', () => {
    expect(countFlags(Uint8Array.of(1, 2, 2, 3, 3, 3, 4, 4, 4, 4, 9, 9, 9, 9, 9))).toEqual({
      pass: 1,
      notEvaluated: 2,
      suspect: 3,
      fail: 4,
      missing: 5,
    })
  })
  it('never judge a change across a clock that did not advance', () => {
    expect(list(rateOfChangeTest({ time: [0, 300, 300, 0], value: [0.5, 0.5, 0.9, 0.1], max: 0.0001 }))).toEqual([
      2, 1, 2, 2,
    ])
  })
  it('keep the most serious flag', () => {
    expect(list(combineFlags([Uint8Array.of(2, 2, 1, 3, 4, 9), Uint8Array.of(2, 1, 3, 4, 9, 1)]))).toEqual([
      2, 1, 3, 4, 9, 9,
    ])
    expectInputError(() => combineFlags([]), 'tests')
    expectInputError(() => combineFlags([Uint8Array.of(1), Uint8Array.of(1, 2)]), 'tests')
  })
  it('refuse limits that make no sense', () => {
    expectInputError(() => grossRangeTest({ value: [1], sensorMin: 2, sensorMax: 1 }), 'sensorMin')
    expectInputError(
      () => grossRangeTest({ value: [1], sensorMin: 2, sensorMax: 1, expectedMin: 0, expectedMax: 3 }),
      'sensorMin',
    )
    expectInputError(
      () => grossRangeTest({ value: [1], sensorMin: 0, sensorMax: 1, expectedMin: 0.7, expectedMax: 0.3 }),
      'expectedMin',
    )
    expectDomainError(() => grossRangeTest({ value: [1], sensorMin: Number.NaN, sensorMax: 1 }), {
      quantity: 'limit of the gross range test',
      min: -Infinity,
    })
    for (const limit of [{ suspect: -1 }, { fail: Number.POSITIVE_INFINITY }])
      expectDomainError(() => spikeTest({ value: [1], suspect: 1, fail: 2, ...limit }), {})
    expectDomainError(() => rateOfChangeTest({ time: [1], value: [1], max: -1 }), { quantity: 'fastest change' })
    expectDomainError(() => timeGapTest({ time: [0], expectedStep: seconds(1), factor: 0.9 }), {
      quantity: 'factor of a gap',
    })
    expect(() => timeGapTest({ time: [0], expectedStep: seconds(1), factor: 1 })).not.toThrow()
    for (const failAfter of [1.5, 1000001])
      expectDomainError(() => flatLineTest({ value: [1], tolerance: 0, suspectAfter: 1, failAfter }), {
        argument: 'failAfter',
      })
    expectDomainError(() => flatLineTest({ value: [1], tolerance: -1, suspectAfter: 1, failAfter: 1 }), {
      quantity: 'tolerance of the flat line test',
    })
    expectInputError(() => spikeTest({ value: [1], suspect: 2, fail: 1 }), 'suspect')
    expectInputError(() => flatLineTest({ value: [1], tolerance: 0, suspectAfter: 5, failAfter: 3 }), 'suspectAfter')
    expectInputError(() => rateOfChangeTest({ time: [1], value: [], max: 1 }), 'time')
    expectDomainError(() => timeGapTest({ time: [0], expectedStep: seconds(0) }), { quantity: 'expected step' })
    expectDomainError(() => flatLineTest({ value: [1], tolerance: 0, suspectAfter: 0, failAfter: 3 }), {
      argument: 'suspectAfter',
    })
  })
})

describe('breaks', () => {
  it('are exactly the places that the gap test flags', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -3, max: 8 }), { maxLength: 100 }), (steps) => {
        let now = 0
        const time = [0, ...steps.map((step) => (now += step * 100))]
        const flags = timeGapTest({ time, expectedStep: seconds(300) })
        const breaks = findTimeBreaks({ time, expectedStep: seconds(300) })
        expect(breaks.map(({ index }) => index)).toEqual(time.flatMap((_, i) => (i > 0 && flags[i] !== 1 ? [i] : [])))
      }),
    )
  })
  it('tell a gap from a clock that was set back or stood still', () => {
    expect(findTimeBreaks({ time: [0, 300, 7200, 3900, 3900], expectedStep: minutes(5) })).toEqual([
      { index: 2, kind: 'gap', seconds: 6900 },
      { index: 3, kind: 'step-back', seconds: -3300, mayBeClockChange: 'back' },
      { index: 4, kind: 'repeated-time', seconds: 0 },
    ])
  })
})

describe('breaks of readings', () => {
  it('take a missing stretch for a gap where the readings are given', () => {
    const time = Array.from({ length: 20 }, (_, i) => 300 * i)
    const value = time.map((_, i) => (i >= 4 && i < 16 ? Number.NaN : 0.5))
    expect(findTimeBreaks({ time, expectedStep: minutes(5) })).toEqual([])
    expect(findTimeBreaks({ time, value, expectedStep: minutes(5) })).toEqual([
      { index: 16, kind: 'gap', seconds: 3900, mayBeClockChange: 'forward' },
    ])
  })
  it('name a time that is not there', () => {
    expect(findTimeBreaks({ time: [0, Number.NaN, 600], expectedStep: minutes(5) }).map(({ kind }) => kind)).toEqual([
      'no-time',
      'no-time',
    ])
  })
})

describe('the step test of meteorological services', () => {
  it('equals the single test with the standard deviation of the window (independent: two passes)', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 6, maxLength: 60 }), (value) => {
        const flags = wmoStepTest({ value, window: 4 })
        for (let i = 4; i + 1 < value.length; i++) {
          const hour = value.slice(i - 4, i)
          const mean = hour.reduce((a, b) => a + b) / 4
          const deviation = Math.sqrt(hour.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 3)
          const step = wmoStepConsistency({
            before: value[i - 1]!,
            value: value[i]!,
            after: value[i + 1]!,
            standardDeviation: deviation,
          })
          if (Math.abs(step.distance - step.limit) > 1e-9) expect(flags[i]).toBe(step.consistent ? 1 : 3)
        }
      }),
    )
  })
  it('has limits for what a climate box measures, and none for what is not listed', () => {
    // As a public program has them that cites Zahumenský (2004), from which the guide took them; read there.
    const limits = [
      ['air-temperature', -80, 60, 3, 0.1],
      ['soil-temperature', -50, 50],
      ['relative-humidity', 0, 100, 15, 1],
      ['global-radiation', 0, 1600, 1000],
    ] as const
    for (const [of, min, max, maxChange, minChange] of limits) {
      const found = wmoLimits({ of })
      expect([found.min, found.max, found.maxChange, found.minChange]).toEqual([min, max, maxChange, minChange])
    }
    expectInputError(() => wmoLimits({ of: 'toString' as never }), 'of')
  })
})

describe('changes against the spread of the hours before', () => {
  const time = Array.from({ length: 120 }, (_, i) => i * 900)
  const calm = time.map((t) => 20 + 2 * Math.sin((2 * Math.PI * t) / 86400))
  const deviations = { count: 3, over: hours(25) }
  it('is the definition, by a direct count (independent oracle)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.double({ min: 0, max: 10, noNaN: true }), fc.constant(Number.NaN)), { maxLength: 60 }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        (value, count) => {
          // One reading in each twenty-fifth of the time: the spread is that of the last 26 readings.
          const times = value.map((_, i) => i * 600)
          const flags = rateOfChangeTest({ time: times, value, deviations: { count, over: seconds(25 * 600) } })
          value.forEach((x, i) => {
            const before = value.slice(Math.max(0, i - 26), i).filter((y) => !Number.isNaN(y))
            const mean = before.reduce((sum, y) => sum + y, 0) / before.length
            const spread = Math.sqrt(before.reduce((sum, y) => sum + (y - mean) ** 2, 0) / (before.length - 1))
            const change = Math.abs(x - (value[i - 1] ?? Number.NaN))
            if (Number.isNaN(x)) expect(flags[i]).toBe(9)
            else if (Number.isNaN(change) || before.length < 10) expect(flags[i]).toBe(2)
            else if (spread > 1e-9 && Math.abs(change - count * spread) > 1e-9)
              expect(flags[i]).toBe(change > count * spread ? 3 : 1)
          })
        },
      ),
    )
  })
  it('passes a daily course, finds a jump in it, and forgets what is older than the window', () => {
    const flags = rateOfChangeTest({ time, value: calm, deviations })
    expect([...flags.subarray(12)].every((flag) => flag === 1)).toBe(true)
    const jumped = calm.map((x, i) => (i === 100 ? x + 8 : x))
    expect(rateOfChangeTest({ time, value: jumped, deviations })[100]).toBe(3)
    const far = Array.from({ length: 20 }, (_, i) => i)
    expect(rateOfChangeTest({ time: far.map((i) => i * 1e6), value: far, deviations })).toEqual(
      new Uint8Array(20).fill(2),
    )
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => rateOfChangeTest({ time, value: calm, deviations: { count: 0, over: hours(25) } }), {
      quantity: 'standard deviations',
    })
    expectDomainError(() => rateOfChangeTest({ time, value: calm, deviations: { count: 3, over: seconds(0) } }), {
      argument: 'deviations.over',
    })
    expectInputError(() => rateOfChangeTest({ time, value: [1], deviations }), 'time')
  })
})
