import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import { InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { Span } from '../quantity/span.js'
import { element, escapeText, tidy } from './svg.js'
import { STYLE } from './theme.js'

/** One curve or row of points over the common horizontal axis. NaN breaks a curve. */
export interface PanelSeries {
  /** Name in the legend. */
  readonly name: string
  readonly x: ArrayLike<number>
  readonly y: ArrayLike<number>
  readonly draw: 'line' | 'points' | 'bars' | 'steps'
}

/** A horizontal line at a height, with its name written on it. */
export interface PanelRule {
  readonly name: string
  readonly y: number
}

/** One of the pictures that stand above each other over a common horizontal axis. */
export interface Panel {
  /** Title of the vertical axis, with its unit. */
  readonly yTitle: string
  readonly series: readonly PanelSeries[]
  readonly rules?: readonly PanelRule[]
  /** A shaded range of heights, as between a refill point and a full point. */
  readonly band?: readonly [low: number, high: number]
  /** The range of heights that must be visible. */
  readonly yRange?: readonly [low: number, high: number]
  /** Share of the height, against the other panels. */
  readonly weight?: number
}

/** What a picture of stacked panels is made from. */
export interface PanelChart {
  /** Title of the whole picture. */
  readonly title: string
  /** What the picture shows, in words, for people who cannot see it. */
  readonly alternative: string
  /** Title of the horizontal axis, with its unit. */
  readonly xTitle: string
  /** Ends of the horizontal axis, the lower first. */
  readonly xRange: readonly [low: number, high: number]
  /** Where the horizontal axis carries numbers, and what is written there. */
  readonly xTicks?: readonly { readonly x: number; readonly text: string }[]
  /** Spans without data, shaded so that nobody reads a line into them. */
  readonly gaps?: readonly (readonly [low: number, high: number])[]
  /** The pictures, from top to bottom. */
  readonly panels: readonly Panel[]
  /** Unit: px. Width of the picture. Range: [200, 10000]. */
  readonly width: number
  /** Unit: px. Height of the picture. Range: [150, 10000]. */
  readonly height: number
}

const MARGIN = { top: 44, right: 24, bottom: 52, left: 76 }
const BETWEEN = 30

const WIDTH: Span = {
  quantity: 'width of the picture',
  unit: 'px',
  min: 200,
  max: 10000,
  hint: 'give a width that leaves room for the axes',
}
const HEIGHT: Span = {
  quantity: 'height of the picture',
  unit: 'px',
  min: 150,
  max: 10000,
  hint: 'give a height that leaves room for the axes',
}

/**
 * A picture of panels that stand above each other over one horizontal axis, as SVG text. The ready-made charts are built with it.
 *
 * @procedure Shares the height out among the panels by weight, chooses round numbers for the axes, and draws bands, rules and curves;
 * a curve is broken where a value is NaN.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description for people who cannot see it.
 * @throws `DomainError` outside the ranges, `InputError` when there is no panel or the horizontal range is empty.
 * @source Okabe, M. and Ito, K. (2008), Color Universal Design, for the colours [from memory]
 * @example
 * ```ts
 * const picture = drawPanels({
 *   title: 'A line', alternative: 'It rises from 0 to 1.', xTitle: 'time, h', xRange: [0, 1], width: 400, height: 200,
 *   panels: [{ yTitle: 'share', series: [{ name: 'rising', x: [0, 1], y: [0, 1], draw: 'line' }] }],
 * })
 * picture.includes('<title>A line</title>') // => true
 * ```
 */
export function drawPanels(chart: PanelChart): string {
  const { panels } = chart
  const width = within(chart.width, WIDTH)
  const height = within(chart.height, HEIGHT)
  if (panels.length === 0) throw new InputError('panels', 'there is none', 'give at least one panel')
  const [from, to] = chart.xRange
  if (!(to > from))
    throw new InputError('xRange', `runs from ${from} to ${to}`, 'give a range with its lower end first')
  const x = scaleLinear([from, to], [MARGIN.left, width - MARGIN.right])
  const ticks = chart.xTicks ?? x.ticks(8).map((value) => ({ x: value, text: x.tickFormat(8)(value) }))
  const free = height - MARGIN.top - MARGIN.bottom - BETWEEN * (panels.length - 1)
  const weights = panels.map((panel) => panel.weight ?? 1)
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  let top = MARGIN.top
  const drawn = panels.map((panel, i) => {
    const tall = (free * (weights[i] as number)) / total
    const text = drawPanel(panel, x, top, tall, chart, ticks)
    top += tall + BETWEEN
    return text
  })
  const bottom = height - MARGIN.bottom
  const labels = ticks.map((tick) =>
    element('text', { x: x(tick.x), y: bottom + 20, 'text-anchor': 'middle' }, escapeText(tick.text)),
  )
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'pw',
      role: 'img',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      'aria-label': `${chart.title}. ${chart.alternative}`,
    },
    element('title', {}, escapeText(chart.title)),
    element('desc', {}, escapeText(chart.alternative)),
    element('style', {}, STYLE),
    element('rect', { class: 'paper', width, height }),
    element('text', { x: MARGIN.left, y: 24, 'font-size': 17, 'font-weight': 600 }, escapeText(chart.title)),
    ...drawn,
    ...labels,
    element(
      'text',
      { class: 'quiet', x: (MARGIN.left + width - MARGIN.right) / 2, y: height - 10, 'text-anchor': 'middle' },
      escapeText(chart.xTitle),
    ),
  )
}

