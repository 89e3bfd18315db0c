import { answerOf } from '../quantity/answer.js'
import type {
  DailyLightIntegral,
  DailyRadiation,
  Duration,
  PhotonFluxDensity,
  PhotonYield,
  Share,
} from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import {
  DAILY_SOLAR,
  GLOBAL_PHOTON_YIELD,
  HOURS_OF_LIGHT,
  LIGHT_INTEGRAL,
  PHOTON_FLUX,
  SOME_HOURS_OF_LIGHT,
  TRANSMISSION,
} from './domains.js'

/** Photons per joule of global radiation: 0.45 of its energy, at 4.57 µmol/J. */
const SUNLIGHT = 2.0565

/** Light that is constant for part of a day. */
export interface ConstantLight {
  /** Photon flux density. Unit: µmol/m²/s. Range: [0, 20000]. */
  readonly photonFlux: PhotonFluxDensity
  /** Time with light. Unit: s. Range: [0, 86400]. */
  readonly photoperiod: Duration
}

/** Daily light integral that is wanted in a time. */
export interface WantedLight {
  /** Daily light integral. Unit: mol/m²/d. Range: [0, 200]. */
  readonly integral: DailyLightIntegral
  /** Time with light. Unit: s. Range: (0, 86400]. */
  readonly photoperiod: Duration
}

/** Sunlight of a day, outside or under a roof. */
export interface DaySunlight {
  /** Global radiation of the day, outside. Unit: MJ/m²/d. Range: [0, 60]. */
  readonly solar: DailyRadiation
  /** Photons per joule of global radiation; 2.0565 by default. Unit: µmol/J. Range: (0, 3]. */
  readonly photonYield?: PhotonYield
  /** Share that passes the roof; 1 by default. Unit: 1. Range: [0, 1]. */
  readonly transmission?: Share
}

/**
 * Daily light integral of light that is constant for a time.
 *
 * @equation `DLI = 10^{-6}\,Q\,t`
 * @returns Daily light integral. Unit: mol/m²/d.
 * @source definition; torres-2010
 * @example
 * dailyLightIntegral({ photonFlux: micromolesPerSquareMetreSecond(600), photoperiod: hours(12) }) // => 25.92
 */
export function dailyLightIntegral(light: ConstantLight): DailyLightIntegral {
  const { photonFlux, photoperiod } = optionsOf(light)
  return (numberIn(photonFlux, PHOTON_FLUX, 'photonFlux') *
    numberIn(photoperiod, HOURS_OF_LIGHT, 'photoperiod') *
    1e-6) as DailyLightIntegral
}

/**
 * Constant photon flux density that gives a daily light integral in a time: the inverse of `dailyLightIntegral`.
 *
 * @equation `Q = 10^{6} \frac{DLI}{t}`
 * @returns Photon flux density. Unit: µmol/m²/s.
 * @source definition; torres-2010
 * @example
 * photonFluxForDailyLight({ integral: molesPerSquareMetreDay(25.92), photoperiod: hours(12) }) // => 600.0
 */
export function photonFluxForDailyLight(light: WantedLight): PhotonFluxDensity {
  const { integral, photoperiod } = optionsOf(light)
  return answerOf(
    (numberIn(integral, LIGHT_INTEGRAL, 'integral') * 1e6) / numberIn(photoperiod, SOME_HOURS_OF_LIGHT, 'photoperiod'),
    'photoperiod',
  ) as PhotonFluxDensity
}

/**
 * Daily light integral of sunlight from the global radiation of the day.
 *
 * @equation `DLI = R_s\,y_g\,\tau`
 * @returns Daily light integral. Unit: mol/m²/d.
 * @validity Sun and sky; lamps have their own photon yield.
 * @source thimijan-1983, for 4.57 µmol/J; share of 0.45 from common practice [not confirmed, source not seen]
 * @example
 * dailyLightIntegralOfSunlight({ solar: megajoulesPerSquareMetreDay(20), transmission: fraction(0.7) }) // => 28.79
 */
export function dailyLightIntegralOfSunlight(day: DaySunlight): DailyLightIntegral {
  const { solar, photonYield, transmission } = optionsOf(day)
  const photons =
    numberIn(solar, DAILY_SOLAR, 'solar') *
    numberIn(optionOr(photonYield, SUNLIGHT), GLOBAL_PHOTON_YIELD, 'photonYield')
  return (photons * numberIn(optionOr(transmission, 1), TRANSMISSION, 'transmission')) as DailyLightIntegral
}
