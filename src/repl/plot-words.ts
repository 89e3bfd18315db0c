import { maxOf, minOf } from '../quantity/extremes.js'
import { numberWithUnit } from './number-with-unit.js'
import type { OverRange } from './over-range.js'

export function axisTitle(name: string, unit: string): string {
  return unit === '' ? name : `${name} (${unit})`
}

/** The curve in words, for those who do not see it. */
export function curveSentence(curve: OverRange): string {
  const at = curve.y.map((value, i) => [curve.x[i]!, value] as const).filter(([, value]) => Number.isFinite(value))
  const values = at.map(([, value]) => value)
  const first = at[0]!
  const end = at.at(-1) as readonly [number, number]
  const rising = values.every((value, i) => i === 0 || value >= values[i - 1]!)
  const falling = values.every((value, i) => i === 0 || value <= values[i - 1]!)
  const way = rising && falling ? 'Does not change' : rising ? 'Rises' : falling ? 'Falls' : 'Rises and falls'
  const point = ([x, y]: readonly [number, number]) =>
    `${numberWithUnit(y, curve.yUnit)} at ${numberWithUnit(x, curve.xUnit)}`
  const refused =
    curve.refused === 0 ? '' : ` ${curve.refused} of ${curve.y.length} points refused. ${curve.firstRefusal}`
  return `${way}: ${point(first)}, ${point(end)}; lowest ${numberWithUnit(minOf(values), curve.yUnit)}, highest ${numberWithUnit(maxOf(values), curve.yUnit)}.${refused}`
}
