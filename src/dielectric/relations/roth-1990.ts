import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../../quantity/guard.js'
import {
  AIR_PERMITTIVITY,
  APPARENT,
  MIXING_EXPONENT,
  POROSITY,
  SOLIDS_PERMITTIVITY,
  WATER_PERMITTIVITY,
} from '../domains.js'
import type { AirPhase, ApparentPermittivity, MixingExponent, PoreSpace } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'

/** Solids, water and air, and how they lie in the field. */
export interface ThreePhases extends PoreSpace, MixingExponent, AirPhase {
  /** Permittivity of the solids: minerals 3 to 5, organic matter 4 to 6 as an assumption. Unit: 1. Range: [1, 20]. */
  readonly solids: Permittivity
  /** Permittivity of the water at the temperature of the medium. Unit: 1. Range: [30, 100]. */
  readonly water: Permittivity
}

/** Three phases and the water content. */
export interface ThreePhaseMedium extends ThreePhases {
  /** Water content, at most the porosity. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** Three phases and what a probe reads in them. */
export interface ThreePhaseReading extends ThreePhases, ApparentPermittivity {}

/**
 * Permittivity of a medium of solids, water and air.
 *
 * It knows neither bound water nor salt. In light media (porosity 0.92 to 0.95) it falls on the peat curves within 0.1 m³/m³: use
 * it as a band of plausibility around an own calibration, not in its place. Published exponents: 0.46 fitted in the paper, 0.52 in
 * a sand with solids of 2.8.
 *
 * @equation `\varepsilon^{\alpha} = (1 - \phi)\,\varepsilon_s^{\alpha} + (\phi - \theta)\,\varepsilon_a^{\alpha} + \theta\,\varepsilon_w^{\alpha}`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the water content exceeds the porosity.
 * @source roth-1990
 * @example
 * permittivityRoth1990({
 *   waterContent: waterContent(0.1),
 *   porosity: percent(40),
 *   solids: permittivity(2.8),
 *   air: permittivity(1),
 *   water: permittivity(80.36),
 *   exponent: 0.52,
 * }) // => 4.976296
 */
export function permittivityRoth1990(medium: ThreePhaseMedium): Permittivity {
  const waterContent = numberIn(optionsOf(medium).waterContent, WATER_CONTENT, 'waterContent')
  const { dry, gain, exponent } = phaseTerms(medium)
  if (waterContent > medium.porosity)
    throw new InputError(
      'waterContent, porosity',
      `a water content of ${waterContent} does not fit into a porosity of ${medium.porosity}`,
      'give the total porosity; a saturated medium has a water content equal to it',
    )
  return ((dry + waterContent * gain) ** (1 / exponent)) as Permittivity
}

/**
 * Water content of a medium of solids, water and air from its permittivity.
 *
 * A result below 0 or above the porosity is refused: probe and assumed medium do not agree.
 *
 * @equation `\theta = \frac{\varepsilon^{\alpha} - (1 - \phi)\,\varepsilon_s^{\alpha} - \phi\,\varepsilon_a^{\alpha}}{\varepsilon_w^{\alpha} - \varepsilon_a^{\alpha}}`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the result would be below 0 or above the porosity.
 * @source roth-1990, solved for the water content
 * @example
 * waterContentRoth1990({
 *   apparent: permittivity(12),
 *   porosity: percent(45),
 *   solids: permittivity(3.9),
 *   air: permittivity(1),
 *   water: waterPermittivityWeast1986(celsius(20)),
 *   exponent: 0.5,
 * }) // => 0.242067
 */
export function waterContentRoth1990(reading: ThreePhaseReading): WaterContent {
  requireObject(reading, 'reading')
  const { dry, gain, exponent } = phaseTerms(reading)
  const waterContent = shownWaterContent(reading)
  return waterContentBetween(
    waterContent,
    reading.porosity,
    reading.apparent,
    (theta) => (dry + theta * gain) ** (1 / exponent),
  )
}

/** The water content that the equation gives, also where there is no room for it. */
export function shownWaterContent(reading: ThreePhaseReading): number {
  const { dry, gain, exponent } = phaseTerms(reading)
  return (numberIn(reading.apparent, APPARENT, 'apparent') ** exponent - dry) / gain
}

function phaseTerms(phases: ThreePhases): { dry: number; gain: number; exponent: number } {
  const exponent = numberIn(phases.exponent, MIXING_EXPONENT, 'exponent')
  const porosity = numberIn(phases.porosity, POROSITY, 'porosity')
  const air = numberIn(phases.air, AIR_PERMITTIVITY, 'air') ** exponent
  return {
    dry: (1 - porosity) * numberIn(phases.solids, SOLIDS_PERMITTIVITY, 'solids') ** exponent + porosity * air,
    gain: numberIn(phases.water, WATER_PERMITTIVITY, 'water') ** exponent - air,
    exponent,
  }
}
