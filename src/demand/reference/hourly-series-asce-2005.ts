import { atmosphericPressureFao56 } from '../../air/atmospheric-pressure-fao56.js'
import { dayOfEpochDay } from '../../air/day-of-date.js'
import { ACTUAL_VAPOUR, ANEMOMETER_HEIGHT, SITE_LONGITUDE, WIND_SPEED } from '../../air/domains.js'
import { psychrometricConstantFao56 } from '../../air/psychrometric-constant-fao56.js'
import type { SolarDay } from '../../air/solar-geometry-fao56.js'
import { aroundNoon, HOUR_FACTOR, radiationBetween, seasonalCorrectionHours } from '../../air/solar-hour-fao56.js'
import type { SiteElevation } from '../../air/terms.js'
import { windSpeedAtTwoMetresFao56 } from '../../air/wind-at-two-metres-fao56.js'
import type { BatchCounts, RefusalCount } from '../../quantity/batch.js'
import type { Instant } from '../../quantity/calendar.js'
import { INSTANT, SITE_ELEVATION, SITE_LATITUDE } from '../../quantity/domains.js'
import { DomainError, InputError } from '../../quantity/errors.js'
import type { Length, Longitude, WindSpeed } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { columnOf } from '../../quantity/missing.js'
import { HOURLY_SOLAR, HOURLY_TEMPERATURE } from '../domains.js'
import { cloudinessAsce, SHORT_HOUR, SIGMA_HOUR, TALL_HOUR } from './asce-2005.js'
import { penmanMonteith, saturationAt } from './reference-et-hour.js'
import { HOUR } from './weather-doubts.js'

/** Where the weather of a series was measured. */
export interface StationSite extends Pick<SolarDay, 'latitude'>, SiteElevation {
  /** Longitude, west negative. Unit: °. Range: [-180, 180]. */
  readonly longitude: Longitude
  /** Height of the anemometer above the ground. Unit: cm. Range: [50, 10000]. */
  readonly windHeight: Length
}

/** Hours of weather at a station in a row, and the arrays for the results. */
export interface HourlySeriesAsce {
  /** Where the weather was measured. */
  readonly site: StationSite
  /** Start of the first hour, in universal time, so that no clock change gets in the way. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly start: Instant
  /** Mean temperature of each hour; NaN where it is missing. Unit: °C. Range: any. */
  readonly temperature: Float64Array
  /** Actual vapour pressure of each hour; NaN where it is missing. Unit: kPa. Range: any. */
  readonly vapourPressure: Float64Array
  /** Solar radiation of each hour; NaN where it is missing. Unit: MJ/m²/h. Range: any. */
  readonly solar: Float64Array
  /** Mean wind speed of each hour; NaN where it is missing. Unit: m/s. Range: any. */
  readonly wind: Float64Array
  /** Where the evapotranspiration of the short surface goes. Unit: mm/h. Range: any. */
  readonly short: Float64Array
  /** Where the evapotranspiration of the tall surface goes. Unit: mm/h. Range: any. */
  readonly tall: Float64Array
}

/** What became of every hour. */
export interface HourlySeriesCounts extends BatchCounts {
  /** Hours before the first high sun, for which a clear-sky share of 0.7 was assumed. Unit: 1. */
  readonly cloudinessAssumed: number
  /** Hours with a radiation a little below zero, as sensors show at night, taken as zero. Unit: 1. */
  readonly belowZero: number
  /** Hours with radiation while the sun was below the horizon: clock, longitude or sensor are wrong. Unit: 1. */
  readonly lightWithoutSun: number
  /** Hours with a high sun and more than 1.15 times clear-sky radiation. Unit: 1. */
  readonly brighterThanClearSky: number
  /** Hours with a vapour pressure above saturation. Unit: 1. */
  readonly aboveSaturation: number
}

