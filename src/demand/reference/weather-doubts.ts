import type { HourlyWeather } from './hourly-weather.js'

/** What is doubtful in the weather of a day or an hour. `explainDemandFinding` puts it into words. */
export interface WeatherFinding {
  /** Stable short name for programs. */
  readonly code:
    | 'no-sun'
    | 'brighter-than-clear-sky'
    | 'light-without-sun'
    | 'darker-than-overcast'
    | 'air-above-saturation'
    | 'zone-far-from-site'
  /** How much it matters. */
  readonly level: 'note' | 'caution' | 'danger'
  /** Which input it is about. */
  readonly about: 'solar' | 'vapourPressure' | 'zoneLongitude'
  /** The number that tells: the radiation, the deficit, or the degrees between site and zone. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** With what it was compared: clear-sky or extraterrestrial radiation, 0, or 25 degrees. Unit: that of `unit`. Range: any. */
  readonly limit: number
  /** Unit of the value and the limit. */
  readonly unit: 'MJ/m²/d' | 'MJ/m²/h' | 'kPa' | '°'
}

/** How far radiation may stray before it is doubted; common practice, no source. */
interface LightLimits {
  readonly unit: 'MJ/m²/d' | 'MJ/m²/h'
  /** Highest share of clear-sky radiation; bright clouds beside the sun raise an hour more than a day. */
  readonly brightest: number
  /** Lowest share of extraterrestrial radiation under the darkest clouds. */
  readonly darkest: number
  /** What sensors show in the dark and at dawn. */
  readonly offset: number
}
const DAY: LightLimits = { unit: 'MJ/m²/d', brightest: 1.05, darkest: 0.03, offset: 0 }
export const HOUR: LightLimits = { unit: 'MJ/m²/h', brightest: 1.15, darkest: 0.01, offset: 0.03 }
/** Extraterrestrial radiation, MJ/m², from which darkness is told from dusk. */
const FULL_DAYLIGHT = 1
/** Degrees from the middle of the time zone beyond which its sign is doubted: solar noon is then 1 h 40 min from twelve. */
const FAR_FROM_ZONE = 25

/** Radiation that is there, and that could be. */
interface Light {
  readonly solar: number
  readonly clearSky: number
  readonly extraterrestrial: number
  readonly deficit: number
}

/** What in the weather of a day is doubtful. */
export function doubtsOfDay(light: Light): WeatherFinding[] {
  const { solar, clearSky } = light
  const night: WeatherFinding[] =
    clearSky > 0 ? [] : [{ code: 'no-sun', level: 'note', about: 'solar', value: solar, limit: 0, unit: 'MJ/m²/d' }]
  return [...night, ...doubtsOfLight(light, DAY), ...doubtsOfVapour(light.deficit)]
}

/** What in the weather of an hour is doubtful. */
export function doubtsOfHour(light: Light, { longitude, zoneLongitude }: HourlyWeather): WeatherFinding[] {
  const apart = Math.abs(longitude - zoneLongitude)
  const degrees = Math.min(apart, 360 - apart)
  const zone: WeatherFinding[] =
    degrees > FAR_FROM_ZONE
      ? [
          {
            code: 'zone-far-from-site',
            level: 'caution',
            about: 'zoneLongitude',
            value: degrees,
            limit: FAR_FROM_ZONE,
            unit: '°',
          },
        ]
      : []
  return [...zone, ...doubtsOfLight(light, HOUR), ...doubtsOfVapour(light.deficit)]
}

function doubtsOfLight({ solar, clearSky, extraterrestrial }: Light, limits: LightLimits): WeatherFinding[] {
  const { unit, brightest, darkest, offset } = limits
  const doubt = (code: WeatherFinding['code'], limit: number): WeatherFinding[] => [
    { code, level: 'caution', about: 'solar', value: solar, limit, unit },
  ]
  if (extraterrestrial <= 0) return solar > offset ? doubt('light-without-sun', 0) : []
  if (solar > brightest * clearSky + offset) return doubt('brighter-than-clear-sky', clearSky)
  const dark = extraterrestrial >= FULL_DAYLIGHT && solar < darkest * extraterrestrial
  return dark ? doubt('darker-than-overcast', darkest * extraterrestrial) : []
}

function doubtsOfVapour(deficit: number): WeatherFinding[] {
  return deficit < 0
    ? [
        {
          code: 'air-above-saturation',
          level: 'caution',
          about: 'vapourPressure',
          value: deficit,
          limit: 0,
          unit: 'kPa',
        },
      ]
    : []
}
