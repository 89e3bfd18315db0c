import { medianInPlace, selectInPlace } from '../../numerics/select.js'
import type { UnitDoubt, ZoneFinding } from '../findings/zone-finding.js'
import type { LocalDay } from '../record/local-day.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'

/** Warmer than this no day is on average where crops grow, and no root zone lives; °C. 45 °F are 7 °C. Common practice, no source. */
const MAX_DAY = 45
/** Above this a number can only be kelvin. */
const MIN_KELVIN = 200
/** Air and root zone of one place do not differ by more where one of them is so warm, K. Common practice, no source. */
const MAX_APART = 20
const WARM = 40
/** Air is never as dry as this all day; a sensor reads a little above saturation. */
const MIN_HUMIDITY = 0.03
const MAX_HUMIDITY = 1.1
/** Sun above the air: 1,361 W/m² (Kopp and Lean 2011, from memory). Clouds lift moments above it and no twentieth of a day. */
const MAX_LIGHT = 1400
/** Even a dark winter day is brighter at noon, W/m²; MJ/m² in an hour and kW/m² are not. */
const MIN_LIGHT = 4.5
/** What a sensor shows in the dark. */
const NO_LIGHT = 0.2
/** A strong breeze begins at 10.8 m/s (Beaufort's scale, from memory): rare at 2 m for half a day, but 3.5 m/s are 12.6 km/h. */
const MAX_WIND = 12
/** Nobody feeds so salt, and even drain seldom is, dS/m: common practice, no source. */
const MAX_FEED = 10
const MAX_DRAIN = 30
const MICROSIEMENS = 1000

/** Columns whose numbers of a day look like those of another unit. Days whose numbers could be either are not told. */
export function unitDoubts(window: ZoneWindow, day: LocalDay): ZoneFinding[] {
  const { climate, watering } = window
  const air = middleOf(climate.time, climate.airTemperature, day)
  const root = middleOf(window.time, window.rootTemperature, day)
  const found = [
    doubted('airTemperature', air, '°C', likeOfTemperature(air, root)),
    doubted('rootTemperature', root, '°C', likeOfTemperature(root, air)),
    humidityDoubt(middleOf(climate.time, climate.relativeHumidity, day)),
    lightDoubt(brightOf(climate.time, window.irradianceRead, day)),
    windDoubt(middleOf(climate.time, climate.windSpeed, day)),
    saltDoubt('feedEC', middleOf(watering.time, watering.feedEC, day), MAX_FEED),
    saltDoubt('drainEC', middleOf(watering.time, watering.drainEC, day), MAX_DRAIN),
  ]
  return found.filter((one) => one !== undefined)
}

/** Whether one of these columns is doubted. */
export function doubtsAny(doubts: readonly ZoneFinding[], columns: readonly UnitDoubt['about'][]): boolean {
  return doubts.some((one) => one.code === 'unit-doubted' && columns.includes(one.about))
}

function doubted(
  about: UnitDoubt['about'],
  value: number | undefined,
  unit: UnitDoubt['unit'],
  like: UnitDoubt['like'] | undefined,
): ZoneFinding | undefined {
  if (value === undefined || like === undefined) return undefined
  return { code: 'unit-doubted', level: 'caution', about, value, unit, like }
}

function likeOfTemperature(value = Number.NaN, other = Number.NaN): 'fahrenheit' | 'kelvin' | undefined {
  if (value > MIN_KELVIN) return 'kelvin'
  return value > MAX_DAY || (value > WARM && value - other > MAX_APART) ? 'fahrenheit' : undefined
}

function humidityDoubt(value: number | undefined) {
  const like =
    value === undefined ? undefined : value > MAX_HUMIDITY ? 'per-cent' : value < MIN_HUMIDITY ? 'fraction' : undefined
  return doubted('relativeHumidity', value, '1', like)
}

function lightDoubt(value: number | undefined) {
  const weak = value !== undefined && value > NO_LIGHT && value <= MIN_LIGHT
  const strong = value !== undefined && value > MAX_LIGHT
  return doubted('irradiance', value, 'W/m²', weak ? 'megajoules' : strong ? 'light-for-growth' : undefined)
}

function windDoubt(value: number | undefined) {
  return doubted('windSpeed', value, 'm/s', value !== undefined && value > MAX_WIND ? 'kilometres-per-hour' : undefined)
}

function saltDoubt(about: 'feedEC' | 'drainEC', value: number | undefined, max: number) {
  const like =
    value === undefined || value <= max
      ? undefined
      : value < MICROSIEMENS
        ? 'millisiemens-per-metre'
        : 'microsiemens-per-centimetre'
  return doubted(about, value, 'dS/m', like)
}

function valuesOf(time: Float64Array, column: Float64Array, { from, to }: LocalDay): Float64Array {
  return column.subarray(firstAt(time, from), firstAt(time, to)).filter((x) => !Number.isNaN(x))
}

function middleOf(time: Float64Array, column: Float64Array, day: LocalDay): number | undefined {
  const values = valuesOf(time, column, day)
  return values.length === 0 ? undefined : medianInPlace(values)
}

/** What a twentieth of the readings of a day reach: one wild number is not in it. */
function brightOf(time: Float64Array, column: Float64Array, day: LocalDay): number | undefined {
  const values = valuesOf(time, column, day)
  return values.length < 20 ? undefined : selectInPlace(values, Math.floor(0.95 * values.length))
}
