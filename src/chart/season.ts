import { InputError } from '../quantity/errors.js'
import { maxOf, minOf } from '../quantity/extremes.js'
import { requireObject, requireRows } from '../quantity/guard.js'
import type { ZoneDay } from '../zone/day/zone-day.js'
import type { Known } from '../zone/findings/known.js'
import type { Panel, PanelSeries } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { LocalClock, PictureTitle, PictureWidth } from './terms.js'
import { timeTicks } from './time-axis.js'

/** Many reviewed days of one zone. */
export interface SeasonChart extends LocalClock, PictureTitle, PictureWidth {
  /** The days in order, as `reviewZone` gives them. */
  readonly days: readonly ZoneDay[]
}

const DAY = 86400

/**
 * A picture of a season of reviewed days, as SVG text: the span of the water content of each day with its levels, what was given, drained
 * and used, and the EC of feed and drain.
 *
 * @procedure Takes the lowest and the highest water content of the probes that count, and the balance of each day; what is not known is
 * left open, and a panel without anything known is left out.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `DomainError` outside the ranges, `InputError` without a day.
 * @source definition
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const time = Array.from({ length: 576 }, (_, i) => i * 300)
 * const A = time.map((t) => 0.6 - (0.02 * (t % 14400)) / 14400 + 0.0004 * Math.sin(t * t))
 * const { days } = reviewZone({ zone, record: { time, probes: { A } } })
 * chartSeason({ title: 'Bench 4, invented', days, hoursFromUtc: 0 }).includes('2 days') // => true
 */
export function chartSeason(chart: SeasonChart): string {
  requireObject(chart, 'chart')
  const { days, width = WIDTH } = chart
  requireRows(days, 'days')
  const [first, last] = [days[0], days.at(-1)]
  if (first === undefined || last === undefined) throw new InputError('days', 'there is none', 'give at least one')
  const panels = [contentPanel(days), balancePanel(days), conductivityPanel(days)].filter(
    ({ series }, i) => i === 0 || series.some(({ y }) => Array.from(y).some(Number.isFinite)),
  )
  return drawPanels({
    title: chart.title,
    alternative: inWords(days),
    xTitle: 'local date',
    xRange: [first.from, last.to],
    xTicks: timeTicks(first.from, Math.max(last.to, first.from + 3 * DAY), chart.hoursFromUtc).filter(
      ({ x }) => x <= last.to,
    ),
    panels,
    width,
    height: heightFor(width, 180 + 150 * panels.length),
  })
}

const middle = ({ from, to }: ZoneDay) => (from + to) / 2
const numberOf = (one: Known<number>) => (one.known ? one.value : Number.NaN)

/** Lowest and highest water content among the probes that count. */
function spanOf({ probes }: ZoneDay): [low: number, high: number] {
  const ranges = probes.flatMap(({ range, used }) => (used && range.known ? [range.value] : []))
  return ranges.length === 0
    ? [Number.NaN, Number.NaN]
    : [minOf(ranges.map(({ min }) => min)), maxOf(ranges.map(({ max }) => max))]
}

function contentPanel(days: readonly ZoneDay[]): Panel {
  const x = days.map(middle)
  const limit = (read: (limits: { fullPoint: number; refillPoint: number }) => number) =>
    days.map(({ level }) => (level.known ? read(level.value.limits) : Number.NaN))
  const curve = (name: string, y: number[], look: number): PanelSeries[] => [
    { name, x, y, draw: 'line', look },
    ...(days.length < 60 ? [{ name: '', x, y, draw: 'points' as const, look }] : []),
  ]
  return {
    yTitle: 'water content, m³/m³',
    series: [
      ...curve(
        'highest',
        days.map((day) => spanOf(day)[1]),
        0,
      ),
      ...curve(
        'lowest',
        days.map((day) => spanOf(day)[0]),
        2,
      ),
      { name: 'full point', x, y: limit(({ fullPoint }) => fullPoint), draw: 'line', look: 4 },
      { name: 'refill point', x, y: limit(({ refillPoint }) => refillPoint), draw: 'line', look: 1 },
    ],
    weight: 1.6,
  }
}

function balancePanel(days: readonly ZoneDay[]): Panel {
  const bars = (name: string, shift: number, look: number, read: (day: ZoneDay) => Known<number>): PanelSeries => ({
    name,
    x: days.map((day) => middle(day) + shift * DAY),
    y: days.map((day) => numberOf(read(day))),
    draw: 'bars',
    barWidth: 0.36 * DAY,
    look,
  })
  const use = days.map(({ balance }) => numberOf(balance.use))
  return {
    yTitle: 'water, L a container',
    series: [
      bars('given', -0.2, 0, ({ balance }) => balance.given),
      bars('drained', 0.2, 1, ({ balance }) => balance.drained),
      { name: 'used', x: days.map(middle), y: use, draw: 'points', look: 2 },
    ],
  }
}

function conductivityPanel(days: readonly ZoneDay[]): Panel {
  const x = days.map(middle)
  const curve = (name: string, look: number, read: (day: ZoneDay) => Known<number>): PanelSeries => ({
    name,
    x,
    y: days.map((day) => numberOf(read(day))),
    draw: 'line',
    look,
  })
  return {
    yTitle: 'EC, dS/m',
    series: [curve('drain', 1, ({ balance }) => balance.drainEC), curve('feed', 2, ({ balance }) => balance.feedEC)],
  }
}

function inWords(days: readonly ZoneDay[]): string {
  const spans = days.map(spanOf).filter(([low]) => Number.isFinite(low))
  const span =
    spans.length === 0
      ? 'no water content to trust'
      : `water content between ${minOf(spans.map(([low]) => low)).toFixed(3)} and ${maxOf(spans.map(([, high]) => high)).toFixed(3)} m³/m³`
  const sum = (name: string, read: (day: ZoneDay) => Known<number>) => {
    const all = days.map((day) => numberOf(read(day))).filter(Number.isFinite)
    return all.length === 0
      ? `${name} not known`
      : `${name} ${all.reduce((total, one) => total + one, 0).toFixed(1)} L on ${all.length} days`
  }
  const given = sum('given', ({ balance }) => balance.given)
  const drained = sum('drained', ({ balance }) => balance.drained)
  return `${days.length} days from ${days[0]?.date} to ${days.at(-1)?.date}: ${span}; ${given}, ${drained} a container.`
}
