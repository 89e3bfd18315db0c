import { InputError } from '../quantity/errors.js'
import { requireList } from '../quantity/guard.js'
import { seriesOf } from '../quantity/missing.js'
import type { PanelSeries } from './panel-chart.js'

/** A curve with a break wherever two readings are too far apart to be joined; `argument` is the name of the values. */
export function lineOf(
  name: string,
  time: ArrayLike<number>,
  value: ArrayLike<number>,
  argument: string,
  maxStep: number,
): PanelSeries {
  requireCurve(time, value, argument)
  const readings = seriesOf(value, argument)
  const x: number[] = []
  const y: number[] = []
  for (let i = 0; i < time.length; i++) {
    const now = time[i]!
    if (i > 0 && now - time[i - 1]! > maxStep) {
      x.push(now)
      y.push(Number.NaN)
    }
    x.push(now)
    y.push(readings[i]!)
  }
  return { name, x, y, draw: 'line' }
}

/** Refuses a curve that is no list, or has not one value for each time. */
export function requireCurve(time: ArrayLike<number>, value: ArrayLike<number>, argument: string): void {
  requireList(time, 'time')
  requireList(value, argument)
  if (value.length !== time.length)
    throw new InputError(
      argument,
      `has ${value.length} values for ${time.length} times`,
      'give one value for each time, NaN where it is missing',
    )
}
