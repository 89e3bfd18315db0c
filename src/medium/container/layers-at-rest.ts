import { InputError } from '../../quantity/errors.js'
import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { requireList, requireObject, requireRows } from '../../quantity/guard.js'
import type { RetentionModel } from '../curves/retention-model.js'
import type { Container } from './container.js'
import { checkBottomSuction } from './container-water.js'
import { type WaterAndAir, waterAndAirAtRest } from './water-and-air.js'

/** One layer of a stack, with its own medium. */
export interface MediumLayer {
  /** The space that the medium of this layer fills. */
  readonly container: Container
  /** How the medium of this layer holds water. */
  readonly medium: RetentionModel
}

/** Layers of different media, one on the other. */
export interface LayeredStack {
  /** The layers, from the bottom up. */
  readonly layers: readonly MediumLayer[]
  /** Suction at the bottom of the lowest; zero, and left out, when it has just stopped draining. Unit: cm. Range: [0, ∞). */
  readonly bottomSuction?: SuctionHead
}

/**
 * What each layer of a stack of different media holds at rest, from the bottom up: a cube of one medium on a slab of another.
 *
 * Each layer is sucked by the height of those below it, so a cube on a slab is drier than the same cube on a tray.
 *
 * @equation `s_i(z) = s_0 + \sum_{j<i} H_j + z`
 * @returns Water and air of each layer, in the order given.
 * @throws `DomainError` outside the ranges; `InputError` when there is no layer.
 * @validity Layers that touch; a gap between them leaves a perched layer that this does not know.
 * @source definition: hydrostatics
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.02),
 *   saturated: waterContent(0.95),
 *   alpha: perCentimetre(0.08),
 *   n: 3.5,
 * })
 * const slab = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) })
 * const cube = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(6.5) })
 * const [inSlab, inCube] = layersAtRest({ layers: [{ container: slab, medium }, { container: cube, medium }] })
 * inCube.topSuction // => 14
 */
export function layersAtRest(stack: LayeredStack): WaterAndAir[] {
  requireObject(stack, 'stack')
  const { layers, bottomSuction } = stack
  requireRows(layers, 'layers')
  if (layers.length === 0) throw new InputError('layers', 'the stack is empty', 'give at least one layer')
  let suction = checkBottomSuction(bottomSuction)
  return layers.map(({ container, medium }) => {
    requireObject(container, 'container')
    requireObject(medium, 'medium')
    requireList(container.breakpoints, 'container.breakpoints')
    requireList(medium.breakpoints, 'medium.breakpoints')
    const held = waterAndAirAtRest({ container, medium, bottomSuction: suction as SuctionHead })
    suction += container.height
    return held
  })
}