/**
 * Standardized reference evapotranspiration of many hours in a row, for short and tall surfaces, into arrays of the caller.
 *
 * The cloudiness of the last hour with the sun at 0.3 rad or more serves until the next such hour. Nothing is allocated for the rows.
 *
 * @procedure The steps of `hourlyReferenceETAsce2005` for each hour, with the solar date of the site and without the pressure of the hour.
 * An hour with a missing value is NaN in its place; an hour with a value out of range is NaN in its place and counted under its reason.
 * Radiation from -0.05 to 0 MJ/m²/h counts as zero. Doubtful hours are computed and counted.
 * @returns Counts of hours converted, missing and refused by reason.
 * @throws `DomainError` for the site or the start, `InputError` when lengths differ.
 * @validity Large fields of the two surfaces without stress; under cover it is at best an index.
 * @source asce-2005, Eq. 1 with Table 1 and the hourly steps
 * @example
 * const short = new Float64Array(2)
 * const counts = hourlySeriesAsce2005({
 *   site: { latitude: latitude(40.41), longitude: longitude(-104.78), elevation: metresAboveSeaLevel(1462.4), windHeight: metres(3) },
 *   start: instant(Date.UTC(2025, 6, 2, 23) / 1000),
 *   temperature: Float64Array.of(30.9, 30.1), vapourPressure: Float64Array.of(1.09, NaN),
 *   solar: Float64Array.of(2.24, 1.5), wind: Float64Array.of(4.07, 3), short, tall: new Float64Array(2),
 * })
 * short // => [0.599, NaN]
 * counts.missing // => 1
 */
export function hourlySeriesAsce2005(series: HourlySeriesAsce): HourlySeriesCounts {
  requireObject(series, 'series')
  const { site, short, tall } = series
  requireObject(site, 'site')
  const temperature = columnOf(series.temperature, 'temperature')
  const vapourPressure = columnOf(series.vapourPressure, 'vapourPressure')
  const solar = columnOf(series.solar, 'solar')
  const wind = columnOf(series.wind, 'wind')
  requireList(short, 'short')
  requireList(tall, 'tall')
  const rows = temperature.length
  checkLengths(series, rows)
  const phi = (numberIn(site.latitude, SITE_LATITUDE, 'latitude') * Math.PI) / 180
  const clear = 0.75 + 2e-5 * numberIn(site.elevation, SITE_ELEVATION, 'elevation')
  const gamma = psychrometricConstantFao56(atmosphericPressureFao56(site.elevation))
  numberIn(site.windHeight, ANEMOMETER_HEIGHT, 'windHeight')
  const reduction = windSpeedAtTwoMetresFao56({ speed: 1 as WindSpeed, height: site.windHeight })
  const windFactor = site.windHeight === 200 ? 1 : reduction
  // Mean solar time of the middle of the first hour, in seconds.
  const first =
    numberIn(series.start, INSTANT, 'start') + numberIn(site.longitude, SITE_LONGITUDE, 'longitude') * 240 + 1800

  const refusals: Refusals = new Map()
  let missing = 0
  let refused = 0
  let belowZero = 0
  let cloudinessAssumed = 0
  let lightWithoutSun = 0
  let brighterThanClearSky = 0
  let aboveSaturation = 0
  let clouds = Number.NaN
  let today = Number.NaN
  let sun = sunOfDay(0, phi)
  for (let i = 0; i < rows; i++) {
    const t = temperature[i]!
    const ea = vapourPressure[i]!
    const speed = wind[i]!
    let rs = solar[i]!
    const inRange = t >= -60 && t <= 60 && ea >= 0 && ea <= 10 && rs >= -0.05 && rs <= 6 && speed >= 0 && speed <= 120
    if (!inRange) {
      short[i] = Number.NaN
      tall[i] = Number.NaN
      if (Number.isNaN(t + ea + rs + speed)) missing++
      else {
        refused++
        count(refusals, i, t, ea, rs, speed)
      }
      continue
    }
    if (rs < 0) {
      rs = 0
      belowZero++
    }
    const seconds = first + i * 3600
    const day = Math.floor(seconds / 86400)
    if (day !== today) {
      today = day
      sun = sunOfDay(day, phi)
    }
    const { scale, sines, cosines, sunset, correction } = sun
    const omega = aroundNoon((Math.PI / 12) * ((seconds - day * 86400) / 3600 + correction - 12))
    if (sines + cosines * Math.cos(omega) >= SINE_OF_MIN_SUN_HEIGHT) {
      const rso = clear * radiationBetween(scale, sines, cosines, sunset, omega - Math.PI / 24, omega + Math.PI / 24)
      clouds = cloudinessAsce(rs / rso)
      if (rs > HOUR.brightest * rso + HOUR.offset) brighterThanClearSky++
    } else if (Number.isNaN(clouds)) cloudinessAssumed++
    if (rs > HOUR.offset && Math.abs(omega) - Math.PI / 24 >= sunset) lightWithoutSun++

    const es = saturationAt(t)
    if (ea > es) aboveSaturation++
    const slope = ((2503 / 0.6108) * es) / ((t + 237.3) * (t + 237.3))
    const kelvin = t + 273.16
    const square = kelvin * kelvin
    const fcd = Number.isNaN(clouds) ? ASSUMED_CLOUDINESS : clouds
    const rn = 0.77 * rs - SIGMA_HOUR * square * square * (0.34 - 0.14 * Math.sqrt(ea)) * fcd
    const u2 = speed * windFactor
    const lit = rn > 0
    const shortEnergy = rn * (1 - (lit ? SHORT_HOUR.soilDay : SHORT_HOUR.soilNight))
    const tallEnergy = rn * (1 - (lit ? TALL_HOUR.soilDay : TALL_HOUR.soilNight))
    const shortDrag = lit ? SHORT_HOUR.day : SHORT_HOUR.night
    const tallDrag = lit ? TALL_HOUR.day : TALL_HOUR.night
    short[i] = penmanMonteith(slope, gamma, shortEnergy, t, u2, es - ea, SHORT_HOUR.numerator, shortDrag)
    tall[i] = penmanMonteith(slope, gamma, tallEnergy, t, u2, es - ea, TALL_HOUR.numerator, tallDrag)
  }
  return {
    rows,
    converted: rows - missing - refused,
    missing,
    refused,
    refusals: [...refusals.values()],
    cloudinessAssumed,
    belowZero,
    lightWithoutSun,
    brighterThanClearSky,
    aboveSaturation,
  }
}

