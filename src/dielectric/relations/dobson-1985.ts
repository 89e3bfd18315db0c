import { MASS_FRACTION, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { CodedFinding } from '../../quantity/finding.js'
import type { Frequency, Permittivity, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { BULK_DENSITY, MICROWAVE_FREQUENCY } from '../domains.js'

import { waterDebyeKleinSwift1977 } from '../mixing/klein-swift-1977.js'
import type { ClayInSoil, DryDensity, SandInSoil, WaterHeld } from '../terms.js'

/** To where the correction was measured, and from where the model, Hz. */
const PEPLINSKI_TO = 1.3e9
const DOBSON_FROM = 1.4e9

/** What to mind about a computed permittivity. `explainDielectricFinding` puts it into words. */
export type PermittivityFinding = CodedFinding<'between-fits'>

function stepBetweenFits(step: number): PermittivityFinding {
  return { code: 'between-fits', level: 'caution', about: 'frequency', value: step, unit: '1' }
}

/** A mineral soil in a microwave field. */
export interface SoilOfDobson extends WaterHeld, DryDensity, SandInSoil, ClayInSoil {
  /** Frequency of the field. Unit: Hz. Range: [300000000, 18000000000]. */
  readonly frequency: Frequency
  /** Temperature of the soil. Unit: °C. Range: [0, 60]. */
  readonly temperature: Temperature
}

/** The permittivity and the constants of the soil that led to it. */
export interface DobsonResult {
  /** Real part of the relative permittivity. Unit: 1. */
  readonly permittivity: Permittivity
  /** Exponent of the water content. Unit: 1. */
  readonly beta: number
  /** Permittivity of the solids. Unit: 1. */
  readonly solids: Permittivity
  /** A caution from 1.3 to 1.4 GHz, where two fits meet that do not agree. */
  readonly findings: readonly PermittivityFinding[]
}

/** Where the model of Dobson and others (1985) was measured. */
export const validityDobson1985: Validity = {
  of: 'permittivityDobson1985',
  note: 'mineral soils at 1.4 to 18 GHz, with the correction of Peplinski and others (1995) at 0.3 to 1.3 GHz; not for organic media',
  inputs: { frequency: { min: 0.3e9, max: 18e9, unit: 'Hz' } },
}

/**
 * Real permittivity of a mineral soil in a microwave field.
 *
 * The solids have (1.01 + 0.44 · 2.66)² - 0.062; the water is the real part of the relaxation of Klein and Swift (1977). Below 1.4 GHz the
 * result is 1.15 ε - 0.68, a correction measured up to 1.3 GHz: the two fits do not meet, so that the result falls by 0.15 ε - 0.68 at
 * 1.4 GHz, by 2 in a wet soil. From 1.3 to 1.4 GHz a warning gives that step. A forward model only: near zero water it falls before it rises, so it has no inverse.
 *
 * @equation `\varepsilon = \left[1 + \frac{\rho}{2.66}\left(\varepsilon_s^{0.65} - 1\right) + \theta^{\beta}\,\varepsilon_w^{0.65} - \theta\right]^{1/0.65}, \quad \beta = 1.2748 - 0.519 S - 0.152 C`
 * @returns Permittivity, exponent of the water content, permittivity of the solids, and a warning where two fits meet.
 * @throws `DomainError` outside the ranges; `InputError` when sand and clay exceed the whole.
 * @validity Mineral soils at 0.3 to 18 GHz; not for organic media.
 * @source dobson-1985; peplinski-1995
 * @example
 * permittivityDobson1985({
 *   waterContent: waterContent(0.1),
 *   sand: percent(50),
 *   clay: percent(15),
 *   bulkDensity: gramsPerCubicCentimetre(1.4),
 *   frequency: gigahertz(5),
 *   temperature: celsius(25),
 * }) // => { permittivity: 6.802431, beta: 0.9925, solids: 4.692144, findings: [] }
 */
export function permittivityDobson1985(soil: SoilOfDobson): DobsonResult {
  const theta = numberIn(optionsOf(soil).waterContent, WATER_CONTENT, 'waterContent')
  const sand = numberIn(soil.sand, MASS_FRACTION, 'sand')
  const clay = numberIn(soil.clay, MASS_FRACTION, 'clay')
  if (sand + clay > 1 + 1e-9)
    throw new InputError('sand, clay', 'together they exceed the whole', 'give shares of the same dry mass')
  const density = numberIn(soil.bulkDensity, BULK_DENSITY, 'bulkDensity')
  const frequency = numberIn(soil.frequency, MICROWAVE_FREQUENCY, 'frequency') as Frequency
  const water = waterDebyeKleinSwift1977({ temperature: soil.temperature, frequency }).real
  const solids = (1.01 + 0.44 * 2.66) ** 2 - 0.062
  const beta = 1.2748 - 0.519 * sand - 0.152 * clay
  const mixed = 1 + (density / 2.66) * (solids ** 0.65 - 1) + theta ** beta * water ** 0.65 - theta
  const microwave = mixed ** (1 / 0.65)
  const corrected = 1.15 * microwave - 0.68
  return {
    permittivity: (frequency < DOBSON_FROM ? corrected : microwave) as Permittivity,
    beta,
    solids: solids as Permittivity,
    findings: frequency >= PEPLINSKI_TO && frequency <= DOBSON_FROM ? [stepBetweenFits(corrected - microwave)] : [],
  }
}
