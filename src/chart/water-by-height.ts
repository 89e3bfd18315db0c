import type { ContainerLayer } from '../flow/richards-terms.js'
import { HEIGHT } from '../medium/domains.js'
import { READING_TIME } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { maxOf, minOf } from '../quantity/extremes.js'
import type { Duration, Length, Volume } from '../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject, requireRows } from '../quantity/guard.js'
import type { Panel, PanelSeries } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { heightFor, WIDTH } from './size.js'
import type { PictureTitle, PictureWidth } from './terms.js'

/** A simulated container at a moment. */
export interface ProfileAtTime {
  /** Time since the begin. Unit: s. */
  readonly time: Duration
  /** What there was at each height, as `profile` of a simulation gives it. */
  readonly profile: readonly ContainerLayer[]
  /** Water that drained since the moment before. Unit: L. */
  readonly drained: Volume
}

/** The course of a simulated container. */
export interface WaterByHeightChart extends PictureTitle, PictureWidth {
  /** The moments, in order. */
  readonly moments: readonly ProfileAtTime[]
  /** Heights to be drawn, six at most; left out, five from near the bottom to near the top. Unit: cm. Range: each in [0, ∞). */
  readonly heights?: readonly Length[]
}

const [CHART_HEIGHT, HEIGHT_WITH_EC] = [520, 720]

/**
 * A picture of how water moves in a container, as SVG text: the water content at some heights over time, the EC of the pore water there
 * when salt was followed, and what drained.
 *
 * @procedure Reads each profile at the heights by straight lines between its nodes.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `InputError` for fewer than two moments, for more than six heights and for heights above the container; `DomainError` for heights below zero.
 * @source definition
 * @example
 * const flow = containerFlowRichards1931({
 *   container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(10) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.7 }),
 *   saturatedConductivity: centimetresPerHour(60),
 * })
 * const start = flow.startAt((height) => centimetresOfSuction(inCentimetres(height) + 10))
 * const [wetted, { drained }] = flow.step(start, { duration: minutes(30), applied: litres(0.4), demand: litres(0) })
 * const picture = chartWaterByHeight({
 *   title: 'A shot, invented',
 *   moments: [
 *     { time: minutes(0), profile: flow.profile(start), drained: litres(0) },
 *     { time: minutes(30), profile: flow.profile(wetted), drained },
 *   ],
 * })
 * picture.includes('<svg') // => true
 */
export function chartWaterByHeight(chart: WaterByHeightChart): string {
  requireObject(chart, 'chart')
  const { moments, width = WIDTH } = chart
  checkMoments(moments)
  if (chart.heights !== undefined) requireList(chart.heights, 'heights')
  const [first, last] = [moments[0], moments.at(-1)]
  if (first === undefined || last === undefined || moments.length < 2)
    throw new InputError('moments', 'there are fewer than two', 'give the profiles of a day')
  const heights = heightsOf(chart, first)
  const hours = moments.map(({ time }) => time / 3600)
  const lines = (read: (layer: ContainerLayer) => number): PanelSeries[] =>
    heights.map((height, look) => ({
      name: `${height.toFixed(1)} cm above the bottom`,
      x: hours,
      y: moments.map(({ profile }) => valueAt(profile, height, read)),
      draw: 'line',
      look,
    }))
  const salted = first.profile[0]?.poreWaterEC !== undefined
  const waterContents = lines((layer) => layer.waterContent)
  const panels: Panel[] = [{ yTitle: 'water content, m³/m³', series: waterContents, weight: 2 }]
  if (salted)
    panels.push({ yTitle: 'pore water, dS/m', series: lines((layer) => layer.poreWaterEC ?? Number.NaN), weight: 2 })
  const drained = moments.map((moment) => moment.drained * 1000)
  if (drained.some((part) => part > 0))
    panels.push({ yTitle: 'drain, mL', series: [{ name: 'drain', x: hours, y: drained, draw: 'bars', look: 5 }] })
  return drawPanels({
    title: chart.title,
    alternative: inWords(waterContents, drained),
    xTitle: 'time, h',
    xRange: [hours[0]!, hours.at(-1)!],
    panels,
    width,
    height: heightFor(width, salted ? HEIGHT_WITH_EC : CHART_HEIGHT),
  })
}

function checkMoments(moments: readonly ProfileAtTime[]): void {
  requireRows(moments, 'moments')
  for (const [i, { time, profile }] of moments.entries()) {
    const argument = `moments[${i}].profile`
    requireRows(profile, argument)
    if (profile.length === 0) throw new InputError(argument, 'is empty', 'give what there was at each height')
    numberIn(time, READING_TIME, `moments[${i}].time`)
  }
}

function valueAt(profile: readonly ContainerLayer[], height: number, read: (layer: ContainerLayer) => number): number {
  const above = profile.findIndex((layer) => layer.height >= height)
  const b = profile[above]!
  const a = profile[above - 1] ?? b
  if (b.height === a.height) return read(b)
  return read(a) + ((read(b) - read(a)) * (height - a.height)) / (b.height - a.height)
}

function inWords(waterContents: readonly PanelSeries[], drained: readonly number[]): string {
  const rows = waterContents.map(({ name, y }) => {
    const values = Array.from(y)
    return `${name}: water content ${minOf(values).toFixed(3)} to ${maxOf(values).toFixed(3)} m³/m³.`
  })
  return [...rows, `Drain ${drained.reduce((sum, part) => sum + part, 0).toFixed(0)} mL in all.`].join(' ')
}

/** Heights at which the picture looks, from the bottom up where nobody says. */
function heightsOf(chart: WaterByHeightChart, first: WaterByHeightChart['moments'][number]): readonly Length[] {
  const top = first.profile.at(-1)?.height ?? 0
  const heights = chart.heights ?? ([0.05, 0.25, 0.5, 0.75, 0.95].map((share) => share * top) as Length[])
  for (const height of heights) numberIn(height, HEIGHT, 'heights')
  if (heights.length > 6 || heights.some((height) => height > top))
    throw new InputError(
      'heights',
      `are more than six or outside 0 to ${top} cm`,
      'give up to six heights in the container',
    )
  return heights
}
