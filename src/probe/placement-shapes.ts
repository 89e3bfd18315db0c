import { EXTENT } from '../medium/domains.js'
import type { Length } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import { COORDINATE, SHAPE_RADIUS } from './domains.js'

/** A place in the medium. */
export interface PlaceInMedium {
  /** From the left edge of the surface, along the length. Unit: cm. Range: [0, ∞). */
  readonly x: Length
  /** From the front edge of the surface, across. Unit: cm. Range: [0, ∞). */
  readonly y: Length
  /** Below the surface of the medium. Unit: cm. Range: [0, ∞). */
  readonly depth: Length
}

/** A straight body: a row of rods from end to end, a stake, or a point when both ends are the same. */
export interface StraightBody {
  readonly from: PlaceInMedium
  /** The other end; the same place when left out. */
  readonly to?: PlaceInMedium
  /** Half of its thickness or width, 0 when left out. Unit: cm. Range: [0, ∞). */
  readonly radius?: Length
}

/** The medium that probes are put into, by its inner measures. */
export type PlacementContainer =
  | { readonly shape: 'cylinder'; readonly diameter: Length; readonly height: Length }
  | {
      readonly shape: 'tapered-pot'
      readonly bottomDiameter: Length
      readonly topDiameter: Length
      readonly height: Length
    }
  | { readonly shape: 'box'; readonly length: Length; readonly width: Length; readonly height: Length }

/** A body in plain numbers. */
export interface Body {
  readonly ends: readonly [Point, Point]
  readonly radius: number
}
export type Point = readonly [x: number, y: number, depth: number]

export function bodyOf({ from, to = from, radius = 0 as Length }: StraightBody): Body {
  return { ends: [pointOf(from, 'from'), pointOf(to, 'to')], radius: numberIn(radius, SHAPE_RADIUS, 'radius') }
}

export function pointOf(place: PlaceInMedium, argument: string): Point {
  requireObject(place, argument)
  const { x, y, depth } = place
  return [numberIn(x, COORDINATE, 'x'), numberIn(y, COORDINATE, 'y'), numberIn(depth, COORDINATE, 'depth')]
}

/** Height of the medium, its middle seen from above, and the distance of a point to the nearest side wall; negative outside. */
export interface Walls {
  readonly height: number
  readonly middle: readonly [x: number, y: number]
  readonly toSide: (point: Point) => number
}

export function wallsOf(container: PlacementContainer): Walls {
  requireObject(container, 'container')
  oneOf(container.shape, ['cylinder', 'tapered-pot', 'box'], 'container.shape')
  const height = numberIn(container.height, EXTENT, 'height')
  if (container.shape === 'box') {
    const [length, width] = [numberIn(container.length, EXTENT, 'length'), numberIn(container.width, EXTENT, 'width')]
    return { height, middle: [length / 2, width / 2], toSide: ([x, y]) => Math.min(x, length - x, y, width - y) }
  }
  const [top, bottom] =
    container.shape === 'cylinder'
      ? [radiusOf(container.diameter, 'diameter'), radiusOf(container.diameter, 'diameter')]
      : [radiusOf(container.topDiameter, 'topDiameter'), radiusOf(container.bottomDiameter, 'bottomDiameter')]
  // Across the slanting wall, not level: the cosine of its slant.
  const slant = height / Math.hypot(height, top - bottom)
  return {
    height,
    middle: [top, top],
    toSide: ([x, y, depth]) => (top + ((bottom - top) * depth) / height - Math.hypot(x - top, y - top)) * slant,
  }
}

const radiusOf = (diameter: number, argument: string) => numberIn(diameter, EXTENT, argument) / 2

/** Distance between two straight bodies, surface to surface. */
export function gapBetween(a: Body, b: Body): number {
  return distanceOfSegments(a.ends, b.ends) - a.radius - b.radius
}

/** The same seen from above, for what comes down from a dripper. */
export function gapFromAbove(a: Body, b: Body): number {
  const flat = ([p, q]: Body['ends']): Body['ends'] => [
    [p[0], p[1], 0],
    [q[0], q[1], 0],
  ]
  return distanceOfSegments(flat(a.ends), flat(b.ends)) - a.radius - b.radius
}

/**
 * Distance of two segments: the nearest pair lies either at an end of one of them or inside both, where the two lines are nearest.
 */
function distanceOfSegments(a: Body['ends'], b: Body['ends']): number {
  let nearest = Math.min(
    distanceToSegment(a[0], b),
    distanceToSegment(a[1], b),
    distanceToSegment(b[0], a),
    distanceToSegment(b[1], a),
  )
  const [d, e, r] = [minus(a[1], a[0]), minus(b[1], b[0]), minus(a[0], b[0])]
  const [dd, ee, de] = [dot(d, d), dot(e, e), dot(d, e)]
  const determinant = dd * ee - de * de
  if (determinant > 1e-12 * dd * ee) {
    const s = (de * dot(e, r) - ee * dot(d, r)) / determinant
    const t = (dd * dot(e, r) - de * dot(d, r)) / determinant
    if (s > 0 && s < 1 && t > 0 && t < 1) {
      const apart = r.map((value, i) => value + s * d[i]! - t * e[i]!)
      nearest = Math.min(nearest, Math.hypot(...apart))
    }
  }
  return nearest
}

function distanceToSegment(p: Point, [a, b]: Body['ends']): number {
  const [d, r] = [minus(b, a), minus(p, a)]
  const length = dot(d, d)
  const t = length > 0 ? Math.min(1, Math.max(0, dot(r, d) / length)) : 0
  return Math.hypot(...r.map((value, i) => value - t * d[i]!))
}

function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
