import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { requireObject } from '../quantity/guard.js'
import { asPoints } from '../quantity/in-words.js'
import { type DryDownLine, type TimeToRefill, timeToRefill } from '../record/dry-down/dry-down.js'
import { type ExponentialDryDown, timeToRefillExponential } from '../record/dry-down/exponential-dry-down.js'
import type { TimeBand } from '../record/forecast/forecast-time-to-level.js'
import type { RecordReason } from '../record/record-reason.js'
import { RECORD_REASON_WORDS } from '../record/record-words.js'
import { lineOf } from './line-of.js'
import type { PanelSeries } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { LocalClock, PictureTitle, PictureWidth, ReadingTimes } from './terms.js'
import { clock, gapsBetween, timeTicks } from './time-axis.js'

/** A dry-down with what was fitted to it. */
export interface DryDownChart extends LocalClock, PictureTitle, PictureWidth, ReadingTimes {
  /** Water content; NaN where a reading is missing. Unit: m³/m³. Range: any. */
  readonly waterContent: ArrayLike<number>
  /** What was fitted to these readings, made by `fitDryDown` or `fitExponentialDryDown`. */
  readonly fit: DryDownLine | ExponentialDryDown
  /** Water content at which to water again. Unit: m³/m³. Range: [0, 1]. */
  readonly refillPoint: WaterContent
  /** No line is drawn across gaps longer than this. Unit: s. Range: any. */
  readonly maxStep: number
  /** Times from the last reading between which the refill point should be reached, as `forecastTimeToLevel` gives them; shaded. */
  readonly band?: TimeBand
}

/** A forecast is drawn no further than this many times the length of the record: it is worth nothing there. */
const FURTHEST = 4
const STEPS = 60

/**
 * A picture of a dry-down, as SVG text: the readings, the line or curve fitted to them, and how it would go on until the refill point. What
 * it may be off is shaded only where a band is given that was measured to hold: the error of a slope is no error of a forecast.
 *
 * @procedure Draws the fit over the readings and goes on with it, dashed, until it reaches the refill point, but no further than four
 * times the length of the record.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `InputError` for fewer than two readings, or lists of different lengths; `DomainError` outside the ranges.
 * @validity As the fit: as long as light and air stay what they were.
 * @source definition
 * @example
 * const night = { time: [0, 3600, 7200, 10800], waterContent: [0.6, 0.592, 0.584, 0.576] }
 * const picture = chartDryDown({
 *   ...night, title: 'Night, invented', fit: fitDryDown(night), refillPoint: waterContent(0.52), hoursFromUtc: 0, maxStep: 5400,
 * })
 * picture.includes('reaches the refill point 7.0 h after the last reading, at 10:00') // => true
 */
export function chartDryDown(chart: DryDownChart): string {
  requireObject(chart, 'chart')
  const { time, waterContent, fit, refillPoint, width = WIDTH } = chart
  requireObject(fit, 'fit')
  if (chart.band !== undefined) requireObject(chart.band, 'band')
  const readings = lineOf('readings', time, waterContent, 'waterContent', chart.maxStep)
  const there = Array.from(time).filter((_, i) => Number.isFinite(waterContent[i]))
  const [from, last] = [there[0]!, there[there.length - 1]!]
  if (there.length < 2 || !(last > from))
    throw new InputError('time, waterContent', `have ${there.length} readings`, 'give at least two, at rising times')
  const course = courseOf(fit, from, last, refillPoint)
  const reach = course.refill.known ? course.refill.time : Infinity
  const max = Math.max(Number.isFinite(reach) ? reach : 0, chart.band?.latest ?? chart.band?.earliest ?? 0) || Infinity
  const horizon = last + Math.min(max * 1.15 + 0.05 * (last - from), FURTHEST * (last - from))
  const end = Math.min(last + reach, horizon)
  const known = course.at !== undefined
  const series: PanelSeries[] = [{ ...readings, draw: 'points', look: 0 }]
  if (course.at !== undefined) {
    if (chart.band !== undefined) series.unshift(wedge(course.at(last), refillPoint, last, horizon, chart.band))
    series.push({ name: 'fit', ...sample(course.at, from, last), draw: 'line', look: 4 })
    if (end > last) series.push({ name: 'forecast', ...sample(course.at, last, end), draw: 'line', look: 1 })
  }
  const right = known ? horizon : last
  const xTicks = timeTicks(from, right, chart.hoursFromUtc)
  const inside = course.refill.known && last + reach <= horizon
  const when = inside ? clockAt(last + reach, chart) : ''
  return drawPanels({
    title: chart.title,
    alternative: inWords(chart, there.length, course, inside ? `, at ${when}` : ''),
    xTitle: 'local time',
    xRange: [from, right],
    xTicks,
    gaps: gapsBetween(time, waterContent, chart.maxStep),
    marks: inside && known ? [{ name: `refill point at ${when}`, x: last + reach }] : [],
    panels: [{ yTitle: 'water content, m³/m³', series, rules: [{ name: 'refill point', y: refillPoint }] }],
    width,
    height: heightFor(width, 420),
  })
}

