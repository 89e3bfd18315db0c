import type {
  Area,
  DailyRadiation,
  Duration,
  Elevation,
  LatentHeat,
  PhotonFluxDensity,
  PhotonYield,
  Pressure,
  RelativeHumidity,
  Share,
  Temperature,
  VapourPressure,
} from '../quantity/generated/kinds.js'
import type { LightSourceName } from './light-sources.js'

/** Terms of air and radiation that several inputs are composed of; their domains stand once, in `domains.ts`. */

/** The air. */
export interface AirTemperature {
  /** Temperature of the air. Unit: °C. Range: [-60, 100]. */
  readonly temperature: Temperature
}

/** The pressure of the air. */
export interface AirPressure {
  /** Pressure of the air with its vapour. Unit: kPa. Range: [30, 120]. */
  readonly pressure: Pressure
}

/** The coldest moment of a day. */
export interface MinTemperature {
  /** Lowest temperature of the day. Unit: °C. Range: [-60, 100]. */
  readonly minTemperature: Temperature
}

/** How humid the air became in a day. */
export interface HumidityRange {
  /** Highest relative humidity, reached near the lowest temperature. Unit: 1. Range: [0, 1]. */
  readonly maxHumidity: RelativeHumidity
  /** Lowest relative humidity, reached near the highest temperature. Unit: 1. Range: [0, 1]. */
  readonly minHumidity: RelativeHumidity
}

/** Vapour of the air. */
export interface ActualVapour {
  /** Actual vapour pressure. Unit: kPa. Range: [0, 10]. */
  readonly actualVapourPressure: VapourPressure
}

/** How high a site lies. */
export interface SiteElevation {
  /** Height of the site above sea level. Unit: m. Range: [-500, 9000]. */
  readonly elevation: Elevation
}

/** Radiation above the atmosphere. */
export interface Extraterrestrial {
  /** Extraterrestrial radiation. Unit: MJ/m²/d. Range: [0, 60]. */
  readonly extraterrestrial: DailyRadiation
}

/** Radiation on the ground in a day. */
export interface SolarRadiation {
  /** Solar radiation. Unit: MJ/m²/d. Range: [0, 60]. */
  readonly solar: DailyRadiation
}

/** What the ground reflects. */
export interface Albedo {
  /** Share that is reflected; 0.23 for the reference grass, which is the default. Unit: 1. Range: [0, 1]. */
  readonly albedo?: Share
}

/** Photons of a light. */
export interface PhotonsPerJoule {
  /** Photons per joule of this light, from `lightSources` or a data sheet. Unit: µmol/J. Range: (0, 6]. */
  readonly photonYield: PhotonYield
}

/** Photons that arrive. */
export interface CanopyPhotons {
  /** Photon flux density of 400 to 700 nm. Unit: µmol/m²/s. Range: [0, 20000]. */
  readonly photonFlux: PhotonFluxDensity
}

/** Where light comes from. */
export interface KnownSource {
  /** Light source. */
  readonly source: LightSourceName
}

/** What lamps light. */
export interface LitArea {
  /** Area that they light. Unit: m². Range: (0, ∞). */
  readonly area: Area
}

/** The month before. */
export interface MonthBefore {
  /** Mean air temperature of the month before. Unit: °C. Range: [-60, 60]. */
  readonly before: Temperature
}

/** Energy that evaporates water. */
export interface Vaporisation {
  /** Latent heat; 2.45 by default. Unit: MJ/kg. Range: [2.2, 2.7]. */
  readonly latentHeat?: LatentHeat
}

/** How far a sum trusts a straight line. */
export interface BridgedGap {
  /** Longest time between two readings that a straight line may bridge; two hours by default. Unit: s. Range: (0, ∞). */
  readonly maxGap?: Duration
}
