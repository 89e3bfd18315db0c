import { netLongwaveRadiationFao56 } from '../../air/net-radiation-fao56.js'
import { slopeOfSaturationVapourPressureFao56 } from '../../air/saturation-vapour-pressure-fao56.js'
import type { DailySoilHeat, ReferenceET, VapourPressureDeficit } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import type { DailyWeather } from './daily-weather.js'
import { referenceETFao56 } from './reference-et-fao56.js'
import { type StepsOfDay, stepsOfDay } from './steps-of-day.js'

/** Reference evapotranspiration of a day, with every step that leads to it. */
export interface DailyReferenceET extends StepsOfDay {
  /** Reference evapotranspiration. Unit: mm/d. */
  readonly referenceET: ReferenceET
  /** The part of it that radiation drives. Unit: mm/d. */
  readonly radiationPart: ReferenceET
  /** The part of it that wind and dry air drive. Unit: mm/d. */
  readonly aerodynamicPart: ReferenceET
  /** Soil heat flux. Unit: MJ/m²/d. */
  readonly soilHeat: DailySoilHeat
}

/**
 * Reference evapotranspiration of grass for a day from its weather, with all steps of the FAO Penman-Monteith method.
 *
 * The soil heat flux of a day is taken as zero. Humidity, radiation and wind that are missing are estimated by the procedures of FAO-56,
 * and `assumedInputs` names each of them. Where the sun does not rise, a clear-sky share of 0.7 is assumed for the longwave loss and said so.
 *
 * @equation `ET_o = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{900}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + 0.34\,u_2)}`
 * @param weather - Temperatures and place; humidity, solar radiation and wind where they are known.
 * @returns Reference evapotranspiration, the steps to it, what was assumed and what is doubtful.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @validity A large field of green, well-watered grass; under cover it is at best an index.
 * @source allen-1998, Eq. 6 with the steps of chapters 3 and 4, Box 11
 * @example
 * const day = dailyReferenceETFao56({
 *   latitude: latitude(50.8), elevation: metresAboveSeaLevel(100), day: dayOfYear(187),
 *   maxTemperature: celsius(21.5), minTemperature: celsius(12.3), maxHumidity: percent(84), minHumidity: percent(63),
 *   solar: megajoulesPerSquareMetreDay(22.07), wind: { speed: kilometresPerHour(10), height: metres(10) },
 * })
 * day.referenceET // => 3.88
 */
export function dailyReferenceETFao56(weather: DailyWeather): DailyReferenceET {
  requireObject(weather, 'weather')
  return referenceETOfDay(weather, 0 as DailySoilHeat)
}

/** The steps with a given soil heat flux, for a day or a month. */
export function referenceETOfDay(weather: DailyWeather, soilHeat: DailySoilHeat): DailyReferenceET {
  const steps = stepsOfDay(weather, {
    slope: slopeOfSaturationVapourPressureFao56,
    netLongwave: netLongwaveRadiationFao56,
  })
  const referenceET = referenceETFao56({ ...steps, soilHeat })
  const radiationPart = referenceETFao56({ ...steps, soilHeat, deficit: 0 as VapourPressureDeficit })
  const aerodynamicPart = (referenceET - radiationPart) as ReferenceET
  return { referenceET, radiationPart, aerodynamicPart, soilHeat, ...steps }
}