type XScale = ReturnType<typeof scaleLinear<number, number>>

function drawPanel(
  panel: Panel,
  x: XScale,
  top: number,
  tall: number,
  chart: PanelChart,
  ticks: readonly { x: number }[],
): string {
  const [low, high] = extent(panel)
  const y = scaleLinear([low, high], [top + tall, top]).nice(5)
  const left = MARGIN.left
  const right = chart.width - MARGIN.right
  const parts: string[] = []
  for (const [a, b] of chart.gaps ?? [])
    parts.push(element('rect', { class: 'gap', x: x(a), y: top, width: Math.max(1, x(b) - x(a)), height: tall }))
  if (panel.band)
    parts.push(
      element('rect', {
        class: 'band',
        x: left,
        y: y(panel.band[1]),
        width: right - left,
        height: y(panel.band[0]) - y(panel.band[1]),
      }),
    )
  const count = Math.max(2, Math.min(6, Math.round(tall / 40)))
  for (const value of y.ticks(count)) {
    parts.push(element('line', { class: 'grid', x1: left, x2: right, y1: y(value), y2: y(value) }))
    parts.push(
      element('text', { x: left - 8, y: y(value) + 5, 'text-anchor': 'end' }, escapeText(y.tickFormat(count)(value))),
    )
  }
  for (const tick of ticks)
    parts.push(element('line', { class: 'grid', x1: x(tick.x), x2: x(tick.x), y1: top, y2: top + tall }))
  parts.push(
    element('path', {
      class: 'axis',
      fill: 'none',
      d: `M${tidy(left)} ${tidy(top)}V${tidy(top + tall)}H${tidy(right)}`,
    }),
  )
  parts.push(
    element(
      'text',
      { class: 'quiet', transform: `translate(18 ${tidy(top + tall / 2)}) rotate(-90)`, 'text-anchor': 'middle' },
      escapeText(panel.yTitle),
    ),
  )
  panel.series.forEach((series, i) => {
    parts.push(drawSeries(series, i % 4, x, y))
  })
  let lastRule = -Infinity
  for (const rule of [...(panel.rules ?? [])].sort((a, b) => b.y - a.y)) {
    // Names of rules that lie close together are pushed apart.
    const at = Math.max(y(rule.y) - 5, lastRule + 15)
    lastRule = at
    parts.push(element('line', { class: 'rule', x1: left, x2: right, y1: y(rule.y), y2: y(rule.y) }))
    parts.push(element('text', { x: right - 4, y: at, 'text-anchor': 'end', 'font-size': 12 }, escapeText(rule.name)))
  }
  if (panel.series.length > 1) parts.push(legend(panel.series, left + 8, top - 8))
  return element('g', {}, ...parts)
}

function extent(panel: Panel): [number, number] {
  let [low, high] = panel.yRange ?? [Infinity, -Infinity]
  const see = (value: number) => {
    if (!Number.isFinite(value)) return
    if (value < low) low = value
    if (value > high) high = value
  }
  for (const series of panel.series) {
    for (let i = 0; i < series.y.length; i++) see(series.y[i] as number)
    if (series.draw === 'bars') see(0)
  }
  for (const rule of panel.rules ?? []) see(rule.y)
  for (const value of panel.band ?? []) see(value)
  if (low > high) return [0, 1]
  if (low === high) return [low - 0.5, high + 0.5]
  return [low, high]
}

function drawSeries(series: PanelSeries, colour: number, x: XScale, y: XScale): string {
  const at = Array.from({ length: series.x.length }, (_, i) => i)
  const sx = (i: number) => x(series.x[i] as number)
  const sy = (i: number) => y(series.y[i] as number)
  const whole = (i: number) => Number.isFinite(series.x[i]) && Number.isFinite(series.y[i])
  if (series.draw === 'points') {
    return at
      .filter(whole)
      .map((i) => element('circle', { class: `f${colour}`, cx: sx(i), cy: sy(i), r: 3 }))
      .join('')
  }
  if (series.draw === 'bars') {
    return at
      .filter(whole)
      .map((i) =>
        element('rect', {
          class: `f${colour}`,
          x: sx(i) - 2,
          width: 4,
          y: Math.min(sy(i), y(0)),
          height: Math.abs(y(0) - sy(i)),
        }),
      )
      .join('')
  }
  if (series.draw === 'steps') {
    const d = area<number>().defined(whole).x(sx).y0(y(0)).y1(sy)(at)
    return element('path', { class: `f${colour}`, opacity: 0.35, d: rounded(d) })
  }
  const d = line<number>().defined(whole).x(sx).y(sy)(at)
  return element('path', { class: `line c${colour}`, d: rounded(d) })
}

function rounded(path: string | null): string {
  return (path ?? '').replace(/-?\d+\.\d{2,}/g, (digits) => tidy(Number(digits)))
}

function legend(series: readonly PanelSeries[], left: number, top: number): string {
  let at = left
  return series
    .map((one, i) => {
      const start = at
      at += 44 + one.name.length * 7.5
      const mark =
        one.draw === 'line'
          ? element('line', { class: `line c${i % 4}`, x1: start, x2: start + 26, y1: top, y2: top })
          : element('rect', { class: `f${i % 4}`, x: start + 8, y: top - 5, width: 10, height: 10 })
      return mark + element('text', { x: start + 32, y: top + 5, 'font-size': 12 }, escapeText(one.name))
    })
    .join('')
}
