import { writeFileSync } from 'node:fs'
import { drawPanels } from '../chart/panels.js'
import { InputError } from '../quantity/errors.js'
import type { OverRange } from './over-range.js'
import type { PlotOptions } from './plot-options.js'
import { axisTitle, curveSentence } from './plot-words.js'

/** Writes a picture of some curves, and says so. The file must be new, so that nothing is lost. */
export function savedPicture(curves: readonly OverRange[], log: PlotOptions['log'], file: string): string {
  const [first] = curves as [OverRange]
  if (log.includes('y')) throw new InputError('save', 'a picture has no logarithmic height', "leave out 'y'")
  const picture = drawPanels({
    title: curves.map((curve) => curve.yName || 'y').join(', '),
    alternative: curves.map(curveSentence).join(' '),
    xTitle: axisTitle(first.xName || 'x', first.xUnit),
    xRange: [first.x[0]!, first.x.at(-1) as number],
    ...(log.includes('x') ? { xScale: 'logarithmic' as const } : {}),
    width: 760,
    height: 440,
    panels: [
      {
        yTitle: axisTitle(curves.length === 1 ? first.yName || 'y' : 'value', first.yUnit),
        series: curves.map(({ x, y, yName }, i) => ({ name: yName || `curve ${i + 1}`, x, y, draw: 'line' as const })),
      },
    ],
  })
  try {
    writeFileSync(file, picture, { flag: 'wx' })
  } catch (error) {
    throw new InputError(
      'save',
      `${file} cannot be written (${(error as { code?: string }).code})`,
      'give another name',
    )
  }
  return `Saved as ${file}.`
}
