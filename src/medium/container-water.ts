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

/** Mean water content at rest, when the suction is that of the bottom plus the height: the integral over the height. */
export function meanContentAtRest({ container, medium, bottomSuction = 0 as SuctionHead }: ContainerAtRest): number {
  const s0 = within(bottomSuction, BOTTOM_SUCTION)
  return litresBelow(container, medium, s0, container.height) / container.volume
}

/** Litres of water between the bottom and a height, at rest. */
export function litresBelow(container: Container, medium: RetentionModel, s0: number, height: number): number {
  const kinks = [...container.breakpoints, ...medium.breakpoints.map((s) => s - s0)].filter((z) => z > 0 && z < height)
  const ends = [0, ...kinks.sort((a, b) => a - b), height]
  // 1 m² times 1 cm is 10 L.
  return 10 * integrate((z) => medium.waterContent((s0 + z) as SuctionHead) * container.area(z as Length), ends)
}

const BOTTOM_SUCTION: Span = {
  quantity: 'bottom suction',
  unit: 'cm',
  min: 0,
  max: Infinity,
  hint: 'zero when the container has just stopped draining, more when roots or a wick have drawn on it',
}
