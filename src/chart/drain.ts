import { InputError } from '../quantity/errors.js'
import { maxOf } from '../quantity/extremes.js'
import type { DrainEC, DrainFraction } from '../quantity/generated/kinds.js'
import { requireList, requireObject } from '../quantity/guard.js'
import { asPercent } from '../quantity/in-words.js'
import { lineOf } from './line-of.js'
import type { PanelSeries } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { LocalClock, PictureTitle, PictureWidth } from './terms.js'
import { timeTicks } from './time-axis.js'

/** Drain and salt over days. */
export interface DrainChart extends LocalClock, PictureTitle, PictureWidth {
  /** Middle of each day, seconds since 1970 in universal time, rising. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Share of the water that drained; NaN where it is missing. Unit: 1. Range: any. */
  readonly drainFraction: ArrayLike<number>
  /** EC of the feed; NaN where it is missing. Unit: dS/m. Range: any. */
  readonly feedEC: ArrayLike<number>
  /** EC of the drain; NaN where it is missing. Unit: dS/m. Range: any. */
  readonly drainEC: ArrayLike<number>
  /** Share that should drain. Unit: 1. Range: any. */
  readonly wantedFraction?: DrainFraction
  /** EC of the drain at which to act. Unit: dS/m. Range: any. */
  readonly maxDrainEC?: DrainEC
}

const DAY = 86400

/**
 * A picture of drain and salt over days, as SVG text: the share of the water that drained above, the EC of feed and drain below.
 *
 * @procedure Draws a bar a day for the drain fraction and a point a day for each EC, joined where no day is missing.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `DomainError` outside the ranges, `InputError` without a day, or when a list has another length than the days.
 * @source definition
 * @example
 * const picture = chartDrain({
 *   title: 'Bench 3, invented', time: [43200, 129600, 216000], drainFraction: [0.21, 0.18, 0.26],
 *   feedEC: [2.2, 2.2, 2.1], drainEC: [3.1, 3.4, 3.3], wantedFraction: percent(25), hoursFromUtc: 0,
 * })
 * picture.includes('on average 21.7 % drained') // => true
 */
export function chartDrain(chart: DrainChart): string {
  requireObject(chart, 'chart')
  const { time } = chart
  requireList(time, 'time')
  for (const name of ['feedEC', 'drainEC'] as const) requireList(chart[name], name)
  if (time.length === 0) throw new InputError('time', 'there is no day', 'give at least one')
  const from = time[0]! - DAY / 2
  const to = time[time.length - 1]! + DAY / 2
  const share = lineOf('drain', time, chart.drainFraction, 'drainFraction', Infinity)
  const curve = (name: string, column: 'drainEC' | 'feedEC', look: number): PanelSeries[] => {
    const series = { ...lineOf(name, time, chart[column], column, 1.5 * DAY), look }
    return [series, { ...series, name: '', draw: 'points' }]
  }
  const { wantedFraction, maxDrainEC, width = WIDTH } = chart
  return drawPanels({
    title: chart.title,
    alternative: inWords(chart),
    xTitle: 'local date',
    xRange: [from, to],
    xTicks: dayTicks(from, to, chart.hoursFromUtc),
    panels: [
      {
        yTitle: 'drain, % of water given',
        series: [
          { ...share, y: Array.from(share.y, (value) => value * 100), draw: 'bars', barWidth: 0.6 * DAY, look: 0 },
        ],
        ...(wantedFraction === undefined ? {} : { rules: [{ name: 'wanted', y: wantedFraction * 100 }] }),
      },
      {
        yTitle: 'EC, dS/m',
        series: [...curve('drain', 'drainEC', 1), ...curve('feed', 'feedEC', 2)],
        ...(maxDrainEC === undefined ? {} : { rules: [{ name: 'act on the drain', y: maxDrainEC }] }),
        yRange: [0, 1],
        weight: 1.3,
      },
    ],
    width,
    height: heightFor(width, 480),
  })
}

/** The name of a day stands under its middle, not at the midnight where it begins. */
function dayTicks(from: number, to: number, hoursFromUtc: number): { x: number; text: string }[] {
  const days = (to - from) / DAY
  const shift = days > 9 ? 0 : DAY / 2
  return timeTicks(from, Math.max(to, from + 3 * DAY), hoursFromUtc)
    .map(({ x, text }) => ({ x: x + shift, text }))
    .filter(({ x }) => x <= to)
}

function inWords({ drainFraction, feedEC, drainEC, time, wantedFraction }: DrainChart): string {
  const known = (values: ArrayLike<number>) => Array.from(values).filter(Number.isFinite)
  const shares = known(drainFraction)
  const mean = shares.reduce((sum, value) => sum + value / shares.length, 0)
  const wanted = wantedFraction === undefined ? '' : `, wanted ${asPercent(wantedFraction, 0)}`
  const drained = shares.length === 0 ? 'no drain recorded' : `on average ${asPercent(mean)} drained${wanted}`
  const course = (name: string, values: ArrayLike<number>) => {
    const all = known(values)
    return all.length === 0
      ? `EC of the ${name} not known`
      : `EC of the ${name} ${all[0]?.toFixed(2)} dS/m at first, ${all[all.length - 1]?.toFixed(2)} at last, at most ${maxOf(all).toFixed(2)}`
  }
  return `${time.length} days; ${drained}; ${course('feed', feedEC)}; ${course('drain', drainEC)}.`
}
