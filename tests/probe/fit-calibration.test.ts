import fc from 'fast-check'
import {
  applyCalibration,
  type CalibrationForm,
  calibratedUncertainty,
  calibrateTwoPoint,
  fitCalibration,
  fraction,
  type ProbeReading,
  permittivity,
  rawReading,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const sample = (reading: number, theta: number, weight?: number) => ({
  reading: rawReading(reading) as ProbeReading,
  waterContent: waterContent(theta),
  ...(weight === undefined ? {} : { weight }),
})
const fitted = (x: number[], y: number[], form: CalibrationForm) =>
  fitCalibration({ samples: x.map((r, i) => sample(r, y[i]!)), form })

checkPublished('dielectric', 'calib.linear_fit', ({ x, y }) => {
  // Water contents end at 1, so the numbers of the NIST set go in by the thousand and come back so.
  const scale = Math.max(...y) > 1 ? 1000 : 1
  const { coefficients, statistics } = fitted(
    x,
    y.map((value: number) => value / scale),
    'line',
  )
  const [intercept = 0, slope = 0] = coefficients
  return {
    slope: scale * slope,
    intercept: scale * intercept,
    r2: statistics?.rSquared,
    rmse: scale * (statistics?.rmse ?? Number.NaN),
    see: scale * (statistics?.residualStandardDeviation ?? Number.NaN),
    se_slope: scale * (statistics?.standardErrors[1] ?? Number.NaN),
  }
})
checkPublished('dielectric', 'calib.sqrt_fit', ({ eps, theta }) => {
  const samples = eps.map((e: number, i: number) => ({
    reading: permittivity(e),
    waterContent: waterContent(theta[i]),
  }))
  const { coefficients, statistics } = fitCalibration({ samples, form: 'square-root' })
  const [b, a] = coefficients
  return { a, b, r2: statistics?.rSquared, rmse: statistics?.rmse, see: statistics?.residualStandardDeviation }
})
checkPublished('dielectric', 'calib.poly_fit', ({ x, y, order }) => {
  expect(order).toBe(2)
  const { coefficients, statistics } = fitted(x, y, 'quadratic')
  const [c0, c1, c2] = coefficients
  return { c0, c1, c2, rmse: statistics?.rmse, r2: statistics?.rSquared }
})

// Invented samples of an invented medium, in order and not on a line.
const X = [320, 410, 500, 655, 780, 1010]
const Y = [0.03, 0.1, 0.27, 0.49, 0.58, 0.86]

describe('a fitted calibration', () => {
  it('is judged by leaving each sample out, as if it were fitted again without it', () => {
    for (const form of ['line', 'square-root', 'quadratic', 'monotone-cubic'] as const) {
      const whole = fitted(X, Y, form)
      const squares = X.map((reading, i) => {
        const others = fitted(
          X.filter((_, k) => k !== i),
          Y.filter((_, k) => k !== i),
          form,
        )
        return (applyCalibration(others, rawReading(reading)).waterContent - Y[i]!) ** 2
      })
      const loo = Math.sqrt(squares.reduce((a, b) => a + b) / X.length)
      expect(Math.abs((whole.statistics?.leaveOneOutRmse ?? 0) / loo - 1), form).toBeLessThan(1e-9)
    }
  })
  it('counts a sample of weight 2 as the same sample twice', () => {
    const twice = fitCalibration({ samples: [...X, 500].map((r, i) => sample(r, Y[i] ?? 0.27)), form: 'quadratic' })
    const heavy = fitCalibration({
      samples: X.map((r, i) => sample(r, Y[i]!, i === 2 ? 2 : 1)),
      form: 'quadratic',
    })
    heavy.coefficients.forEach((c, k) => {
      expect(Math.abs(c - twice.coefficients[k]!)).toBeLessThan(1e-9 * Math.abs(c))
    })
  })
  it('does not depend on the unit of the weights or the order of the samples', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        fc.constantFrom('line', 'quadratic', 'cubic'),
        (w, form) => {
          const a = fitCalibration({ samples: X.map((r, i) => sample(r, Y[i]!)), form: form as 'line' })
          const b = fitCalibration({
            samples: X.map((r, i) => sample(r, Y[i]!, w)).reverse(),
            form: form as 'line',
          })
          expect(
            Math.abs((a.statistics?.residualStandardDeviation ?? 0) - (b.statistics?.residualStandardDeviation ?? 1)),
          ).toBeLessThan(1e-12)
          expect(Math.abs(a.coefficients[1]! / b.coefficients[1]! - 1)).toBeLessThan(1e-8)
        },
      ),
    )
  })
  it('finds a cubic again from points on it, with readings far from zero', () => {
    const curve = (r: number) => 0.1 + 1e-3 * (r - 20000) + 4e-7 * (r - 20000) ** 2 + 2e-10 * (r - 20000) ** 3
    const readings = [20000, 20100, 20200, 20350, 20500]
    const calibration = fitted(readings, readings.map(curve), 'cubic')
    expect(applyCalibration(calibration, rawReading(20420)).waterContent).toBeCloseTo(curve(20420), 8)
    expect(calibration.statistics?.rmse).toBeLessThan(1e-12)
  })
  it('rises or falls all the way between its samples, whatever the form', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 1e-3, max: 0.1, noNaN: true })),
      { minLength: 5, maxLength: 9 },
    )
    fc.assert(
      fc.property(
        steps,
        fc.boolean(),
        fc.constantFrom<CalibrationForm>('line', 'square-root', 'quadratic', 'cubic', 'monotone-cubic'),
        (list, falls, form) => {
          let [r, t] = [0, 0]
          const samples = list.map(([dr, dt]) => {
            r += dr
            t += dt
            return sample(falls ? 1000 - r : r, t)
          })
          let calibration: ReturnType<typeof fitCalibration>
          try {
            calibration = fitCalibration({ samples, form })
          } catch (error) {
            // Only the parabola and the cubic may turn between ordered samples, and then they are refused.
            expect(error).toMatchObject({ code: 'bad-input', argument: 'samples' })
            expect(['quadratic', 'cubic']).toContain(form)
            return
          }
          const { min: lowest, max: highest } = calibration.span
          let last = Number.NEGATIVE_INFINITY
          for (let i = 0; i <= 60; i++) {
            const at = Math.min(highest, lowest + ((highest - lowest) * i) / 60)
            const value = (falls ? -1 : 1) * applyCalibration(calibration, rawReading(at)).waterContent
            expect(value).toBeGreaterThanOrEqual(last - 1e-12)
            last = value
          }
        },
      ),
    )
  })
  it('passes through its samples as a monotone cubic, with the slopes of scipy.interpolate.PchipInterpolator', () => {
    const calibration = fitted(X, Y, 'monotone-cubic')
    X.forEach((r, i) => {
      expect(Math.abs(applyCalibration(calibration, rawReading(r)).waterContent - Y[i]!)).toBeLessThan(1e-15)
    })
    // scipy 1.17.1
    const places = [330, 380, 450, 600, 700, 900, 1000]
    const theirs = [
      0.03306812985825331, 0.06864197530864198, 0.16828334597556888, 0.4256056808357089, 0.5248501852196357,
      0.7072457885499525, 0.8447384101829879,
    ]
    places.forEach((r, i) => {
      expect(Math.abs(applyCalibration(calibration, rawReading(r)).waterContent - theirs[i]!)).toBeLessThan(1e-14)
    })
    expect(calibration.knots[0]?.slope).toBeCloseTo(0.00022222222222222226, 15)
    expect(calibration.knots.at(-1)?.slope).toBeCloseTo(0.0015396448254745869, 15)
  })
  it('takes the mean of samples with one reading and says what they scatter', () => {
    const calibration = fitted([300, 300, 600, 900], [0.04, 0.06, 0.4, 0.8], 'monotone-cubic')
    expect(calibration.knots[0]?.waterContent).toBeCloseTo(0.05, 15)
    expect(calibration.statistics?.residualStandardDeviation).toBeCloseTo(Math.sqrt(2) * 0.01, 12)
  })
  it('warns of an extrapolation, of what cannot be, and of a curve that has turned', () => {
    const calibration = fitted([4, 8, 15, 22, 30, 41, 52], [0.06, 0.15, 0.27, 0.37, 0.47, 0.58, 0.67], 'quadratic')
    expect(applyCalibration(calibration, rawReading(60)).findings).toMatchObject([{ code: 'outside-calibration' }])
    expect(applyCalibration(calibration, rawReading(90)).findings).toMatchObject([
      { code: 'beyond-turning-point', level: 'danger' },
    ])
    expect(applyCalibration(calibration, rawReading(0)).findings.map(({ code }) => code)).toContain('below-zero')
    const full = fitCalibration({
      samples: X.map((r, i) => sample(r, Y[i]!)),
      form: 'line',
      porosity: fraction(0.9),
    })
    expect(applyCalibration(full, rawReading(1100)).findings.map(({ code }) => code)).toContain('above-porosity')
  })
  it('names two samples that are out of order, and refuses samples that rise and fall', () => {
    const odd = fitted([...X, 1100], [...Y, 0.78], 'line')
    expect(odd.findings).toMatchObject([{ code: 'samples-out-of-order', level: 'caution' }])
    expect(fitted([...X, 1100], [...Y, 0.82], 'line').findings).toEqual([])
    expectInputError(() => fitted([1, 2, 3, 4, 5], [0.1, 0.4, 0.7, 0.4, 0.1], 'line'), 'samples')
    expectInputError(() => fitted([1, 2, 3, 4], [0.3, 0.3, 0.3, 0.3], 'line'), 'samples')
  })
  it('refuses too few samples, too few readings, a curve that turns, and disorder in a monotone cubic', () => {
    expectInputError(() => fitted([1, 2], [0.1, 0.2], 'line'), 'samples')
    expectInputError(() => fitted([1, 2, 3, 4], [0.1, 0.2, 0.3, 0.4], 'cubic'), 'samples')
    expectInputError(() => fitted([2, 2, 2, 2], [0.1, 0.2, 0.3, 0.4], 'line'), 'samples')
    expectInputError(() => fitted([1, 1, 2, 2, 2], [0.1, 0.11, 0.4, 0.41, 0.42], 'quadratic'), 'samples')
    expectInputError(() => fitted([1, 2, 3, 4, 5], [0.1, 0.5, 0.7, 0.72, 0.7], 'quadratic'), 'samples')
    expectInputError(() => fitted([1, 2, 3, 4, 5], [0.1, 0.2, 0.3, 0.29, 0.5], 'monotone-cubic'), 'samples')
    expectInputError(() => fitted(X, Y, 'exponential' as 'line'), 'form')
    expectInputError(
      () => fitCalibration({ samples: X.map((r, i) => sample(r, Y[i]!)), form: 'line', porosity: fraction(0.8) }),
      /samples\[5\]/,
    )
    expectDomainError(() => fitCalibration({ samples: X.map((r, i) => sample(r, Y[i]!, 0)), form: 'line' }), {
      quantity: 'weight of a sample',
    })
  })
})

