import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT, POROSITY } from '../domains.js'
import type { ApparentPermittivity, PoreSpace, WaterHeld } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'
import { reachedPermittivity } from './reached-permittivity.js'

/** A permittivity and the porosity of the medium. */
export interface PermittivityAndPorosity extends ApparentPermittivity, PoreSpace {}

/** A water content and the porosity of the medium. */
export interface WaterContentAndPorosity extends WaterHeld, PoreSpace {}

/** Where the porosity form of Malicki, Plagge and Roth (1996) was measured. */
export const validityMalickiPorosity1996: Validity = {
  of: 'waterContentMalickiPorosity1996',
  note: '62 media from peat to mineral soil, sand and bark; a container medium still deserves its own calibration',
  inputs: { apparent: { min: 2, max: 66, unit: '1' }, porosity: { min: 0.33, max: 0.95, unit: '1' } },
}

/**
 * Volumetric water content from permittivity and porosity.
 *
 * A result above the porosity says that the relation does not fit the medium; above 1 or below 0 it is refused.
 *
 * @equation `\theta = \frac{\sqrt{\varepsilon} - 3.47 + 6.22\phi - 3.82\phi^2}{7.01 + 6.89\phi - 7.83\phi^2}`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the relation gives less than no water or more water than volume.
 * @validity 62 media of porosity 0.33 to 0.95, permittivity of 2 to 66 [span not confirmed, source not seen].
 * @source malicki-1996, Eq. 12
 * @example
 * waterContentMalickiPorosity1996({ apparent: permittivity(50), porosity: percent(90) }) // => 0.888795
 */
export function waterContentMalickiPorosity1996(reading: PermittivityAndPorosity): WaterContent {
  const root = Math.sqrt(numberIn(optionsOf(reading).apparent, APPARENT, 'apparent'))
  const porosity = numberIn(reading.porosity, POROSITY, 'porosity')
  const waterContent = (root - dryRoot(porosity)) / slope(porosity)
  return waterContentBetween(
    waterContent,
    1,
    reading.apparent,
    (theta) => (dryRoot(porosity) + slope(porosity) * theta) ** 2,
  )
}

/**
 * Apparent permittivity at which the porosity form of Malicki, Plagge and Roth (1996) gives a water content.
 *
 * @equation `\varepsilon = \left(3.47 - 6.22\phi + 3.82\phi^2 + (7.01 + 6.89\phi - 7.83\phi^2)\,\theta\right)^2`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and where no permittivity from 1 to 90 gives the water content.
 * @validity 62 media of porosity 0.33 to 0.95 [span not confirmed, source not seen].
 * @source malicki-1996, Eq. 12, solved for the permittivity
 * @example
 * permittivityMalickiPorosity1996({ waterContent: waterContent(0.888795), porosity: percent(90) }) // => 50.000
 */
export function permittivityMalickiPorosity1996(reading: WaterContentAndPorosity): Permittivity {
  const waterContent = numberIn(optionsOf(reading).waterContent, WATER_CONTENT, 'waterContent')
  const porosity = numberIn(reading.porosity, POROSITY, 'porosity')
  const at = (root: number) => (root - dryRoot(porosity)) / slope(porosity)
  const root = dryRoot(porosity) + slope(porosity) * waterContent
  return reachedPermittivity(root, waterContent, at(1), at(Math.sqrt(APPARENT.max)))
}

function dryRoot(porosity: number): number {
  return 3.47 + (-6.22 + 3.82 * porosity) * porosity
}

function slope(porosity: number): number {
  return 7.01 + (6.89 - 7.83 * porosity) * porosity
}
