import { findShots, fitExponentialDryDown, waterUseOfNextDay } from 'porewater/record'
import { describe, expect, it } from 'vitest'
import { newDailyUseState } from '../../src/record/forecast/daily-use-state.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const hours = Array.from({ length: 60 }, (_, i) => i * 3600)

describe('an exponential dry-down', () => {
  const fitted = (waterContent: readonly number[]) => fitExponentialDryDown({ time: hours, waterContent } as never)
  /** Noise of a thousandth that goes up and down by turns, without a trend. */
  const noise = (i: number) => 1e-3 * [1, -1, -0.5, 0.5][i % 4]!
  it('has no bend where a straight line does as well, with noise or without', () => {
    expect(fitted(hours.map((_, i) => 0.6 - 0.002 * i + noise(i)))).toEqual({ known: false, reason: 'no-bend' })
    expect(fitted(hours.map((_, i) => 0.6 - 0.002 * i))).toEqual({ known: false, reason: 'no-bend' })
  })
  it('has one where the line is off by more than noise', () => {
    expect(fitted(hours.map((_, i) => 0.3 + 0.3 * Math.exp(-i / 20) + noise(i)))).toMatchObject({ known: true })
  })
})

describe('a shot', () => {
  const found = (time: readonly number[], maxRiseTime: number) =>
    findShots({ time, waterContent: [0.3, 0.4, 0.4], minRise: 0.02, maxRiseTime, maxStep: 3600 } as never).map(
      ({ start, peak }) => [start, peak],
    )
  it('may take as long as it is told, and no longer', () => {
    expect(found([0, 600, 900], 600)).toEqual([[0, 600]])
    expect(found([0, 601, 900], 600)).toEqual([])
  })
})

describe('radiation that is missing', () => {
  it('is not known, as null or as NaN, and no other number is', () => {
    const state = { ...newDailyUseState(), days: 3 }
    for (const expectedRadiation of [null, Number.NaN, undefined])
      expect(waterUseOfNextDay({ state, expectedRadiation } as never)).toEqual({ known: false, reason: 'few-days' })
    expect(() => waterUseOfNextDay({ state, expectedRadiation: -1 } as never)).toThrow('expectedRadiation')
  })
})
