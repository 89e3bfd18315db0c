import { AIR_PRESSURE } from '../../air/domains.js'
import { psychrometricConstantFao56 } from '../../air/psychrometric-constant-fao56.js'
import {
  saturationVapourPressureFao56,
  slopeOfSaturationVapourPressureFao56,
} from '../../air/saturation-vapour-pressure-fao56.js'
import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type {
  HourlyCropET,
  Irradiance,
  Pressure,
  Temperature,
  VapourPressureDeficit,
} from '../../quantity/generated/kinds.js'
import { booleanOf, numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import {
  AIR_AMONG_PLANTS,
  CARBON_DIOXIDE,
  CROP_DEFICIT,
  CROP_NET_RADIATION,
  LEAF_AREA,
  LEAF_RADIATION,
  VAPOUR_RESISTANCE,
} from '../domains.js'
import type { CarbonDioxide, CropInAir, LeafBoundary } from '../terms.js'

/** The climate among the plants and how easily their leaves give off vapour. */
export interface StanghelliniInput extends LeafBoundary, CropInAir {
  /** Net radiation of the crop, for each square metre of ground. Unit: W/m². Range: [-300, 1500]. */
  readonly netRadiation: Irradiance
  /** Resistance of the leaf itself. Unit: s/m. Range: [1, 100000]. */
  readonly leafResistance: number
}

/** Transpiration and where its energy comes from. */
export interface CanopyTranspiration {
  /** Transpiration; negative values are dew. Unit: mm/h. */
  readonly transpiration: HourlyCropET
  /** Energy that leaves as vapour. Unit: W/m². */
  readonly latentHeat: Irradiance
  /** Net radiation less latent heat: what warms the air; negative when the air pays. Unit: W/m². */
  readonly sensibleHeat: Irradiance
  /** Leaf temperature that closes the balance. Unit: °C. */
  readonly leafTemperature: Temperature
}

const HEAT_OF_AIR = 1013
const LATENT = 2.45e6

/**
 * Transpiration of a greenhouse crop by the Penman-Monteith equation of Stanghellini, which counts both sides of all leaves.
 *
 * At night put in the night resistance and the small or negative net radiation: the deficit drives what is left.
 *
 * @equation `\lambda E = \frac{\epsilon R_n + \frac{2\,LAI\,\rho c_p}{\gamma\,r_a}\,D}{1 + \epsilon + r_s / r_a}, \qquad \epsilon = \frac{\Delta}{\gamma}`
 * @returns Transpiration, heat flows and leaf temperature.
 * @throws `DomainError` outside the ranges, `InputError` for a deficit above the saturation vapour pressure of the air.
 * @validity Tomato in glasshouses with hot-water pipes; closed canopies of other crops with their own resistances.
 * @source stanghellini-1987 [form not confirmed, source not seen]
 * @example
 * const day = transpirationStanghellini1987({
 *   netRadiation: wattsPerSquareMetre(250), temperature: celsius(24), deficit: kilopascals(1.2), leafArea: leafAreaIndex(3),
 *   leafResistance: 150,
 * })
 * day.transpiration // => 0.395
 */
export function transpirationStanghellini1987(input: StanghelliniInput): CanopyTranspiration {
  const net = numberIn(optionsOf(input).netRadiation, CROP_NET_RADIATION, 'netRadiation')
  const temperature = numberIn(input.temperature, AIR_AMONG_PLANTS, 'temperature') as Temperature
  const deficit = deficitAt(input.deficit, temperature)
  const leafArea = numberIn(input.leafArea, LEAF_AREA, 'leafArea')
  const air = numberIn(optionOr(input.airResistance, 275), VAPOUR_RESISTANCE, 'airResistance')
  const pressure = numberIn(optionOr(input.pressure, 101.325), AIR_PRESSURE, 'pressure') as Pressure
  const gamma = psychrometricConstantFao56(pressure)
  const epsilon = slopeOfSaturationVapourPressureFao56(temperature) / gamma
  const actual = saturationVapourPressureFao56(temperature) - deficit
  const airDensity = (1000 * (pressure - 0.378 * actual)) / (287.05 * (temperature + 273.15))
  const conductance = (2 * leafArea * airDensity * HEAT_OF_AIR) / air
  const latent =
    (epsilon * net + (conductance * deficit) / gamma) /
    (1 + epsilon + numberIn(input.leafResistance, VAPOUR_RESISTANCE, 'leafResistance') / air)
  const sensible = net - latent
  return {
    transpiration: ((latent * 3600) / LATENT) as HourlyCropET,
    latentHeat: latent as Irradiance,
    sensibleHeat: sensible as Irradiance,
    leafTemperature: answerOf(temperature + sensible / conductance, 'leafArea') as Temperature,
  }
}

/** A deficit that air of this temperature can have: at most its saturation vapour pressure, when it is quite dry. */
function deficitAt(deficit: VapourPressureDeficit, temperature: Temperature): number {
  const saturation = saturationVapourPressureFao56(temperature)
  if (numberIn(deficit, CROP_DEFICIT, 'deficit') <= saturation) return deficit
  throw new InputError(
    'deficit',
    `${deficit} kPa is above the saturation vapour pressure of ${saturation.toFixed(3)} kPa at ${temperature} °C`,
    'check the unit: 10 hPa is 1 kPa',
  )
}

/** What opens and closes the pores of a tomato leaf. */
export interface LeafResistanceInput extends CarbonDioxide {
  /** Radiation for each square metre of leaf: that on the crop over twice the leaf area index. Unit: W/m². Range: [0, 1500]. */
  readonly radiationOnLeaf: Irradiance
  /** Leaf temperature. Unit: °C. Range: [0, 60]. */
  readonly leafTemperature: Temperature
  /** Deficit from leaf to air. Unit: kPa. Range: [0, 10]. */
  readonly deficit: VapourPressureDeficit
  /** Whether it is night; false by default. */
  readonly night?: boolean
}

/**
 * Resistance of a tomato leaf to vapour, from light, warmth, carbon dioxide and dryness.
 *
 * By day rmin 82 s/m, a 0.023, Tm 24.5 °C, b 6.1e-7, d 4.3 for D in kPa; at night 658.5 s/m, 0.005, 33.6 °C, 1.1e-11 and 5.2,
 * without the term of light. Carbon dioxide below 200 ppm counts as 200.
 *
 * @equation `r_s = r_{min}\,\frac{I + 4.3}{I + 0.54}\,\left(1 + a\,(T - T_m)^2\right)\,\min\left(1.5, 1 + b\,(C - 200)^2\right)\,\min\left(3.8, 1 + d\,D^2\right)`
 * @param input - Light on the leaf, temperature, deficit, carbon dioxide, day or night.
 * @returns Leaf resistance. Unit: s/m.
 * @validity Tomato. The terms of light, warmth and carbon dioxide agree in two public programs that cite the thesis; the term of dryness
 * does not: its cap is 3.8 in one, 5.8 in another, and a third has a curve that ends at 4. In dry air the answer is uncertain by a third.
 * @source stanghellini-1987, Eq. 3.51
 * @example
 * leafResistanceStanghellini1987({
 *   radiationOnLeaf: wattsPerSquareMetre(60), leafTemperature: celsius(24.5), deficit: kilopascals(0.5),
 * }) // => 180.7
 */
export function leafResistanceStanghellini1987(input: LeafResistanceInput): number {
  const light = numberIn(optionsOf(input).radiationOnLeaf, LEAF_RADIATION, 'radiationOnLeaf')
  const warmth = numberIn(input.leafTemperature, AIR_AMONG_PLANTS, 'leafTemperature')
  const dry = numberIn(input.deficit, CROP_DEFICIT, 'deficit') ** 2
  const carbon = Math.max(0, numberIn(optionOr(input.carbonDioxide, 200), CARBON_DIOXIDE, 'carbonDioxide') - 200) ** 2
  if (booleanOf(optionOr(input.night, false), 'night')) {
    return (
      658.5 * (1 + 0.005 * (warmth - 33.6) ** 2) * Math.min(1.5, 1 + 1.1e-11 * carbon) * Math.min(3.8, 1 + 5.2 * dry)
    )
  }
  return (
    ((82 * (light + 4.3)) / (light + 0.54)) *
    (1 + 0.023 * (warmth - 24.5) ** 2) *
    Math.min(1.5, 1 + 6.1e-7 * carbon) *
    Math.min(3.8, 1 + 4.3 * dry)
  )
}
