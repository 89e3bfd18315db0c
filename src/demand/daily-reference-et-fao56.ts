import {
  actualVapourPressureFao56,
  type DayHumidity,
  meanSaturationVapourPressureFao56,
  vapourPressureDeficit,
} from '../air/actual-vapour-pressure-fao56.js'
import { atmosphericPressureFao56 } from '../air/atmospheric-pressure-fao56.js'
import {
  clearSkyRadiationFao56,
  netLongwaveRadiationFao56,
  netShortwaveRadiationFao56,
} from '../air/net-radiation-fao56.js'
import { psychrometricConstantFao56 } from '../air/psychrometric-constant-fao56.js'
import { slopeOfSaturationVapourPressureFao56 } from '../air/saturation-vapour-pressure-fao56.js'
import { extraterrestrialRadiationFao56, type SolarDay } from '../air/solar-geometry-fao56.js'
import { type MeasuredWind, windSpeedAtTwoMetresFao56 } from '../air/wind-at-two-metres-fao56.js'
import type { DailyNetRadiation, DailyRadiation } from '../quantity/daily-radiation.js'
import type { Elevation } from '../quantity/elevation.js'
import type { ReferenceET } from '../quantity/evapotranspiration.js'
import type { Finding } from '../quantity/finding.js'
import type { Pressure, VapourPressure, VapourPressureDeficit } from '../quantity/pressure.js'
import type { VapourPressureSlope } from '../quantity/psychrometrics.js'
import type { Temperature } from '../quantity/temperature.js'
import type { WindSpeed } from '../quantity/wind.js'
import { referenceETFao56 } from './reference-et-fao56.js'

/** A day of weather at a place. */
export interface DailyWeather extends DayHumidity, SolarDay {
  /** Height of the site above sea level. Unit: m. Range: [-500, 9000]. */
  readonly elevation: Elevation
  /** Solar radiation on the ground. Unit: MJ/m²/d. Range: [0, 60]. */
  readonly solar: DailyRadiation
  /** Wind, with the height at which it was measured. */
  readonly wind: MeasuredWind
}

/** Reference evapotranspiration of a day, with every step that leads to it. */
export interface DailyReferenceET {
  /** Reference evapotranspiration. Unit: mm/d. */
  readonly referenceET: ReferenceET
  /** Mean of the highest and the lowest temperature. Unit: °C. */
  readonly meanTemperature: Temperature
  /** Atmospheric pressure. Unit: kPa. */
  readonly pressure: Pressure
  /** Psychrometric constant. Unit: kPa/K. */
  readonly psychrometricConstant: VapourPressureSlope
  /** Slope of the saturation vapour pressure curve. Unit: kPa/K. */
  readonly slope: VapourPressureSlope
  /** Mean saturation vapour pressure. Unit: kPa. */
  readonly saturation: VapourPressure
  /** Actual vapour pressure. Unit: kPa. */
  readonly actual: VapourPressure
  /** Deficit of vapour pressure. Unit: kPa. */
  readonly deficit: VapourPressureDeficit
  /** Extraterrestrial radiation. Unit: MJ/m²/d. */
  readonly extraterrestrial: DailyRadiation
  /** Clear-sky radiation. Unit: MJ/m²/d. */
  readonly clearSky: DailyRadiation
  /** Net shortwave radiation. Unit: MJ/m²/d. */
  readonly netShortwave: DailyNetRadiation
  /** Net outgoing longwave radiation. Unit: MJ/m²/d. */
  readonly netLongwave: DailyNetRadiation
  /** Net radiation. Unit: MJ/m²/d. */
  readonly netRadiation: DailyNetRadiation
  /** Wind speed at 2 m. Unit: m/s. */
  readonly windSpeed: WindSpeed
  /** What had to be assumed, and what is doubtful. */
  readonly warnings: readonly Finding[]
}

