import { cutText, lettering, textWidth } from './lettering.js'
import type { PanelSeries } from './panel-chart.js'
import { lookOf, marker } from './series.js'
import { element } from './svg.js'

const SIZE = 12
const MARK = 32
const APART = 16
/** More rows than these would leave no room for the curves. */
const MOST_ROWS = 3
export const LEGEND_ROW = 18

interface Item {
  readonly series: PanelSeries
  readonly look: number
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

export function legendOf(series: readonly PanelSeries[], room: number): Legend {
  const shown = series
    .map((one, i) => ({ one, look: lookOf(one, i) }))
    .filter(({ one }) => one.draw !== 'region' && one.name !== '')
  if (shown.length < 2) return { items: [], rows: 0, left: 0 }
  const items: Item[] = []
  let at = 0
  let row = 0
  for (const { one, look } of shown) {
    const wide = Math.min(room - MARK, textWidth(one.name, SIZE))
    if (at > 0 && at + MARK + wide > room) {
      at = 0
      row += 1
    }
    if (row === MOST_ROWS) break
    items.push({ series: one, look, left: at, row, room: wide })
    at += MARK + wide + APART
  }
  return { items, rows: Math.min(row + 1, MOST_ROWS), left: shown.length - items.length }
}

export function drawLegend(legend: Legend, left: number, top: number, room: number): string {
  const names = legend.items.map(({ series, look, left: at, row, room: wide }) => {
    const x = left + at
    const y = top + LEGEND_ROW * row
    const mark =
      series.draw === 'line'
        ? element('line', { class: `line c${look}`, x1: x, x2: x + 26, y1: y, y2: y })
        : series.draw === 'points'
          ? marker(look, x + 13, y)
          : element('rect', { class: `f${look} bar${look}`, x: x + 8, y: y - 5, width: 10, height: 10 })
    const last = legend.left > 0 && series === legend.items[legend.items.length - 1]?.series
    const more = last ? ` and ${legend.left} more` : ''
    const space = last ? room - at - MARK : wide
    const name = more === '' ? series.name : cutText(series.name, SIZE, space - textWidth(more, SIZE)) + more
    return mark + lettering(name, SIZE, space + 1, { x: x + MARK, y: y + 4 })
  })
  return names.join('')
}
