import type { Length } from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { EXTENT } from '../domains.js'
import type { MediumHeight } from '../terms.js'
import { type Container, containerOf } from './container.js'

/** The measures of a frustum. */
export interface FrustumMeasures extends MediumHeight {
  /** Diameter at the bottom. Unit: cm. Range: (0, ∞). */
  readonly bottomDiameter: Length
  /** Diameter at the surface of the medium. Unit: cm. Range: (0, ∞). */
  readonly topDiameter: Length
}

/**
 * A container with slanting round walls: the usual pot.
 *
 * @equation `A(z) = \frac{\pi}{4} \left(d_b + (d_t - d_b) \frac{z}{H}\right)^2, \quad V = \frac{\pi H}{12} \left(d_b^2 + d_b d_t + d_t^2\right)`
 * @returns The container.
 * @source definition
 * @example
 * frustumContainer({
 *   bottomDiameter: centimetres(11),
 *   topDiameter: centimetres(15),
 *   height: centimetres(12),
 * }).volume // => 1.605354
 */
export function frustumContainer(measures: FrustumMeasures): Container {
  const height = namedIn(optionsOf(measures).height, EXTENT, 'height')
  const bottom = namedIn(measures.bottomDiameter, EXTENT, 'bottomDiameter')
  const top = namedIn(measures.topDiameter, EXTENT, 'topDiameter')
  const volume = ((Math.PI * height) / 12) * (bottom * bottom + bottom * top + top * top)
  return containerOf('frustum', height, volume, (z) => (Math.PI / 4) * (bottom + ((top - bottom) * z) / height) ** 2)
}
