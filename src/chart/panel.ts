import { scaleLinear } from 'd3-scale'
import { drawLegend, LEGEND_ROW, type Legend } from './legend.js'
import { lettering, textWidth, wrapText } from './lettering.js'
import { tickText } from './number-ticks.js'
import type { Panel, PanelChart, PanelRule } from './panel-chart.js'
import { drawable, drawSeries, lookOf, MIN_SIZE, type Scale } from './series.js'
import { element, escapeText, tidy } from './svg.js'

/** Size of the names of rules. */
export const RULE_SIZE = 12
export const TOP_ROW = 16
const MAX_TOP_ROWS = 4

/** Where a panel lies in the picture, in px. */
export interface PanelPlace {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly tall: number
  /** Room between the legend and the axes, taken by names of marks and spans. */
  readonly above: number
  /** Room to the right of the axes for names of rules; none where they stand in the legend. */
  readonly beside: number
  readonly y: HeightAxis
}

/** The vertical axis of a panel with the numbers on it. */
export interface HeightAxis {
  readonly scale: Scale
  readonly ticks: readonly { readonly y: number; readonly text: string }[]
}

/** The vertical axis of a panel between two heights of the picture. */
export function heightAxis(panel: Panel, top: number, tall: number): HeightAxis {
  const scale = scaleLinear(extent(panel), [top + tall, top]).nice(5)
  const values = scale.ticks(Math.max(2, Math.min(6, Math.round(tall / 40))))
  const step = values.length > 1 ? values[1]! - values[0]! : (values[0] ?? 1)
  return { scale, ticks: values.map((value) => ({ y: scale(value), text: tickText(value, step) })) }
}

/** One panel with its axes, bands, rules and curves. */
export function drawPanel(
  panel: Panel,
  x: Scale,
  place: PanelPlace,
  chart: PanelChart,
  ticks: readonly { x: number }[],
  legend: Legend,
): string {
  const { left, right, top, tall } = place
  const bottom = top + tall
  const y = place.y.scale
  const box = (name: string, x1: number, x2: number, y1: number, y2: number) =>
    element('rect', { class: name, x: x1, y: y1, width: Math.max(1, x2 - x1), height: Math.max(0, y2 - y1) })
  const inside: string[] = []
  const over: string[] = []
  for (const [a, b] of chart.gaps ?? [])
    if (drawable(a) && drawable(b)) inside.push(box('gap', x(a), x(b), top, bottom))
  for (const span of chart.spans ?? [])
    if (drawable(span.from) && drawable(span.to)) inside.push(box('band', x(span.from), x(span.to), top, bottom))
  const [low, high] = panel.band ?? []
  if (drawable(low) && drawable(high)) inside.push(box('band', left, right, y(high), y(low)))
  const parts: string[] = []
  for (const tick of place.y.ticks) {
    parts.push(element('line', { class: 'grid', x1: left, x2: right, y1: tick.y, y2: tick.y }))
    parts.push(element('text', { x: left - 8, y: tick.y + 5, 'text-anchor': 'end' }, escapeText(tick.text)))
  }
  for (const tick of ticks)
    parts.push(element('line', { class: 'grid', x1: x(tick.x), x2: x(tick.x), y1: top, y2: bottom }))
  panel.series.forEach((series, i) => {
    inside.push(drawSeries(series, lookOf(series, i), x, y))
  })
  for (const mark of chart.marks ?? [])
    if (drawable(mark.x))
      inside.push(element('line', { class: 'rule', x1: x(mark.x), x2: x(mark.x), y1: top, y2: bottom }))
  const rules = (panel.rules ?? []).filter((rule) => drawable(rule.y)).sort((a, b) => b.y - a.y)
  for (const { y: at } of rules)
    inside.push(element('line', { class: 'rule', x1: left, x2: right, y1: y(at), y2: y(at) }))
  if (place.beside > 0) over.push(namesBeside(rules, place).join(''))
  parts.push(
    // A picture in the picture cuts off what lies outside the axes, without names that could collide on a page.
    element(
      'svg',
      {
        x: left,
        y: top,
        width: right - left,
        height: tall,
        viewBox: `${tidy(left)} ${tidy(top)} ${tidy(right - left)} ${tidy(tall)}`,
      },
      inside.join(''),
    ),
    element('path', {
      class: 'axis',
      fill: 'none',
      d: `M${tidy(left)} ${tidy(top)}V${tidy(bottom)}H${tidy(right)}`,
    }),
    ...axisTitle(panel.yTitle, top, tall),
    over.join(''),
  )
  if (legend.rows > 0)
    parts.push(drawLegend(legend, left, top - place.above - LEGEND_ROW * legend.rows + 2, right + place.beside - left))
  return element('g', {}, parts.join(''))
}

