import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT, BULK_DENSITY } from '../domains.js'
import type { ApparentPermittivity, DryDensity, WaterHeld } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'
import { reachedPermittivity } from './reached-permittivity.js'

/** A permittivity and the bulk density of the medium. */
export interface PermittivityAndDensity extends ApparentPermittivity, DryDensity {}

/** A water content and the bulk density of the medium. */
export interface WaterContentAndDensity extends WaterHeld, DryDensity {}

/** Where the bulk-density form of Malicki, Plagge and Roth (1996) was measured. */
export const validityMalickiDensity1996: Validity = {
  of: 'waterContentMalickiDensity1996',
  note: '62 media from peat to mineral soil, sand and bark; a container medium still deserves its own calibration',
  inputs: {
    apparent: { min: 2, max: 66, unit: '1' },
    bulkDensity: { min: 0.13, max: 1.8, unit: 'g/cm³' },
  },
}

/**
 * Volumetric water content from permittivity and bulk density.
 *
 * One curve from light peat to mineral soil. In light media it would exceed 1 above a permittivity of about 66; that is
 * refused, and so is less than no water.
 *
 * @equation `\theta = \frac{\sqrt{\varepsilon} - 0.819 - 0.168\rho - 0.159\rho^2}{7.17 + 1.18\rho}`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the relation gives less than no water or more water than volume.
 * @validity 62 media of 0.13 to about 1.8 g/cm³, the density at their lowest porosity, 0.33, permittivity of 2 to 66 [span not confirmed, source not seen].
 * @source malicki-1996, Eq. 10
 * @example
 * waterContentMalickiDensity1996({ apparent: permittivity(30), bulkDensity: gramsPerCubicCentimetre(0.4) }) // => 0.59743
 */
export function waterContentMalickiDensity1996(reading: PermittivityAndDensity): WaterContent {
  const root = Math.sqrt(numberIn(optionsOf(reading).apparent, APPARENT, 'apparent'))
  const density = numberIn(reading.bulkDensity, BULK_DENSITY, 'bulkDensity')
  const waterContent = (root - dryRoot(density)) / slope(density)
  return waterContentBetween(
    waterContent,
    1,
    reading.apparent,
    (theta) => (dryRoot(density) + slope(density) * theta) ** 2,
  )
}

/**
 * Apparent permittivity at which the bulk-density form of Malicki, Plagge and Roth (1996) gives a water content.
 *
 * @equation `\varepsilon = \left(0.819 + 0.168\rho + 0.159\rho^2 + (7.17 + 1.18\rho)\,\theta\right)^2`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and where no permittivity from 1 to 90 gives the water content.
 * @validity 62 media of 0.13 to about 1.8 g/cm³, the density at their lowest porosity, 0.33 [span not confirmed, source not seen].
 * @source malicki-1996, Eq. 10, solved for the permittivity
 * @example
 * permittivityMalickiDensity1996({ waterContent: waterContent(0.59743), bulkDensity: gramsPerCubicCentimetre(0.4) }) // => 30.000
 */
export function permittivityMalickiDensity1996(reading: WaterContentAndDensity): Permittivity {
  const waterContent = numberIn(optionsOf(reading).waterContent, WATER_CONTENT, 'waterContent')
  const density = numberIn(reading.bulkDensity, BULK_DENSITY, 'bulkDensity')
  const at = (root: number) => (root - dryRoot(density)) / slope(density)
  const root = dryRoot(density) + slope(density) * waterContent
  return reachedPermittivity(root, waterContent, at(1), at(Math.sqrt(APPARENT.max)))
}

function dryRoot(density: number): number {
  return 0.819 + (0.168 + 0.159 * density) * density
}

function slope(density: number): number {
  return 7.17 + 1.18 * density
}
