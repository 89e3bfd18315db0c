import { answerOf } from '../quantity/answer.js'
import type {
  Illuminance,
  Irradiance,
  PhotonFluxDensity,
  PhotonYield,
  Power,
  Share,
} from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import { ILLUMINANCE, IRRADIANCE, LAMP_POWER, LIT_AREA, PHOTON_FLUX, PHOTON_YIELD, SHARE_ON_CANOPY } from './domains.js'
import { lightSource } from './light-sources.js'
import type { CanopyPhotons, KnownSource, LitArea, PhotonsPerJoule } from './terms.js'

/** Energy of light of 400 to 700 nm, and its photons per joule. */
export interface ParEnergyInput extends PhotonsPerJoule {
  /** Irradiance of 400 to 700 nm only, not that of a pyranometer. Unit: W/m². Range: [0, 5000]. */
  readonly irradiance: Irradiance
}

/** Photon flux of a light, and its photons per joule. */
export interface PhotonEnergyInput extends CanopyPhotons, PhotonsPerJoule {}

/** Illuminance of a named source. */
export interface IlluminanceInput extends KnownSource {
  /** Illuminance. Unit: lx. Range: [0, 1000000]. */
  readonly illuminance: Illuminance
}

/** Photon flux of a named source. */
export interface PhotonFluxOfSource extends KnownSource, CanopyPhotons {}

/** Lamps over an area. */
export interface LampsInput extends LitArea {
  /** Electric power of all lamps with their drivers. Unit: W. Range: [0, ∞). */
  readonly power: Power
  /** Photons of 400 to 700 nm per joule of electricity, from the data sheet of the lamp. Unit: µmol/J. Range: (0, 6]. */
  readonly photonYield: PhotonYield
  /** Share of the photons that reach the canopy; 1 by default. Unit: 1. Range: [0, 1]. */
  readonly arriving?: Share
}

/**
 * Photon flux density from the energy of light of 400 to 700 nm.
 *
 * @equation `Q = y\,I`
 * @returns Photon flux density. Unit: µmol/m²/s.
 * @source thimijan-1983
 * @example
 * photonFluxFromEnergy({
 *   irradiance: wattsPerSquareMetre(100), photonYield: lightSources['high-pressure-sodium'].photonYield,
 * }) // => 498.0
 */
export function photonFluxFromEnergy(input: ParEnergyInput): PhotonFluxDensity {
  const { irradiance, photonYield } = optionsOf(input)
  return (numberIn(irradiance, IRRADIANCE, 'irradiance') *
    numberIn(photonYield, PHOTON_YIELD, 'photonYield')) as PhotonFluxDensity
}

/**
 * Energy of light of 400 to 700 nm from its photon flux density: the inverse of `photonFluxFromEnergy`.
 *
 * @equation `I = \frac{Q}{y}`
 * @returns Irradiance of 400 to 700 nm. Unit: W/m².
 * @source thimijan-1983
 * @example
 * energyFromPhotonFlux({
 *   photonFlux: micromolesPerSquareMetreSecond(498), photonYield: lightSources['high-pressure-sodium'].photonYield,
 * }) // => 100.0
 */
export function energyFromPhotonFlux(input: PhotonEnergyInput): Irradiance {
  const { photonFlux, photonYield } = optionsOf(input)
  return answerOf(
    numberIn(photonFlux, PHOTON_FLUX, 'photonFlux') / numberIn(photonYield, PHOTON_YIELD, 'photonYield'),
    'photonYield',
  ) as Irradiance
}

/**
 * Photon flux density from the reading of a lux meter in the light of a known source. Lux weighs light as the eye does, so that the factor
 * belongs to the spectrum: never use that of the sun for lamps.
 *
 * @equation `Q = \frac{E}{k}`
 * @returns Photon flux density. Unit: µmol/m²/s.
 * @throws `DomainError` outside the range, `InputError` for an unknown source.
 * @validity The sources in `lightSources`; not diodes.
 * @source thimijan-1983, Table 3
 * @example
 * photonFluxFromIlluminance({ illuminance: lux(54000), source: 'sun-and-sky' }) // => 1000
 */
export function photonFluxFromIlluminance(input: IlluminanceInput): PhotonFluxDensity {
  const { illuminance, source } = optionsOf(input)
  return (numberIn(illuminance, ILLUMINANCE, 'illuminance') / lightSource(source).luxPerMicromole) as PhotonFluxDensity
}

/**
 * Illuminance that goes with a photon flux density of a known source: the inverse of `photonFluxFromIlluminance`.
 *
 * @equation `E = k\,Q`
 * @returns Illuminance. Unit: lx.
 * @throws `DomainError` outside the range, `InputError` for an unknown source.
 * @validity The sources in `lightSources`; not diodes.
 * @source thimijan-1983, Table 3
 * @example
 * illuminanceFromPhotonFlux({ photonFlux: micromolesPerSquareMetreSecond(200), source: 'high-pressure-sodium' }) // => 16400
 */
export function illuminanceFromPhotonFlux(input: PhotonFluxOfSource): Illuminance {
  const { photonFlux, source } = optionsOf(input)
  return (numberIn(photonFlux, PHOTON_FLUX, 'photonFlux') * lightSource(source).luxPerMicromole) as Illuminance
}

/**
 * Mean photon flux density under lamps, from their power and the photon yield of their data sheet.
 *
 * @equation `Q = \frac{y\,P\,f}{A}`
 * @returns Photon flux density. Unit: µmol/m²/s.
 * @source definition; efficacy of horticultural lamps as photons per electric energy: asabe-s640
 * @example
 * photonFluxOfLamps({
 *   power: watts(640), photonYield: micromolesPerJoule(2.8), area: squareMetres(1.5), arriving: fraction(0.9),
 * }) // => 1075.2
 */
export function photonFluxOfLamps(input: LampsInput): PhotonFluxDensity {
  const { power, photonYield, area, arriving } = optionsOf(input)
  const photons =
    numberIn(power, LAMP_POWER, 'power') *
    numberIn(photonYield, PHOTON_YIELD, 'photonYield') *
    numberIn(optionOr(arriving, 1), SHARE_ON_CANOPY, 'arriving')
  return answerOf(photons / numberIn(area, LIT_AREA, 'area'), 'area') as PhotonFluxDensity
}
