import fc from 'fast-check'
import {
  applyCalibration,
  calibrateTwoPoint,
  fraction,
  type ProbeCalibration,
  permittivity,
  rawReading,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const calibrate = (r1: number, t1: number, r2: number, t2: number) =>
  calibrateTwoPoint({
    dry: { reading: rawReading(r1), waterContent: waterContent(t1) },
    saturated: { reading: rawReading(r2), waterContent: waterContent(t2) },
  })

checkPublished('dielectric', 'calib.two_point', ({ raw_dry, raw_sat, theta_dry, theta_sat, raw }) => {
  const calibration = calibrate(raw_dry, theta_dry, raw_sat, theta_sat)
  return {
    slope: calibration.coefficients[1],
    intercept: calibration.coefficients[0],
    theta: applyCalibration(calibration, rawReading(raw)).waterContent,
  }
})
checkPublished('irrigation', 'probe.two_point', ({ raw, raw_dry, raw_sat, theta_dry, theta_sat }) => ({
  theta: applyCalibration(calibrate(raw_dry, theta_dry, raw_sat, theta_sat), rawReading(raw)).waterContent,
}))

checkPublished('dielectric', 'calib.two_point.sqrt', ({ eps_dry, eps_sat, theta_dry, theta_sat, eps }) => {
  const calibration = calibrateTwoPoint({
    dry: { reading: permittivity(eps_dry), waterContent: waterContent(theta_dry) },
    saturated: { reading: permittivity(eps_sat), waterContent: waterContent(theta_sat) },
    form: 'square-root',
  })
  const [b, a] = calibration.coefficients
  return { a, b, theta: applyCalibration(calibration, permittivity(eps)).waterContent }
})
checkPublished('dielectric', 'calib.two_point.power', ({ raw_dry, raw_sat, porosity, alpha, raw }) => {
  const calibration = calibrateTwoPoint({
    dry: { reading: rawReading(raw_dry), waterContent: waterContent(0) },
    saturated: { reading: rawReading(raw_sat), waterContent: waterContent(porosity) },
    form: 'power',
    exponent: alpha,
  })
  return { theta: applyCalibration(calibration, rawReading(raw)).waterContent }
})

describe('a two-point calibration', () => {
  const points = fc
    .tuple(
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: 0, max: 0.5, noNaN: true }),
      fc.double({ min: 0.501, max: 1, noNaN: true }),
    )
    .filter(([a, b]) => Math.abs(a - b) > 1e-3)
  it('gives its samples back, whether the reading rises or falls with water', () => {
    fc.assert(
      fc.property(points, ([r1, r2, t1, t2]) => {
        const calibration = calibrate(r1, t1, r2, t2)
        const scale = 1e-12 * Math.max(1, Math.abs(((r1 + r2) * (t2 - t1)) / (r2 - r1)))
        expect(Math.abs(applyCalibration(calibration, rawReading(r1)).waterContent - t1)).toBeLessThan(scale)
        expect(Math.abs(applyCalibration(calibration, rawReading(r2)).waterContent - t2)).toBeLessThan(scale)
        expect(applyCalibration(calibration, rawReading((r1 + r2) / 2)).findings).toEqual([])
      }),
    )
  })
  it('survives JSON', () => {
    const calibration = calibrate(410, 0.03, 1012, 0.9)
    const restored = JSON.parse(JSON.stringify(calibration)) as ProbeCalibration
    expect(applyCalibration(restored, rawReading(782))).toEqual(applyCalibration(calibration, rawReading(782)))
  })
  it('keeps a value outside its span and warns', () => {
    const { waterContent: value, findings } = applyCalibration(calibrate(410, 0.03, 1012, 0.9), rawReading(300))
    expect(value).toBeLessThan(0)
    expect(findings).toMatchObject([
      { code: 'outside-calibration', level: 'caution', value: 300 },
      { code: 'below-zero', level: 'caution', value },
    ])
  })
  it('refuses equal readings, swapped samples, and more water than pores, with the remedy', () => {
    expectInputError(() => calibrate(500, 0.03, 500, 0.9), 'saturated.reading')
    expectInputError(() => calibrate(410, 0.9, 1012, 0.03), 'dry.waterContent')
    expectInputError(() => calibrate(410, 0.5, 1012, 0.5), 'dry.waterContent')
    const samples = {
      dry: { reading: rawReading(410), waterContent: waterContent(0.03) },
      saturated: { reading: rawReading(1012), waterContent: waterContent(0.97) },
    }
    expectInputError(() => calibrateTwoPoint({ ...samples, porosity: fraction(0.95) }), 'saturated.waterContent')
    const halves = { ...samples, dry: { reading: rawReading(-1), waterContent: waterContent(0) } }
    expectDomainError(() => calibrateTwoPoint({ ...halves, form: 'square-root' }), { quantity: 'reading', value: -1 })
    expectInputError(() => calibrateTwoPoint({ ...samples, form: 'power' }), 'exponent')
    expectInputError(() => calibrateTwoPoint({ ...samples, exponent: 2 }), 'exponent')
    expectInputError(() => calibrateTwoPoint({ ...samples, form: 'cubic' as 'line' }), 'form')
    expectDomainError(() => calibrate(Number.NaN, 0.03, 1012, 0.9), { quantity: 'raw reading' })
  })
})
