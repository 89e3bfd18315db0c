import { InputError } from '../quantity/errors.js'
import type { RelativeHumidity, Temperature, TemperatureChange, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import { asName, hasRow } from '../quantity/one-of.js'
import { type DayTemperatures, meanSaturationVapourPressureFao56 } from './actual-vapour-pressure-fao56.js'
import { AIR_PRESSURE, AIR_TEMPERATURE, ARIDITY, RELATIVE_HUMIDITY } from './domains.js'
import { saturationAt, saturationVapourPressureFao56 } from './saturation-vapour-pressure-fao56.js'
import type { AirPressure, MinTemperature } from './terms.js'

/** Coefficient of a psychrometer by how its wet bulb is ventilated, 1/K (FAO-56, Eq. 16). */
export const PSYCHROMETER_COEFFICIENT = { aspirated: 0.000662, natural: 0.0008, indoors: 0.0012 } as const

/** How the wet bulb of a psychrometer is ventilated: by a fan (about 5 m/s), by natural wind (about 1 m/s), or not, indoors. */
export type PsychrometerVentilation = keyof typeof PSYCHROMETER_COEFFICIENT

/** What a psychrometer shows. */
export interface PsychrometerReading extends AirPressure {
  /** Temperature of the dry bulb. Unit: °C. Range: [-60, 100]. */
  readonly dryBulb: Temperature
  /** Temperature of the wet bulb, not above the dry one. Unit: °C. Range: [-60, 100]. */
  readonly wetBulb: Temperature
  /** How the wet bulb is ventilated. */
  readonly ventilation: PsychrometerVentilation
}

/** Lowest temperature of a day with the humidity that belongs to it. */
export interface MaxHumidity extends MinTemperature {
  /** Highest relative humidity of the day. Unit: 1. Range: [0, 1]. */
  readonly maxHumidity: RelativeHumidity
}

/** Temperatures of a day and its mean humidity. */
export interface MeanHumidity extends DayTemperatures {
  /** Mean relative humidity of the day. Unit: 1. Range: [0, 1]. */
  readonly meanHumidity: RelativeHumidity
}

/** Lowest temperature of a day, and how far below it the dew point lies. */
export interface DewAtNight extends MinTemperature {
  /** How far the dew point lies below it: 0 K by default, 2 to 3 K at arid sites. Unit: K. Range: [0, 10]. */
  readonly aridity?: TemperatureChange
}

/**
 * Vapour pressure of the air from its dew point.
 *
 * @equation `e_a = e^\circ(T_{dew})`
 * @param dewPoint - Dew point. Unit: °C. Range: [-60, 100].
 * @returns Actual vapour pressure. Unit: kPa.
 * @source allen-1998, Eq. 14
 * @example
 * vapourPressureFromDewPointFao56(celsius(5)) // => 0.872
 */
export function vapourPressureFromDewPointFao56(dewPoint: Temperature): VapourPressure {
  return saturationVapourPressureFao56(dewPoint)
}

/**
 * Vapour pressure of the air from the dry and the wet bulb of a psychrometer.
 *
 * The coefficient is 0.000662 1/K with a fan, 0.0008 in natural wind and 0.0012 indoors without a fan.
 *
 * @equation `e_a = e^\circ(T_{wet}) - a_{psy} P\,(T_{dry} - T_{wet})`
 * @param reading - Dry and wet bulb, pressure of the air and kind of ventilation.
 * @returns Actual vapour pressure; negative where the two bulbs cannot belong together. Unit: kPa.
 * @throws `DomainError` outside the ranges, `InputError` when the wet bulb is the warmer one or the ventilation is unknown.
 * @source allen-1998, Eq. 15 and 16
 * @example
 * vapourPressureFromPsychrometerFao56({
 *   dryBulb: celsius(25.6), wetBulb: celsius(19.5), pressure: kilopascals(87.9), ventilation: 'aspirated',
 * }) // => 1.91
 */
export function vapourPressureFromPsychrometerFao56(reading: PsychrometerReading): VapourPressure {
  const { dryBulb, wetBulb, pressure, ventilation } = optionsOf(reading)
  const pascals = numberIn(pressure, AIR_PRESSURE, 'pressure')
  numberIn(dryBulb, AIR_TEMPERATURE, 'dryBulb')
  const saturated = saturationAt(wetBulb, 'wetBulb')
  if (wetBulb > dryBulb)
    throw new InputError('wetBulb', `${wetBulb} °C is above the dry bulb, ${dryBulb} °C`, 'wet the wick, or swap them')
  if (!hasRow(PSYCHROMETER_COEFFICIENT, ventilation))
    throw new InputError('ventilation', `"${asName(ventilation)}" is unknown`, 'say aspirated, natural or indoors')
  return (saturated - PSYCHROMETER_COEFFICIENT[ventilation] * pascals * (dryBulb - wetBulb)) as VapourPressure
}

/**
 * Vapour pressure of a day from its highest relative humidity only, for sites where the lowest one is not trusted.
 *
 * @equation `e_a = e^\circ(T_{min})\,RH_{max}`
 * @returns Actual vapour pressure. Unit: kPa.
 * @source allen-1998, Eq. 18
 * @example
 * vapourPressureFromMaxHumidityFao56({ minTemperature: celsius(18), maxHumidity: percent(82) }) // => 1.692
 */
export function vapourPressureFromMaxHumidityFao56(day: MaxHumidity): VapourPressure {
  const { minTemperature: min, maxHumidity } = optionsOf(day)
  return (saturationAt(min, 'minTemperature') *
    numberIn(maxHumidity, RELATIVE_HUMIDITY, 'maxHumidity')) as VapourPressure
}

/**
 * Vapour pressure of a day from its mean relative humidity: less exact than from the highest and the lowest one.
 *
 * @equation `e_a = RH_{mean} \frac{e^\circ(T_{max}) + e^\circ(T_{min})}{2}`
 * @returns Actual vapour pressure. Unit: kPa.
 * @throws `DomainError` outside the ranges, `InputError` when the temperatures are swapped.
 * @source allen-1998, Eq. 19
 * @example
 * vapourPressureFromMeanHumidityFao56({ maxTemperature: celsius(25), minTemperature: celsius(18), meanHumidity: percent(68) }) // => 1.779
 */
export function vapourPressureFromMeanHumidityFao56(day: MeanHumidity): VapourPressure {
  return (numberIn(optionsOf(day).meanHumidity, RELATIVE_HUMIDITY, 'meanHumidity') *
    meanSaturationVapourPressureFao56(day)) as VapourPressure
}

/**
 * Vapour pressure of a day without any humidity: the dew point is taken to be the lowest temperature, or a little below it at arid sites.
 *
 * @equation `e_a = e^\circ(T_{min} - \Delta)`
 * @returns Actual vapour pressure. Unit: kPa.
 * @validity Sites whose surroundings are green and watered; in a dry surrounding give the aridity.
 * @source allen-1998, Eq. 48, with the correction of Annex 6
 * @example
 * vapourPressureFromMinTemperatureFao56({ minTemperature: celsius(14.8) }) // => 1.68
 * vapourPressureFromMinTemperatureFao56({ minTemperature: celsius(14.8), aridity: kelvinsOfChange(2) }) // => 1.48
 */
export function vapourPressureFromMinTemperatureFao56(day: DewAtNight): VapourPressure {
  const { minTemperature: min, aridity } = optionsOf(day)
  numberIn(min, AIR_TEMPERATURE, 'minTemperature')
  return saturationVapourPressureFao56((min - numberIn(optionOr(aridity, 0), ARIDITY, 'aridity')) as Temperature)
}
