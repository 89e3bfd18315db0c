import { answerOf } from '../../quantity/answer.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { GravimetricWaterContent, WaterContent, WaterDensity } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { BULK_DENSITY, GRAVIMETRIC, WATER_DENSITY } from '../domains.js'
import type { PackedDensity, WaterDensityTerm, WaterVolume } from '../terms.js'

/** What ties water by mass to water by volume. */
export interface MassVolumeScale extends PackedDensity, WaterDensityTerm {}

/** Water by mass in a medium. */
export interface WaterByMass extends MassVolumeScale {
  /** Mass of water per dry mass. Unit: g/g. Range: [0, ∞). */
  readonly gravimetric: GravimetricWaterContent
}

/** Water by volume in a medium. */
export interface WaterByVolume extends MassVolumeScale, WaterVolume {}

/**
 * Volumetric water content from the water content by dry mass.
 *
 * @equation `\theta = w\,\rho_b / \rho_w`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges; `InputError` when the water would need more than the volume of medium.
 * @source definition
 * @example
 * waterContentFromGravimetric({
 *   gravimetric: gravimetricWaterContent(5),
 *   bulkDensity: gramsPerCubicCentimetre(0.12),
 * }) // => 0.6
 */
export function waterContentFromGravimetric(water: WaterByMass): WaterContent {
  const { gravimetric, bulkDensity, waterDensity } = optionsOf(water)
  const waterContent =
    (numberIn(gravimetric, GRAVIMETRIC, 'gravimetric') * numberIn(bulkDensity, BULK_DENSITY, 'bulkDensity')) /
    densityOf(waterDensity)
  if (waterContent > 1) {
    throw new InputError(
      'gravimetric',
      `${gravimetric} g/g at a bulk density of ${bulkDensity} g/cm³ is ${waterContent} m³/m³, more water than medium`,
      'check that the bulk density is that of the dry medium as packed',
    )
  }
  return waterContent as WaterContent
}

/**
 * Water content by dry mass from the volumetric water content.
 *
 * @equation `w = \theta\,\rho_w / \rho_b`
 * @returns Gravimetric water content. Unit: g/g.
 * @source definition
 * @example
 * gravimetricFromWaterContent({
 *   waterContent: percentWaterContent(60),
 *   bulkDensity: gramsPerCubicCentimetre(0.12),
 * }) // => 5
 */
export function gravimetricFromWaterContent(water: WaterByVolume): GravimetricWaterContent {
  const { waterContent, bulkDensity, waterDensity } = optionsOf(water)
  return answerOf(
    (numberIn(waterContent, WATER_CONTENT, 'waterContent') * densityOf(waterDensity)) /
      numberIn(bulkDensity, BULK_DENSITY, 'bulkDensity'),
    'bulkDensity',
  ) as GravimetricWaterContent
}

/** The density of the water, which is 1 g/cm³ when nobody says otherwise. */
export function densityOf(waterDensity: WaterDensity | undefined): number {
  return waterDensity === undefined ? 1 : numberIn(waterDensity, WATER_DENSITY, 'waterDensity')
}