/** Clear-sky share that is assumed where the sun does not rise (FAO-56 gives none for a whole day). */
const POLAR_NIGHT_SHARE = 0.7

/**
 * Reference evapotranspiration of grass for a day from its weather, with all steps of the FAO Penman-Monteith method.
 *
 * ```math
 * ET_o = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{900}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + 0.34\,u_2)}
 * ```
 *
 * The soil heat flux of a day is taken as zero. Where the sun does not rise, a clear-sky share of 0.7 is assumed for the longwave loss and
 * said so.
 *
 * @param weather - Temperatures, humidities, solar radiation, wind and place.
 * @returns Reference evapotranspiration and the steps to it.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @validity A large field of green, well-watered grass; under cover it is at best an index.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 6 with the steps of chapters 3 and 4, Box 11
 * @example
 * ```ts
 * const day = dailyReferenceETFao56({
 *   latitude: latitude(50.8), elevation: metresAboveSeaLevel(100), day: dayOfYear(187),
 *   highest: celsius(21.5), lowest: celsius(12.3), highestHumidity: percent(84), lowestHumidity: percent(63),
 *   solar: megajoulesPerSquareMetreDay(22.07), wind: { speed: kilometresPerHour(10), height: metres(10) },
 * })
 * day.referenceET // => 3.88
 * ```
 */
export function dailyReferenceETFao56(weather: DailyWeather): DailyReferenceET {
  const meanTemperature = ((weather.highest + weather.lowest) / 2) as Temperature
  const pressure = atmosphericPressureFao56(weather.elevation)
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const slope = slopeOfSaturationVapourPressureFao56(meanTemperature)
  const saturation = meanSaturationVapourPressureFao56(weather)
  const actual = actualVapourPressureFao56(weather)
  const deficit = vapourPressureDeficit({ saturation, actual })
  const extraterrestrial = extraterrestrialRadiationFao56(weather)
  const clearSky = clearSkyRadiationFao56({ extraterrestrial, elevation: weather.elevation })
  const relativeShortwave = clearSky > 0 ? weather.solar / clearSky : POLAR_NIGHT_SHARE
  const netShortwave = netShortwaveRadiationFao56(weather)
  const netLongwave = netLongwaveRadiationFao56({
    highest: weather.highest,
    lowest: weather.lowest,
    actualVapourPressure: actual,
    relativeShortwave,
  })
  const netRadiation = (netShortwave - netLongwave) as DailyNetRadiation
  // A wind that was measured at 2 m is taken as it is; the logarithm would change it by 0.02 %.
  const windSpeed = weather.wind.height === 200 ? weather.wind.speed : windSpeedAtTwoMetresFao56(weather.wind)
  const referenceET = referenceETFao56({
    netRadiation,
    meanTemperature,
    windSpeed,
    deficit,
    slope,
    psychrometricConstant,
  })
  return {
    referenceET,
    meanTemperature,
    pressure,
    psychrometricConstant,
    slope,
    saturation,
    actual,
    deficit,
    extraterrestrial,
    clearSky,
    netShortwave,
    netLongwave,
    netRadiation,
    windSpeed,
    warnings: doubts(weather.solar, clearSky),
  }
}

function doubts(solar: number, clearSky: number): Finding[] {
  if (clearSky <= 0) {
    return [
      {
        code: 'no-sun',
        level: 'note',
        message: `the sun does not rise: a clear-sky share of ${POLAR_NIGHT_SHARE} is assumed for the longwave loss`,
        about: 'solar',
      },
    ]
  }
  if (solar <= clearSky * 1.05) return []
  return [
    {
      code: 'brighter-than-clear-sky',
      level: 'caution',
      message: `the solar radiation of ${solar.toFixed(1)} MJ/m²/d is above that of a clear sky, ${clearSky.toFixed(1)} MJ/m²/d: check the sensor and its unit`,
      about: 'solar',
      value: solar,
      unit: 'MJ/m²/d',
    },
  ]
}
