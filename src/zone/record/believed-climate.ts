import type { LeftOut } from './left-out.js'

/** What is looked at of a climate. */
interface AirAndLight {
  readonly time: Float64Array
  readonly airTemperature: Float64Array
  readonly relativeHumidity: Float64Array
  readonly irradiance: Float64Array
}

/** The sun above the air gives 1,361 W/m², broken clouds add half of it for moments; a sensor in the dark reads a little below zero. Unit: W/m². */
const MAX_LIGHT = 2000
const MIN_LIGHT = -50
/** A number that stands alone so far from those before and after it is no weather: what a sensor sends as it starts, 85 °C or 0. Unit: K, 1. */
const ALONE = { airTemperature: 20, relativeHumidity: 0.4 } as const
/** Beside readings that come more rarely a wild one is not told from weather. Unit: s. */
const MAX_STEP = 3600

/**
 * The climate without numbers that cannot be: one wild number would stand for the light of an hour, or be the warmest of the day, and shift the
 * plan. Each costs itself and is told.
 */
export function believedClimate<C extends AirAndLight>(climate: C): { climate: C; leftOut: readonly LeftOut[] } {
  const { time } = climate
  const leftOut: LeftOut[] = []
  const without = (column: Float64Array, isWild: (i: number) => boolean): Float64Array => {
    const kept = column.slice()
    for (let i = 0; i < column.length; i++) {
      if (!isWild(i)) continue
      kept[i] = Number.NaN
      leftOut.push([time[i]!, 'climate', 'impossible'])
    }
    return kept
  }
  const alone = (name: keyof typeof ALONE) =>
    without(climate[name], (i) => standsAlone(time, climate[name], i, ALONE[name]))
  return {
    climate: {
      ...climate,
      airTemperature: alone('airTemperature'),
      relativeHumidity: alone('relativeHumidity'),
      irradiance: without(
        climate.irradiance,
        (i) => climate.irradiance[i]! < MIN_LIGHT || climate.irradiance[i]! > MAX_LIGHT,
      ),
    },
    leftOut,
  }
}

/** The sun above the air brings 46 MJ/m² on its brightest day, 535 W/m² in the mean of day and night. Unit: W/m². */
const MAX_MEAN_LIGHT = 600

/** The forecasts without a mean that no day has: a noon, or a sum in J/cm², would multiply the use that is foreseen. */
export function believedForecast<F extends Pick<AirAndLight, 'time' | 'irradiance'>>(
  forecast: F,
): { forecast: F; leftOut: readonly LeftOut[] } {
  const isWild = (light: number) => light > MAX_MEAN_LIGHT
  return {
    forecast: { ...forecast, irradiance: forecast.irradiance.map((light) => (isWild(light) ? Number.NaN : light)) },
    leftOut: [...forecast.time].flatMap((time, i): LeftOut[] =>
      isWild(forecast.irradiance[i]!) ? [[time, 'forecast', 'impossible']] : [],
    ),
  }
}

/** Whether a number lies by more than this above both of its neighbours, or below both. */
function standsAlone(time: Float64Array, column: Float64Array, i: number, by: number): boolean {
  const [before, now, after] = [column[i - 1]!, column[i]!, column[i + 1]!]
  const near = time[i + 1]! - time[i]! <= MAX_STEP && time[i]! - time[i - 1]! <= MAX_STEP
  return near && ((now - before > by && now - after > by) || (before - now > by && after - now > by))
}
