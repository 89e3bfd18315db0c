import type {
  AnyDailyRadiation,
  LatentHeat,
  RadiationSum,
  Temperature,
  WaterDepth,
} from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import { AIR_TEMPERATURE, LATENT_HEAT, RADIATION_OF_DAY, RADIATION_SUM } from './domains.js'
import type { Vaporisation } from './terms.js'

/** Latent heat at about 20 °C, MJ/kg, as FAO-56 fixes it. */
const LAMBDA = 2.45

/** Radiation of a day as energy, and the latent heat of water. */
export interface DailyEvaporationInput extends Vaporisation {
  /** Energy of a day, such as net radiation. Unit: MJ/m²/d. Range: [-60, 60]. */
  readonly energy: AnyDailyRadiation
}

/** A radiation sum as energy, and the latent heat of water. */
export interface EvaporationCeilingInput extends Vaporisation {
  /** Radiation sum of any time up to a year. Unit: J/cm². Range: [0, 2000000]. */
  readonly sum: RadiationSum
}

/**
 * Heat that it takes to evaporate a kilogram of water at a temperature.
 *
 * @equation `\lambda = 2.501 - 2.361 \times 10^{-3}\,T`
 * @param temperature - Temperature of the water. Unit: °C. Range: [-60, 100].
 * @returns Latent heat of vaporisation. Unit: MJ/kg.
 * @source allen-1998, Annex 3, Eq. 3-1 (Harrison 1963)
 * @example
 * latentHeatFao56(celsius(20)) // => 2.454
 */
export function latentHeatFao56(temperature: Temperature): LatentHeat {
  return (2.501 - 2.361e-3 * numberIn(temperature, AIR_TEMPERATURE)) as LatentHeat
}

/**
 * Depth of water that the energy of a day can evaporate.
 *
 * @equation `d = \frac{R}{\lambda}`
 * @returns Depth of water. Unit: mm.
 * @source allen-1998, Eq. 20, with 1/2.45 where the print rounds to 0.408
 * @example
 * evaporationOfDailyEnergy({ energy: megajoulesPerSquareMetreDay(12) }) // => 4.9
 */
export function evaporationOfDailyEnergy(input: DailyEvaporationInput): WaterDepth {
  const { energy, latentHeat } = optionsOf(input)
  return (numberIn(energy, RADIATION_OF_DAY, 'energy') /
    numberIn(optionOr(latentHeat, LAMBDA), LATENT_HEAT, 'latentHeat')) as WaterDepth
}

/**
 * Most water that a radiation sum can evaporate, if all of it went into evaporation: the ceiling of every rule that waters by light.
 * 1 J/cm² can evaporate 4.08 mL/m². A crop with dry warm air around it can use more, because it also takes heat from the air.
 *
 * @equation `d = \frac{S}{100\,\lambda}`
 * @returns Depth of water. Unit: mm.
 * @source allen-1998, Eq. 20, for J/cm²
 * @example
 * evaporationCeiling({ sum: joulesPerSquareCentimetre(100) }) // => 0.408
 */
export function evaporationCeiling(input: EvaporationCeilingInput): WaterDepth {
  const { sum, latentHeat } = optionsOf(input)
  return (numberIn(sum, RADIATION_SUM, 'sum') /
    100 /
    numberIn(optionOr(latentHeat, LAMBDA), LATENT_HEAT, 'latentHeat')) as WaterDepth
}
