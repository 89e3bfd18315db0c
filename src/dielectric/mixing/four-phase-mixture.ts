import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../../quantity/guard.js'
import {
  AIR_PERMITTIVITY,
  APPARENT,
  BOUND_WATER_CONTENT,
  BOUND_WATER_PERMITTIVITY,
  MIXING_EXPONENT,
  POROSITY,
  SOLIDS_PERMITTIVITY,
  WATER_PERMITTIVITY,
} from '../domains.js'
import type { AirPhase, ApparentPermittivity, MixingExponent, PoreSpace, SolidPhase } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'

/** Solids, free water, bound water and air. */
export interface FourPhases extends PoreSpace, MixingExponent, SolidPhase, AirPhase {
  /** Water that sticks to the solids when there is enough of it. Unit: m³/m³. Range: [0, 0.5]. */
  readonly boundWaterContent: WaterContent
  /** Permittivity of the bound water, between ice and free water. Unit: 1. Range: [2, 80]. */
  readonly boundWater: Permittivity
  /** Permittivity of the free water. Unit: 1. Range: [30, 100]. */
  readonly water: Permittivity
}

/** Four phases and the water content. */
export interface FourPhaseMedium extends FourPhases {
  /** Water content, free and bound, at most the porosity. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** Four phases and what a probe reads in them. */
export interface FourPhaseReading extends FourPhases, ApparentPermittivity {}

/**
 * Permittivity of a medium of solids, free water, bound water and air.
 *
 * The first water to come is bound. Amount and permittivity of the bound water are arguments: no citable values were found for
 * growing media.
 *
 * @equation `\varepsilon^{\alpha} = (1 - \phi)\,\varepsilon_s^{\alpha} + (\phi - \theta)\,\varepsilon_a^{\alpha} + \min(\theta, \theta_b)\,\varepsilon_b^{\alpha} + \max(0, \theta - \theta_b)\,\varepsilon_w^{\alpha}`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the water content exceeds the porosity.
 * @source dobson-1985 (four-component mixing) [not confirmed, source not seen]
 * @example
 * permittivityFourPhase({
 *   waterContent: waterContent(0.3),
 *   boundWaterContent: waterContent(0.1),
 *   porosity: percent(50),
 *   solids: permittivity(4),
 *   boundWater: permittivity(25),
 *   water: permittivity(81),
 *   air: permittivity(1),
 *   exponent: 0.5,
 * }) // => 12.25
 */
export function permittivityFourPhase(medium: FourPhaseMedium): Permittivity {
  const waterContent = numberIn(optionsOf(medium).waterContent, WATER_CONTENT, 'waterContent')
  const { dry, bound, boundGain, freeGain, exponent } = phaseTerms(medium)
  if (waterContent > medium.porosity)
    throw new InputError(
      'waterContent, porosity',
      `a water content of ${waterContent} does not fit into a porosity of ${medium.porosity}`,
      'give the total porosity; a saturated medium has a water content equal to it',
    )
  const mixed = dry + Math.min(waterContent, bound) * boundGain + Math.max(0, waterContent - bound) * freeGain
  return (mixed ** (1 / exponent)) as Permittivity
}

/**
 * Water content, free and bound, of a medium of four phases from its permittivity.
 *
 * The mixing law is two straight lines in the water content that meet where the bound water is full; each is solved. A result
 * below 0 or above the porosity is refused: probe and assumed medium do not agree.
 *
 * @equation `\theta : \; \varepsilon(\theta) = \varepsilon`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the result would be below 0 or above the porosity.
 * @source dobson-1985, solved for the water content [not confirmed, source not seen]
 * @example
 * waterContentFourPhase({
 *   apparent: permittivity(12.25),
 *   boundWaterContent: waterContent(0.1),
 *   porosity: percent(50),
 *   solids: permittivity(4),
 *   boundWater: permittivity(25),
 *   water: permittivity(81),
 *   air: permittivity(1),
 *   exponent: 0.5,
 * }) // => 0.3
 */
export function waterContentFourPhase(reading: FourPhaseReading): WaterContent {
  requireObject(reading, 'reading')
  const { dry, bound, boundGain, freeGain, exponent } = phaseTerms(reading)
  const gained = numberIn(reading.apparent, APPARENT, 'apparent') ** exponent - dry
  const whenFull = bound * boundGain
  const waterContent = gained <= whenFull ? gained / boundGain : bound + (gained - whenFull) / freeGain
  const mixed = (theta: number) => dry + Math.min(theta, bound) * boundGain + Math.max(0, theta - bound) * freeGain
  return waterContentBetween(
    waterContent,
    reading.porosity,
    reading.apparent,
    (theta) => mixed(theta) ** (1 / exponent),
  )
}

function phaseTerms(phases: FourPhases) {
  const exponent = numberIn(phases.exponent, MIXING_EXPONENT, 'exponent')
  const porosity = numberIn(phases.porosity, POROSITY, 'porosity')
  const air = numberIn(phases.air, AIR_PERMITTIVITY, 'air') ** exponent
  return {
    dry: (1 - porosity) * numberIn(phases.solids, SOLIDS_PERMITTIVITY, 'solids') ** exponent + porosity * air,
    bound: numberIn(phases.boundWaterContent, BOUND_WATER_CONTENT, 'boundWaterContent'),
    boundGain: numberIn(phases.boundWater, BOUND_WATER_PERMITTIVITY, 'boundWater') ** exponent - air,
    freeGain: numberIn(phases.water, WATER_PERMITTIVITY, 'water') ** exponent - air,
    exponent,
  }
}
