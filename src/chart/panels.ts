import { scaleLinear, scaleLog } from 'd3-scale'
import { InputError } from '../quantity/errors.js'
import { maxOf } from '../quantity/extremes.js'
import { numberIn, optionOr, requireList, requireObject, requireRows } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import { HEIGHT, PICTURE_WIDTH } from './domains.js'
import { framed } from './frame.js'
import { LEGEND_ROW, legendOf } from './legend.js'
import { lettering, textWidth } from './lettering.js'
import { logarithmicTicks, tickText } from './number-ticks.js'
import { drawPanel, heightAxis, namesOnTop, RULE_SIZE, TOP_ROW } from './panel.js'
import type { PanelChart } from './panel-chart.js'
import { MIN_SIZE, type Scale } from './series.js'
import { element, escapeText } from './svg.js'

const MARGIN = { right: 24, bottom: 52, left: 84, narrow: 46 }
const BETWEEN = 16
/** From this width on names of rules stand beside the axes; in narrower pictures they stand in the legend. */
const WIDE = 600
const MAX_BESIDE = 132

/**
 * A picture of panels that stand above each other over one horizontal axis, as SVG text. The ready-made charts are built with it.
 *
 * @procedure Shares the height out among the panels by weight, chooses round numbers for the axes, and draws bands, rules and curves;
 * a curve is broken where a value is NaN. Names that are longer than their room are cut, and names that would overlap are moved.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description for people who cannot see it.
 * @throws `DomainError` outside the ranges, `InputError` when there is no panel or the horizontal range is empty.
 * @source okabe-2008, for the colours
 * @example
 * const picture = drawPanels({
 *   title: 'A line', alternative: 'It rises from 0 to 1.', xTitle: 'time, h', xRange: [0, 1], width: 400, height: 200,
 *   panels: [{ yTitle: 'share', series: [{ name: 'rising', x: [0, 1], y: [0, 1], draw: 'line' }] }],
 * })
 * picture.includes('<title>A line</title>') // => true
 */
export function drawPanels(chart: PanelChart): string {
  requireObject(chart, 'chart')
  requireList(chart.xRange, 'xRange')
  requireRows(chart.panels, 'panels')
  for (const { yTitle, series } of chart.panels) {
    requireRows(series, 'series')
    series.forEach(({ x, y, draw }, i) => {
      oneOf(draw, ['line', 'points', 'bars', 'steps', 'region'], `series[${i}].draw`)
      requireList(x, `series[${i}].x`)
      requireList(y, `series[${i}].y`)
    })
    if (typeof yTitle !== 'string') throw new InputError('yTitle', 'is no text', 'give text')
  }
  for (const list of ['gaps', 'marks', 'spans', 'xTicks'] as const) requireRows(chart[list] ?? [], list)
  oneOf(optionOr(chart.xScale, 'linear'), ['linear', 'logarithmic'], 'xScale')
  const width = numberIn(chart.width, PICTURE_WIDTH, 'width')
  const height = numberIn(chart.height, HEIGHT, 'height')
  return framed({ ...chart, width, height }, (top) => stackPanels(chart, top))
}

