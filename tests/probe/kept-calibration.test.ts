import {
  applyCalibration,
  applyCalibrationToSeries,
  calibrateTwoPoint,
  evaluateWaterContents,
  fitCalibration,
  fraction,
  type ProbeCalibration,
  permittivity,
  rawReading,
  restoreCalibration,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('dielectric', 'calib.evaluate', ({ observed, predicted }) => {
  const found = evaluateWaterContents({ observed: observed.map(waterContent), predicted: predicted.map(waterContent) })
  return { ...found, ubrmse: found.unbiasedRmse, mae: found.meanAbsoluteError, r2: found.rSquared }
})

const samples = [
  [2.1, 0.04],
  [8.4, 0.2],
  [16.8, 0.36],
  [27, 0.5],
  [39.7, 0.64],
  [54.8, 0.8],
].map(([e = 1, theta = 0]) => ({ reading: permittivity(e), waterContent: waterContent(theta) }))
const [dry, , , , , saturated] = samples as [never, never, never, never, never, never]
const all: ProbeCalibration[] = [
  calibrateTwoPoint({ dry, saturated, porosity: fraction(0.9) }),
  calibrateTwoPoint({ dry, saturated, form: 'power', exponent: 0.7 }),
  ...(['line', 'square-root', 'quadratic', 'cubic', 'monotone-cubic'] as const).map((form) =>
    fitCalibration({ samples, form }),
  ),
]

describe('a kept calibration', () => {
  it.each(all.map((calibration) => [calibration.method, calibration] as const))(
    'comes back whole: %s',
    (_, calibration) => {
      expect(restoreCalibration(JSON.stringify(calibration))).toEqual(calibration)
      expect(restoreCalibration(JSON.parse(JSON.stringify(calibration)))).toEqual(calibration)
    },
  )
  it.each(all.map((calibration) => [calibration.method, calibration] as const))(
    'is refused when any part of it is lost or not a number: %s',
    (_, calibration) => {
      const optional = new Set([
        'porosity',
        'statistics',
        'leaveOneOutRmse',
        'about',
        'value',
        'unit',
        'source',
        'code',
        'level',
      ])
      const visit = (node: unknown, path: string[]): void => {
        if (typeof node !== 'object' || node === null) return
        for (const key of Object.keys(node)) {
          const broken = structuredClone(calibration) as unknown as Record<string, unknown>
          let place: Record<string, unknown> = broken
          for (const step of path) place = place[step] as Record<string, unknown>
          place[key] = null
          expect(() => restoreCalibration(broken), [...path, key].join('.')).toThrow(
            expect.objectContaining({ code: 'bad-input' }),
          )
          if (!Array.isArray(place) && !optional.has(key)) {
            delete place[key]
            expect(() => restoreCalibration(broken), `without ${[...path, key].join('.')}`).toThrow(
              expect.objectContaining({ code: 'bad-input' }),
            )
          }
          visit((node as Record<string, unknown>)[key], [...path, key])
        }
      }
      visit(calibration, [])
    },
  )
  it('is refused when its version is unknown or its parts contradict each other', () => {
    const [calibration] = all as [ProbeCalibration]
    expectInputError(() => restoreCalibration({ ...calibration, version: 2 }), 'version')
    expectInputError(() => restoreCalibration('not json'), 'calibration')
    expectInputError(() => restoreCalibration([]), 'calibration')
    expectInputError(() => restoreCalibration({ ...calibration, exponent: 2 }), 'exponent')
    expectInputError(() => restoreCalibration({ ...calibration, coefficients: [1] }), 'coefficients')
    expectInputError(() => restoreCalibration({ ...calibration, porosity: 1.2 }), 'porosity')
    const cubic = all.at(-1) as ProbeCalibration
    expectInputError(() => restoreCalibration({ ...cubic, knots: [...cubic.knots].reverse() }), /knots/)
    expectInputError(() => restoreCalibration({ ...cubic, span: { ...cubic.span, min: 99 } }), 'span')
  })
})

describe('a series of readings', () => {
  it.each(all.map((calibration) => [calibration.method, calibration] as const))(
    'gives what the readings give one by one, and counts the rest: %s',
    (_, calibration) => {
      const readings = Float64Array.of(5, Number.NaN, 30, 1, 60, 54.8, 2.1)
      const output = new Float64Array(7)
      const counts = applyCalibrationToSeries({ calibration, readings, output })
      readings.forEach((reading, i) => {
        if (Number.isNaN(reading)) expect(output[i]).toBeNaN()
        else expect(output[i]).toBe(applyCalibration(calibration, rawReading(reading)).waterContent)
      })
      const impossible = output.filter((theta) => theta < 0 || theta > (calibration.porosity ?? 1)).length
      expect(counts).toMatchObject({
        rows: 7,
        converted: 6,
        missing: 1,
        refused: 0,
        belowSpan: 1,
        aboveSpan: 1,
        impossible,
      })
      applyCalibrationToSeries({ calibration, readings, output: readings })
      expect(readings).toEqual(output)
    },
  )
  it('marks and counts readings that a root cannot take, and refuses a short output', () => {
    const calibration = fitCalibration({ samples, form: 'square-root' })
    const output = new Float64Array(3)
    const counts = applyCalibrationToSeries({ calibration, readings: Float64Array.of(9, -1, -2), output })
    expect(counts).toMatchObject({
      converted: 1,
      refused: 2,
      belowSpan: 0,
      refusals: [{ code: 'outside-domain', count: 2, first: 1 }],
    })
    expect(output[1]).toBeNaN()
    expectInputError(
      () => applyCalibrationToSeries({ calibration, readings: new Float64Array(3), output: new Float64Array(2) }),
      'output',
    )
  })
})

describe('the agreement of water contents', () => {
  it('says nothing it cannot know', () => {
    const flat = [0.3, 0.3].map(waterContent)
    expect(evaluateWaterContents({ observed: flat, predicted: [0.2, 0.5].map(waterContent) })).not.toHaveProperty(
      'efficiency',
    )
    expectInputError(() => evaluateWaterContents({ observed: flat, predicted: [waterContent(0.2)] }), /observed/)
    expectDomainError(
      () => evaluateWaterContents({ observed: flat, predicted: [Number.NaN, 0.1].map((v) => v as never) }),
      {},
    )
  })
})
