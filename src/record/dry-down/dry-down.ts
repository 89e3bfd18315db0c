import { InputError } from '../../quantity/errors.js'
import type { Duration, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { REFILL_POINT } from '../domains.js'
import type { RefillPoint, WaterContentSeries } from '../terms.js'

/** The course of a dry-down. */
export interface KnownLine {
  /** The line through the dry-down, made by `fitDryDown`. */
  readonly line: DryDownLine
}

/** Readings of one dry-down: one light regime, no shot, no drain, no break. */
export interface DryDownInput extends WaterContentSeries {}

/** A straight line through a dry-down. */
export interface DryDownLine {
  /** Change of water content in an hour; negative while it dries. Unit: m³/m³/h. */
  readonly slopePerHour: number
  /** Standard error of the slope; zero for two readings or a perfect line. Unit: m³/m³/h. */
  readonly slopeError: number
  /** Share of the variance that the line explains. Unit: 1. */
  readonly rSquared: number
  /** Readings that were used. Unit: 1. */
  readonly readings: number
  /** Water content on the line at the last reading. Unit: m³/m³. */
  readonly last: WaterContent
}

/**
 * The speed of a dry-down: least squares through readings of one light regime.
 *
 * @equation `\theta(t) = a + b\,t, \qquad b = \frac{\sum (t_i - \bar t)(\theta_i - \bar\theta)}{\sum (t_i - \bar t)^2}`
 * @returns Slope with its standard error, and what it explains.
 * @throws `InputError` for fewer than two readings, equal times, or lists of different lengths.
 * @validity Within one regime: day and night dry at different speeds, and drain after a shot is no use by plants.
 * @source definition: ordinary least squares
 * @example
 * const night = fitDryDown({ time: [0, 3600, 7200, 10800], waterContent: [0.6, 0.592, 0.584, 0.576] })
 * night.slopePerHour // => -0.008
 */
export function fitDryDown(input: DryDownInput): DryDownLine {
  requireObject(input, 'input')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const good: number[] = []
  for (let i = 0; i < waterContent.length; i++) if (!Number.isNaN(waterContent[i])) good.push(i)
  const n = good.length
  if (n < 2) throw new InputError('waterContent', `has ${n} readings`, 'give at least two')
  const meanTime = good.reduce((sum, i) => sum + time[i]! / n, 0)
  const mean = good.reduce((sum, i) => sum + waterContent[i]! / n, 0)
  let [tt, tx, xx] = [0, 0, 0]
  for (const i of good) {
    const t = (time[i]! - meanTime) / 3600
    const x = waterContent[i]! - mean
    tt += t * t
    tx += t * x
    xx += x * x
  }
  if (!(tt > 0)) throw new InputError('time', 'is the same for all readings', 'give readings of different times')
  const slope = tx / tt
  const rest = Math.max(0, xx - slope * tx)
  const last = good[n - 1]!
  return {
    slopePerHour: slope,
    slopeError: n > 2 ? Math.sqrt(rest / (n - 2) / tt) : 0,
    rSquared: xx > 0 ? 1 - rest / xx : 1,
    readings: n,
    last: (mean + (slope * (time[last]! - meanTime)) / 3600) as WaterContent,
  }
}

/** When a dry-down reaches a water content, or why it does not. */
export type TimeToRefill =
  | { readonly known: true; readonly time: Duration }
  | {
      readonly known: false
      readonly reason: 'not-falling' | 'few-readings' | 'within-noise' | 'levels-off-above' | 'may-level-off-above'
    }

/** A dry-down and the water content that it should not pass. */
export interface TimeToRefillInput extends KnownLine, RefillPoint {}

/**
 * Time from the last reading of a dry-down until it reaches the refill point, if it goes on as it went.
 *
 * A series that does not fall has no such time, and a slope that its noise could have made is not believed. It says nothing of how far
 * the forecast may be off: the error of the slope is that of the line through tonight, not that of the hours ahead, of which it covers a
 * few in a hundred. For a forecast with bands that hold use `forecastLevel`.
 *
 * @equation `t = \frac{\theta_{refill} - \theta_{last}}{b}`
 * @param input - Line, made by `fitDryDown`, and refill point.
 * @returns The time, zero where the refill point is passed already; or why there is none.
 * @validity As long as light and air stay what they were.
 * @source definition; a slope within two standard errors of zero is not believed: common practice, no source
 * @example
 * const line = fitDryDown({ time: [0, 3600, 7200, 10800], waterContent: [0.6, 0.592, 0.584, 0.576] })
 * timeToRefill({ line, refillPoint: waterContent(0.52) }) // => { known: true, time: 25200 }
 */
export function timeToRefill(input: TimeToRefillInput): TimeToRefill {
  requireObject(input, 'input')
  const { line, refillPoint } = input
  const refill = numberIn(refillPoint, REFILL_POINT, 'refillPoint')
  if (line.last <= refill) return { known: true, time: 0 as Duration }
  if (!(line.slopePerHour < 0)) return { known: false, reason: 'not-falling' }
  if (line.readings < 3) return { known: false, reason: 'few-readings' }
  if (-line.slopePerHour < 2 * line.slopeError) return { known: false, reason: 'within-noise' }
  return { known: true, time: (((refill - line.last) / line.slopePerHour) * 3600) as Duration }
}
