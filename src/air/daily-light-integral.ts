import type { Domain } from '../quantity/domain.js'
import type { DailyRadiation } from '../quantity/generated/daily-radiation.js'
import type { Duration } from '../quantity/generated/duration.js'
import type { DailyLightIntegral } from '../quantity/generated/light-integral.js'
import type { PhotonFluxDensity } from '../quantity/generated/photon-flux.js'
import type { PhotonYield } from '../quantity/generated/photon-yield.js'
import type { Share } from '../quantity/generated/share.js'
import { numberIn } from '../quantity/guard.js'
import { optionsOf } from '../quantity/options-of.js'
import { DAILY_SOLAR, PHOTON_FLUX } from './domains.js'

const LIT: Domain = {
  quantity: 'time with light',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give the hours of light of a day, from 0 to 24',
}
const INTEGRAL: Domain = {
  quantity: 'daily light integral',
  unit: 'mol/m²/d',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give mol/m² a day; the sun gives at most about 65',
}
const WINDOW: Domain = {
  quantity: 'time with light',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'give the hours of light of a day, above 0 and up to 24',
}
const YIELD: Domain = {
  quantity: 'photon yield of global radiation',
  unit: 'µmol/J',
  min: 0,
  max: 3,
  ends: '(]',
  hint: 'give photons of 400 to 700 nm per joule of global radiation: about 2.06 µmol/J',
}
const THROUGH: Domain = {
  quantity: 'transmission',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the share of the light that passes roof, screens and gutters',
}
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
 * ```math
 * DLI = 10^{-6}\,Q\,t
 * ```
 *
 * @param light - Photon flux density and time.
 * @returns Daily light integral. Unit: mol/m²/d.
 * @throws `DomainError` outside the ranges.
 * @source definition; torres-2010
 * @example
 * ```ts
 * dailyLightIntegral({ photonFlux: micromolesPerSquareMetreSecond(600), photoperiod: hours(12) }) // => 25.92
 * ```
 */
export function dailyLightIntegral(light: ConstantLight): DailyLightIntegral {
  const { photonFlux, photoperiod } = optionsOf(light)
  return (numberIn(photonFlux, PHOTON_FLUX, 'photonFlux') *
    numberIn(photoperiod, LIT, 'photoperiod') *
    1e-6) as DailyLightIntegral
}

/**
 * Constant photon flux density that gives a daily light integral in a time: the inverse of `dailyLightIntegral`.
 *
 * ```math
 * Q = 10^{6} \frac{DLI}{t}
 * ```
 *
 * @param light - Integral and time.
 * @returns Photon flux density. Unit: µmol/m²/s.
 * @throws `DomainError` outside the ranges.
 * @source definition; torres-2010
 * @example
 * ```ts
 * photonFluxForDailyLight({ integral: molesPerSquareMetreDay(25.92), photoperiod: hours(12) }) // => 600.0
 * ```
 */
export function photonFluxForDailyLight(light: WantedLight): PhotonFluxDensity {
  const { integral, photoperiod } = optionsOf(light)
  return ((numberIn(integral, INTEGRAL, 'integral') * 1e6) /
    numberIn(photoperiod, WINDOW, 'photoperiod')) as PhotonFluxDensity
}

/**
 * Daily light integral of sunlight from the global radiation of the day.
 *
 * ```math
 * DLI = R_s\,y_g\,\tau
 * ```
 *
 * @param day - Global radiation, photons per joule of it, and transmission of the roof.
 * @returns Daily light integral. Unit: mol/m²/d.
 * @throws `DomainError` outside the ranges.
 * @validity Sun and sky; lamps have their own photon yield.
 * @source thimijan-1983, for 4.57 µmol/J; share of 0.45 from common practice [not confirmed, source not seen]
 * @example
 * ```ts
 * dailyLightIntegralOfSunlight({ solar: megajoulesPerSquareMetreDay(20), transmission: fraction(0.7) }) // => 28.79
 * ```
 */
export function dailyLightIntegralOfSunlight(day: DaySunlight): DailyLightIntegral {
  const { solar, photonYield, transmission } = optionsOf(day)
  const photons = numberIn(solar, DAILY_SOLAR, 'solar') * numberIn(photonYield ?? SUNLIGHT, YIELD, 'photonYield')
  return (photons * numberIn(transmission ?? 1, THROUGH, 'transmission')) as DailyLightIntegral
}
