import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_KELLNER_LUNDIN, CONTENT_KELLNER_LUNDIN } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [0.039, 0.0317, -4.5e-4, 2.6e-6]

/** Where the relation of Kellner and Lundin (2001) was measured. */
export const validityKellnerLundin2001: Validity = {
  of: 'waterContentKellnerLundin2001',
  note: 'undisturbed bog peat of 0.03 to 0.07 g/cm³, porosity 0.95 to 0.98, little humified; a peat mix in a container needs its own calibration',
  inputs: { apparent: { min: 5, max: 75, unit: '1' } },
}

/**
 * Volumetric water content of undisturbed Sphagnum peat from its apparent permittivity.
 *
 * It reads 0.07 m³/m³ in air, so it does not serve for dry peat.
 *
 * @equation `\theta = 0.039 + 0.0317\varepsilon - 4.5\times10^{-4}\varepsilon^2 + 2.6\times10^{-6}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1, 77.13433].
 * @returns Water content. Unit: m³/m³.
 * @validity Undisturbed bog peat of 0.03 to 0.07 g/cm³, porosity 0.95 to 0.98, little humified, permittivity of 5 to 75; a peat mix in a container needs its own calibration.
 * @source kellner-2001, Table 2 (pooled data)
 * @example
 * waterContentKellnerLundin2001(permittivity(20)) // => 0.5138
 */
export function waterContentKellnerLundin2001(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_KELLNER_LUNDIN)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Kellner and Lundin (2001) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0.0702525, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Undisturbed bog peat of 0.03 to 0.07 g/cm³, porosity 0.95 to 0.98, little humified; a peat mix in a container needs its own calibration.
 * @source kellner-2001, Table 2 (pooled data), solved for the permittivity
 * @example
 * permittivityKellnerLundin2001(waterContentKellnerLundin2001(permittivity(20))) // => 20
 */
export function permittivityKellnerLundin2001(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_KELLNER_LUNDIN, COEFFICIENTS, numberIn(waterContent, CONTENT_KELLNER_LUNDIN))
}
