import fc from 'fast-check'
import {
  findShots,
  fitDryDown,
  hours,
  litres,
  minutes,
  plateauAfterDrain,
  timeToRefill,
  waterContent,
  waterContentChange,
  waterUseOfDryDown,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('irrigation', 'drydown.linear', ({ t, theta, refill }) => {
  const line = fitDryDown({ time: t.map((h: number) => h * 3600), waterContent: theta })
  const reach = timeToRefill({ line, refillPoint: waterContent(refill) })
  return {
    slope_per_h: line.slopePerHour,
    r2: line.rSquared,
    hours_to_refill: reach.known ? reach.time / 3600 : Number.NaN,
  }
})

const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) }

/** A saw-tooth of known shots: each rises in two readings and dries until the next. */
function sawTooth(shots: readonly { after: number; rise: number }[]): {
  time: number[]
  waterContent: number[]
  peaks: number[]
} {
  const content = [0.5]
  const peaks: number[] = []
  for (const { after, rise } of shots) {
    for (let i = 0; i < after; i++) content.push((content.at(-1) as number) - 0.0005)
    const from = content.at(-1) as number
    content.push(from + rise / 2, from + rise)
    peaks.push(content.length - 1)
  }
  for (let i = 0; i < 12; i++) content.push((content.at(-1) as number) - 0.0005)
  return { time: content.map((_, i) => i * 300), waterContent: content, peaks }
}
const shotLists = fc.array(
  fc.record({ after: fc.integer({ min: 4, max: 30 }), rise: fc.double({ min: 0.012, max: 0.05, noNaN: true }) }),
  { maxLength: 15 },
)

