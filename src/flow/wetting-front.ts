import type {
  ApplicationRate,
  HydraulicConductivity,
  Length,
  SuctionHead,
  WaterContentChange,
  WaterDepth,
} from '../quantity/generated/kinds.js'
import { numberIn, optionOr } from '../quantity/guard.js'
import { FRONT_CONDUCTIVITY, FRONT_SUCTION, PONDED_DEPTH, WATER_CONTENT_RISE } from './domains.js'

/** A medium in which a sharp wetting front goes down. */
export interface WettingFront {
  /** Conductivity of the wetted medium, about half of the saturated one in soils because air stays trapped. Unit: cm/h. Range: (0, ∞). */
  readonly conductivity: HydraulicConductivity
  /** Suction at the front. Unit: cm. Range: [0, ∞). */
  readonly frontSuction: SuctionHead
  /** Water content behind the front less that ahead of it. Unit: m³/m³. Range: (0, 1]. */
  readonly rise: WaterContentChange
}

/** A wetting front under standing water. */
export interface PondedFront extends WettingFront {
  /** Depth of water that is kept on the surface, none when left out. Unit: cm. Range: [0, ∞). */
  readonly pondedDepth?: Length
}

/** What a medium has taken up and takes. */
export interface Infiltration {
  /** Water that has gone in. Unit: mm. */
  readonly infiltrated: WaterDepth
  /** Rate at which it goes in now. Unit: mm/h. */
  readonly rate: ApplicationRate
  /** How deep the front is. Unit: cm. */
  readonly frontDepth: Length
}

/** What is told of a depth and a rate in cm and cm/h. */
export function infiltrationOf(depth: number, rate: number, rise: number): Infiltration {
  return {
    infiltrated: (10 * depth) as WaterDepth,
    rate: (10 * rate) as ApplicationRate,
    frontDepth: (depth / rise) as Length,
  }
}

/** The numbers of a front, checked; `pull` is the P of the equation, in cm. */
export function checkFront(front: PondedFront): { conductivity: number; pull: number; rise: number } {
  const conductivity = numberIn(front.conductivity, FRONT_CONDUCTIVITY, 'conductivity')
  const rise = numberIn(front.rise, WATER_CONTENT_RISE, 'rise')
  const head =
    numberIn(front.frontSuction, FRONT_SUCTION, 'frontSuction') +
    numberIn(optionOr(front.pondedDepth, 0), PONDED_DEPTH, 'pondedDepth')
  return { conductivity, pull: head * rise, rise }
}
