import { InputError } from '../../quantity/errors.js'
import type { Length } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { CORNER_RADIUS, EXTENT } from '../domains.js'
import type { MediumHeight } from '../terms.js'
import { type Container, containerOf } from './container.js'

/** The measures of a square container with round corners. */
export interface RoundedSquareMeasures extends MediumHeight {
  /** Side at the bottom. Unit: cm. Range: (0, ∞). */
  readonly bottomSide: Length
  /** Side at the surface of the medium. Unit: cm. Range: (0, ∞). */
  readonly topSide: Length
  /** Radius of the corners. Unit: cm. Range: [0, ∞). */
  readonly cornerRadius: Length
}

/**
 * A square container with round corners and straight or slanting walls.
 *
 * @equation `A(z) = a(z)^2 - (4 - \pi) r^2, \quad V = \frac{H}{3} \left(a_b^2 + a_b a_t + a_t^2\right) - (4 - \pi) r^2 H`
 * @param measures - Sides, corner radius and height of the medium.
 * @returns The container.
 * @throws `DomainError` outside the ranges; `InputError` when the corners are wider than the sides.
 * @source definition
 * @example
 * roundedSquareContainer({
 *   bottomSide: centimetres(20),
 *   topSide: centimetres(24),
 *   cornerRadius: centimetres(4),
 *   height: centimetres(25),
 * }).volume // => 11.78997
 */
export function roundedSquareContainer(measures: RoundedSquareMeasures): Container {
  const height = namedIn(optionsOf(measures).height, EXTENT, 'height')
  const bottom = namedIn(measures.bottomSide, EXTENT, 'bottomSide')
  const top = namedIn(measures.topSide, EXTENT, 'topSide')
  const radius = numberIn(measures.cornerRadius, CORNER_RADIUS, 'cornerRadius')
  if (2 * radius > Math.min(bottom, top))
    throw new InputError(
      'cornerRadius',
      `two corners of ${radius} cm do not fit a side of ${Math.min(bottom, top)} cm`,
      'give at most half of the shorter side, which makes it round',
    )
  const corners = (4 - Math.PI) * radius * radius
  const volume = (height / 3) * (bottom * bottom + bottom * top + top * top) - corners * height
  return containerOf('rounded-square', height, volume, (z) => (bottom + ((top - bottom) * z) / height) ** 2 - corners)
}
