import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { requireList, requireObject, requireRows } from '../quantity/guard.js'
import { lineOf } from './line-of.js'
import type { Panel } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { LocalClock, PictureTitle, PictureWidth, ProbeCurves, ReadingTimes } from './terms.js'
import { gapsBetween, timeTicks } from './time-axis.js'

/** A day (or any span) of readings with the water that was given. */
export interface DayChart extends LocalClock, PictureTitle, PictureWidth, ReadingTimes, ProbeCurves {
  /** When water was given, and how much. */
  readonly shots: readonly { readonly time: number; readonly millilitres: number }[]
  /** Water content at which to water again. Unit: m³/m³. Range: any. */
  readonly refillPoint?: WaterContent
  /** Water content that a shot should not exceed. Unit: m³/m³. Range: any. */
  readonly fullPoint?: WaterContent
  /** Curves for a panel of their own, such as root-zone temperature or radiation. */
  readonly below?: readonly { readonly axis: string; readonly name: string; readonly value: ArrayLike<number> }[]
}

/**
 * A picture of a day of readings with its shots and limits, as SVG text.
 *
 * @procedure Water content above, between its refill and full point; shots as bars below; further curves in panels of their own.
 * Gaps in the data are shaded, and no line is drawn across them.
 * @param day - What to draw.
 * @returns An SVG document as text, with a title and a description for people who cannot see it.
 * @throws `DomainError` outside the ranges, `InputError` when there are fewer than two readings or a curve has another length than the times.
 * @source definition
 * @example
 * const picture = chartDay({
 *   title: 'Bench 3, invented',
 *   time: [0, 300, 600],
 *   waterContent: [{ name: 'probe A', value: [0.52, 0.55, 0.54] }],
 *   shots: [{ time: 120, millilitres: 150 }],
 *   hoursFromUtc: 0,
 *   maxStep: 900,
 * })
 * picture.startsWith('<svg') // => true
 */
export function chartDay(day: DayChart): string {
  requireObject(day, 'day')
  const { time, width = WIDTH } = day
  requireList(time, 'time')
  requireRows(day.waterContent, 'waterContent')
  requireRows(day.shots, 'shots')
  requireRows(day.below ?? [], 'below')
  if (time.length < 2) throw new InputError('time', `there are ${time.length} readings`, 'give at least two')
  const from = time[0]!
  const to = time[time.length - 1]!
  const waterContent = day.waterContent.map(({ name, value }, i) =>
    lineOf(name, time, value, `waterContent[${i}].value`, day.maxStep),
  )
  const limits = [
    ...(day.fullPoint === undefined ? [] : [{ name: 'full point', y: day.fullPoint }]),
    ...(day.refillPoint === undefined ? [] : [{ name: 'refill point', y: day.refillPoint }]),
  ]
  const panels: Panel[] = [
    {
      yTitle: 'water content, m³/m³',
      series: waterContent,
      rules: limits,
      ...(day.refillPoint !== undefined && day.fullPoint !== undefined
        ? { band: [day.refillPoint, day.fullPoint] as const }
        : {}),
      weight: 3,
    },
    // A day without shots has no panel for them; the description says so.
    ...(day.shots.length === 0 ? [] : [shotPanel(day.shots)]),
    ...(day.below ?? []).map((curve, i) => ({
      yTitle: curve.axis,
      series: [lineOf(curve.name, time, curve.value, `below[${i}].value`, day.maxStep)],
    })),
  ]
  const readings = day.waterContent.flatMap(({ value }) => Array.from(value).filter(Number.isFinite))
  const low = readings.reduce((a, b) => Math.min(a, b), Infinity)
  const high = readings.reduce((a, b) => Math.max(a, b), -Infinity)
  const alternative =
    readings.length === 0
      ? 'No reading of water content.'
      : `Water content between ${low.toFixed(3)} and ${high.toFixed(3)} m³/m³; ${shotsInWords(day.shots)}.`
  return drawPanels({
    title: day.title,
    alternative,
    xTitle: 'local time',
    xRange: [from, to],
    xTicks: timeTicks(from, to, day.hoursFromUtc),
    gaps: gapsBetween(time, day.waterContent[0]?.value ?? [], day.maxStep),
    panels,
    width,
    height: heightFor(width, (day.shots.length === 0 ? 330 : 420) + 110 * (day.below?.length ?? 0)),
  })
}

function shotPanel(shots: DayChart['shots']): Panel {
  const [x, y] = [shots.map((shot) => shot.time), shots.map((shot) => shot.millilitres)]
  return { yTitle: 'shot, mL', series: [{ name: 'shots', x, y, draw: 'bars' }] }
}

function shotsInWords(shots: DayChart['shots']): string {
  if (shots.length === 0) return 'no shots'
  return `${shots.length} shots of together ${Math.round(shots.reduce((sum, shot) => sum + shot.millilitres, 0))} mL`
}
