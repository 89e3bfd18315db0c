import type {
  OxygenConcentration,
  OxygenSaturation,
  Pressure,
  Salinity,
  Temperature,
} from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { DISSOLVED_OXYGEN, SALINITY, SITE_PRESSURE, TEMPERATURE_OXYGEN } from './domains.js'

const ATMOSPHERE = 101.325

/** Water in contact with air. */
export interface AeratedWater {
  /** Water temperature. Unit: °C. Range: [0, 50]. */
  readonly temperature: Temperature
  /** Pressure of the air at the site; 101.325 kPa if left out. Unit: kPa. Range: [30, 200]. */
  readonly pressure?: Pressure | undefined
  /** Practical salinity; 0 if left out. Unit: 1. Range: [0, 42]. */
  readonly salinity?: Salinity | undefined
}

/** Water in contact with air, and the oxygen found in it. */
export interface AeratedWaterSample extends AeratedWater {
  /** Dissolved oxygen found. Unit: mg/L. Range: [0, 100]. */
  readonly concentration: OxygenConcentration
}

/** Where the equations of Benson and Krause (1984) hold. */
export const validityBensonKrause1984: Validity = {
  of: 'oxygenSaturationBensonKrause1984',
  note: 'fresh water and diluted sea water under moist air',
  inputs: {
    temperature: { min: 0, max: 40, unit: '°C' },
    pressure: { min: 50.6625, max: 111.4575, unit: 'kPa' },
    salinity: { min: 0, max: 40, unit: '1' },
  },
}

/**
 * Dissolved oxygen of water in equilibrium with moist air.
 *
 * P in atmospheres. Warm water holds less just when roots need more: 11.3 mg/L at 10 °C, 8.3 at 25 °C, 7.6 at 30 °C. The salinity
 * term is for sea salt; at the 3 dS/m of a feed it is about 1 %.
 *
 * @equation `\ln C_0 = -139.34411 + \frac{1.575701\times10^5}{T} - \frac{6.642308\times10^7}{T^2} + \frac{1.2438\times10^{10}}{T^3} - \frac{8.621949\times10^{11}}{T^4}`
 * @equation `C = C_0\,e^{-S(0.017674 - 10.754/T + 2140.7/T^2)}\,\frac{(P - u)(1 - \vartheta P)}{(1 - u)(1 - \vartheta)}, \quad u = e^{11.8571 - 3840.70/T - 216961/T^2}, \quad \vartheta = 9.75\times10^{-4} - 1.426\times10^{-5}t + 6.436\times10^{-8}t^2`
 * @returns Dissolved oxygen at saturation. Unit: mg/L.
 * @validity 0 to 40 °C, 0.5 to 1.1 atmospheres, salinity 0 to 40.
 * @source benson-1984; usgs-2011
 * @example
 * oxygenSaturationBensonKrause1984({ temperature: celsius(25) }) // => 8.263
 */
export function oxygenSaturationBensonKrause1984(water: AeratedWater): OxygenConcentration {
  const t = numberIn(optionsOf(water).temperature, TEMPERATURE_OXYGEN, 'temperature')
  const pressure = numberIn(optionOr(water.pressure, ATMOSPHERE), SITE_PRESSURE, 'pressure') / ATMOSPHERE
  const salinity = numberIn(optionOr(water.salinity, 0), SALINITY, 'salinity')
  const x = 1 / (t + 273.15)
  const fresh = Math.exp(-139.34411 + (1.575701e5 + (-6.642308e7 + (1.2438e10 - 8.621949e11 * x) * x) * x) * x)
  const salted = Math.exp(-salinity * (0.017674 + (-10.754 + 2140.7 * x) * x))
  const vapour = Math.exp(11.8571 + (-3840.7 - 216961 * x) * x)
  const second = 9.75e-4 + (-1.426e-5 + 6.436e-8 * t) * t
  const pressed = ((pressure - vapour) * (1 - second * pressure)) / ((1 - vapour) * (1 - second))
  return (fresh * salted * pressed) as OxygenConcentration
}

/**
 * Dissolved oxygen as a share of what the water would hold in equilibrium with air.
 *
 * Above 1 the water is supersaturated: it was pressurised, warmed or oxygenated a short time ago.
 *
 * @equation `s = \frac{C}{C_{sat}}`
 * @returns Share of saturation. Unit: 1.
 * @validity 0 to 40 °C, 0.5 to 1.1 atmospheres, salinity 0 to 40.
 * @source benson-1984
 * @example
 * inPercentOfOxygenSaturation(
 *   oxygenShareOfSaturation({ concentration: milligramsPerLitreOfOxygen(6), temperature: celsius(25) }),
 * ) // => 72.6088
 */
export function oxygenShareOfSaturation(sample: AeratedWaterSample): OxygenSaturation {
  return (numberIn(optionsOf(sample).concentration, DISSOLVED_OXYGEN, 'concentration') /
    oxygenSaturationBensonKrause1984(sample)) as OxygenSaturation
}
