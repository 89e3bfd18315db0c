import { cutText, lettering, textWidth } from './lettering.js'
import type { Panel, PanelSeries } from './panel-chart.js'
import { lookOf, marker } from './series.js'
import { element } from './svg.js'

const SIZE = 12
const MARK = 32
const APART = 16
/** More rows than these would leave no room for the curves. */
const MAX_ROWS = 4
export const LEGEND_ROW = 18

/** A name and how what it names is drawn. */
interface Entry {
  readonly name: string
  readonly draw: PanelSeries['draw'] | 'rule' | 'gap' | 'band'
  readonly look: number
}

interface Item extends Entry {
  readonly left: number
  readonly row: number
  readonly room: number
}

/** Where each name of a legend stands, so that none overlaps; names that find no place are counted. */
export interface Legend {
  readonly items: readonly Item[]
  readonly rows: number
  readonly left: number
}

/** What else is named beside the series: rules that have no room at the side, and what grey and shaded parts mean. */
export interface AlsoNamed {
  readonly rules: boolean
  readonly gap: string | undefined
}

export function legendOf(panel: Panel, room: number, also: AlsoNamed): Legend {
  const series: Entry[] = panel.series
    .map((one, i) => ({ name: one.name, draw: one.draw, look: lookOf(one, i) }))
    .filter(({ name }) => name !== '')
  const regions = series.filter(({ draw }) => draw === 'region')
  const others: Entry[] = [
    ...(also.rules ? (panel.rules ?? []) : [])
      .filter(({ name }) => name !== '')
      .map(({ name }) => ({ name, draw: 'rule' as const, look: 0 })),
    ...(panel.bandName === undefined ? [] : [{ name: panel.bandName, draw: 'band' as const, look: 0 }]),
    ...(also.gap === undefined ? [] : [{ name: also.gap, draw: 'gap' as const, look: 0 }]),
  ]
  const shown = [...series, ...others]
  // One curve alone is named by its axis.
  if (shown.length < 2 && regions.length === 0 && others.length === 0) return { items: [], rows: 0, left: 0 }
  const items: Item[] = []
  let at = 0
  let row = 0
  for (const entry of shown) {
    const wide = Math.min(room - MARK, textWidth(entry.name, SIZE))
    if (at > 0 && at + MARK + wide > room) {
      at = 0
      row += 1
    }
    if (row === MAX_ROWS) break
    items.push({ ...entry, left: at, row, room: wide })
    at += MARK + wide + APART
  }
  return { items, rows: Math.min(row + 1, MAX_ROWS), left: shown.length - items.length }
}

export function drawLegend(legend: Legend, left: number, top: number, room: number): string {
  const names = legend.items.map((item, i) => {
    const { left: at, row, room: wide } = item
    const last = legend.left > 0 && i === legend.items.length - 1
    const more = last ? ` and ${legend.left} more` : ''
    const space = last ? room - at - MARK : wide
    const name = more === '' ? item.name : cutText(item.name, SIZE, space - textWidth(more, SIZE)) + more
    const [x, y] = [left + at, top + LEGEND_ROW * row]
    return sign(item, x, y) + lettering(name, SIZE, space + 1, { x: x + MARK, y: y + 4 })
  })
  return names.join('')
}

function sign({ draw, look }: Entry, x: number, y: number): string {
  const box = (name: string, stroke?: string) =>
    element('rect', { class: name, stroke, x: x + 6, y: y - 5, width: 14, height: 10 })
  if (draw === 'line') return element('line', { class: `line c${look}`, x1: x, x2: x + 26, y1: y, y2: y })
  if (draw === 'points') return marker(look, x + 13, y)
  if (draw === 'rule') return element('line', { class: 'rule', x1: x, x2: x + 26, y1: y, y2: y })
  if (draw === 'gap') return box('gap')
  if (draw === 'band') return box('band')
  if (draw === 'region') return box(`region f${look}`)
  return box(`f${look} bar${look}`)
}
