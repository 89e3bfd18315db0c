import { InputError } from '../quantity/errors.js'
import { requireList, requireObject, requireRows } from '../quantity/guard.js'
import type { ZoneDay } from '../zone/day/zone-day.js'
import { betweenLimits } from './between-limits.js'
import { lineOf, requireCurve } from './line-of.js'
import type { Panel, PanelSpan } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { LocalClock, PictureTitle, PictureWidth, ProbeCurves, ReadingTimes } from './terms.js'
import { clock, gapsBetween, timeTicks } from './time-axis.js'

/** A day of a zone as it was reviewed, with the readings behind it. */
export interface ReviewChart extends LocalClock, PictureTitle, PictureWidth, ReadingTimes, ProbeCurves {
  /** The review, one of the days made by `reviewZone`. */
  readonly day: ZoneDay
}

/**
 * A picture of a reviewed day, as SVG text: what the probes read, the levels that the review found, the stretch without a shot, and how
 * far each shot lifted each probe.
 *
 * @procedure Draws the readings from midnight to midnight with refill and full point; below, a bar for the rise of each shot at each probe.
 * A day without shots has no panel for them.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `DomainError` outside the ranges, `InputError` for fewer than two readings on the day, or a curve of another length than the times.
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
 * const [, day] = reviewZone({ zone, record: { time, probes: { A } } }).days
 * const curves = [{ name: 'A', value: A }]
 * const picture = chartReview({ title: 'Bench 4, invented', day: day!, time, waterContent: curves, hoursFromUtc: 0, maxStep: 900 })
 * picture.includes('5 shots at A') // => true
 */
export function chartReview(chart: ReviewChart): string {
  requireObject(chart, 'chart')
  const { day, time, width = WIDTH } = chart
  requireObject(day, 'day')
  requireList(time, 'time')
  requireRows(chart.waterContent, 'waterContent')
  const on = Array.from(time, (one, i) => (one >= day.from && one <= day.to ? i : -1)).filter((i) => i >= 0)
  if (on.length < 2) throw new InputError('time', `has ${on.length} readings on the day`, 'give at least two')
  const times = on.map((i) => time[i]!)
  const xTicks = timeTicks(day.from, day.to, chart.hoursFromUtc)
  const curves = chart.waterContent.map(({ name, value }, i) => {
    requireCurve(time, value, `waterContent[${i}].value`)
    return { name, value: on.map((i) => value[i]!) }
  })
  const limits = day.level.known ? day.level.value.limits : undefined
  const panels: Panel[] = [
    {
      yTitle: 'water content, m³/m³',
      series: curves.map(({ name, value }) => lineOf(name, times, value, 'waterContent', chart.maxStep)),
      ...betweenLimits(limits),
      weight: 2.6,
    },
    ...risePanel(day),
  ]
  return drawPanels({
    title: chart.title,
    alternative: inWords(chart),
    xTitle: 'local time',
    xRange: [day.from, day.to],
    xTicks,
    gaps: gapsBetween(times, curves[0]?.value ?? [], chart.maxStep),
    spans: spansOf(day),
    panels,
    width,
    height: heightFor(width, panels.length === 1 ? 340 : 440),
  })
}

/** Bars of several probes stand beside each other. */
function risePanel(day: ZoneDay): Panel[] {
  const seen = day.probes.filter(({ shots }) => shots.length > 0)
  const wide = (day.to - day.from) / 120
  return seen.length === 0
    ? []
    : [
        {
          yTitle: 'rise, points',
          series: seen.map(({ name, shots }, i) => ({
            name,
            x: shots.map(({ start }) => start + (i - (seen.length - 1) / 2) * wide),
            y: shots.map(({ rise }) => rise * 100),
            draw: 'bars' as const,
            barWidth: wide,
            look: day.probes.findIndex((probe) => probe.name === name),
          })),
        },
      ]
}

function spansOf({ shotFree, from, to }: ZoneDay): PanelSpan[] {
  if (!shotFree.known) return []
  const [begin, end] = [Math.max(from, shotFree.value.from), Math.min(to, shotFree.value.to)]
  return end > begin ? [{ name: 'without a shot', from: begin, to: end }] : []
}

function inWords({ day, hoursFromUtc }: ReviewChart): string {
  const probes = day.probes.map(({ name, shots, range, used }) => {
    const span = range.known
      ? `${range.value.min.toFixed(3)} to ${range.value.max.toFixed(3)} m³/m³`
      : 'no reading to trust'
    return `${shots.length} shots at ${name}, ${span}${used ? '' : ', not counted for the zone'}`
  })
  const level = day.level.known
    ? ` Full point ${day.level.value.limits.fullPoint.toFixed(3)}, refill point ${day.level.value.limits.refillPoint.toFixed(3)} m³/m³.`
    : ' Levels are not known.'
  const at = (instant: number) => clock(instant + hoursFromUtc * 3600)
  const night = day.shotFree.known
    ? ` No shot from ${at(day.shotFree.value.from)} to ${at(day.shotFree.value.to)}.`
    : ''
  return `${day.date}: ${probes.join('; ')}.${level}${night} ${day.findings.length} findings.`
}