interface Course {
  /** Water content at an instant; missing where nothing could be fitted. */
  readonly at: ((instant: number) => number) | undefined
  readonly refill: TimeToRefill | { readonly known: false; readonly reason: RecordReason }
  readonly words: string
}

function courseOf(
  fit: DryDownLine | ExponentialDryDown,
  from: number,
  last: number,
  refillPoint: WaterContent,
): Course {
  if (!('known' in fit)) {
    const slope = fit.slopePerHour / 3600
    return {
      at: (instant) => fit.last + slope * (instant - last),
      refill: timeToRefill({ line: fit, refillPoint }),
      words: `The line changes by ${asPoints(fit.slopePerHour, 2)} an hour`,
    }
  }
  if (!fit.known) return { at: undefined, refill: fit, words: 'No curve' }
  const { first, asymptote, floor, timeConstant } = fit
  return {
    at: (instant) => asymptote + (first - asymptote) * Math.exp(-(instant - from) / timeConstant),
    refill: timeToRefillExponential({ from: fit.last, asymptote, floor, timeConstant, refillPoint }),
    words: `The curve nears ${asymptote.toFixed(3)} m³/m³ with a time constant of ${(timeConstant / 3600).toFixed(1)} h; nine of ten such courses stay above ${floor.toFixed(3)} m³/m³ until the next water`,
  }
}

function inWords(chart: DryDownChart, readings: number, { refill, words }: Course, when: string): string {
  const forecast = refill.known
    ? `it reaches the refill point ${(refill.time / 3600).toFixed(1)} h after the last reading${when}`
    : `there is no forecast: ${RECORD_REASON_WORDS[refill.reason][0]}`
  const first = Array.from(chart.waterContent).find(Number.isFinite) as number
  const last = Array.from(chart.waterContent).reverse().find(Number.isFinite) as number
  return `${readings} readings from ${first.toFixed(3)} to ${last.toFixed(3)} m³/m³; refill point ${chart.refillPoint.toFixed(3)} m³/m³. ${words}; ${forecast}.`
}

function clockAt(instant: number, { hoursFromUtc }: DryDownChart): string {
  return clock(instant + hoursFromUtc * 3600)
}

function sample(at: (instant: number) => number, from: number, to: number) {
  const x = Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS)
  return { x, y: x.map(at) }
}

/** From the last level to the refill point at the early and at the late end of a band, as far as the picture goes. */
function wedge(
  level: number,
  refill: number,
  last: number,
  horizon: number,
  { earliest, latest }: TimeBand,
): PanelSeries {
  const late = Math.min(horizon, last + (latest ?? Infinity))
  const early = Math.min(late, last + Math.max(1, earliest))
  const share = latest === undefined ? 0 : Math.min(1, (late - last) / latest)
  return {
    name: '',
    x: [last, early, late],
    y: [level, refill, level - share * (level - refill)],
    draw: 'region',
    look: 1,
  }
}
