import { scaledErfc } from '../../numerics/normal-tail.js'
import { ELAPSED, SOME_WATER_CONTENT } from '../../quantity/domains.js'
import type {
  Duration,
  Length,
  PoreWaterEC,
  SolutionEC,
  WaterContent,
  WaterFlux,
} from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { DEPTH, EC, SOME_DISPERSIVITY, SOME_DOWNWARD_FLUX } from '../domains.js'

/** Salty or fresh water that steadily moves into a medium of even water content. */
export interface SoluteFront {
  /** Depth below the surface at which the EC is sought. Unit: cm. Range: [0, ∞). */
  readonly depth: Length
  /** Time since the new water began to come. Unit: s. Range: [0, ∞). */
  readonly time: Duration
  /** Water that moves down. Unit: mm/h. Range: (0, ∞). */
  readonly downwardFlux: WaterFlux
  /** Water content. Unit: m³/m³. Range: (0, 1]. */
  readonly waterContent: WaterContent
  /** How far moving water spreads salt. Unit: cm. Range: (0, ∞). */
  readonly dispersivity: Length
  /** EC of the pore water before. Unit: dS/m. Range: [0, 200]. */
  readonly ecBefore: PoreWaterEC
  /** EC of the water that comes. Unit: dS/m. Range: [0, 200]. */
  readonly feedEC: SolutionEC
}

/** A front in the terms of the closed forms. Units: cm, s. */
interface FrontTerms {
  readonly depth: number
  readonly time: number
  readonly velocity: number
  readonly dispersion: number
}

/** The EC where a closed form gives the share of the new water. */
export function frontEC(front: SoluteFront, share: (terms: FrontTerms) => number): PoreWaterEC {
  const depth = numberIn(front.depth, DEPTH, 'depth')
  const time = numberIn(front.time, ELAPSED, 'time')
  const flux = numberIn(front.downwardFlux, SOME_DOWNWARD_FLUX, 'downwardFlux') / 36000
  const velocity = flux / numberIn(front.waterContent, SOME_WATER_CONTENT, 'waterContent')
  const dispersion = velocity * numberIn(front.dispersivity, SOME_DISPERSIVITY, 'dispersivity')
  const before = numberIn(front.ecBefore, EC, 'ecBefore')
  const feed = numberIn(front.feedEC, EC, 'feedEC')
  // No time, or so little that nothing spreads.
  if (dispersion * time === 0) return (depth < velocity * time ? feed : before) as PoreWaterEC
  // So fast that its way leaves the numbers: the front is long past.
  if (velocity * time > 1e100) return feed as PoreWaterEC
  return (before + (feed - before) * share({ depth, time, velocity, dispersion })) as PoreWaterEC
}

/** The complement of the error function at a place, and times exp(vx/D) at its mirror image, whose parts alone would overflow. */
export function frontParts({ depth, time, velocity, dispersion }: FrontTerms) {
  const spread = 2 * Math.sqrt(dispersion * time)
  const ahead = (depth - velocity * time) / spread
  const gauss = Math.exp(-ahead * ahead)
  const near = ahead >= 0 ? gauss * scaledErfc(ahead) : 2 - gauss * scaledErfc(-ahead)
  return { near, mirrored: gauss * scaledErfc((depth + velocity * time) / spread), gauss }
}