/** What the sun does on a day at a latitude: the same for all its hours. */
function sunOfDay(day: number, phi: number) {
  const number = dayOfEpochDay(day)
  const turn = ((2 * Math.PI) / 365) * number
  const declination = 0.409 * Math.sin(turn - 1.39)
  return {
    scale: HOUR_FACTOR * (1 + 0.033 * Math.cos(turn)),
    sines: Math.sin(phi) * Math.sin(declination),
    cosines: Math.cos(phi) * Math.cos(declination),
    sunset: Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination)))),
    correction: seasonalCorrectionHours((2 * Math.PI * (number - 81)) / 364),
  }
}

/** Sine of `MIN_SUN_HEIGHT`. */
const SINE_OF_MIN_SUN_HEIGHT = 0.29552020666133955
/** Cloudiness function of `NIGHT_SHARE`, assumed before the first high sun: 1.35 · 0.7 - 0.35. */
const ASSUMED_CLOUDINESS = 0.595

type Refusals = Map<string, { -readonly [K in keyof RefusalCount]: RefusalCount[K] }>

function count(refusals: Refusals, row: number, t: number, ea: number, rs: number, speed: number): void {
  for (const [value, span] of [
    [t, HOURLY_TEMPERATURE],
    [ea, ACTUAL_VAPOUR],
    [rs, HOURLY_SOLAR],
    [speed, WIND_SPEED],
  ] as const) {
    if (value >= span.min && value <= span.max) continue
    const about = `${span.quantity} ${value > span.max ? 'above' : 'below'} its range`
    const known = refusals.get(about)
    if (known !== undefined) known.count++
    else
      refusals.set(about, {
        code: 'outside-domain',
        about,
        count: 1,
        first: row,
        message: `row ${row}: ${new DomainError(value, span).message}`,
      })
    return
  }
}

function checkLengths(series: HourlySeriesAsce, rows: number): void {
  for (const name of ['vapourPressure', 'solar', 'wind'] as const)
    if (series[name].length !== rows)
      throw new InputError(name, `has ${series[name].length} hours, the temperature ${rows}`, 'give one value an hour')
  for (const name of ['short', 'tall'] as const)
    if (series[name].length < rows)
      throw new InputError(
        name,
        `has room for ${series[name].length} of ${rows} hours`,
        'make it as long as the series',
      )
}
