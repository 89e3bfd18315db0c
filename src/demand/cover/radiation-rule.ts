import type { RadiationSum, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import {
  CROP_SIZE,
  DAILY_RADIATION_SUM,
  DEPTH_PER_DEGREE_MINUTE,
  DEPTH_PER_LIGHT,
  HEATING_SUM,
  USE_PER_LIGHT,
} from '../domains.js'
import type { UseFinding } from '../use-finding.js'

/** A radiation sum and what the crop uses for it. */
export interface RadiationRuleInput {
  /** Radiation sum that belongs to the coefficient, outside or inside. Unit: J/cm². Range: [0, 5000]. */
  readonly radiationSum: RadiationSum
  /** Water used on a square metre for each J/cm². Unit: mL/m² per J/cm². Range: (0, 10]. */
  readonly usePerJoule: number
}

/** The use by the rule, and what speaks against it. */
export interface RadiationRuleUse {
  /** Water use. Unit: mm. */
  readonly use: WaterDepth
  /** The use if all this radiation evaporated water. Unit: mm. */
  readonly ceiling: WaterDepth
  /** A caution when the coefficient passes what the radiation can evaporate; `explainDemandFinding` has the words. */
  readonly findings: readonly UseFinding[]
}

/**
 * Water use of a crop by the radiation sum, with the ceiling that the latent heat of water sets.
 *
 * A coefficient above 4.08 uses more energy than the radiation brings: possible only with heating, lamps or dry air that is not in the
 * sum, and otherwise a mistake of unit. It is computed with a caution.
 *
 * @equation `W = c\,S, \qquad c_{max} = \frac{10\ \mathrm{kJ\,m^{-2}}}{2.45\ \mathrm{MJ\,kg^{-1}}} = 4.08\ \mathrm{mL\,m^{-2}}\ \text{per J/cm²}`
 * @returns Use, ceiling and cautions.
 * @validity Days led by the sun; heating, lamps and night use are not in it.
 * @source common practice, no source; the ceiling: allen-1998, Table 3 (2.45 MJ/kg)
 * @example
 * waterUseFromRadiationSum({ radiationSum: joulesPerSquareCentimetre(1500), usePerJoule: 2 }) // => { use: 3.0, ceiling: 6.12, findings: [] }
 */
export function waterUseFromRadiationSum(input: RadiationRuleInput): RadiationRuleUse {
  const sum = numberIn(optionsOf(input).radiationSum, DAILY_RADIATION_SUM, 'radiationSum')
  const coefficient = numberIn(input.usePerJoule, USE_PER_LIGHT, 'usePerJoule')
  // 1 J/cm² is 0.01 MJ/m², and 2.45 MJ evaporates a kilogram.
  const ceiling = 0.01 / 2.45
  const findings: UseFinding[] = []
  if (coefficient / 1000 > ceiling) {
    findings.push({
      code: 'above-latent-heat',
      level: 'danger',
      about: 'usePerJoule',
      value: coefficient,
      limit: ceiling * 1000,
      unit: 'mL/m² per J/cm²',
    })
  }
  return { use: ((coefficient / 1000) * sum) as WaterDepth, ceiling: (ceiling * sum) as WaterDepth, findings }
}

/** Radiation, heating and the size of the crop. */
export interface RadiationAndHeatingInput {
  /** Radiation sum of the day outside. Unit: J/cm². Range: [0, 5000]. */
  readonly radiationSum: RadiationSum
  /** Sum over the day of pipe less air temperature. Unit: °C·min. Range: [0, 200000]. */
  readonly heatingSum: number
  /** Use for each J/cm², of a full-grown crop. Unit: mm per J/cm². Range: [0, 0.01]. */
  readonly usePerJoule: number
  /** Use for each degree and minute of heating, of a full-grown crop. Unit: mm per °C·min. Range: [0, 0.001]. */
  readonly usePerDegreeMinute: number
  /** Size of the crop, 1 when full-grown. Unit: 1. Range: [0, 2]. */
  readonly cropSize: number
}

/**
 * Water use of a heated crop under glass from radiation and pipe heat.
 *
 * @equation `T = f\left(a\,S + b \sum (T_{pipe} - T_{air})\right)`
 * @param input - Sums of radiation and heating, their coefficients and the size of the crop.
 * @returns Water use. Unit: mm.
 * @validity Glasshouses heated by pipes near the crop; the coefficients belong to the crop and the house.
 * @source de-graaf-1981; de-graaf-1988
 * @example
 * waterUseFromRadiationAndHeating({
 *   radiationSum: joulesPerSquareCentimetre(300), heatingSum: 30000, usePerJoule: 0.0018, usePerDegreeMinute: 0.000022, cropSize: 0.6,
 * }) // => 0.72
 */
export function waterUseFromRadiationAndHeating(input: RadiationAndHeatingInput): WaterDepth {
  const light =
    numberIn(optionsOf(input).usePerJoule, DEPTH_PER_LIGHT, 'usePerJoule') *
    numberIn(input.radiationSum, DAILY_RADIATION_SUM, 'radiationSum')
  const heat =
    numberIn(input.usePerDegreeMinute, DEPTH_PER_DEGREE_MINUTE, 'usePerDegreeMinute') *
    numberIn(input.heatingSum, HEATING_SUM, 'heatingSum')
  return (numberIn(input.cropSize, CROP_SIZE, 'cropSize') * (light + heat)) as WaterDepth
}
