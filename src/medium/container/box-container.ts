import type { Length } from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { EXTENT } from '../domains.js'
import type { MediumHeight } from '../terms.js'
import { type Container, containerOf } from './container.js'

/** The measures of a box. */
export interface BoxMeasures extends MediumHeight {
  /** Length of the medium. Unit: cm. Range: (0, ∞). */
  readonly length: Length
  /** Width of the medium. Unit: cm. Range: (0, ∞). */
  readonly width: Length
}

/**
 * A container with four vertical walls: a slab, a cube, a trough, a bed.
 *
 * @equation `A(z) = l w, \quad V = l w H`
 * @returns The container.
 * @source definition
 * @example
 * boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) }).volume // => 11.25
 */
export function boxContainer(measures: BoxMeasures): Container {
  const height = namedIn(optionsOf(measures).height, EXTENT, 'height')
  const section = namedIn(measures.length, EXTENT, 'length') * namedIn(measures.width, EXTENT, 'width')
  return containerOf('box', height, section * height, () => section)
}
