import type { Length } from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import type { MediumHeight } from '../terms.js'
import { type Container, checkExtent, containerOf } from './container.js'

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
  const height = checkExtent('height', optionsOf(measures).height)
  const section = checkExtent('length', measures.length) * checkExtent('width', measures.width)
  return containerOf('box', height, section * height, () => section)
}
