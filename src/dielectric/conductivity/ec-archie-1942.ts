import { answerOf } from '../../quantity/answer.js'
import { SOME_POROSITY } from '../../quantity/domains.js'
import type { BulkEC, DegreeOfSaturation, PoreWaterEC, Porosity } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { CEMENTATION, CONDUCTIVITY, SATURATION, SATURATION_EXPONENT, TORTUOSITY } from '../domains.js'
import type { BulkConductivity, PoreSolution } from '../terms.js'

/** What Archie needs to know of a medium. */
export interface MediumOfArchie {
  /** Volume of pores per volume of medium. Unit: 1. Range: (0, 1]. */
  readonly porosity: Porosity
  /** Volume of water per volume of pores. Unit: 1. Range: (0, 1]. */
  readonly saturation: DegreeOfSaturation
  /** Exponent of the porosity: 1.3 for loose grains. Unit: 1. Range: (0, 5]. */
  readonly cementation: number
  /** Exponent of the saturation: about 2. Unit: 1. Range: (0, 10]. */
  readonly saturationExponent: number
  /** Divisor for the length of the paths: 1 where nothing is known. Unit: 1. Range: (0, 10]. */
  readonly tortuosity: number
}

/** The medium and the conductivity of its pore water. */
export interface PoreWaterOfArchie extends MediumOfArchie, PoreSolution {}

/** The medium and the conductivity of the whole. */
export interface BulkOfArchie extends MediumOfArchie, BulkConductivity {}

/**
 * Bulk electrical conductivity from that of the pore water after Archie (1942).
 *
 * Nothing conducts along the surfaces: for sand, pumice and stone wool rather than for clay, peat or coir.
 *
 * @equation `\sigma_b = \frac{\sigma_w\,\phi^m S^n}{a}`
 * @returns Bulk conductivity. Unit: dS/m.
 * @source archie-1942
 * @example
 * bulkConductivityArchie1942({
 *   poreWater: decisiemensPerMetre(2),
 *   porosity: percent(40),
 *   saturation: percent(100),
 *   cementation: 1.3,
 *   saturationExponent: 2,
 *   tortuosity: 1,
 * }) // => 0.607726
 */
export function bulkConductivityArchie1942(medium: PoreWaterOfArchie): BulkEC {
  return answerOf(
    numberIn(optionsOf(medium).poreWater, CONDUCTIVITY, 'poreWater') * openShare(medium),
    'tortuosity',
  ) as BulkEC
}

/**
 * Electrical conductivity of the pore water from that of the whole after Archie (1942).
 *
 * @equation `\sigma_w = \frac{a\,\sigma_b}{\phi^m S^n}`
 * @returns Conductivity of the pore water. Unit: dS/m.
 * @source archie-1942, solved for the pore water
 * @example
 * poreWaterConductivityArchie1942({
 *   bulk: decisiemensPerMetre(0.5),
 *   porosity: percent(40),
 *   saturation: percent(80),
 *   cementation: 1.3,
 *   saturationExponent: 2,
 *   tortuosity: 1,
 * }) // => 2.571059
 */
export function poreWaterConductivityArchie1942(medium: BulkOfArchie): PoreWaterEC {
  return answerOf(numberIn(optionsOf(medium).bulk, CONDUCTIVITY, 'bulk') / openShare(medium), 'porosity') as PoreWaterEC
}

function openShare(medium: MediumOfArchie): number {
  const pores =
    numberIn(medium.porosity, SOME_POROSITY, 'porosity') ** numberIn(medium.cementation, CEMENTATION, 'cementation')
  const water =
    numberIn(medium.saturation, SATURATION, 'saturation') **
    numberIn(medium.saturationExponent, SATURATION_EXPONENT, 'saturationExponent')
  return (pores * water) / numberIn(medium.tortuosity, TORTUOSITY, 'tortuosity')
}
