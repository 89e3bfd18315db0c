import { MASS_FRACTION } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type {
  BulkDensity,
  HydraulicConductivity,
  MassFraction,
  Pressure,
  WaterContent,
} from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { type Validity, validityOf } from '../../quantity/validity.js'
import type { MediumFinding } from '../medium-finding.js'
import type { SaturatedFlow } from '../terms.js'

/** The texture of a soil. */
export interface SoilTexture {
  /** Sand as a share of the mineral mass. Unit: 1. Range: [0, 1]. */
  readonly sand: MassFraction
  /** Clay as a share of the mineral mass. Unit: 1. Range: [0, 1]. */
  readonly clay: MassFraction
  /** Organic matter as a share of the dry mass. Unit: 1. Range: [0, 1]. */
  readonly organicMatter: MassFraction
}

/** What a soil of this texture holds and conducts on average. */
export interface SoilFromTexture extends SaturatedFlow {
  /** Water content at 1500 kPa. Unit: m³/m³. */
  readonly at1500kPa: WaterContent
  /** Water content at 33 kPa. Unit: m³/m³. */
  readonly at33kPa: WaterContent
  /** Water content at saturation. Unit: m³/m³. */
  readonly saturated: WaterContent
  /** Tension at which air enters; negative in sands, which means none. Unit: kPa. */
  readonly airEntryTension: Pressure
  /** Slope of the logarithmic curve of tension and moisture, λ. Unit: 1. */
  readonly lambda: number
  /** Dry bulk density. Unit: g/cm³. */
  readonly bulkDensity: BulkDensity
  /** Inputs outside the measured span, and other things to mind. */
  readonly findings: readonly MediumFinding[]
}

/** Where the regressions of Saxton and Rawls (2006) were made [not confirmed, source not seen]. */
export const validitySaxtonRawls2006: Validity = {
  of: 'soilFromTextureSaxtonRawls2006',
  note: 'agricultural mineral topsoils of the United States; never growing media',
  inputs: { clay: { min: 0, max: 0.6, unit: '1' }, organicMatter: { min: 0, max: 0.08, unit: '1' } },
}

/**
 * Water contents, air entry, conductivity and density of a mineral soil from its texture and organic matter.
 *
 * S and C are mass fractions of sand and clay, O is organic matter in percent; each content has its own coefficients b and its
 * own second step p. The quadratic coefficient for 33 kPa is 1.283: only with it are the class means of the paper's Table 3
 * reproduced; 1.238 is found in copies. Ks is in mm/h.
 *
 * @equation `\theta = t + p(t), \quad t = b_0 + b_1 S + b_2 C + b_3 O + b_4 S O + b_5 C O + b_6 S C, \quad
 * K_s = 1930\,(\theta_s - \theta_{33})^{3 - \lambda}, \quad \lambda = \frac{\ln(\theta_{33} / \theta_{1500})}{\ln(1500 / 33)}`
 * @returns Water contents, air entry, slope, conductivity, density and findings.
 * @throws `DomainError` outside the ranges; `InputError` when sand and clay exceed the whole, or when the regressions give contents
 * in an impossible order.
 * @validity Agricultural mineral soils with at most 60 % clay and 8 % organic matter; never growing media. A regression: a single
 * soil may differ by several percentage points.
 * @source saxton-2006, Table 1
 * @example
 * const soil = soilFromTextureSaxtonRawls2006({ sand: percent(42), clay: percent(18), organicMatter: percent(1) })
 * soil.at33kPa // => 0.24954663
 */
export function soilFromTextureSaxtonRawls2006(texture: SoilTexture): SoilFromTexture {
  const S = namedIn(optionsOf(texture).sand, MASS_FRACTION, 'sand')
  const C = namedIn(texture.clay, MASS_FRACTION, 'clay')
  const organic = namedIn(texture.organicMatter, MASS_FRACTION, 'organicMatter')
  if (S + C > 1 + 1e-9)
    throw new InputError('clay', `sand ${S} and clay ${C} are more than the whole`, 'the rest to 1 is silt')
  const O = organic * 100

  const t1500 = -0.024 * S + 0.487 * C + 0.006 * O + 0.005 * S * O - 0.013 * C * O + 0.068 * S * C + 0.031
  const theta1500 = t1500 + (0.14 * t1500 - 0.02)
  const t33 = -0.251 * S + 0.195 * C + 0.011 * O + 0.006 * S * O - 0.027 * C * O + 0.452 * S * C + 0.299
  const theta33 = t33 + (1.283 * t33 * t33 - 0.374 * t33 - 0.015)
  const tD = 0.278 * S + 0.034 * C + 0.022 * O - 0.018 * S * O - 0.027 * C * O - 0.584 * S * C + 0.078
  const drained = tD + (0.636 * tD - 0.107)
  const saturated = theta33 + drained - 0.097 * S + 0.043
  refuseImpossible(theta1500, theta33, saturated)
  const tE = -21.67 * S - 27.93 * C - 81.97 * drained + 71.12 * S * drained + 8.29 * C * drained + 14.05 * S * C + 27.16
  const airEntry = tE + (0.02 * tE * tE - 0.113 * tE - 0.7)
  const lambda = Math.log(theta33 / theta1500) / Math.log(1500 / 33)
  return {
    at1500kPa: theta1500 as WaterContent,
    at33kPa: theta33 as WaterContent,
    saturated: saturated as WaterContent,
    airEntryTension: airEntry as Pressure,
    lambda,
    // 1930 (θs - θ33)^(3 - λ) is in mm/h.
    saturatedConductivity: (193 * (saturated - theta33) ** (3 - lambda)) as HydraulicConductivity,
    bulkDensity: (2.65 * (1 - saturated)) as BulkDensity,
    findings: [...validityOf(validitySaxtonRawls2006, { clay: C, organicMatter: organic }), ...negativeEntry(airEntry)],
  }
}

function refuseImpossible(theta1500: number, theta33: number, saturated: number): void {
  if (theta1500 > 0 && theta33 > theta1500 && saturated > theta33 && saturated < 1) return
  throw new InputError(
    'texture',
    `the regressions give ${theta1500} at 1500 kPa, ${theta33} at 33 kPa and ${saturated} at saturation, which no soil can have`,
    'the texture is too far from the soils that were measured: measure this one',
  )
}

function negativeEntry(airEntry: number): MediumFinding[] {
  if (airEntry >= 0) return []
  return [{ code: 'no-air-entry', level: 'note', about: 'airEntryTension', value: airEntry, unit: 'kPa' }]
}
