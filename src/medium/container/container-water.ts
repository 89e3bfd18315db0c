import { integrate } from '../../numerics/quadrature.js'
import type { Length, SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireMade } from '../../quantity/guard.js'
import type { RetentionModel } from '../curves/retention-model.js'
import { BOTTOM_SUCTION } from '../domains.js'
import type { MediumInContainer } from '../terms.js'
import type { Container } from './container.js'

/** A container, its medium and how hard the bottom is sucked. */
export interface ContainerAtRest extends MediumInContainer {
  /** Suction at the bottom; zero, and left out, when it has just stopped draining. Unit: cm. Range: [0, ∞). */
  readonly bottomSuction?: SuctionHead
}

/** Refuses a container or a medium that no function of this library made, or that lost its functions. */
export function requireMediumInContainer({ container, medium }: MediumInContainer): void {
  requireMade(container, 'area', 'container')
  requireMade(medium, 'waterContent', 'medium')
}

/** A suction at the bottom of a container; none means that it has just stopped draining. */
export function checkBottomSuction(suction: SuctionHead | undefined): number {
  return numberIn(optionOr(suction, 0), BOTTOM_SUCTION, 'bottomSuction')
}

/** Mean water content at rest, when the suction is that of the bottom plus the height: the integral over the height. */
export function meanWaterContentAtRest({ container, medium, bottomSuction }: ContainerAtRest): number {
  requireMediumInContainer({ container, medium })
  return litresOf(container, medium, checkBottomSuction(bottomSuction)) / container.volume
}

/** Litres of water in a container at rest. */
export function litresOf(container: Container, medium: RetentionModel, bottomSuction: number): number {
  return overHeight(container, medium, bottomSuction, medium.waterContent, 1e-12, medium.saturated * container.volume)
}

/** Litres of which a curve over the suction is the share at each height, to a tolerance of themselves or of the floor. */
export function overHeight(
  container: Container,
  medium: RetentionModel,
  bottomSuction: number,
  curve: (suction: SuctionHead) => number,
  tolerance: number,
  floor: number,
): number {
  const height = container.height
  const places = [...container.breakpoints]
  for (const s of [...medium.breakpoints, ...turns(medium, bottomSuction, bottomSuction + height)])
    places.push((s - bottomSuction) as Length)
  const inside = places.filter((z) => z > 0 && z < height).sort((a, b) => a - b)
  const share = (z: number) => curve((bottomSuction + z) as SuctionHead) * container.area(z as Length)
  // 1 m² times 1 cm is 10 L.
  return 10 * integrate(share, [0, ...inside, height], tolerance, floor / 10)
}

/**
 * Suctions around the fall of the curve between two others, at distances that grow from its middle to both sides, so that no fall and
 * no tail is too steep to be seen.
 */
function turns(medium: RetentionModel, from: number, to: number): SuctionHead[] {
  const [wet, dry] = [medium.waterContent(from as SuctionHead), medium.waterContent(to as SuctionHead)]
  const reached = (share: number) => (dry + share * (wet - dry)) as WaterContent
  // Contents that differ in their last digits only have no fall between them.
  if (!(reached(0.95) < wet && reached(0.5) < reached(0.95) && reached(0.05) < reached(0.5) && dry < reached(0.05)))
    return []
  const early = medium.suction(reached(0.95))
  const middle = medium.suction(reached(0.5))
  const late = medium.suction(reached(0.05))
  const places: number[] = [early, middle, late]
  for (let step = middle - early; step > 0 && early - step > from; step *= 5) places.push(early - step)
  for (let step = late - middle; step > 0 && late + step < to; step *= 5) places.push(late + step)
  return places as SuctionHead[]
}
