import type { Irradiance, PhotonFluxDensity } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import { BOTH_SIDES_RESISTANCE, CROP_PHOTON_FLUX, GROUND_SHARE, LIGHT_PHOTON_YIELD, REFLECTED } from '../domains.js'
import type { Cover, CropInAir } from '../terms.js'

import { type CanopyTranspiration, transpirationStanghellini1987 } from './stanghellini-1987.js'

/** A crop under lamps in a closed room. */
export interface LampInput extends CropInAir, Cover {
  /** Photosynthetic photon flux above the leaves. Unit: µmol/m²/s. Range: [0, 3000]. */
  readonly photonFlux: PhotonFluxDensity
  /** Photons in a joule of this light. Unit: µmol/J. Range: [3, 6]. */
  readonly photonsPerJoule: number
  /** Share of the light that leaves reflect; 0.05 by default. Unit: 1. Range: [0, 1). */
  readonly reflected?: number
  /** Resistance of the air to both sides of a leaf together: 100 with fans, 200 without (default). Unit: s/m. Range: [1, 50000]. */
  readonly airResistance?: number
  /** Resistance of both sides of a leaf together; without it that of lettuce at the photon flux. Unit: s/m. Range: [1, 50000]. */
  readonly leafResistance?: number
}

/**
 * Resistance of lettuce leaves under lamps, of both sides of a leaf together.
 *
 * @equation `r_s = 60\,\frac{1500 + PPFD}{200 + PPFD}`
 * @param photonFlux - Photosynthetic photon flux above the leaves. Unit: µmol/m²/s. Range: [0, 3000].
 * @returns Leaf resistance. Unit: s/m.
 * @validity Lettuce, photon flux 140 to 600.
 * @source graamans-2017, submodel of stomatal resistance, as four public programs write it; a fifth has 220 in place of 200
 * @example
 * leafResistanceGraamans2017(micromolesPerSquareMetreSecond(600)) // => 157.5
 */
export function leafResistanceGraamans2017(photonFlux: PhotonFluxDensity): number {
  const photons = numberIn(photonFlux, CROP_PHOTON_FLUX)
  return (60 * (1500 + photons)) / (200 + photons)
}

/**
 * Transpiration of a crop under lamps: the light that leaves catch and the dryness of slow air close the energy balance.
 *
 * The vapour concentration at the leaf is taken along the slope of the saturation curve, as in `transpirationStanghellini1987()`, which counts
 * the two sides of a leaf apart. Only the light counts as net radiation; warm fixtures close to the leaves add heat that is not in it. In
 * the dark only dryness drives.
 *
 * @equation `R_n = (1 - \rho)\,f_c\,\frac{PPFD}{y}, \qquad \lambda E = LAI\,\lambda\,\frac{\chi_s - \chi_a}{r_s + r_a}, \qquad H = LAI\,\rho_a c_p\,\frac{T_s - T_a}{r_a}, \qquad R_n = \lambda E + H`
 * @returns Transpiration, heat flows and leaf temperature.
 * @throws `DomainError` outside the ranges, `InputError` for a deficit above the saturation vapour pressure of the air.
 * @validity Rooms without sun; leaf resistance of lettuce unless another is given.
 * @source graamans-2017, Eq. 4 to 9, section 3.1 for 100 and 200 s/m; the reflectance of 0.05 in one of them
 * @example
 * const room = transpirationUnderLamps({
 *   photonFlux: micromolesPerSquareMetreSecond(300), photonsPerJoule: 4.8, cover: fraction(0.9), temperature: celsius(24),
 *   deficit: kilopascals(0.9), leafArea: leafAreaIndex(3),
 * })
 * room.transpiration // => 0.118
 */
export function transpirationUnderLamps(input: LampInput): CanopyTranspiration {
  const light =
    numberIn(optionsOf(input).photonFlux, CROP_PHOTON_FLUX, 'photonFlux') /
    numberIn(input.photonsPerJoule, LIGHT_PHOTON_YIELD, 'photonsPerJoule')
  const net =
    (1 - numberIn(optionOr(input.reflected, 0.05), REFLECTED, 'reflected')) *
    numberIn(input.cover, GROUND_SHARE, 'cover') *
    light
  return transpirationStanghellini1987({
    netRadiation: net as Irradiance,
    temperature: input.temperature,
    deficit: input.deficit,
    leafArea: input.leafArea,
    // Each side of a leaf has twice the resistance of both sides together.
    leafResistance:
      2 *
      numberIn(
        optionOr(input.leafResistance, leafResistanceGraamans2017(input.photonFlux)),
        BOTH_SIDES_RESISTANCE,
        'leafResistance',
      ),
    airResistance: 2 * numberIn(optionOr(input.airResistance, 200), BOTH_SIDES_RESISTANCE, 'airResistance'),
    ...(input.pressure === undefined ? {} : { pressure: input.pressure }),
  })
}
