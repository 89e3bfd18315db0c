import { LAMP_POWER, LIT_AREA } from '../../air/domains.js'
import type { LitArea } from '../../air/terms.js'
import { answersOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { Irradiance, PhotonFluxDensity, PhotonYield, Power, Share } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import { LAMP_EFFICACY, LIGHT_ON_CROP, LIGHT_PHOTON_YIELD } from '../domains.js'

/** Lamps over an area: what they take and what they give. */
export interface FixtureLightInput extends LitArea {
  /** Electrical power of all fixtures, with drivers. Unit: W. Range: [0, ∞). */
  readonly electricalPower: Power
  /** Photons of 400 to 700 nm for each joule of electricity: the efficacy on the data sheet. Unit: µmol/J. Range: (0, 6]. */
  readonly efficacy: PhotonYield
  /** Photons for each joule of the light itself, above the efficacy. Unit: µmol/J. Range: [3, 6]. */
  readonly photonsPerJoule: PhotonYield
  /** Share of the light that reaches the top of the crop; 1 by default. Unit: 1. Range: (0, 1]. */
  readonly reachingCrop?: Share
}

/** Where the electricity of lamps goes, for each square metre. The three flows of energy add up to the electricity. */
export interface FixtureLight {
  /** Photons on the crop. Unit: µmol/m²/s. */
  readonly photonFlux: PhotonFluxDensity
  /** Light on the crop. Unit: W/m². */
  readonly lightOnCrop: Irradiance
  /** Light on walls and paths. Unit: W/m². */
  readonly lightElsewhere: Irradiance
  /** Heat that fixtures give to the room. Unit: W/m². */
  readonly fixtureHeat: Irradiance
  /** Electricity. Unit: W/m². */
  readonly electricity: Irradiance
}

/**
 * Light and heat of lamps from their electrical power: what `transpirationUnderLamps()` takes, and what the room has to carry away.
 *
 * All electricity ends as heat or as vapour in the room. Lamps near water need the protection that the electrical code asks for; leave
 * the wiring to licensed people.
 *
 * @equation `PPFD = u\,\eta\,\frac{P}{A}, \qquad Q = \frac{P}{A}\left(1 - \frac{\eta}{y}\right)`
 * @returns Photon flux on the crop, light and heat for each square metre.
 * @throws `DomainError` outside the ranges, `InputError` when the efficacy is above the photons that light can hold.
 * @validity Light counted from 400 to 700 nm: energy beyond (far red, infrared of sodium lamps) is counted as heat of the fixture though part of it shines on the leaves.
 * @source definition
 * @example
 * fixtureLight({
 *   electricalPower: watts(6000), area: squareMetres(60), efficacy: micromolesPerJoule(2.8), photonsPerJoule: micromolesPerJoule(4.8),
 *   reachingCrop: fraction(0.9),
 * }) // => { photonFlux: 252, lightOnCrop: 52.5, lightElsewhere: 5.83, fixtureHeat: 41.7, electricity: 100 }
 */
export function fixtureLight(input: FixtureLightInput): FixtureLight {
  const electricity =
    numberIn(optionsOf(input).electricalPower, LAMP_POWER, 'electricalPower') / numberIn(input.area, LIT_AREA, 'area')
  const efficacy = numberIn(input.efficacy, LAMP_EFFICACY, 'efficacy')
  const photons = numberIn(input.photonsPerJoule, LIGHT_PHOTON_YIELD, 'photonsPerJoule')
  if (efficacy > photons) {
    throw new InputError(
      'efficacy',
      `${efficacy} µmol for each joule of electricity is more than the ${photons} in a joule of its light`,
      'check that the two are not swapped',
    )
  }
  const light = (electricity * efficacy) / photons
  const lightOnCrop = numberIn(optionOr(input.reachingCrop, 1), LIGHT_ON_CROP, 'reachingCrop') * light
  return answersOf(
    {
      photonFlux: (lightOnCrop * photons) as PhotonFluxDensity,
      lightOnCrop: lightOnCrop as Irradiance,
      lightElsewhere: (light - lightOnCrop) as Irradiance,
      fixtureHeat: (electricity - light) as Irradiance,
      electricity: electricity as Irradiance,
    },
    'area',
  )
}