/** The panels of a chart below a height that its title takes, without the frame of a document. */
export function stackPanels(chart: PanelChart, above: number): string {
  const { panels, width, height } = chart
  if (panels.length === 0) throw new InputError('panels', 'there is none', 'give at least one panel')
  const [from, to] = chart.xRange
  const logarithmic = chart.xScale === 'logarithmic'
  const min = Math.max(MIN_SIZE, 1e-12 * Math.max(Math.abs(from), Math.abs(to)))
  if (!(to - from > min && Number.isFinite(to - from) && (!logarithmic || from > 0)))
    throw new InputError(
      'xRange',
      `runs from ${from} to ${to}`,
      'give a finite range, the lower end first, above zero for a logarithmic axis',
    )
  const wide = width >= WIDE
  const beside = wide ? roomBeside(panels) : 0
  const right = width - Math.max(MARGIN.right, beside)
  const weights = panels.map((panel) => panel.weight ?? 1)
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const gap = (chart.gaps ?? []).length > 0 ? (chart.gapName ?? 'no readings') : undefined
  // The room that a legend needs depends on the left margin, and this on the numbers at the axes: both are found from the outer bound.
  const first = wide ? MARGIN.left : MARGIN.narrow
  const legendsFrom = (left: number) =>
    panels.map((panel, i) => legendOf(panel, right + beside - left, { rules: !wide, gap: i === 0 ? gap : undefined }))
  const numbers = maxOf([
    0,
    ...panels.flatMap((panel) => heightAxis(panel, 0, 100).ticks.map(({ text }) => textWidth(text, 14))),
  ])
  const left = Math.max(first, numbers + (wide ? 40 : 34))
  const legends = legendsFrom(left)
  const x = (logarithmic ? scaleLog : scaleLinear)([from, to], [left, right])
  const ticks = chart.xTicks ?? (logarithmic ? logarithmicTicks(from, to) : numberTicks(from, to, right - left))
  const names = namesOnTop(chart, x, left, width - 8)
  const rows = names.reduce((max, { row }) => Math.max(max, row + 1), 0)
  const heads = legends.map(
    (legend, i) =>
      legend.rows * LEGEND_ROW +
      (i === 0 ? rows * TOP_ROW : BETWEEN) +
      (legend.rows > 0 || (i === 0 && rows > 0) ? 4 : 0),
  )
  const free = height - above - MARGIN.bottom - heads.reduce((sum, head) => sum + head, 0)
  let top = above
  const drawn = panels.map((panel, i) => {
    top += heads[i]!
    const tall = Math.max(10, (free * weights[i]!) / total)
    const strip = i === 0 && rows > 0 ? rows * TOP_ROW + 4 : 0
    const place = { left, right, top, tall, above: strip, beside, y: heightAxis(panel, top, tall) }
    const high = top
    top += tall
    const over =
      i === 0 ? names.map(({ name, middle, row }) => topName(name, middle, high - 6 - TOP_ROW * row, width)) : []
    return drawPanel(panel, x, place, chart, ticks, legends[i] as (typeof legends)[number]) + over.join('')
  })
  return (
    drawn.join('') +
    tickLabels(ticks, x, top + 20, width) +
    lettering(chart.xTitle, 14, width - 20, {
      class: 'quiet',
      x: Math.max((left + right) / 2, 10 + Math.min(textWidth(chart.xTitle, 14), width - 20) / 2),
      y: height - 10,
      'text-anchor': 'middle',
    })
  )
}

function roomBeside(panels: PanelChart['panels']): number {
  const names = panels.flatMap(({ rules }) => (rules ?? []).map(({ name }) => textWidth(name, RULE_SIZE)))
  return names.some((wide) => wide > 0) ? Math.min(MAX_BESIDE, maxOf(names) + 12) : 0
}

function topName(name: string, middle: number, y: number, width: number): string {
  return lettering(name, 12, width - 16, { x: middle, y, 'text-anchor': 'middle' })
}

function numberTicks(from: number, to: number, room: number): { x: number; text: string }[] {
  const values = scaleLinear([from, to], [0, 1]).ticks(Math.max(2, Math.min(8, Math.floor(room / 70))))
  const step = values.length > 1 ? values[1]! - values[0]! : to - from
  return values.map((value) => ({ x: value, text: tickText(value, step) }))
}

/** What is written at the horizontal axis; a label that would touch the one before it is left out. */
function tickLabels(ticks: readonly { x: number; text: string }[], x: Scale, y: number, width: number): string {
  let end = -Infinity
  return ticks
    .map((tick) => {
      const half = textWidth(tick.text, 14) / 2
      const at = Math.min(x(tick.x), width - 4 - half)
      if (!Number.isFinite(at) || at - half < end + 6) return ''
      end = at + half
      return element('text', { x: at, y, 'text-anchor': 'middle' }, escapeText(tick.text))
    })
    .join('')
}
