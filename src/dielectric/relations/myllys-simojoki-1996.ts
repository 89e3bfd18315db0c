import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_MYLLYS_SIMOJOKI } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [-0.0733, 0.0417, -8.01e-4, 5.56e-6]

/** Where the relation of Myllys and Simojoki (1996) was measured. */
export const validityMyllysSimojoki1996: Validity = {
  of: 'waterContentMyllysSimojoki1996',
  note: 'cultivated Sphagnum and Carex peat of 0.3 to 0.4 g/cm³, water content 0.3 to 0.8; a peat mix in a container needs its own calibration',
  inputs: { apparent: { min: 10, max: 65, unit: '1' } },
}

/**
 * Volumetric water content of cultivated peat soil from its apparent permittivity.
 *
 * The curve is flat between permittivities of 40 and 50: one unit there is only 0.003 m³/m³, so the reverse is uncertain.
 *
 * @equation `\theta = -0.0733 + 0.0417\varepsilon - 8.01\times10^{-4}\varepsilon^2 + 5.56\times10^{-6}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1.820663, 80.819].
 * @returns Water content. Unit: m³/m³.
 * @validity Cultivated Sphagnum and Carex peat of 0.3 to 0.4 g/cm³, water content 0.3 to 0.8, permittivity of 10 to 65; a peat mix in a container needs its own calibration.
 * @source myllys-1996, Table 2 (pooled); R² 0.980, standard deviation 0.027 m³/m³
 * @example
 * waterContentMyllysSimojoki1996(permittivity(20)) // => 0.48478
 */
export function waterContentMyllysSimojoki1996(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_MYLLYS_SIMOJOKI)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Myllys and Simojoki (1996) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Cultivated Sphagnum and Carex peat of 0.3 to 0.4 g/cm³, water content 0.3 to 0.8; a peat mix in a container needs its own calibration.
 * @source myllys-1996, Table 2 (pooled); R² 0.980, standard deviation 0.027 m³/m³, solved for the permittivity
 * @example
 * permittivityMyllysSimojoki1996(waterContentMyllysSimojoki1996(permittivity(20))) // => 20
 */
export function permittivityMyllysSimojoki1996(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_MYLLYS_SIMOJOKI, COEFFICIENTS, numberIn(waterContent, WATER_CONTENT))
}
