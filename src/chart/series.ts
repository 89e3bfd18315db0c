import { area, line } from 'd3-shape'
import { maxOf, minOf } from '../quantity/extremes.js'
import { lettering, textWidth } from './lettering.js'
import type { PanelSeries } from './panel-chart.js'
import { element, tidy } from './svg.js'
import { LOOKS } from './theme.js'

/** From a value to its place in px. */
export type Scale = (value: number) => number

/** A range smaller than this cannot be divided into ticks: the numbers of the language end soon after. */
export const LEAST = 1e-290

/** A number that a picture can hold: beyond this, differences overflow. */
export function drawable(value: number | undefined): value is number {
  return value !== undefined && Math.abs(value) < 1e300
}

/** The look of a series: the one it asks for, or its place in the list. */
export function lookOf(series: PanelSeries, place: number): number {
  const look = series.look ?? place
  return Number.isInteger(look) && look >= 0 ? look % LOOKS : place % LOOKS
}

/** A series as SVG text in px. */
export function drawSeries(series: PanelSeries, look: number, x: Scale, y: Scale): string {
  const at = Array.from({ length: Math.min(series.x.length, series.y.length) }, (_, i) => i)
  const sx = (i: number) => x(series.x[i] as number)
  const sy = (i: number) => y(series.y[i] as number)
  const whole = (i: number) =>
    drawable(series.x[i]) && drawable(series.y[i]) && Number.isFinite(sx(i)) && Number.isFinite(sy(i))
  const there = at.filter(whole)
  if (series.draw === 'points') return there.map((i) => marker(look, sx(i), sy(i))).join('')
  if (series.draw === 'bars') {
    const half = (i: number) => {
      const wide = series.barWidth ?? 0
      const here = series.x[i] as number
      return Math.max(2, (x(here + wide / 2) - x(here - wide / 2)) / 2 || 0)
    }
    return there
      .map((i) =>
        element('rect', {
          class: `f${look} bar${look}`,
          x: sx(i) - half(i),
          width: 2 * half(i),
          y: Math.min(sy(i), y(0)),
          height: Math.abs(y(0) - sy(i)),
        }),
      )
      .join('')
  }
  if (series.draw === 'region') {
    if (there.length < 3) return ''
    const d = there.map((i, n) => `${n === 0 ? 'M' : 'L'}${tidy(sx(i))} ${tidy(sy(i))}`).join('')
    return element('path', { class: `region f${look}`, d: `${d}Z` })
  }
  if (series.draw === 'steps') {
    const d = area<number>().defined(whole).x(sx).y0(y(0)).y1(sy)(at)
    return element('path', { class: `f${look}`, opacity: 0.35, d: rounded(d) })
  }
  const d = line<number>().defined(whole).x(sx).y(sy)(at)
  return element('path', { class: `line c${look}`, d: rounded(d) })
}

/** The name of a region at the mean of its corners; upright where the region is narrower than its name. */
export function regionName(series: PanelSeries, x: Scale, y: Scale): string {
  const corners = Array.from({ length: Math.min(series.x.length, series.y.length) }, (_, i) => i)
    .filter((i) => drawable(series.x[i]) && drawable(series.y[i]))
    .map((i) => [x(series.x[i] as number), y(series.y[i] as number)] as const)
  if (corners.length < 3 || series.name === '') return ''
  const mean = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis] / corners.length, 0)
  const heights = corners.map(([, height]) => height)
  const tall = maxOf(heights) - minOf(heights)
  const twice = corners.reduce((sum, [a, b], i) => {
    const [c, d] = corners[(i + 1) % corners.length] as readonly [number, number]
    return sum + a * d - c * b
  }, 0)
  const wide = tall > 0 ? Math.abs(twice) / 2 / tall : 0
  const upright = wide < textWidth(series.name, 13)
  return lettering(series.name, 13, upright ? tall : wide, {
    class: 'over',
    transform: `translate(${tidy(mean(0) + (upright ? 4 : 0))} ${tidy(mean(1) + 4)})${upright ? ' rotate(-90)' : ''}`,
    'text-anchor': 'middle',
  })
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
