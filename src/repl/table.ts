import { maxOf } from '../quantity/extremes.js'
import { numberWithUnit } from './number-with-unit.js'
import type { OverRange } from './over-range.js'

/** A function at points of a range as two columns with their units. */
export function tableText(curve: OverRange): string {
  const heading = [
    `${curve.xName || 'x'}${curve.xUnit === '' ? '' : ` (${curve.xUnit})`}`,
    `${curve.yName || 'y'}${curve.yUnit === '' ? '' : ` (${curve.yUnit})`}`,
  ] as const
  const rows = curve.x.map((x, i) => {
    const y = curve.y[i]!
    return [numberWithUnit(x, undefined), Number.isFinite(y) ? numberWithUnit(y, undefined) : 'refused'] as const
  })
  const wide = maxOf([heading, ...rows].map(([x]) => x.length))
  const lines = [heading, ...rows].map(([x, y]) => `  ${x.padStart(wide)}  ${y}`)
  return curve.refused === 0 ? lines.join('\n') : [...lines, `  ${curve.firstRefusal}`].join('\n')
}
