import { area, line } from 'd3-shape'
import type { PanelSeries } from './panel-chart.js'
import { element, tidy } from './svg.js'
import { LOOKS } from './theme.js'
import { type Place, thinBars, thinLine, thinPoints } from './thin.js'

/** From a value to its place in px. */
export type Scale = (value: number) => number

/** A range smaller than this cannot be divided into ticks: the numbers of the language end soon after. */
export const MIN_SIZE = 1e-290

/** A number that a picture can hold: beyond this, differences overflow. */
export function drawable(value: number | undefined): value is number {
  return typeof value === 'number' && Math.abs(value) < 1e300
}

/** The look of a series: the one it asks for, or its place in the list. */
export function lookOf(series: PanelSeries, place: number): number {
  const look = series.look ?? place
  return Number.isInteger(look) && look >= 0 ? look % LOOKS : place % LOOKS
}

/** More points than this are thinned to what the eye can tell apart. */
const MANY = 2000
const MAX_POINTS = 1500

/** A series as SVG text in px. */
export function drawSeries(series: PanelSeries, look: number, x: Scale, y: Scale): string {
  const count = Math.min(series.x.length, series.y.length)
  const placeOf = (i: number): Place | undefined => {
    if (!(drawable(series.x[i]) && drawable(series.y[i]))) return undefined
    const place: Place = [x(series.x[i]!), y(series.y[i]!)]
    return Number.isFinite(place[0]) && Number.isFinite(place[1]) ? place : undefined
  }
  if (series.draw === 'line' || series.draw === 'steps') {
    const places =
      count > MANY ? thinLine(count, placeOf) : Array.from({ length: count }, (_, i): Place | undefined => placeOf(i))
    return drawLine(series, look, places, y)
  }
  const there: Place[] = []
  for (let i = 0; i < count; i++) {
    const place = placeOf(i)
    if (place !== undefined) there.push(place)
  }
  if (series.draw === 'points') {
    const seen = there.length > MANY ? thinPoints(there, MAX_POINTS) : there
    return seen.map(([px, py]) => marker(look, px, py)).join('')
  }
  if (series.draw === 'bars') return drawBars(series, look, there.length > MANY ? thinBars(there, y(0)) : there, x, y)
  if (there.length < 3) return ''
  const d = there.map(([px, py], n) => `${n === 0 ? 'M' : 'L'}${tidy(px)} ${tidy(py)}`).join('')
  return element('path', { class: `region f${look}`, d: `${d}Z` })
}

function drawLine(series: PanelSeries, look: number, places: readonly (Place | undefined)[], y: Scale): string {
  const whole = (place: Place | undefined) => place !== undefined
  const px = (place: Place | undefined) => (place as Place)[0]
  const py = (place: Place | undefined) => (place as Place)[1]
  if (series.draw === 'line')
    return element('path', {
      class: `line c${look}`,
      d: rounded(line<Place | undefined>().defined(whole).x(px).y(py)(places)),
    })
  const d = area<Place | undefined>().defined(whole).x(px).y0(y(0)).y1(py)(places)
  return element('path', { class: `f${look}`, opacity: 0.35, d: rounded(d) })
}

function drawBars(series: PanelSeries, look: number, places: readonly Place[], x: Scale, y: Scale): string {
  // An axis under bars is linear, so that all are as wide as the first.
  let first = 0
  for (let i = series.x.length - 1; i >= 0; i--) if (drawable(series.x[i])) first = series.x[i]!
  const wide = series.barWidth ?? 0
  const half = Math.max(2, (x(first + wide / 2) - x(first - wide / 2)) / 2 || 0)
  const ground = y(0)
  return places
    .map(([px, py]) =>
      element('rect', {
        class: `f${look} bar${look}`,
        x: px - half,
        width: 2 * half,
        y: Math.min(py, ground),
        height: Math.abs(ground - py),
      }),
    )
    .join('')
}

/** A point: circle, square, triangle, diamond, cross-like star and bar, in the order of the looks. */
export function marker(look: number, x: number, y: number): string {
  if (look === 0) return element('circle', { class: 'f0', cx: x, cy: y, r: 3.5 })
  const shapes = [
    '',
    'M-3.5-3.5h7v7h-7z',
    'M0-4.5L4.3 3.2H-4.3z',
    'M0-4.8L4.8 0 0 4.8-4.8 0z',
    'M-1.4-4.5h2.8v3.1h3.1v2.8H1.4v3.1h-2.8V1.4h-3.1v-2.8h3.1z',
    'M-5-1.7h10v3.4h-10z',
  ]
  return element('path', { class: `f${look}`, transform: `translate(${tidy(x)} ${tidy(y)})`, d: shapes[look] })
}

function rounded(path: string | null): string {
  return (path ?? '').replace(/-?\d+\.\d{2,}(?:e-?\d+)?/g, (digits) => tidy(Number(digits)))
}
