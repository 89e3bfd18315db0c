import { integrate } from '../numerics/quadrature.js'
import { within } from '../quantity/guard.js'
import type { Length } from '../quantity/length.js'
import type { Span } from '../quantity/span.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { Container } from './container.js'
import type { RetentionModel } from './retention-model.js'

/** A container, its medium and how hard the bottom is sucked. */
export interface ContainerAtRest {
  /** The space that the medium fills. */
  readonly container: Container
  /** How the medium holds water. */
  readonly medium: RetentionModel
  /** Suction at the bottom; zero, and left out, when it has just stopped draining. Unit: cm. Range: [0, ∞). */
  readonly bottomSuction?: SuctionHead
}

const BOTTOM_SUCTION: Span = {
  quantity: 'bottom suction',
  unit: 'cm',
  min: 0,
  max: Infinity,
  hint: 'zero when the container has just stopped draining, more when roots or a wick have drawn on it',
}

/** A suction at the bottom of a container; none means that it has just stopped draining. */
export function checkBottomSuction(suction: SuctionHead | undefined): number {
  return within(suction ?? 0, BOTTOM_SUCTION)
}

/** Mean water content at rest, when the suction is that of the bottom plus the height: the integral over the height. */
export function meanContentAtRest({ container, medium, bottomSuction }: ContainerAtRest): number {
  return litresOf(container, medium, checkBottomSuction(bottomSuction)) / container.volume
}

/** Litres of water in a container at rest. */
export function litresOf(container: Container, medium: RetentionModel, bottomSuction: number): number {
  return overHeight(container, medium, bottomSuction, medium.waterContent)
}

/** Litres of which a curve over the suction is the share at each height. */
export function overHeight(
  container: Container,
  medium: RetentionModel,
  bottomSuction: number,
  curve: (suction: SuctionHead) => number,
  height: number = container.height,
): number {
  const kinks = [...container.breakpoints, ...medium.breakpoints.map((s) => s - bottomSuction)]
  const ends = [0, ...kinks.filter((z) => z > 0 && z < height).sort((a, b) => a - b), height]
  // 1 m² times 1 cm is 10 L.
  return 10 * integrate((z) => curve((bottomSuction + z) as SuctionHead) * container.area(z as Length), ends)
}