describe('finding shots', () => {
  it('finds each of a known series, where it is and as large as it is', () => {
    fc.assert(
      fc.property(shotLists, (list) => {
        const { time, waterContent: content, peaks } = sawTooth(list)
        const found = findShots({ time, waterContent: content, ...limits })
        expect(found.map((shot) => shot.peakIndex)).toEqual(peaks)
        found.forEach((shot, i) => {
          expect(shot.rise).toBeCloseTo(list[i]?.rise as number, 12)
        })
      }),
    )
  })
  it('finds the same when the clock starts elsewhere and the level is another', () => {
    fc.assert(
      fc.property(
        shotLists,
        fc.integer({ min: 0, max: 2e9 }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        (list, shift, lift) => {
          const { time, waterContent: content } = sawTooth(list)
          const moved = findShots({
            time: time.map((t) => t + shift),
            waterContent: content.map((x) => x + lift),
            ...limits,
          })
          expect(moved.map((shot) => shot.peakIndex)).toEqual(
            findShots({ time, waterContent: content, ...limits }).map((shot) => shot.peakIndex),
          )
        },
      ),
    )
  })
  it('finds none in noise, in a slow rise, or in a fall', () => {
    const time = Array.from({ length: 200 }, (_, i) => i * 300)
    expect(findShots({ time, waterContent: time.map((_, i) => 0.5 + (i % 2 ? 0.004 : 0)), ...limits })).toEqual([])
    expect(findShots({ time, waterContent: time.map((_, i) => 0.5 + i * 0.0005), ...limits })).toEqual([])
    expect(findShots({ time, waterContent: time.map((_, i) => 0.5 - i * 0.001), ...limits })).toEqual([])
  })
  it('invents none across a gap, a missing stretch, or a clock that was set back', () => {
    expect(findShots({ time: [0, 300, 7500, 7800], waterContent: [0.5, 0.5, 0.56, 0.56], ...limits })).toEqual([])
    expect(
      findShots({ time: [0, 300, 600, 900, 1200], waterContent: [0.5, 0.5, Number.NaN, 0.56, 0.56], ...limits }),
    ).toEqual([])
    expect(findShots({ time: [0, 300, 0, 300], waterContent: [0.5, 0.5, 0.56, 0.56], ...limits })).toEqual([])
  })
  it('takes a single high reading for a spike, whatever its height, until a second one confirms it', () => {
    const time = [0, 300, 600, 900, 1200, 1500]
    expect(findShots({ time, waterContent: [0.54, 0.539, 0.612, 0.537, 0.536, 0.535], ...limits })).toEqual([])
    expect(findShots({ time, waterContent: [0.54, 0.539, 0.612, 0.6, 0.536, 0.535], ...limits })).toHaveLength(1)
    expect(findShots({ time: [0, 300], waterContent: [0.54, 0.612], ...limits })).toEqual([])
  })
  it('bridges a single missing reading where the step allows it', () => {
    expect(
      findShots({
        time: [0, 300, 600, 900, 1200],
        waterContent: [0.5, 0.5, Number.NaN, 0.56, 0.559],
        ...limits,
        maxStep: minutes(11),
      }),
    ).toHaveLength(1)
  })
  it('refuses lists of different lengths and a rise of zero', () => {
    expectInputError(() => findShots({ time: [0], waterContent: [], ...limits }), 'time')
    expectDomainError(() => findShots({ time: [], waterContent: [], ...limits, minRise: waterContentChange(0) }), {
      quantity: 'least rise of a shot',
    })
  })
})

describe('a dry-down', () => {
  it('has the slope that a line has, wherever the readings are', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.05, max: -0.0001, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 0, max: 86400 }), { minLength: 3, maxLength: 60 }),
        (slope, times) => {
          const line = fitDryDown({ time: times, waterContent: times.map((t) => 0.6 + (slope * t) / 3600) })
          expect(line.slopePerHour).toBeCloseTo(slope, 9)
          expect(line.slopeError).toBeLessThan(1e-6)
        },
      ),
    )
  })
  it('knows the standard error of its slope (independent: residuals about the line)', () => {
    const content = [0.6, 0.593, 0.583, 0.577, 0.567]
    const { slopePerHour, slopeError } = fitDryDown({ time: [0, 3600, 7200, 10800, 14400], waterContent: content })
    const rest = content.reduce(
      (sum, x, i) => sum + (x - (content.reduce((a, b) => a + b) / 5 + slopePerHour * (i - 2))) ** 2,
      0,
    )
    expect(slopeError).toBeCloseTo(Math.sqrt(rest / 3 / 10), 12)
  })
  it('says that it does not fall, rather than never', () => {
    const flat = fitDryDown({ time: [0, 3600, 7200], waterContent: [0.6, 0.6, 0.6] })
    expect(timeToRefill({ line: flat, refillPoint: waterContent(0.5) })).toMatchObject({ known: false })
    const noise = fitDryDown({ time: [0, 3600, 7200, 10800], waterContent: [0.6, 0.58, 0.61, 0.58] })
    expect(timeToRefill({ line: noise, refillPoint: waterContent(0.5) })).toMatchObject({
      known: false,
      reason: 'within-noise',
    })
    expect(timeToRefill({ line: noise, refillPoint: waterContent(0.7) })).toEqual({ known: true, time: 0 })
    const two = fitDryDown({ time: [0, 3600], waterContent: [0.6, 0.59] })
    expect(timeToRefill({ line: two, refillPoint: waterContent(0.5) })).toMatchObject({ known: false })
    expect(waterUseOfDryDown({ line: two, substrateVolume: litres(10) })).toMatchObject({ known: false })
  })
  it('refuses what has no slope', () => {
    expectInputError(() => fitDryDown({ time: [0], waterContent: [0.5] }), 'waterContent')
    expectInputError(() => fitDryDown({ time: [5, 5], waterContent: [0.5, 0.4] }), 'time')
    expectInputError(() => fitDryDown({ time: [5], waterContent: [0.5, 0.4] }), 'time')
  })
})

describe('the plateau after drain', () => {
  it('is the level to which known shots drain back', () => {
    const content: number[] = [0.55]
    for (let k = 0; k < 6; k++) {
      for (let i = 0; i < 9; i++) content.push((content.at(-1) as number) - 0.003)
      content.push(0.63, 0.62, 0.612, 0.61 + k * 1e-4, 0.609)
    }
    const series = { time: content.map((_, i) => i * 300), waterContent: content }
    const shots = findShots({ ...series, ...limits })
    expect(shots).toHaveLength(6)
    const plateau = plateauAfterDrain({ ...series, shots, drainTime: minutes(14) })
    expect(plateau).toMatchObject({ known: true, shots: 3 })
    // Shots that leave it below full settle lower: of 0.6100 to 0.6105 the upper half is 0.6103 to 0.6105.
    if (plateau.known) expect(plateau.level).toBeCloseTo(0.6104, 6)
  })
  it('is not known from fewer than three shots', () => {
    expect(plateauAfterDrain({ time: [0], waterContent: [0.5], shots: [], drainTime: hours(1) })).toMatchObject({
      known: false,
    })
  })
})
