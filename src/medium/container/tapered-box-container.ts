import type { Length } from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { EXTENT } from '../domains.js'
import type { MediumHeight } from '../terms.js'
import { type Container, containerOf } from './container.js'

/** The measures of a box with slanting walls. */
export interface TaperedBoxMeasures extends MediumHeight {
  /** Length at the bottom. Unit: cm. Range: (0, ∞). */
  readonly bottomLength: Length
  /** Width at the bottom. Unit: cm. Range: (0, ∞). */
  readonly bottomWidth: Length
  /** Length at the surface of the medium. Unit: cm. Range: (0, ∞). */
  readonly topLength: Length
  /** Width at the surface of the medium. Unit: cm. Range: (0, ∞). */
  readonly topWidth: Length
}

/**
 * A container with four slanting walls: a plug cell, a balcony box.
 *
 * @equation `A(z) = l(z)\,w(z), \quad V = \frac{H}{6} \left(A(0) + 4 A(H/2) + A(H)\right)`
 * @returns The container.
 * @source definition (the prismoidal rule is exact here)
 * @example
 * taperedBoxContainer({
 *   bottomLength: centimetres(3.2),
 *   bottomWidth: centimetres(3.2),
 *   topLength: centimetres(4),
 *   topWidth: centimetres(4),
 *   height: centimetres(5.5),
 * }).volume // => 0.07157333
 */
export function taperedBoxContainer(measures: TaperedBoxMeasures): Container {
  const height = namedIn(optionsOf(measures).height, EXTENT, 'height')
  const length = namedIn(measures.bottomLength, EXTENT, 'bottomLength')
  const width = namedIn(measures.bottomWidth, EXTENT, 'bottomWidth')
  const longer = namedIn(measures.topLength, EXTENT, 'topLength') - length
  const wider = namedIn(measures.topWidth, EXTENT, 'topWidth') - width
  const section = (z: number) => (length + (longer * z) / height) * (width + (wider * z) / height)
  const volume = (height / 6) * (section(0) + 4 * section(height / 2) + section(height))
  return containerOf('tapered-box', height, volume, section)
}
