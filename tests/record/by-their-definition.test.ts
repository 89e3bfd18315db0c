import { estimateNoise, findDryDowns, findSettledLevels, findSteps, plateauAfterDrain } from 'porewater'
import { describe, expect, it } from 'vitest'
import { trendOf } from '../../src/record/compare/trend.js'
import { isStuck } from '../../src/record/quality/stuck-at-end.js'
import { stateReader } from '../../src/record/restore-state.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const call = <Result>(of: (input: never) => Result, input: object): Result => of(input as never)

/** A shot from one reading to a later one, 300 s apart. */
const shotOf = (startIndex: number, peakIndex: number, before: number, top: number) => ({
  startIndex,
  peakIndex,
  start: 300 * startIndex,
  peak: 300 * peakIndex,
  before,
  top,
  rise: top - before,
})
const every300 = (waterContent: readonly number[]) => ({ time: waterContent.map((_, i) => 300 * i), waterContent })

describe('a level behind a shot', () => {
  const settled = (waterContent: readonly number[], shots: readonly object[]) =>
    call(findSettledLevels, { ...every300(waterContent), shots, drainTime: 900, maxStep: 400 })
  it('is that of the first reading after the drain, or is not known for what came first', () => {
    const one = shotOf(0, 1, 0.5, 0.6)
    expect(settled([0.5, 0.6, 0.58, 0.56, 0.55, 0.54], [one])).toEqual([
      { known: true, level: 0.55, drainBack: expect.closeTo(0.05, 12), retained: expect.closeTo(0.05, 12) },
    ])
    expect(settled([0.5, 0.6, 0.58, 0.56], [one])).toEqual([{ known: false, reason: 'record-ends' }])
    const next = shotOf(2, 3, 0.58, 0.65)
    expect(settled([0.5, 0.6, 0.58, 0.65, 0.63], [one, next])).toEqual([
      { known: false, reason: 'next-shot' },
      { known: false, reason: 'record-ends' },
    ])
  })
  it('counts for the plateau from the drain to three times of it, and not beyond the next shot', () => {
    const plateau = (waterContent: readonly number[], shots: readonly object[]) =>
      call(plateauAfterDrain, { ...every300(waterContent), shots, drainTime: 600 })
    const away = Number.NaN
    // Read from 600 to 1,800 s behind the peak.
    const late = [0.5, 0.6, away, away, away, away, away, 0.55]
    expect(plateau(late, [shotOf(0, 1, 0.5, 0.6)])).toEqual({ known: false, reason: 'few-settled-shots', settled: 1 })
    const later = [...late.slice(0, 7), away, 0.55]
    expect(plateau(later, [shotOf(0, 1, 0.5, 0.6)])).toMatchObject({ settled: 0 })
    // The next shot begins at 300 s; what is read after it belongs to that one.
    const shots = [shotOf(0, 1, 0.5, 0.6), shotOf(2, 3, 0.58, 0.65)]
    expect(plateau([0.5, 0.6, 0.58, 0.65, 0.63, 0.57], shots)).toMatchObject({ settled: 1 })
  })
})

describe('a dry-down', () => {
  it('is made of readings, not of times at which one is missing', () => {
    const found = (waterContent: readonly number[]) =>
      call(findDryDowns, { ...every300(waterContent), shots: [], drainTime: 0, maxStep: 3600, minDuration: 600 })
    const away = Number.NaN
    expect(found([0.5, away, away, 0.49])).toEqual([])
    expect(found([0.5, away, 0.495, 0.49])).toMatchObject([{ first: 0, last: 3, start: 0, end: 900 }])
  })
})

describe('a step', () => {
  it('is no shot, up to the reading at its peak', () => {
    const waterContent = Array.from({ length: 12 }, (_, i) => (i < 5 ? 0.5 : 0.6) + 1e-4 * (i % 2))
    const found = (shots: readonly object[]) =>
      call(findSteps, { ...every300(waterContent), shots, minChange: 0.05, side: 3, maxStep: 400 })
    expect(found([])).toMatchObject([{ index: 5, change: expect.closeTo(0.1, 3) }])
    expect(found([shotOf(4, 5, 0.5, 0.6)])).toEqual([])
    expect(found([shotOf(1, 2, 0.5, 0.5)])).toMatchObject([{ index: 5 }])
  })
})

describe('an end of what a sensor reports', () => {
  it('is where it stands after a jump of more than a fifth of its range, until another value comes', () => {
    const range = { low: -10, high: 10 } as never
    expect(isStuck(false, 5.9, 10, range)).toBe(true)
    expect(isStuck(false, 6, 10, range)).toBe(false)
    expect(isStuck(false, -5.9, -10, range)).toBe(true)
    expect(isStuck(true, 10, 10, range)).toBe(true)
    expect(isStuck(false, 10, 10, range)).toBe(false)
    expect(isStuck(true, 10, 9.9, range)).toBe(false)
    // However far it jumps into the middle.
    expect([isStuck(false, -9, 9, range), isStuck(true, 10, 0, range)]).toEqual([false, false])
  })
})

describe('a trend', () => {
  it('is told by three points of different times, by least squares', () => {
    // Slope 1.5; residuals 1/6, -1/3, 1/6 over one degree of freedom, and Σ(t - 1)² = 2.
    const { slope, error } = trendOf([0, 1, 2], [0, 1, 3])
    expect(slope).toBeCloseTo(1.5, 12)
    expect(error).toBeCloseTo(Math.sqrt(1 / 6 / 2), 12)
    for (const none of [trendOf([0, 1], [0, 1]), trendOf([4, 4, 4], [0, 1, 3])])
      expect([none.slope, none.error]).toEqual([Number.NaN, Number.NaN])
  })
})

describe('noise', () => {
  it('knows how long readings stay the same, that run too in which the record ends', () => {
    const value = Array.from({ length: 40 }, (_, i) => (i < 30 ? 0.5 : 0.6))
    // Of two runs one in twenty is longer than none: what is told is the shorter.
    expect(call(estimateNoise, { value })).toMatchObject({ known: true, longRun: 10 })
    expect(call(estimateNoise, { value: value.map(() => 0.5) })).toMatchObject({ known: false, reason: 'constant' })
  })
})

describe('a kept state', () => {
  it.each([
    [5, "is '5'"],
    ['five', "is 'five'"],
    [null, 'is null'],
    [{ of: 5 }, 'is object'],
    [undefined, 'is undefined'],
  ])('with %o for one of its words is refused with what stands there', (mode, said) => {
    expect(() => stateReader({ mode }).word('mode', ['on', 'off'])).toThrow(`state.mode: ${said}, none of its words`)
    expect(() => stateReader({ mode }).number('mode', 6)).toThrow(`state.mode: ${said}`)
  })
})