describe('the uncertainty of a fitted calibration', () => {
  it('is that of the thermometer in GUM H.3', () => {
    // Table H.6 of JCGM 100:2008, as read in the documentation of MSLNZ/GTC: reading and observed correction, both in °C; the
    // corrections are shifted and scaled to fit between 0 and 1. Printed there: u(y1) 0.0029, u(y2) 0.00067, b(30 °C) = -0.1494 with u 0.0041.
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
    const samples = t.map((value, i) => sample(value - 20, 0.5 + b[i]!))
    const calibration = fitCalibration({ samples, form: 'line' })
    const [y1 = 0, y2 = 0] = calibration.coefficients
    expect(y1 - 0.5).toBeCloseTo(-0.1712, 4)
    expect(y2).toBeCloseTo(0.00218, 5)
    expect(calibration.statistics?.standardErrors[0]).toBeCloseTo(0.0029, 4)
    expect(calibration.statistics?.standardErrors[1]).toBeCloseTo(0.00067, 5)
    expect(calibration.statistics?.residualStandardDeviation).toBeCloseTo(Math.sqrt(0.000110096583109 / 9), 12)
    const at30 = calibratedUncertainty({ calibration, reading: rawReading(10) })
    expect(at30.waterContent - 0.5).toBeCloseTo(-0.1494, 4)
    expect(at30.fromCoefficients).toBeCloseTo(0.0041, 4)
    expect(at30.degreesOfFreedom).toBe(9)
  })
  it('adds the noise of the reading by the slope, and refuses a calibration that leaves nothing to judge', () => {
    const calibration = fitted(X, Y, 'square-root')
    const noisy = calibratedUncertainty({ calibration, reading: rawReading(600), standardDeviation: 4 })
    const slope = (r: number) => applyCalibration(calibration, rawReading(r)).waterContent
    expect(noisy.fromReading).toBeCloseTo((4 * (slope(600.01) - slope(599.99))) / 0.02, 8)
    expect(noisy.standardUncertainty ** 2).toBeCloseTo(
      noisy.fromCoefficients ** 2 + noisy.fromScatter ** 2 + noisy.fromReading ** 2,
      15,
    )
    const two = calibrateTwoPoint({ dry: sample(300, 0.1), saturated: sample(900, 0.8) })
    expectInputError(() => calibratedUncertainty({ calibration: two, reading: rawReading(500) }), 'calibration')
    expectInputError(
      () => calibratedUncertainty({ calibration: fitted(X, Y, 'monotone-cubic'), reading: rawReading(500) }),
      'calibration',
    )
    expectInputError(
      () => calibratedUncertainty({ calibration, reading: rawReading(0), standardDeviation: 1 }),
      'reading',
    )
  })
})
