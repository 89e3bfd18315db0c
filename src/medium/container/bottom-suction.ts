import { rootBetween } from '../../numerics/root.js'
import type { SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, plain, requireObject } from '../../quantity/guard.js'
import type { MediumInContainer } from '../terms.js'
import { litresOf, overHeight, requireMediumInContainer } from './container-water.js'

/** A container at rest whose mean water content is known, from weighing or from probes. */
export interface ContainerOfKnownWaterContent extends MediumInContainer {
  /** Mean water content, above residual and at most container capacity. Unit: m³/m³. Range: any. */
  readonly waterContent: WaterContent
}

/**
 * Suction at the bottom of a container at rest from its mean water content: how hard roots have drawn since it drained.
 *
 * @equation `s_0 : \; \frac{1}{V} \int_0^H \theta(s_0 + z)\,A(z)\,dz = \bar\theta`
 * @returns Suction at the bottom; at a height z above it the suction is larger by z. Unit: cm.
 * @throws `DomainError` when the water content is not above residual, or above container capacity: then it still drains.
 * @validity Water at rest; while roots drink, the suction near them is larger. As for container capacity.
 * @source definition: hydrostatics
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = cylinderContainer({ diameter: centimetres(10), height: centimetres(12) })
 * bottomSuctionAtRest({ container, medium, waterContent: waterContent(0.65310042776) }) // => 10
 */
export function bottomSuctionAtRest(state: ContainerOfKnownWaterContent): SuctionHead {
  requireObject(state, 'state')
  const { container, medium, waterContent } = state
  requireMediumInContainer(state)
  const capacity = litresOf(container, medium, 0) / container.volume
  // A mean that the integral rounded up past capacity is capacity.
  if (Math.abs(plain(waterContent) - capacity) <= 1e-12) return 0 as SuctionHead
  numberIn(
    waterContent,
    {
      quantity: 'water content',
      unit: 'm³/m³',
      min: medium.residual,
      max: capacity,
      ends: '(]',
      hint: 'at rest the mean lies between the residual water content and container capacity',
    },
    'waterContent',
  )
  // The mean lies between the contents of bottom and surface, so the suction of the mean lies between theirs.
  const middle = medium.suction(waterContent)
  const low = Math.max(0, middle - container.height)
  const litres = waterContent * container.volume
  // Where the curve is flat to the last digit an end itself may be the answer.
  if (litresOf(container, medium, low) <= litres) return low as SuctionHead
  if (litresOf(container, medium, middle) >= litres) return middle
  return rootBetween((s0) => [litresOf(container, medium, s0) - litres, -slopeAt(s0)], low, middle) as SuctionHead

  /** Fall of the litres with the suction; it only guides the search, so three digits do. */
  function slopeAt(s0: number): number {
    return overHeight(container, medium, s0, medium.capacity, 1e-3, 0)
  }
}
