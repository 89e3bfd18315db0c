import {
  applyCalibration,
  applyCalibrationToSeries,
  type CalibrationForm,
  calibratedUncertainty,
  calibrateTwoPoint,
  evaluateWaterContents,
  explainProbeFinding,
  fitCalibration,
  fraction,
  type ProbeCalibration,
  type ProbeReading,
  rawReading,
  restoreCalibration,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

const sample = (reading: number, theta: number, weight = 1) => ({
  reading: rawReading(reading) as ProbeReading,
  waterContent: waterContent(theta),
  weight,
})
const fitted = (x: number[], y: number[], form: CalibrationForm, weights?: number[]) =>
  fitCalibration({ samples: x.map((r, i) => sample(r, y[i]!, weights?.[i] ?? 1)), form })
const at = (calibration: ProbeCalibration, reading: number) => applyCalibration(calibration, rawReading(reading))
const codes = (calibration: ProbeCalibration, reading: number) =>
  at(calibration, reading).findings.map(({ code }) => code)
const messageOf = (call: () => unknown): string => {
  try {
    call()
  } catch (error) {
    return (error as Error).message
  }
  throw new Error('nothing was thrown')
}

/** A line whose numbers are exact in binary: 0 at a reading of 0, 1 at 1024; made from samples at 128 and 896. */
const exact = calibrateTwoPoint({ dry: sample(128, 0.125), saturated: sample(896, 0.875) })

describe('a curve beyond its samples', () => {
  it('takes the readings of its own samples, an empty and a full container without a word', () => {
    const whole = calibrateTwoPoint({ dry: sample(0, 0), saturated: sample(1024, 1) })
    for (const reading of [0, 512, 1024]) expect(at(whole, reading).findings).toEqual([])
    expect(codes(exact, 128)).toEqual([])
    expect(codes(exact, 896)).toEqual([])
    expect(codes(exact, 127)).toEqual(['outside-calibration'])
    expect(codes(exact, 897)).toEqual(['outside-calibration'])
  })
  it('says which way a water content cannot be', () => {
    const [, low] = at(exact, -10).findings
    const [, high] = at(exact, 1030).findings
    expect(low && explainProbeFinding(low)).toMatchObject({
      code: 'below-zero',
      message: expect.stringMatching(/below zero/),
    })
    expect(high && explainProbeFinding(high)).toMatchObject({
      code: 'above-porosity',
      message: expect.stringMatching(/more than the pores hold \(1\)/),
    })
  })
  it('knows the side on which a parabola turns, above zero and below', () => {
    // 0.1 + (x - 50)²/40000 and its mirror turn at 50 and at 250; the samples lie from 100 to 200.
    const x = [100, 125, 150, 175, 200]
    const rising = fitted(
      x,
      x.map((r) => 0.1 + (r - 50) ** 2 / 40000),
      'quadratic',
    )
    expect(codes(rising, 210)).toEqual(['outside-calibration'])
    expect(codes(rising, 60)).toEqual(['outside-calibration'])
    expect(codes(rising, 40)).toEqual(['beyond-turning-point'])
    const flattening = fitted(
      x,
      x.map((r) => 0.9 - (r - 250) ** 2 / 40000),
      'quadratic',
    )
    expect(codes(flattening, 90)).toEqual(['outside-calibration'])
    expect(codes(flattening, 240)).toEqual(['outside-calibration'])
    expect(codes(flattening, 260)).toEqual(['beyond-turning-point'])
  })
  it('goes on straight from the ends of a monotone cubic', () => {
    const x = [320, 410, 500, 655, 780, 1010]
    const calibration = fitted(x, [0.03, 0.1, 0.27, 0.49, 0.58, 0.86], 'monotone-cubic')
    const [first, last] = [calibration.knots[0], calibration.knots[5]]
    expect(at(calibration, 300).waterContent).toBeCloseTo(0.03 - 20 * (first?.slope ?? 0), 12)
    expect(at(calibration, 1050).waterContent).toBeCloseTo(0.86 + 40 * (last?.slope ?? 0), 12)
    expect(codes(calibration, 300)).toEqual(['outside-calibration'])
    expect(codes(calibration, 1050)).toEqual(['outside-calibration'])
  })
})

describe('a curve that turns between its samples', () => {
  it('is refused with the reading at which it turns: 4 by the parabola, 2.9 by the cubic', () => {
    const parabola = [1, 2, 3, 4, 5, 6]
    expect(
      messageOf(() =>
        fitted(
          parabola,
          parabola.map((r) => 0.7 - (r - 4) ** 2 / 20),
          'quadratic',
        ),
      ),
    ).toMatch(/turns at a reading of 4,/)
    const cubic = [1, 2, 3, 4, 5]
    expect(
      messageOf(() =>
        fitted(
          cubic,
          cubic.map((r) => 0.5 + ((r - 3) ** 3 - 0.03 * (r - 3)) / 20),
          'cubic',
        ),
      ),
    ).toMatch(/turns at a reading of 2\.9,/)
  })
  it('is not refused where it turns behind the last sample', () => {
    const x = [1, 2, 3, 4, 5, 6]
    const turnsAt = (vertex: number) => () =>
      fitted(
        x,
        x.map((r) => 0.7 - (r - vertex) ** 2 / 60),
        'quadratic',
      )
    expect(turnsAt(6.05)).not.toThrow()
    expect(turnsAt(5.95)).toThrow()
    expect(turnsAt(0.95)).not.toThrow()
    expect(turnsAt(1.05)).toThrow()
  })
})

describe('samples', () => {
  it('may come in any order', () => {
    for (const form of ['line', 'quadratic', 'cubic', 'monotone-cubic'] as const) {
      const sorted = fitted([1, 2, 3, 4, 5, 6], [0.1, 0.2, 0.32, 0.45, 0.6, 0.7], form)
      const mixed = fitted([4, 1, 6, 2, 5, 3], [0.45, 0.1, 0.7, 0.2, 0.6, 0.32], form)
      for (const reading of [1.5, 2.5, 5.5])
        expect(at(mixed, reading).waterContent).toBeCloseTo(at(sorted, reading).waterContent, 12)
      expect(mixed.span).toEqual({ min: 1, max: 6, driest: 0.1, wettest: 0.7 })
    }
  })
  it('with one reading count by their weights in a monotone cubic', () => {
    const calibration = fitted([1, 1, 2, 3], [0.1, 0.2, 0.4, 0.6], 'monotone-cubic', [3, 1, 1, 1])
    expect(calibration.knots[0]?.waterContent).toBeCloseTo(0.125, 12)
    expect(calibration.statistics).toMatchObject({ centre: 2, halfWidth: 1 })
  })
  it('are said to be out of order by the worst pair, wherever it is, for probes that fall as well', () => {
    const theta = [0.1, 0.3, 0.24, 0.2, 0.5, 0.44, 0.9]
    for (const readings of [
      [1, 2, 3, 4, 5, 6, 7],
      [700, 600, 500, 400, 300, 200, 100],
    ]) {
      const [finding] = fitted(readings, theta, 'line').findings
      expect(finding).toMatchObject({ code: 'samples-out-of-order', value: expect.closeTo(0.1, 12), samples: [1, 3] })
      // What goes back by no more than 0.05 is taken for scatter.
      const scattered = (least: number) =>
        fitted(readings, [0.1, 0.3, 0.3, least, 0.5, 0.6, 0.9], 'line').findings.map(({ code }) => code)
      expect(scattered(0.255)).not.toContain('samples-out-of-order')
      expect(scattered(0.245)).toContain('samples-out-of-order')
      expect(finding && explainProbeFinding(finding).message).toMatch(/^samples \[1\] and \[3\] are .* by 0\.100 m³/)
    }
  })
  it('of one reading may scatter without being out of order', () => {
    expect(fitted([1, 2, 2, 3], [0.1, 0.4, 0.3, 0.7], 'line').findings).toEqual([])
    expect(fitted([1, 2, 2, 3], [0.1, 0.3, 0.4, 0.7], 'line').findings).toEqual([])
  })
  it('that hold the same, or rise and fall by over half of their range, are refused for that reason', () => {
    expect(messageOf(() => fitted([1, 2, 3, 4], [0.3, 0.3, 0.3, 0.3], 'line'))).toMatch(/all hold the same water/)
    expect(messageOf(() => fitted([1, 2, 3, 4], [0.5, 0.6, 0.53, 0.58], 'line'))).toMatch(
      /rise and fall: 0\.6 m³\/m³ at a reading of 2, but 0\.53 m³\/m³ at 3/,
    )
  })
  it('that are too few, or have too few different readings, are refused with their number', () => {
    const message = (x: number[], form: CalibrationForm) =>
      messageOf(() =>
        fitted(
          x,
          x.map((_, i) => 0.1 + i / 100),
          form,
        ),
      )
    expect(message([1, 2], 'line')).toMatch(/there are 2, and this form needs at least 3/)
    expect(message([1, 2, 3, 4], 'cubic')).toMatch(/there are 4, and this form needs at least 5/)
    expect(message([1, 2], 'monotone-cubic')).toMatch(/there are 2, and this form needs at least 3/)
    expect(message([2, 2, 2], 'line')).toMatch(/only 1 different reading/)
    expect(message([1, 1, 2, 2], 'quadratic')).toMatch(/only 2 different reading/)
    expect(message([1, 2, 3, 3, 3], 'cubic')).toMatch(/only 3 different reading/)
    expect(message([1, 2, 2], 'monotone-cubic')).toMatch(/only 2 different reading/)
    // Different in the last bit only.
    expect(message([1, 1 + 2 ** -52, 2, 2], 'quadratic')).toMatch(/not different enough for 3 parameters/)
  })
  it('of which one decides its place alone leave nothing to judge it by, and that is said', () => {
    const alone = fitted([1, 1, 1, 2], [0.1, 0.11, 0.12, 0.8], 'line')
    expect(alone.findings).toMatchObject([{ code: 'one-sample-decides', level: 'caution', about: 'samples' }])
    expect(alone.statistics).not.toHaveProperty('leaveOneOutRmse')
    const three = fitted([1, 2, 3], [0.1, 0.3, 0.6], 'monotone-cubic')
    expect(three.findings).toMatchObject([{ code: 'one-sample-decides' }])
    expect(fitted([1, 2, 3, 4], [0.1, 0.3, 0.6, 0.7], 'monotone-cubic').findings).toEqual([])
  })
  it('in a monotone cubic that go back, or do not move, are refused by name', () => {
    const message = (y: number[]) => messageOf(() => fitted([1, 2, 3, 4], y, 'monotone-cubic'))
    expect(message([0.1, 0.4, 0.38, 0.6])).toMatch(
      /rises with the reading at first, but not from 0\.4 m³\/m³ at 2 to 0\.38/,
    )
    expect(message([0.6, 0.4, 0.41, 0.1])).toMatch(/falls with the reading at first, but not from 0\.4/)
    expect(message([0.1, 0.4, 0.4, 0.6])).toMatch(/not from 0\.4 m³\/m³ at 2 to 0\.4 m³\/m³ at 3/)
  })
  it('may fill the pores, and are kept with the porosity', () => {
    const pores = fraction(0.9) as never
    const two = calibrateTwoPoint({ dry: sample(300, 0.1), saturated: sample(900, 0.9), porosity: pores })
    expect(two).toMatchObject({ porosity: 0.9, samples: [{ reading: 300 }, { reading: 900, waterContent: 0.9 }] })
    expect(exact).not.toHaveProperty('porosity')
    const many = { samples: [sample(1, 0.1), sample(2, 0.5), sample(3, 0.9)], form: 'line' as const }
    expect(fitCalibration({ ...many, porosity: pores })).toMatchObject({ porosity: 0.9 })
    expect(fitCalibration(many)).not.toHaveProperty('porosity')
  })
  it('may be given with the exponent that their form has anyhow', () => {
    const two = { dry: sample(100, 0.1), saturated: sample(400, 0.7) }
    expect(calibrateTwoPoint({ ...two, form: 'square-root', exponent: 0.5 })).toMatchObject({ exponent: 0.5 })
    expect(calibrateTwoPoint({ ...two, form: 'line', exponent: 1 })).toMatchObject({ exponent: 1 })
    expectInputError(() => calibrateTwoPoint({ ...two, form: 'square-root', exponent: 1 }), 'exponent')
    expectInputError(() => calibrateTwoPoint({ ...two, form: 'line', exponent: 0.5 }), 'exponent')
    const power = { ...two, form: 'power', exponent: 0.5 } as const
    expect(at(calibrateTwoPoint(power), 225).waterContent).toBeCloseTo(0.4, 12)
    const line = fitCalibration({
      samples: [1, 4, 9].map((r, i) => sample(r, 0.2 * (i + 1))),
      form: 'power',
      exponent: 0.5,
    })
    expect(line.coefficients[1]).toBeCloseTo(0.2, 12)
    expect(line.method).toMatch(/power/)
  })
})

describe('a series with readings out of the ordinary', () => {
  const run = (calibration: ProbeCalibration, values: number[]) => {
    const output = new Float64Array(values.length)
    const counts = applyCalibrationToSeries({ calibration, readings: Float64Array.from(values), output })
    return { ...counts, output: [...output] }
  }
  it('counts what cannot be inside the span too, by the very ends of span and pores', () => {
    for (const form of ['line', 'square-root'] as const) {
      // The line runs below zero at the driest sample and above the pores at the wettest.
      const x = [100, 200, 300, 400, 500, 600]
      const y = [0.02, 0.02, 0.2, 0.5, 0.7, 0.7]
      const calibration = fitCalibration({
        samples: x.map((r, i) => sample(r, y[i]!)),
        form,
        porosity: fraction(0.71) as never,
      })
      expect(at(calibration, 100).waterContent).toBeLessThan(0)
      expect(at(calibration, 600).waterContent).toBeGreaterThan(0.71)
      expect(run(calibration, [100, 350, 600])).toMatchObject({
        belowSpan: 0,
        aboveSpan: 0,
        impossible: 2,
        converted: 3,
      })
      expect(run(calibration, [99, 601])).toMatchObject({ belowSpan: 1, aboveSpan: 1, impossible: 2 })
    }
    expect(run(exact, [0, 1024, 127, 897])).toMatchObject({ belowSpan: 2, aboveSpan: 2, impossible: 0 })
    expect(run(exact, [-1, 1025])).toMatchObject({ impossible: 2 })
  })
  it('counts refusals apart by reason, with the first row of each', () => {
    const root = fitted([1, 4, 9], [0.1, 0.2, 0.3], 'square-root')
    expect(run(root, [4, -1, Number.POSITIVE_INFINITY, -2, 0]).refusals).toMatchObject([
      { code: 'outside-domain', about: 'reading below its range', count: 2, first: 1 },
      { code: 'outside-domain', about: 'reading above its range', count: 1, first: 2 },
    ])
    const parabola = fitted([1, 2, 3, 4], [0.1, 0.2, 0.35, 0.6], 'quadratic')
    const huge = run(parabola, [1e200, 2, Number.POSITIVE_INFINITY, 1e210])
    expect(huge.refusals).toMatchObject([
      {
        code: 'not-finite',
        about: 'result',
        count: 2,
        first: 0,
        message: expect.stringMatching(/row 0 gave Infinity/),
      },
      { code: 'outside-domain', about: 'reading above its range', count: 1, first: 2 },
    ])
    expect(huge).toMatchObject({
      converted: 1,
      refused: 3,
      output: [Number.NaN, expect.closeTo(0.2, 1), Number.NaN, Number.NaN],
    })
  })
})

describe('a kept calibration that somebody changed', () => {
  const restored = (calibration: ProbeCalibration, change: object) => () =>
    restoreCalibration({ ...structuredClone(calibration), ...change })
  const x = [1, 2, 3, 4]
  const line = fitted(x, [0.1, 0.2, 0.35, 0.5], 'line')
  const cubic = fitted(x, [0.1, 0.2, 0.35, 0.5], 'monotone-cubic')
  const power = calibrateTwoPoint({ dry: sample(1, 0.1), saturated: sample(4, 0.7), form: 'power', exponent: 0.7 })
  it('is refused by the name of the part', () => {
    const statistics = structuredClone(line.statistics)
    expectInputError(restored(line, { form: 'spline' }), 'form')
    expectInputError(restored(power, { exponent: 0 }), 'exponent')
    expectInputError(restored(power, { exponent: -1 }), 'exponent')
    expectInputError(restored(line, { exponent: Number.POSITIVE_INFINITY }), 'exponent')
    for (const lost of [Number.NaN, Number.NEGATIVE_INFINITY])
      expectInputError(restored(line, { coefficients: [lost, 1] }), /^coefficients\[0\]$/)
    expectInputError(restored(cubic, { knots: cubic.knots.slice(0, 2) }), 'knots')
    expectInputError(restored(cubic, { knots: [cubic.knots[0], ...cubic.knots.slice(0, 3)] }), /knots\[1\].reading/)
    expectInputError(restored(line, { knots: cubic.knots }), 'knots')
    expectInputError(restored(line, { span: { ...line.span, max: line.span.min } }), 'span')
    for (const porosity of [0, 1, -0.5]) expectInputError(restored(line, { porosity }), 'porosity')
    expectInputError(restored(line, { findings: [{ level: 'note' }] }), /findings\[0\].code/)
    expectInputError(restored(line, { statistics: { ...statistics, covariance: [[1, 0]] } }), 'statistics.covariance')
    expect(messageOf(restored(line, { statistics: { ...statistics, covariance: [[1, 0]] } }))).toMatch(/has 1 rows/)
    expectInputError(
      restored(line, { statistics: { ...statistics, covariance: [[1, 0], [0]] } }),
      /^statistics\.covariance\[1\]$/,
    )
    expectInputError(
      restored(line, { statistics: { ...statistics, standardErrors: [1] } }),
      /^statistics\.standardErrors$/,
    )
    expectInputError(() => restoreCalibration('{'), 'calibration')
    expect(messageOf(() => restoreCalibration('{'))).toMatch(/is not JSON/)
  })
  it('comes back with what may be there: three knots, any power, findings, no leave-one-out', () => {
    const three = fitted([1, 2, 3], [0.1, 0.3, 0.6], 'monotone-cubic')
    const alone = fitted([1, 1, 1, 2], [0.1, 0.11, 0.12, 0.8], 'line')
    for (const kept of [three, alone, power, cubic]) expect(restoreCalibration(structuredClone(kept))).toEqual(kept)
    expect(alone.findings).toHaveLength(1)
  })
})

describe('uncertainty and agreement', () => {
  it('need no slope where the reading has no noise, and one degree of freedom is enough', () => {
    const root = fitted([1, 4, 9], [0.1, 0.21, 0.3], 'square-root')
    const uncertain = calibratedUncertainty({ calibration: root, reading: rawReading(0), standardDeviation: 0 })
    expect(uncertain).toMatchObject({ fromReading: 0, degreesOfFreedom: 1 })
    expect(uncertain.standardUncertainty).toBeGreaterThan(0)
  })
  it('have no correlation where one side does not vary, and no answer for one pair', () => {
    const agree = (observed: number[], predicted: number[]) =>
      evaluateWaterContents({ observed: observed.map(waterContent), predicted: predicted.map(waterContent) })
    expect(agree([0.25, 0.25], [0.125, 0.5]).rSquared).toBe(0)
    expect(agree([0.125, 0.5], [0.25, 0.25]).rSquared).toBe(0)
    expect(agree([0.125, 0.5], [0.25, 0.25])).toHaveProperty('efficiency')
    expectInputError(() => agree([0.25], [0.25]), 'observed, predicted')
  })
})
