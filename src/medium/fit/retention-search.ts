import type { SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { oneOf } from '../../quantity/one-of.js'
import type { RetentionForm, ShapeParameter } from './retention-form.js'
import type { RetentionPoint } from './retention-points.js'

const ROLES = ['suction', 'inverse-suction', 'exponent', 'share'] as const

/** Where a parameter may lie, on the scale on which it is sought. */
export interface SearchRange {
  readonly low: number
  readonly high: number
}

/** Limits of the search for both water contents and each shape parameter. */
export interface SearchBox {
  readonly saturated: SearchRange
  readonly residual: SearchRange
  readonly shape: readonly SearchRange[]
}

/** A place from which to search: both contents and the shape on its search scale. */
export interface SearchStart {
  readonly saturated: number
  readonly residual: number
  readonly shape: readonly number[]
  readonly sumOfSquares: number
}

/** The range of a shape parameter on its search scale, a factor of ten beyond the measured suctions. */
export function searchRange(parameter: ShapeParameter, minSuction: number, maxSuction: number): SearchRange {
  const [low, high] = [Math.log(minSuction / 10), Math.log(maxSuction * 10)]
  oneOf(parameter.role, ROLES, 'role')
  switch (parameter.role) {
    case 'suction':
      return { low, high }
    case 'inverse-suction':
      return { low: -high, high: -low }
    case 'exponent':
      return { low: Math.log(0.005), high: Math.log(parameter.most - parameter.least) }
    case 'share':
      return { low: 0, high: 1 }
  }
}

/** The parameter itself from its place on the search scale. */
export function naturalValue(parameter: ShapeParameter, t: number): number {
  if (parameter.role === 'share') return t
  return parameter.role === 'exponent' ? parameter.least + Math.exp(t) : Math.exp(t)
}

/** How much the parameter moves for each unit of the search scale. */
export function naturalSlope(parameter: ShapeParameter, t: number): number {
  return parameter.role === 'share' ? 1 : Math.exp(t)
}

/**
 * The best places of a grid over the shape parameters. At each of them the two contents follow from a straight line, because
 * the curve is linear in them, so that no guess is needed for either.
 */
export function bestStarts(
  form: RetentionForm,
  points: readonly RetentionPoint[],
  box: SearchBox,
  most: number,
): SearchStart[] {
  const best: SearchStart[] = []
  const trials = form.shape.map((parameter, i) => trialsOf(parameter, box.shape[i]!))
  const visit = (shape: readonly number[]) => {
    const parameter = form.shape[shape.length]
    if (parameter !== undefined) {
      for (const t of trials[shape.length]!) visit([...shape, t])
      return
    }
    const natural = shape.map((t, i) => naturalValue(form.shape[i]!, t))
    if (form.admits?.(natural) === false) return
    const model = form.make(1 as WaterContent, 0 as WaterContent, natural)
    const saturations = points.map((point) => model.waterContent(point.suction as SuctionHead))
    const start = { ...waterContentsFor(saturations, points, box), shape }
    const place = best.findIndex((other) => other.sumOfSquares > start.sumOfSquares)
    best.splice(place < 0 ? best.length : place, 0, start)
    if (best.length > most) best.pop()
  }
  visit([])
  return best
}

function trialsOf(parameter: ShapeParameter, { low, high }: SearchRange): number[] {
  if (parameter.role === 'share') return [...parameter.trials]
  if (parameter.role === 'exponent') return parameter.trials.map((value) => Math.log(value - parameter.least))
  // Inside the measured suctions, which lie a factor of ten within the range.
  const [from, to] = [low + Math.LN10, high - Math.LN10]
  return Array.from({ length: parameter.trials }, (_, i) => from + ((to - from) * (i + 0.5)) / parameter.trials)
}

/** The limits of the curve that fit best for given saturations, inside their own limits. */
function waterContentsFor(saturations: readonly number[], points: readonly RetentionPoint[], box: SearchBox) {
  let [n, x, y, xx, xy] = [points.length, 0, 0, 0, 0]
  points.forEach(({ waterContent }, i) => {
    const s = saturations[i]!
    x += s
    y += waterContent
    xx += s * s
    xy += s * waterContent
  })
  n ||= 1
  const spread = xx - (x * x) / n
  const slope = spread > 1e-12 ? (xy - (x * y) / n) / spread : 0
  const residual = clip((y - slope * x) / n, box.residual)
  // With the residual fixed: θ - r = (s - r) S.
  const saturated = clip(xx > 0 ? residual + (xy - residual * x) / xx : 0, box.saturated)
  let sumOfSquares = 0
  points.forEach(({ waterContent }, i) => {
    sumOfSquares += (residual + (saturated - residual) * saturations[i]! - waterContent) ** 2
  })
  return { saturated, residual, sumOfSquares }
}

function clip(value: number, { low, high }: SearchRange): number {
  return Math.min(Math.max(value, low), high)
}
