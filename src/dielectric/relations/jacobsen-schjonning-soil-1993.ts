import { type Cubic, cubicAt, cubicRoot } from '../../numerics/cubic.js'
import { domainWith } from '../../quantity/domain.js'
import { MASS_FRACTION, WATER_CONTENT } from '../../quantity/domains.js'
import { DomainError } from '../../quantity/errors.js'
import type { MassFraction, Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_TO_49, BULK_DENSITY } from '../domains.js'
import type { ClayInSoil, DryDensity, WaterHeld } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'

const COEFFICIENTS: Cubic = [-0.0341, 0.0345, -1.14e-3, 1.71e-5]

/** What the soil is like. */
export interface SoilOfJacobsenSchjonning extends DryDensity, ClayInSoil {
  /** Organic matter in the dry mass. Unit: 1. Range: [0, 1]. */
  readonly organicMatter: MassFraction
}

/** A permittivity and the soil. */
export interface PermittivityInSoil extends SoilOfJacobsenSchjonning {
  /** Apparent relative permittivity. Unit: 1. Range: [1, 49]. */
  readonly apparent: Permittivity
}

/** A water content and the soil. */
export interface WaterContentInSoil extends SoilOfJacobsenSchjonning, WaterHeld {}

/** Where the soil form of Jacobsen and Schjønning (1993) was measured. */
export const validityJacobsenSchjonningSoil1993: Validity = {
  of: 'waterContentJacobsenSchjonningSoil1993',
  note: 'mineral soils, permittivity up to about 40; not for growing media',
  inputs: { apparent: { min: 3, max: 40, unit: '1' } },
}

/**
 * Volumetric water content of a mineral soil from permittivity, bulk density, clay and organic matter.
 *
 * C and O are percentages of the mass in the equation; here they are given as shares. A field test found no gain from the
 * density term.
 *
 * @equation `\theta = -0.0341 + 0.0345\varepsilon - 1.14\times10^{-3}\varepsilon^2 + 1.71\times10^{-5}\varepsilon^3 - 0.037\rho + 7.36\times10^{-4}C + 4.77\times10^{-3}O`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the relation gives less than no water or more water than volume.
 * @validity Mineral soils, permittivity from 3 to about 40; not for growing media.
 * @source jacobsen-1993, Eq. 3
 * @example
 * waterContentJacobsenSchjonningSoil1993({
 *   apparent: permittivity(10),
 *   bulkDensity: gramsPerCubicCentimetre(1.5),
 *   clay: percent(10),
 *   organicMatter: percent(2),
 * }) // => 0.1754
 */
export function waterContentJacobsenSchjonningSoil1993(reading: PermittivityInSoil): WaterContent {
  const shifted = shift(optionsOf(reading))
  const waterContent = cubicAt(COEFFICIENTS, numberIn(reading.apparent, APPARENT_TO_49, 'apparent')) + shifted
  return waterContentBetween(waterContent, 1, reading.apparent, (theta) => {
    const wettest = cubicAt(COEFFICIENTS, APPARENT_TO_49.max)
    const driest = cubicAt(COEFFICIENTS, APPARENT_TO_49.min)
    if (theta - shifted >= wettest) return APPARENT_TO_49.max
    return theta - shifted <= driest
      ? APPARENT_TO_49.min
      : cubicRoot(COEFFICIENTS, theta - shifted, 1, APPARENT_TO_49.max)
  })
}

/**
 * Apparent permittivity at which the soil form of Jacobsen and Schjønning (1993) gives a water content.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon, \rho, C, O) = \theta`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and where no permittivity from 1 to 49 gives the water content.
 * @validity Mineral soils, permittivity up to about 40; not for growing media.
 * @source jacobsen-1993, Eq. 3, solved for the permittivity
 * @example
 * permittivityJacobsenSchjonningSoil1993({
 *   waterContent: waterContent(0.1754),
 *   bulkDensity: gramsPerCubicCentimetre(1.5),
 *   clay: percent(10),
 *   organicMatter: percent(2),
 * }) // => 10
 */
export function permittivityJacobsenSchjonningSoil1993(reading: WaterContentInSoil): Permittivity {
  const waterContent = numberIn(optionsOf(reading).waterContent, WATER_CONTENT, 'waterContent')
  const shifted = shift(optionsOf(reading))
  const [low, high] = [APPARENT_TO_49.min - 0.001, APPARENT_TO_49.max + 0.001]
  const [driest, wettest] = [cubicAt(COEFFICIENTS, low) + shifted, cubicAt(COEFFICIENTS, high) + shifted]
  if (waterContent < driest || waterContent > wettest)
    throw new DomainError(
      waterContent,
      domainWith(WATER_CONTENT, {
        min: driest,
        max: wettest,
        hint: 'in this soil no permittivity from 1 to 49 gives this water content',
      }),
      'waterContent',
    )
  return cubicRoot(COEFFICIENTS, waterContent - shifted, low, high) as Permittivity
}

function shift({ bulkDensity, clay, organicMatter }: SoilOfJacobsenSchjonning): number {
  const clayPercent = 100 * numberIn(clay, MASS_FRACTION, 'clay')
  const organicPercent = 100 * numberIn(organicMatter, MASS_FRACTION, 'organicMatter')
  return -0.037 * numberIn(bulkDensity, BULK_DENSITY, 'bulkDensity') + 7.36e-4 * clayPercent + 4.77e-3 * organicPercent
}
