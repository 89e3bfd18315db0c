import { answerOf } from '../../quantity/answer.js'
import { SOME_WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { BulkEC, PoreWaterEC } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { CONDUCTIVITY, TRANSMISSION_INTERCEPT, TRANSMISSION_SLOPE } from '../domains.js'
import type { BulkConductivity, PoreSolution, WetMedium } from '../terms.js'

/** What Rhoades and others need to know of a medium. */
export interface MediumOfRhoades extends WetMedium {
  /** Slope of the transmission coefficient. Unit: 1. Range: [-10, 10]. */
  readonly slope: number
  /** Intercept of the transmission coefficient. Unit: 1. Range: [-2, 2]. */
  readonly intercept: number
  /** Conductivity along the surface of the solids. Unit: dS/m. Range: [0, ∞). */
  readonly surface: BulkEC
}

/** The medium and the conductivity of its pore water. */
export interface PoreWaterOfRhoades extends MediumOfRhoades, PoreSolution {}

/** The medium and the conductivity of the whole. */
export interface BulkOfRhoades extends MediumOfRhoades, BulkConductivity {}

/** A bulk conductivity and how it came about. */
export interface RhoadesBulk {
  /** Conductivity of the whole. Unit: dS/m. */
  readonly bulk: BulkEC
  /** Share of the path that the water leaves open. Unit: 1. */
  readonly transmission: number
}

/**
 * Bulk electrical conductivity from that of the pore water and the water content after Rhoades, Raats and Prather (1976).
 *
 * Slope, intercept and surface conductivity belong to the medium and are fitted at several water contents. In a study of coir it did
 * better than the model of Hilhorst below a bulk conductivity of 2.9 dS/m.
 *
 * @equation `\sigma_b = \sigma_w\,\theta\,(a\theta + b) + \sigma_s`
 * @returns Bulk conductivity and transmission coefficient.
 * @throws `DomainError` outside the ranges; `InputError` where the transmission coefficient is not above zero.
 * @source rhoades-1976
 * @example
 * bulkConductivityRhoades1976({
 *   poreWater: decisiemensPerMetre(4),
 *   waterContent: waterContent(0.3),
 *   slope: 1.382,
 *   intercept: -0.093,
 *   surface: decisiemensPerMetre(0.18),
 * }) // => { bulk: 0.56592, transmission: 0.3216 }
 */
export function bulkConductivityRhoades1976(medium: PoreWaterOfRhoades): RhoadesBulk {
  requireObject(medium, 'medium')
  const { waterContent, transmission, surface } = transmissionOf(medium)
  const bulk = numberIn(medium.poreWater, CONDUCTIVITY, 'poreWater') * waterContent * transmission + surface
  return { bulk: bulk as BulkEC, transmission }
}

/**
 * Electrical conductivity of the pore water from that of the whole and the water content after Rhoades, Raats and Prather (1976).
 *
 * @equation `\sigma_w = \frac{\sigma_b - \sigma_s}{\theta\,(a\theta + b)}`
 * @returns Conductivity of the pore water. Unit: dS/m.
 * @throws `DomainError` outside the ranges; `InputError` where the transmission coefficient is not above zero or the bulk conducts less than the surfaces.
 * @source rhoades-1976, solved for the pore water
 * @example
 * poreWaterConductivityRhoades1976({
 *   bulk: decisiemensPerMetre(0.5),
 *   waterContent: waterContent(0.3),
 *   slope: 1.382,
 *   intercept: -0.093,
 *   surface: decisiemensPerMetre(0.18),
 * }) // => 3.316750
 */
export function poreWaterConductivityRhoades1976(medium: BulkOfRhoades): PoreWaterEC {
  requireObject(medium, 'medium')
  const { waterContent, transmission, surface } = transmissionOf(medium)
  const bulk = numberIn(medium.bulk, CONDUCTIVITY, 'bulk')
  if (bulk < surface)
    throw new InputError(
      'bulk, surface',
      `the medium conducts ${bulk} dS/m, less than the ${surface} dS/m of its surfaces alone`,
      'check the reading and the fitted surface conductivity',
    )
  return answerOf((bulk - surface) / (waterContent * transmission), 'bulk') as PoreWaterEC
}

function transmissionOf(medium: MediumOfRhoades): { waterContent: number; transmission: number; surface: number } {
  const waterContent = numberIn(medium.waterContent, SOME_WATER_CONTENT, 'waterContent')
  const transmission =
    numberIn(medium.slope, TRANSMISSION_SLOPE, 'slope') * waterContent +
    numberIn(medium.intercept, TRANSMISSION_INTERCEPT, 'intercept')
  if (transmission <= 0)
    throw new InputError(
      'slope, intercept, waterContent',
      `the transmission coefficient is ${transmission} at a water content of ${waterContent}`,
      'at this water content the water films are broken and the model has no answer; use wetter readings',
    )
  return { waterContent, transmission, surface: numberIn(medium.surface, CONDUCTIVITY, 'surface') }
}