/** The title of a vertical axis in one line, or smaller in two. */
function axisTitle(title: string, top: number, tall: number): string[] {
  const room = tall + 12
  const whole = textWidth(title, 14) <= room
  const lines = whole ? [title] : wrapText(title, 12, room, 2)
  return lines.map((line, i) =>
    lettering(line, whole ? 14 : 12, room, {
      class: 'quiet',
      transform: `translate(${whole ? 18 : 12 + 14 * i} ${tidy(top + tall / 2)}) rotate(-90)`,
      'text-anchor': 'middle',
    }),
  )
}

/** Names of rules to the right of the axes, each at its height or as near as the others let it. */
function namesBeside(rules: readonly PanelRule[], { right, top, tall, beside, y }: PanelPlace): string[] {
  const named = rules.filter(({ name }) => name !== '')
  const heights = apart(
    named.map((rule) => y.scale(rule.y) + 4),
    top + 10,
    top + tall,
  )
  return named.map(({ name }, i) => lettering(name, RULE_SIZE, beside - 6, { x: right + 6, y: heights[i]! }))
}

/** A name above the panels and the row it stands in, counted from the panels up. */
export interface TopName {
  readonly name: string
  readonly middle: number
  readonly row: number
}

/** Names of marks and spans above the highest panel, each in the lowest row where it overlaps none; what finds no row is left out. */
export function namesOnTop(chart: PanelChart, x: Scale, left: number, right: number): TopName[] {
  const names = [
    ...(chart.spans ?? []).map(({ name, from, to }) => ({ name, at: (x(from) + x(to)) / 2 })),
    ...(chart.marks ?? []).map((mark) => ({ name: mark.name, at: x(mark.x) })),
  ].filter(({ at, name }) => Number.isFinite(at) && name !== '')
  const taken: [from: number, to: number, row: number][] = []
  return names.flatMap(({ name, at }) => {
    const wide = Math.min(textWidth(name, 12), right - left)
    const middle = Math.min(Math.max(at, left + wide / 2), right - wide / 2)
    let row = 0
    while (taken.some(([a, b, r]) => r === row && middle - wide / 2 < b + 6 && middle + wide / 2 > a - 6)) row += 1
    if (row >= MAX_TOP_ROWS) return []
    taken.push([middle - wide / 2, middle + wide / 2, row])
    return [{ name, middle, row }]
  })
}

/** Heights of names of rules, from top to bottom, pushed apart where they would overlap and kept inside the panel. */
function apart(heights: readonly number[], top: number, bottom: number): number[] {
  const placed: number[] = []
  for (const height of heights) placed.push(Math.max(height, top, (placed[placed.length - 1] ?? -Infinity) + 15))
  let limit = bottom
  for (let i = placed.length - 1; i >= 0; i--) {
    placed[i] = Math.min(placed[i]!, limit)
    limit = placed[i]! - 15
  }
  return placed
}

function extent(panel: Panel): [number, number] {
  let [low, high] = [Infinity, -Infinity]
  const see = (value: number | undefined) => {
    if (!drawable(value)) return
    if (value < low) low = value
    if (value > high) high = value
  }
  for (const value of panel.yRange ?? []) see(value)
  for (const series of panel.series) {
    for (let i = 0; i < series.y.length; i++) see(series.y[i])
    if (series.draw === 'bars' || series.draw === 'steps') see(0)
  }
  for (const rule of panel.rules ?? []) see(rule.y)
  for (const value of panel.band ?? []) see(value)
  if (low > high) return [0, 1]
  // A curve that is flat to the last digit would fill the axis with its rounding.
  const size = Math.max(Math.abs(low), Math.abs(high))
  if (size < MIN_SIZE) return [-0.5, 0.5]
  if (high - low <= size * 1e-9) return [low - Math.abs(low) / 2, low + Math.abs(low) / 2]
  return [low, high]
}
