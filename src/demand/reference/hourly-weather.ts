import { atmosphericPressureFao56 } from '../../air/atmospheric-pressure-fao56.js'
import { ACTUAL_VAPOUR, AIR_PRESSURE, RELATIVE_HUMIDITY } from '../../air/domains.js'
import { vapourPressureOfHumidity } from '../../air/humidity-of-air.js'
import { saturationAt } from '../../air/saturation-vapour-pressure-fao56.js'
import type { SolarHour } from '../../air/solar-hour-fao56.js'
import { type MeasuredWind, windSpeedAtTwoMetresFao56 } from '../../air/wind-at-two-metres-fao56.js'
import { SITE_ELEVATION } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type {
  Elevation,
  HourlyRadiation,
  Pressure,
  RelativeHumidity,
  Temperature,
  VapourPressure,
  WindSpeed,
} from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { WeatherSite } from '../terms.js'
import { NIGHT_SHARE } from './reference-et-hour.js'
import type { WeatherAssumption } from './weather-assumption.js'

/**
 * An hour of weather at a place. Humidity is taken from the first of these that is given: vapour pressure, dew point, relative humidity.
 */
export interface HourlyWeather extends WeatherSite, Omit<SolarHour, 'duration'> {
  /** Mean temperature of the hour. Unit: °C. Range: [-60, 100]. */
  readonly temperature: Temperature
  /** Actual vapour pressure. Unit: kPa. Range: [0, 10]. */
  readonly vapourPressure?: VapourPressure
  /** Dew point. Unit: °C. Range: [-60, 100]. */
  readonly dewPoint?: Temperature
  /** Relative humidity. Unit: 1. Range: [0, 1]. */
  readonly relativeHumidity?: RelativeHumidity
  /** Solar radiation on the ground. Unit: MJ/m²/h. Range: [0, 6]. */
  readonly solar: HourlyRadiation
  /** Wind, with the height at which it was measured. */
  readonly wind: MeasuredWind
  /**
   * Solar over clear-sky radiation of an hour two or three hours before sunset, for hours with a low sun or none; 0.7 is assumed without it.
   * Unit: 1. Range: [0, 1.5].
   */
  readonly relativeShortwaveBeforeSunset?: number
}

/** The pressure of an hour, measured or that of the elevation. */
export function pressureOfHour({ elevation, pressure }: HourlyWeather): Pressure {
  const standard = atmosphericPressureFao56(numberIn(elevation, SITE_ELEVATION, 'elevation') as Elevation)
  return pressure === undefined ? standard : (numberIn(pressure, AIR_PRESSURE, 'pressure') as Pressure)
}

/** The actual vapour pressure of an hour. */
export function vapourOfHour({
  temperature,
  vapourPressure,
  dewPoint,
  relativeHumidity,
}: HourlyWeather): VapourPressure {
  const ofDew = dewPoint === undefined ? undefined : saturationAt(dewPoint, 'dewPoint')
  const share =
    relativeHumidity === undefined
      ? undefined
      : (numberIn(relativeHumidity, RELATIVE_HUMIDITY, 'relativeHumidity') as RelativeHumidity)
  if (vapourPressure !== undefined) return numberIn(vapourPressure, ACTUAL_VAPOUR, 'vapourPressure') as VapourPressure
  if (ofDew !== undefined) return ofDew
  if (share !== undefined) return vapourPressureOfHumidity({ temperature, relativeHumidity: share })
  throw new InputError(
    'relativeHumidity',
    'is missing, and an hour has no estimate for it',
    'give vapourPressure, dewPoint or relativeHumidity',
  )
}

/** The wind of an hour at 2 m. */
export function windOfHour({ wind }: HourlyWeather): WindSpeed {
  const reduced = windSpeedAtTwoMetresFao56(wind)
  return wind.height === 200 ? wind.speed : reduced
}

/** What is said where the cloudiness of an hour is not known. */
export function assumedCloudiness(sunElevation: number): WeatherAssumption {
  return {
    code: 'assumed-cloudiness',
    level: 'note',
    about: 'relativeShortwaveBeforeSunset',
    value: NIGHT_SHARE,
    unit: '1',
    sunElevation,
  }
}
