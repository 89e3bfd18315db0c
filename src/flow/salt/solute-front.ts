import { scaledErfc } from '../../numerics/normal-tail.js'
import type { Domain } from '../../quantity/domain.js'
import type { Duration } from '../../quantity/generated/duration.js'
import type { PoreWaterEC, SolutionEC } from '../../quantity/generated/electrical-conductivity.js'
import type { WaterFlux } from '../../quantity/generated/evapotranspiration-hourly.js'
import type { Length } from '../../quantity/generated/length.js'
import type { WaterContent } from '../../quantity/generated/water-content.js'
import { numberIn } from '../../quantity/guard.js'
import { ELAPSED } from '../domains.js'

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
  /** EC of the pore water before. Unit: dS/m. Range: [0, ∞). */
  readonly ecBefore: PoreWaterEC
  /** EC of the water that comes. Unit: dS/m. Range: [0, ∞). */
  readonly feedEC: SolutionEC
}

const DEPTH: Domain = {
  quantity: 'depth',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'count downwards from the surface',
}
const FLUX: Domain = {
  quantity: 'downward flux',
  unit: 'mm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the water that moves down, above zero',
}
const CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the share of the volume that is water',
}
const DISPERSIVITY: Domain = {
  quantity: 'dispersivity',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give about a centimetre for a substrate, or fit it to a flushing curve',
}
const EC: Domain = {
  quantity: 'EC',
  unit: 'dS/m',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the EC at 25 °C, zero or more',
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
  const flux = numberIn(front.downwardFlux, FLUX, 'downwardFlux') / 36000
  const velocity = flux / numberIn(front.waterContent, CONTENT, 'waterContent')
  const dispersion = velocity * numberIn(front.dispersivity, DISPERSIVITY, 'dispersivity')
  const before = numberIn(front.ecBefore, EC, 'ecBefore')
  const feed = numberIn(front.feedEC, EC, 'feedEC')
  if (time === 0) return before as PoreWaterEC
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
