import type { PhotonYield, Share, Wavelength } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf, requireOption } from '../quantity/guard.js'
import { PAR_SHARE, PHOTON_YIELD, WAVELENGTH } from './domains.js'

/** Photons of a joule at a wavelength in nm: 1 / (h c N_A), in µmol/(J nm), from the exact constants of the SI: 1e-9 / (6.62607015e-34 × 299792458 × 6.02214076e23) / 1e-6. */
const PER_NANOMETRE = 0.00835934722911178

/** Energy share and photons of the light that plants use, in sunlight. */
export interface SunlightMix {
  /** Share of the energy of global radiation between 400 and 700 nm; 0.45 by default. Unit: 1. Range: (0, 1]. */
  readonly parShare?: Share
  /** Photons per joule of that share; 4.57 µmol/J by default. Unit: µmol/J. Range: (0, 6]. */
  readonly photonYield?: PhotonYield
}

/**
 * Photons in a joule of light of one wavelength.
 *
 * @equation `y = \frac{\lambda}{h\,c\,N_A}`
 * @param wavelength - Wavelength. Unit: nm. Range: [100, 4000].
 * @returns Photons per energy. Unit: µmol/J.
 * @source bipm-2019, defining constants
 * @example
 * photonYieldOfWavelength(nanometres(660)) // => 5.517
 */
export function photonYieldOfWavelength(wavelength: Wavelength): PhotonYield {
  return (numberIn(wavelength, WAVELENGTH) * PER_NANOMETRE) as PhotonYield
}

/**
 * Photons of 400 to 700 nm in a joule of global radiation, which a pyranometer measures.
 *
 * @equation `y_g = f_{PAR}\,y`
 * @returns Photons per energy of global radiation. Unit: µmol/J.
 * @validity Sun and sky together; the share rises to about 0.5 under clouds and in humid air [not confirmed, source not seen].
 * @source thimijan-1983, Table 3 for 4.57 µmol/J; the share of 0.45 is common practice [not confirmed, source not seen]
 * @example
 * photonYieldOfGlobalRadiation({}) // => 2.0565
 */
export function photonYieldOfGlobalRadiation(mix: SunlightMix): PhotonYield {
  requireOption(mix, 'mix')
  const { parShare, photonYield } = optionsOf(mix)
  return (numberIn(optionOr(parShare, 0.45), PAR_SHARE, 'parShare') *
    numberIn(optionOr(photonYield, 4.57), PHOTON_YIELD, 'photonYield')) as PhotonYield
}
