import { SOME_POROSITY, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { AirFilledPorosity, DegreeOfSaturation, Share, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { SATURATION } from '../domains.js'
import type { PoreVolume, WaterVolume } from '../terms.js'
import { type MediumDensities, solidShare } from './porosity.js'

/** A porosity and the water in it. */
export interface WaterInPores extends PoreVolume, WaterVolume {}

/** A porosity and the part of it that water fills. */
export interface SaturationOfPores extends PoreVolume {
  /** Volume of water per volume of pores. Unit: 1. Range: [0, 1]. */
  readonly saturation: DegreeOfSaturation
}

/** Densities of a medium and its water content. */
export interface WetMedium extends MediumDensities, WaterVolume {}

/** The three phases of a medium, which fill its volume. */
export interface PhaseShares {
  /** Volume of solids per volume of medium. Unit: 1. */
  readonly solid: Share
  /** Volume of water per volume of medium. Unit: m³/m³. */
  readonly water: WaterContent
  /** Volume of air per volume of medium. Unit: 1. */
  readonly air: AirFilledPorosity
}

/**
 * Air-filled porosity: the pores that hold no water.
 *
 * @equation `\varepsilon_a = \phi - \theta`
 * @returns Air-filled porosity. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the water needs more than the pores.
 * @source definition
 * @example
 * airFilledPorosity({ porosity: percent(93), waterContent: percentWaterContent(68) }) // => 0.25
 */
export function airFilledPorosity(pores: WaterInPores): AirFilledPorosity {
  const { porosity, waterContent } = optionsOf(pores)
  return airLeft(
    numberIn(porosity, SOME_POROSITY, 'porosity'),
    numberIn(waterContent, WATER_CONTENT, 'waterContent'),
  ) as AirFilledPorosity
}

/**
 * Degree of saturation: the share of the pores that water fills.
 *
 * @equation `S = \theta / \phi`
 * @returns Degree of saturation. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the water needs more than the pores.
 * @source definition
 * @example
 * degreeOfSaturation({ porosity: percent(80), waterContent: percentWaterContent(60) }) // => 0.75
 */
export function degreeOfSaturation(input: WaterInPores): DegreeOfSaturation {
  const { porosity, waterContent } = optionsOf(input)
  const pores = numberIn(porosity, SOME_POROSITY, 'porosity')
  return (1 - airLeft(pores, numberIn(waterContent, WATER_CONTENT, 'waterContent')) / pores) as DegreeOfSaturation
}

/**
 * Water content at a degree of saturation.
 *
 * @equation `\theta = S \phi`
 * @param pores - Porosity and degree of saturation.
 * @returns Water content. Unit: m³/m³.
 * @source definition
 * @example
 * waterContentAtSaturation({ porosity: percent(80), saturation: percent(75) }) // => 0.6
 */
export function waterContentAtSaturation(pores: SaturationOfPores): WaterContent {
  const { porosity, saturation } = optionsOf(pores)
  return (numberIn(porosity, SOME_POROSITY, 'porosity') *
    numberIn(saturation, SATURATION, 'saturation')) as WaterContent
}

/**
 * Shares of solid, water and air in a medium; they add up to 1.
 *
 * @equation `v_s = \rho_b / \rho_p, \quad v_w = \theta, \quad v_a = 1 - v_s - v_w`
 * @returns The three shares.
 * @throws `DomainError` outside the ranges; `InputError` when the bulk density is above the particle density or when solids and
 * water need more than the whole volume.
 * @source definition
 * @example
 * const phases = phaseShares({
 *   bulkDensity: gramsPerCubicCentimetre(0.12),
 *   particleDensity: gramsPerCubicCentimetre(1.6),
 *   waterContent: percentWaterContent(70),
 * })
 * phases // => { solid: 0.075, water: 0.7, air: 0.225 }
 */
export function phaseShares(medium: WetMedium): PhaseShares {
  const { waterContent, ...densities } = optionsOf(medium)
  const water = numberIn(waterContent, WATER_CONTENT, 'waterContent')
  const solid = solidShare(densities)
  return {
    solid: solid as Share,
    water: water as WaterContent,
    air: airLeft(1 - solid, water) as AirFilledPorosity,
  }
}

function airLeft(pores: number, water: number): number {
  const air = pores - water
  if (air >= 0) return air
  // Full pores may come out a rounding below zero.
  if (air > -1e-12) return 0
  throw new InputError(
    'waterContent',
    `${water} m³/m³ of water does not fit into ${pores} m³/m³ of pores`,
    'check the porosity: a particle density that is too low, or swelling, makes it too small',
  )
}
