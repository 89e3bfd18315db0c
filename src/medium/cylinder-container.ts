import type { Length } from '../quantity/length.js'
import { type Container, checkExtent, prism } from './container.js'

/** The measures of a cylinder. */
export interface CylinderMeasures {
  /** Diameter of the medium. Unit: cm. Range: (0, ∞). */
  readonly diameter: Length
  /** Height of the medium. Unit: cm. Range: (0, ∞). */
  readonly height: Length
}

/**
 * A container with vertical round walls: a core of the laboratory, a straight pot.
 *
 * ```math
 * A(z) = \frac{\pi}{4} d^2, \quad V = A H
 * ```
 *
 * @param measures - Diameter and height of the medium.
 * @returns The container.
 * @throws `DomainError` outside the ranges.
 * @source definition
 * @example
 * ```ts
 * cylinderContainer({ diameter: centimetres(7.6), height: centimetres(7.6) }).volume // => 0.344771
 * ```
 */
export function cylinderContainer({ diameter, height }: CylinderMeasures): Container {
  const d = checkExtent('diameter', diameter)
  return prism('cylinder', (Math.PI / 4) * d * d, checkExtent('height', height))
}
