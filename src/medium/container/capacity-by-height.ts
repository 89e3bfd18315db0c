import { domainWith } from '../../quantity/domain.js'
import type { AirFilledPorosity, Length, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireMade, requireObject } from '../../quantity/guard.js'
import { EXTENT } from '../domains.js'
import type { RetainingMedium } from '../terms.js'
import { containerOf } from './container.js'
import { litresOf } from './container-water.js'

/** One medium in straight containers of several heights. */
export interface HeightsOfMedium extends RetainingMedium {
  /** Heights of the medium. Unit: cm. Range: each in (0, ∞). */
  readonly heights: readonly Length[]
}

/** Container capacity at one height. */
export interface CapacityAtHeight {
  /** Height of the medium. Unit: cm. */
  readonly height: Length
  /** Container capacity. Unit: m³/m³. */
  readonly containerCapacity: WaterContent
  /** Air-filled porosity at container capacity. Unit: 1. */
  readonly airFilledPorosity: AirFilledPorosity
}

/**
 * Container capacity and air of one medium in straight-walled containers of several heights: why a low slab is wetter than a tall
 * pot of the same medium, and why a laboratory value belongs to the height of its core.
 *
 * @equation `\theta_{CC}(H) = \frac{1}{H} \int_0^H \theta(z)\,dz`
 * @returns One entry for each height, in the order given.
 * @validity As for container capacity.
 * @source owen-2008 (the effect, measured on bark)
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.045),
 *   saturated: waterContent(0.43),
 *   alpha: perCentimetre(0.145),
 *   n: 2.68,
 * })
 * capacityByHeight({ medium, heights: [centimetres(7.6), centimetres(15)] })[0].containerCapacity // => 0.374668171
 */
export function capacityByHeight(request: HeightsOfMedium): CapacityAtHeight[] {
  requireObject(request, 'request')
  requireList(request.heights, 'heights')
  const { medium, heights } = request
  requireMade(medium, 'waterContent', 'medium')
  return heights.map((height) => {
    const column = containerOf(
      'column',
      numberIn(height, domainWith(EXTENT, { quantity: 'height' }), 'heights'),
      height,
      () => 1,
    )
    const capacity = litresOf(column, medium, 0) / column.volume
    return {
      height,
      containerCapacity: capacity as WaterContent,
      airFilledPorosity: (medium.saturated - capacity) as AirFilledPorosity,
    }
  })
}
