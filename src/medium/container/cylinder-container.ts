import type { Length } from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { EXTENT } from '../domains.js'
import type { MediumHeight } from '../terms.js'
import { type Container, containerOf } from './container.js'

/** The measures of a cylinder. */
export interface CylinderMeasures extends MediumHeight {
  /** Diameter of the medium. Unit: cm. Range: (0, ∞). */
  readonly diameter: Length
}

/**
 * A container with vertical round walls: a core of the laboratory, a straight pot.
 *
 * @equation `A(z) = \frac{\pi}{4} d^2, \quad V = A H`
 * @returns The container.
 * @source definition
 * @example
 * cylinderContainer({ diameter: centimetres(7.6), height: centimetres(7.6) }).volume // => 0.344771
 */
export function cylinderContainer(measures: CylinderMeasures): Container {
  const height = namedIn(optionsOf(measures).height, EXTENT, 'height')
  const section = (Math.PI / 4) * namedIn(measures.diameter, EXTENT, 'diameter') ** 2
  return containerOf('cylinder', height, section * height, () => section)
}
