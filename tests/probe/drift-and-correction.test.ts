import fc from 'fast-check'
import {
  applyCalibration,
  applyNoUseCorrection,
  calibrateTwoPoint,
  celsius,
  correctDrift,
  decisiemensPerMetre,
  fitNoUseCorrection,
  probeDrift,
  rawReading,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const pair = (before: number, now: number) => ({ before: rawReading(before), now: rawReading(now) })

describe('the drift of a probe', () => {
  const calibration = calibrateTwoPoint({
    dry: { reading: rawReading(410), waterContent: waterContent(0.03) },
    saturated: { reading: rawReading(1012), waterContent: waterContent(0.9) },
  })
  it('brings drifted readings back, whatever offset and gain', () => {
    const number = fc.double({ min: -500, max: 500, noNaN: true })
    fc.assert(
      fc.property(number, fc.double({ min: 0.8, max: 1.25, noNaN: true }), number, (offset, gain, reading) => {
        const now = (then: number) => offset + gain * then
        const drift = probeDrift({ first: pair(290, now(290)), second: pair(1190, now(1190)) })
        expect(correctDrift(drift, rawReading(now(reading)))).toBeCloseTo(reading, 8)
      }),
    )
  })
  it('says how much water the drift feigns', () => {
    const drift = probeDrift({ first: pair(290, 296), calibration })
    const feigned =
      applyCalibration(calibration, rawReading(706)).waterContent -
      applyCalibration(calibration, rawReading(700)).waterContent
    expect(drift.maxError).toBeCloseTo(feigned, 12)
    expect(drift.findings).toEqual([])
    expect(probeDrift({ first: pair(290, 310), calibration }).findings).toMatchObject([{ code: 'drifted' }])
    expect(probeDrift({ first: pair(290, 290), second: pair(1190, 1300) }).findings).toMatchObject([
      { code: 'gain-changed' },
    ])
  })
  it('judges a drift over the whole span of the calibration, and not beyond it', () => {
    // 0.87 of water content over 602 of reading; a gain of 1.05 that leaves 300 alone feigns most at the wet end, 1012.
    const drift = probeDrift({ first: pair(300, 300), second: pair(1300, 1350), calibration })
    expect(drift.maxError).toBeCloseTo((0.05 * (1012 - 300) * 0.87) / 602, 12)
  })
  it('refuses references that are the same or have changed places', () => {
    expectInputError(() => probeDrift({ first: pair(290, 290), second: pair(290, 300) }), 'second.before')
    expectInputError(() => probeDrift({ first: pair(290, 1190), second: pair(1190, 290) }), 'second.now')
    expectDomainError(() => probeDrift({ first: pair(290, 290), tolerance: 0 as never }), { quantity: 'tolerance' })
  })
})

describe('the correction from a period without use', () => {
  // An invented record of four days at ten minutes: a daily wave, salt that comes and goes on another rhythm, a slow loss and noise.
  const n = 576
  const { normal } = randomNumbers(11)
  const hours = Float64Array.from({ length: n }, (_, i) => i / 6)
  const temperatures = hours.map((t) => 22 + 4 * Math.sin((2 * Math.PI * t) / 24))
  const bulkECs = hours.map((t) => 1.2 + 0.3 * Math.cos((2 * Math.PI * t) / 31))
  const noise = hours.map(() => 0.002 * normal())
  const waterContents = hours.map(
    (t, i) => 0.6 + 0.0015 * (temperatures[i]! - 25) + 0.04 * (bulkECs[i]! - 1.2) - 1e-4 * t + noise[i]!,
  )
  it('finds the slopes within their standard errors', () => {
    const found = fitNoUseCorrection({ waterContents, temperatures, bulkECs, hours })
    const off = (slope: { slope: number; standardError: number } | undefined, truth: number) =>
      Math.abs((slope?.slope ?? Number.NaN) - truth) / (slope?.standardError ?? 1)
    expect(off(found.temperature, 0.0015)).toBeLessThan(3.5)
    expect(off(found.bulkEC, 0.04)).toBeLessThan(3.5)
    expect(off(found.hours, -1e-4)).toBeLessThan(3.5)
    expect(Math.abs(found.residualStandardDeviation / 0.002 - 1)).toBeLessThan(0.12)
    expect(Math.abs(found.serialCorrelation)).toBeLessThan(0.15)
    expect(found.findings).toEqual([])
  })
  it('takes the wave out of the water content', () => {
    const correction = fitNoUseCorrection({ waterContents, temperatures, bulkECs, hours })
    const corrected = Array.from(
      waterContents,
      (theta, i) =>
        applyNoUseCorrection({
          correction,
          waterContent: theta as never,
          temperature: celsius(temperatures[i]!),
          bulkEC: decisiemensPerMetre(bulkECs[i]!),
        }).waterContent +
        1e-4 * hours[i]!,
    )
    const spread = Math.max(...corrected) - Math.min(...corrected)
    expect(spread).toBeLessThan(0.002 * 8)
    expect(Math.max(...waterContents) - Math.min(...waterContents)).toBeGreaterThan(0.03)
  })
  it('leaves rows with gaps out and counts them, and widens errors of readings that follow each other', () => {
    const gaps = waterContents.slice()
    gaps[5] = Number.NaN
    const holes = temperatures.slice()
    holes[9] = Number.NaN
    expect(fitNoUseCorrection({ waterContents: gaps, temperatures: holes, hours })).toMatchObject({
      rows: n - 2,
      missing: 2,
    })
    // Without the salt its slow wave stays in the residuals.
    const blind = fitNoUseCorrection({ waterContents, temperatures, hours })
    expect(blind.serialCorrelation).toBeGreaterThan(0.8)
    const plain = blind.residualStandardDeviation / Math.sqrt(n * 8)
    expect(blind.temperature.standardError).toBeGreaterThan(2.5 * plain)
  })
  it('says when a slope is not proven, and when a reading lies outside the record', () => {
    const flat = fitNoUseCorrection({ waterContents: noise.map((e) => 0.6 + e), temperatures })
    expect(flat.findings).toMatchObject([{ code: 'slope-not-proven', about: 'temperatures' }])
    const correction = fitNoUseCorrection({ waterContents, temperatures })
    expect(
      applyNoUseCorrection({ correction, waterContent: waterContent(0.5), temperature: celsius(35) }).findings,
    ).toMatchObject([{ code: 'outside-no-use-record', about: 'temperature' }])
  })
  it('takes 24 rows, salt that spreads over 0.2 dS/m and causes that share nine tenths of their spread', () => {
    const first = (list: Float64Array, rows: number) => list.subarray(0, rows)
    const ofRows = (rows: number) =>
      fitNoUseCorrection({ waterContents: first(waterContents, rows), temperatures: first(temperatures, rows) })
    // In four hours these temperatures rise by more than the 3 K that are wanted.
    expect(ofRows(24).rows).toBe(24)
    expectInputError(() => ofRows(23), 'waterContents')
    // Their salt spreads over 0.6 dS/m.
    const salt = (share: number) => bulkECs.map((ec) => 1.2 + share * (ec - 1.2))
    const salty = (list: Float64Array) => fitNoUseCorrection({ waterContents, temperatures, bulkECs: list })
    expect(salty(salt(0.25 / 0.6)).bulkEC?.slope).toBeGreaterThan(0.08)
    expectInputError(() => salty(salt(0.19 / 0.6)), 'bulkECs')
    // A wave of the day, and part of another that has nothing in common with it over four days: r² = 1 / (1 + part²).
    const both = (part: number) =>
      hours.map((t) => 1.2 + Math.sin((2 * Math.PI * t) / 24) + part * Math.sin((2 * Math.PI * t) / 12))
    expect(salty(both(Math.sqrt(1 / 0.88 - 1))).bulkEC?.slope).toBeDefined()
    expectInputError(() => salty(both(Math.sqrt(1 / 0.92 - 1))), 'temperatures, bulkECs')
  })
  it('widens errors by no more than readings of which each says 0.99 of the next', () => {
    // A wave of four days has nothing in common with that of each day, and hardly moves from one reading to the next.
    const slow = hours.map((t) => 0.6 + 0.01 * Math.cos((2 * Math.PI * t) / 96))
    const { temperature, serialCorrelation, residualStandardDeviation } = fitNoUseCorrection({
      waterContents: slow,
      temperatures,
    })
    expect(serialCorrelation).toBe(0.99)
    const plain = residualStandardDeviation / Math.sqrt(n * 8)
    expect(temperature.standardError / plain).toBeCloseTo(Math.sqrt(1.99 / 0.01), 6)
  })
  it('refuses a record that cannot tell', () => {
    const few = (list: Float64Array) => list.subarray(0, 20)
    expectInputError(
      () => fitNoUseCorrection({ waterContents: few(waterContents), temperatures: few(temperatures) }),
      'waterContents',
    )
    expectInputError(() => fitNoUseCorrection({ waterContents, temperatures: few(temperatures) }), 'temperatures')
    expectInputError(
      () => fitNoUseCorrection({ waterContents, temperatures: temperatures.map((t) => 20 + t / 10) }),
      'temperatures',
    )
    const following = temperatures.map((t) => 1 + 0.05 * (t - 22))
    expectInputError(
      () => fitNoUseCorrection({ waterContents, temperatures, bulkECs: following }),
      'temperatures, bulkECs',
    )
    const mixed = temperatures.map((t, i) => 1 + 0.02 * (t - 22) + 0.01 * hours[i]!)
    expectInputError(() => fitNoUseCorrection({ waterContents, temperatures, bulkECs: mixed, hours }), 'bulkECs, hours')
    const correction = fitNoUseCorrection({ waterContents, temperatures, bulkECs })
    expectInputError(
      () => applyNoUseCorrection({ correction, waterContent: waterContent(0.5), temperature: celsius(20) }),
      'bulkEC',
    )
  })
})
