import { maxOf, minOf } from '../../quantity/extremes.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { LocalDay } from '../record/local-day.js'
import { type ClimateColumns, firstAt } from '../record/zone-window.js'
import { MAX_LIGHT_GAP } from './light-of-day.js'

/** The air of one place warmed by 57 °C within a day at most (Loma, Montana, 1972, from memory): a broken sensor goes on to 85 or -40 °C. */
const MAX_SWING = 60
/** Sensors read a little above saturation. */
const MAX_HUMIDITY = 1.1

/** What the demand of a day needs of its weather. */
interface DayWeather {
  /** Unit: °C. */
  readonly warmest: number
  readonly coldest: number
  /** Unit: 1. */
  readonly dampest: number
  readonly driest: number
  /** Mean radiation. Unit: W/m². */
  readonly radiation: number
  /** Mean wind; undefined where there is none. Unit: m/s. */
  readonly wind: number | undefined
}

/** The weather of a day, where it has few gaps and can be. */
export function dayWeather(climate: ClimateColumns, day: LocalDay): Known<DayWeather> {
  const [a, b] = [firstAt(climate.time, day.from), firstAt(climate.time, day.to)]
  const time = climate.time.subarray(a, b)
  const good = (column: Float64Array) => column.subarray(a, b).filter((x) => !Number.isNaN(x))
  const air = good(climate.airTemperature)
  const humidity = good(climate.relativeHumidity)
  const radiation = good(climate.irradiance)
  const wind = good(climate.windSpeed)
  if (Math.min(air.length, humidity.length, radiation.length) === 0) return unknown('climate-not-recorded')
  const step = medianStep(time)
  const needed = (0.8 * (day.to - day.from)) / step
  const light = overTime(time, climate.irradiance.subarray(a, b), day, step)
  if (Math.min(air.length, humidity.length, radiation.length) < needed || light.gap > Math.max(MAX_LIGHT_GAP, 3 * step))
    return unknown('climate-has-gaps')
  const [warmest, coldest, dampest, driest] = [maxOf(air), minOf(air), maxOf(humidity), minOf(humidity)]
  if (warmest - coldest > MAX_SWING || dampest > MAX_HUMIDITY) return unknown('climate-impossible')
  return known({
    warmest,
    coldest,
    dampest,
    driest,
    radiation: light.mean,
    wind: wind.length > 0 ? meanOf(wind) : undefined,
  })
}

/** The mean of a day whose gaps are filled by straight lines, and the longest gap. */
function overTime(time: Float64Array, values: Float64Array, { from, to }: LocalDay, step: number) {
  let [sum, count, gap, before, last] = [0, 0, 0, from, Number.NaN]
  const pass = (until: number, mean: number, missing: number) => {
    gap = Math.max(gap, until - before)
    count += missing
    sum += missing * mean
  }
  for (let i = 0; i < time.length; i++) {
    const value = values[i]!
    if (Number.isNaN(value)) continue
    const steps = Math.round((time[i]! - before) / step)
    if (Number.isNaN(last)) pass(time[i]!, value, steps)
    else pass(time[i]!, (last + value) / 2, Math.max(0, steps - 1))
    sum += value
    count++
    before = time[i]!
    last = value
  }
  pass(to, last, Math.max(0, Math.round((to - before) / step) - 1))
  return { mean: sum / count, gap }
}

function medianStep(time: Float64Array): number {
  const steps = time.subarray(1).map((t, i) => t - time[i]!)
  return steps.length === 0 ? 86400 : steps.sort()[steps.length >> 1]!
}

function meanOf(list: Float64Array): number {
  return list.reduce((sum, x) => sum + x, 0) / list.length
}
