import type { ProbeCalibration } from '../probe/calibration.js'
import { valueAt } from '../probe/calibration-curve.js'
import { requireObject } from '../quantity/guard.js'
import type { PanelSeries } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { PictureTitle, PictureWidth } from './terms.js'

/** A calibration and how its readings are called. */
export interface CalibrationChart extends PictureTitle, PictureWidth {
  /** What to draw, made by `fitCalibration`, `calibrateTwoPoint` or `restoreCalibration`. */
  readonly calibration: ProbeCalibration
  /** Title of the axis of readings with their unit, such as `reading, mV`. */
  readonly readingTitle: string
}

/** Share of the calibrated span that is shown on each side of it. */
const BEYOND = 0.12
const STEPS = 80

/**
 * A picture of a calibration, as SVG text: the samples with the curve above, what the curve misses below. The calibrated span is
 * shaded; beyond it the curve is dashed, because nothing was measured there.
 *
 * @procedure Draws the curve over the span of the samples and an eighth of it on both sides, and each sample's weighed less
 * calculated water content.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `InputError` when the samples have one reading only.
 * @source definition
 * @example
 * const samples = [
 *   [2.1, 0.04], [8.4, 0.2], [16.8, 0.36], [27, 0.5], [39.7, 0.64], [54.8, 0.8],
 * ].map(([e, theta]) => ({ reading: permittivity(e), waterContent: waterContent(theta) }))
 * const calibration = fitCalibration({ samples, form: 'square-root' })
 * const picture = chartCalibration({ title: 'Probe 7, invented', calibration, readingTitle: 'permittivity' })
 * picture.includes('root of the mean squared residual 0.0098 m³/m³') // => true
 */
export function chartCalibration(chart: CalibrationChart): string {
  requireObject(chart, 'chart')
  const { title, calibration, readingTitle, width = WIDTH } = chart
  requireObject(calibration, 'calibration')
  const { min, max } = calibration.span
  const curve = (reading: number) => valueAt(calibration, reading)
  const beyond = BEYOND * (max - min)
  // A root or a power of a negative reading does not exist.
  const from = calibration.exponent === 1 ? min - beyond : Math.max(0, min - beyond)
  const to = max + beyond
  const readings = calibration.samples.map(({ reading }) => reading as number)
  const residuals = calibration.samples.map((sample) => sample.waterContent - curve(sample.reading))
  const worst = residuals.reduce((worst, residual) => Math.max(worst, Math.abs(residual)), 0.005)
  const along = (a: number, b: number) => Array.from({ length: STEPS + 1 }, (_, i) => a + ((b - a) * i) / STEPS)
  const part = (name: string, x: readonly number[], look: number): PanelSeries => {
    return { name, x, y: x.map(curve), draw: 'line', look }
  }
  const { porosity } = calibration
  return drawPanels({
    title,
    alternative: inWords(calibration, residuals),
    xTitle: readingTitle,
    xRange: [from, to],
    spans: [{ name: 'calibrated', from: min, to: max }],
    panels: [
      {
        yTitle: 'water content, m³/m³',
        series: [
          {
            name: 'samples',
            x: readings,
            y: calibration.samples.map((sample) => sample.waterContent),
            draw: 'points',
            look: 3,
          },
          part('calibration', along(min, max), 0),
          // Both ends have one name; the missing value between them breaks the line.
          part('extrapolated', [...along(from, min), Number.NaN, ...along(max, to)], 1),
        ],
        ...(porosity === undefined ? {} : { rules: [{ name: 'porosity', y: porosity }] }),
        weight: 2.4,
      },
      {
        yTitle: 'residual, m³/m³',
        series: [{ name: 'weighed less calculated', x: readings, y: residuals, draw: 'points', look: 3 }],
        rules: [{ name: '', y: 0 }],
        yRange: [-worst, worst],
      },
    ],
    width,
    height: heightFor(width, 560),
  })
}

function inWords(calibration: ProbeCalibration, residuals: readonly number[]): string {
  const { span, statistics } = calibration
  const short = (value: number) => String(Number(value.toPrecision(5)))
  const left = statistics?.leaveOneOutRmse
  const quality =
    statistics === undefined
      ? 'two samples, which any curve meets'
      : `root of the mean squared residual ${statistics.rmse.toFixed(4)} m³/m³${left === undefined ? '' : `, ${left.toFixed(4)} when each sample is left out in turn`}`
  const worst = residuals.reduce((max, residual) => Math.max(max, Math.abs(residual)), 0)
  return `${calibration.samples.length} samples, ${calibration.method}: ${quality}; largest residual ${worst.toFixed(4)} m³/m³. Calibrated from a reading of ${short(span.min)} to ${short(span.max)}, from ${span.driest.toFixed(3)} to ${span.wettest.toFixed(3)} m³/m³.`
}
