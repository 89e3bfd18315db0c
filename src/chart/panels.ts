import { InputError } from '../quantity/errors.js'
import { numberIn, requireList, requireObject, requireRows } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import { HEIGHT, PICTURE_WIDTH } from './domains.js'
import { framed } from './frame.js'
import type { PanelChart } from './panel-chart.js'
import { stackPanels } from './stack-panels.js'

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
    for (const { name, x, y } of series) {
      requireList(x, `${name}.x`)
      requireList(y, `${name}.y`)
    }
    if (typeof yTitle !== 'string') throw new InputError('yTitle', `a ${typeof yTitle} is no title`, 'give text')
  }
  for (const list of ['gaps', 'marks', 'spans', 'xTicks'] as const) requireRows(chart[list] ?? [], list)
  oneOf(chart.xScale ?? 'linear', ['linear', 'logarithmic'], 'xScale')
  const width = numberIn(chart.width, PICTURE_WIDTH, 'width')
  const height = numberIn(chart.height, HEIGHT, 'height')
  return framed({ ...chart, width, height }, (top) => stackPanels(chart, top))
}
