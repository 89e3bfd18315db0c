import { integrate } from '../../numerics/quadrature.js'
import type { AirFilledPorosity, Length, Share, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { MIN_AIR } from '../domains.js'
import type { MediumInContainer } from '../terms.js'
import { requireMediumInContainer } from './container-water.js'

/** A container that has drained and the air below which its medium counts as waterlogged. */
export interface PerchedWaterRequest extends MediumInContainer {
  /** Least air-filled porosity that roots need, often 0.1; zero for the fully saturated layer. Unit: 1. Range: [0, 1). */
  readonly minAir: AirFilledPorosity
}

/** The wet layer above the bottom of a drained container. */
export interface PerchedWaterTable {
  /** Height above the bottom at which the air reaches the least; it belongs to the medium and may exceed the container. Unit: cm. */
  readonly height: Length
  /** Share of the medium in the container that lies below that height. Unit: 1. */
  readonly share: Share
}

/**
 * Perched water table: the layer above the bottom of a drained container that holds less air than roots need, and how much of the
 * container it takes. The layer is as high in every container of the same medium, so a low container may be wet to the top.
 *
 * @equation `z : \theta(s = z) = \theta_s - \varepsilon_a`
 * @returns Height of the layer and its share of the container.
 * @throws `DomainError` outside the ranges, and when the medium has less air than that at any suction.
 * @validity As for container capacity. The least air is common practice, no source; it depends on crop and temperature.
 * @source definition: hydrostatics
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) })
 * perchedWaterTable({ container, medium, minAir: fraction(0.1) }) // => { height: 5.82369, share: 0.776492 }
 */
export function perchedWaterTable(request: PerchedWaterRequest): PerchedWaterTable {
  requireObject(request, 'request')
  const { container, medium, minAir } = request
  requireMediumInContainer(request)
  const waterContent = (medium.saturated - numberIn(minAir, MIN_AIR, 'minAir')) as WaterContent
  const height = medium.suction(waterContent)
  if (height >= container.height) return { height: height as number as Length, share: 1 as Share }
  // 1 m² times 1 cm is 10 L.
  const ends = [0, ...container.breakpoints.filter((z) => z < height), height]
  const litresBelow = height > 0 ? 10 * integrate((z) => container.area(z as Length), ends) : 0
  return { height: height as number as Length, share: (litresBelow / container.volume) as Share }
}
