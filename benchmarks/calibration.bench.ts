/** A calibrated series into a reused array: the bare curve by hand, and ours with checks, gaps and counts. */
import {
  applyCalibration,
  applyCalibrationToSeries,
  fitCalibration,
  type ProbeCalibration,
  rawReading,
  waterContent,
} from 'porewater'
import { compare, report } from './timing.js'

// Invented samples.
const samples = [
  [320, 0.03],
  [410, 0.1],
  [500, 0.27],
  [655, 0.49],
  [780, 0.58],
  [1010, 0.86],
].map(([reading = 0, theta = 0]) => ({ reading: rawReading(reading), waterContent: waterContent(theta) }))

/** What one would write by hand for a line, with neither checks nor counts. */
function lineLoop({ coefficients: [c0 = 0, c1 = 0] }: ProbeCalibration, readings: Float64Array, output: Float64Array) {
  for (let i = 0; i < readings.length; i++) output[i] = c0 + c1 * readings[i]!
  return output[readings.length - 1]!
}

export function run(quick: boolean): void {
  const rows = quick ? 100_000 : 1_000_000
  const readings = Float64Array.from({ length: rows }, (_, i) => 330 + (i % 670))
  const output = new Float64Array(rows)
  const line = fitCalibration({ samples, form: 'line' })
  const series = (calibration: ProbeCalibration) => () => {
    applyCalibrationToSeries({ calibration, readings, output })
    return output[rows - 1]!
  }
  report(
    `A line over ${rows} readings into a reused array`,
    compare([
      { name: 'bare line', run: () => lineLoop(line, readings, output) },
      { name: 'applyCalibrationToSeries', run: series(line) },
      {
        name: 'applyCalibration one by one',
        run: () => {
          for (let i = 0; i < rows; i++) output[i] = applyCalibration(line, rawReading(readings[i]!)).waterContent
          return output[rows - 1]!
        },
      },
    ]),
  )
  report(
    'The forms against each other',
    compare(
      (['line', 'square-root', 'cubic', 'monotone-cubic'] as const).map((form) => ({
        name: form,
        run: series(fitCalibration({ samples, form })),
      })),
    ),
  )
}
