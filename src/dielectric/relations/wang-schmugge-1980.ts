import { MASS_FRACTION, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT, BULK_DENSITY, WATER_PERMITTIVITY } from '../domains.js'
import type { ApparentPermittivity, ClayInSoil, DryDensity, SandInSoil, WaterHeld } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'

const ICE = 3.2
const ROCK = 5.5
const AIR = 1
const PARTICLE_DENSITY = 2.65

/** A mineral soil and its water. */
export interface SoilOfWangSchmugge extends DryDensity, SandInSoil, ClayInSoil {
  /** Permittivity of free water. Unit: 1. Range: [30, 100]. */
  readonly water: Permittivity
}

/** The soil and its water content. */
export interface WetSoilOfWangSchmugge extends SoilOfWangSchmugge, WaterHeld {}

/** The soil and what a probe reads in it. */
export interface ReadSoilOfWangSchmugge extends SoilOfWangSchmugge, ApparentPermittivity {}

/** The permittivity and the constants of the soil that led to it. */
export interface WangSchmuggeResult {
  /** Apparent relative permittivity. Unit: 1. */
  readonly permittivity: Permittivity
  /** Water content above which water is free. Unit: m³/m³. */
  readonly transition: WaterContent
  /** Water content at the wilting point. Unit: m³/m³. */
  readonly wiltingPoint: WaterContent
  /** How far bound water is freed at the transition. Unit: 1. */
  readonly gamma: number
}

/** Where the model of Wang and Schmugge (1980) was measured. */
export const validityWangSchmugge1980: Validity = {
  of: 'permittivityWangSchmugge1980',
  note: 'mineral soils at 1.4 to 5 GHz; not for organic media',
  inputs: { waterContent: { min: 0, max: 0.5, unit: 'm³/m³' } },
}

/**
 * Permittivity of a mineral soil in which the first water is bound.
 *
 * With S and C the shares of sand and clay: wilting point W = 0.06774 - 0.064 S + 0.478 C, transition 0.49 W + 0.165,
 * gamma 0.481 - 0.57 W; ice 3.2, rock 5.5, air 1, porosity from a particle density of 2.65 g/cm³.
 *
 * @equation `\varepsilon = \begin{cases} \theta\,\varepsilon_x + (\phi - \theta)\,\varepsilon_a + (1 - \phi)\,\varepsilon_r, \quad \varepsilon_x = \varepsilon_i + (\varepsilon_w - \varepsilon_i)\frac{\theta}{\theta_t}\gamma & \theta \le \theta_t \\ \theta_t\,\varepsilon_x + (\theta - \theta_t)\,\varepsilon_w + (\phi - \theta)\,\varepsilon_a + (1 - \phi)\,\varepsilon_r, \quad \varepsilon_x = \varepsilon_i + (\varepsilon_w - \varepsilon_i)\gamma & \theta > \theta_t \end{cases}`
 * @returns Permittivity, transition, wilting point and gamma.
 * @throws `DomainError` outside the ranges; `InputError` when sand and clay exceed the whole or the water does not fit into the pores.
 * @validity Mineral soils at 1.4 to 5 GHz, water content up to 0.5; not for organic media.
 * @source wang-1980
 * @example
 * permittivityWangSchmugge1980({
 *   waterContent: waterContent(0.3),
 *   sand: percent(40),
 *   clay: percent(20),
 *   bulkDensity: gramsPerCubicCentimetre(1.4),
 *   water: permittivity(79.5),
 * }) // => { permittivity: 16.327986, transition: 0.2324926, wiltingPoint: 0.13774, gamma: 0.4024882 }
 */
export function permittivityWangSchmugge1980(soil: WetSoilOfWangSchmugge): WangSchmuggeResult {
  const theta = numberIn(optionsOf(soil).waterContent, WATER_CONTENT, 'waterContent')
  const constants = soilConstants(soil)
  const { porosity, transition, wiltingPoint, gamma } = constants
  if (theta > porosity)
    throw new InputError(
      'waterContent, bulkDensity',
      `a water content of ${theta} does not fit into a porosity of ${porosity}`,
      'check the bulk density',
    )
  return {
    permittivity: mixed(constants, theta) as Permittivity,
    transition: transition as WaterContent,
    wiltingPoint: wiltingPoint as WaterContent,
    gamma,
  }
}

/**
 * Water content at which the model of Wang and Schmugge (1980) gives a permittivity: its true inverse.
 *
 * Below the transition it is the positive root of a quadratic, above it a straight line. Above the porosity and
 * below the permittivity of the dry soil there is none.
 *
 * @equation `\theta : \; \varepsilon(\theta) = \varepsilon`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the result would be above the porosity; `InputError` when the permittivity is below that of the dry soil.
 * @validity Mineral soils at 1.4 to 5 GHz; not for organic media.
 * @source wang-1980, solved for the water content
 * @example
 * waterContentWangSchmugge1980({
 *   apparent: permittivity(16.327986),
 *   sand: percent(40),
 *   clay: percent(20),
 *   bulkDensity: gramsPerCubicCentimetre(1.4),
 *   water: permittivity(79.5),
 * }) // => 0.300000
 */
export function waterContentWangSchmugge1980(soil: ReadSoilOfWangSchmugge): WaterContent {
  requireObject(soil, 'soil')
  const constants = soilConstants(soil)
  const { porosity, transition, gamma, water, dry } = constants
  const gained = numberIn(soil.apparent, APPARENT, 'apparent') - dry
  if (gained < -1e-12)
    throw new InputError(
      'apparent',
      `${soil.apparent} is below ${dry}, the permittivity of this soil without water`,
      'check the bulk density and whether the whole probe is in the soil',
    )
  const curve = ((water - ICE) * gamma) / transition
  const line = ICE - AIR
  const atTransition = transition * (line + curve * transition)
  // The form of the quadratic root that does not cancel for small gains.
  const gain = Math.max(0, gained)
  const waterContent =
    gained > atTransition
      ? transition + (gained - atTransition) / (water - AIR)
      : (2 * gain) / (line + Math.sqrt(line * line + 4 * curve * gain))
  return waterContentBetween(waterContent, porosity, soil.apparent, (theta) => mixed(constants, theta))
}

/** The mixing model: bound water between ice and water up to the transition, free water above it. */
function mixed({ transition, gamma, water, dry }: ReturnType<typeof soilConstants>, theta: number): number {
  const bound = Math.min(theta, transition)
  const freed = ICE + (water - ICE) * (bound / transition) * gamma
  return dry + bound * (freed - AIR) + (theta - bound) * (water - AIR)
}

function soilConstants(soil: SoilOfWangSchmugge) {
  const sand = numberIn(soil.sand, MASS_FRACTION, 'sand')
  const clay = numberIn(soil.clay, MASS_FRACTION, 'clay')
  if (sand + clay > 1 + 1e-9)
    throw new InputError('sand, clay', 'together they exceed the whole', 'give shares of the same dry mass')
  const porosity = 1 - numberIn(soil.bulkDensity, BULK_DENSITY, 'bulkDensity') / PARTICLE_DENSITY
  const wiltingPoint = 0.06774 - 0.064 * sand + 0.478 * clay
  return {
    porosity,
    wiltingPoint,
    transition: 0.49 * wiltingPoint + 0.165,
    gamma: 0.481 - 0.57 * wiltingPoint,
    water: numberIn(soil.water, WATER_PERMITTIVITY, 'water'),
    dry: porosity * AIR + (1 - porosity) * ROCK,
  }
}
