import { dayOfDate } from '../../air/day-of-date.js'
import { AIR_TEMPERATURE } from '../../air/domains.js'
import { soilHeatOfCurrentMonthFao56, soilHeatOfMonthFao56 } from '../../air/soil-heat-fao56.js'
import type { DailySoilHeat, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { type DailyReferenceET, referenceETOfDay } from './daily-reference-et-fao56.js'
import type { DailyWeather } from './daily-weather.js'

/** Means of the days of a month at a place, and the mean temperatures of its neighbours. */
export interface MonthlyWeather extends Omit<DailyWeather, 'day'> {
  /** Month; January is 1. Unit: 1. Range: integers [1, 12]. */
  readonly month: number
  /** Mean temperature of the month before; without it the soil heat flux is taken as zero. Unit: °C. Range: [-60, 60]. */
  readonly before?: Temperature
  /** Mean temperature of the month after, where it is known. Unit: °C. Range: [-60, 60]. */
  readonly after?: Temperature
}

/**
 * Reference evapotranspiration of grass for the mean day of a month, with all steps of the FAO Penman-Monteith method.
 *
 * The sun is that of the 15th of the month. The soil heat flux comes from the months around it, or from the month before where the
 * following one is not known.
 *
 * @procedure The daily method for the 15th of the month, with the soil heat flux of FAO-56, Eq. 43 or 44.
 * @returns Reference evapotranspiration of a day of the month, the steps to it, what was assumed and what is doubtful.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @validity A large field of green, well-watered grass; under cover it is at best an index.
 * @source allen-1998, Eq. 6, 43 and 44, Example 17
 * @example
 * const april = monthlyReferenceETFao56({
 *   latitude: latitude(13.733333), elevation: metresAboveSeaLevel(2), month: 4,
 *   maxTemperature: celsius(34.8), minTemperature: celsius(25.6), before: celsius(29.2), vapourPressure: kilopascals(2.85),
 *   sunshine: hours(8.5), wind: { speed: metresPerSecond(2), height: metres(2) },
 * })
 * april.referenceET // => 5.72
 */
export function monthlyReferenceETFao56(input: MonthlyWeather): DailyReferenceET {
  const { month, before, after, ...weather } = optionsOf(input)
  const day = dayOfDate({ month, day: 15 })
  const current = ((numberIn(weather.maxTemperature, AIR_TEMPERATURE, 'maxTemperature') +
    numberIn(weather.minTemperature, AIR_TEMPERATURE, 'minTemperature')) /
    2) as Temperature
  const soilHeat =
    before === undefined
      ? (0 as DailySoilHeat)
      : after === undefined
        ? soilHeatOfCurrentMonthFao56({ before, current })
        : soilHeatOfMonthFao56({ before, after })
  const result = referenceETOfDay({ ...weather, day }, soilHeat)
  if (before !== undefined) return result
  return {
    ...result,
    assumedInputs: [
      ...result.assumedInputs,
      {
        code: 'assumed-soil-heat',
        level: 'note',
        about: 'before',
        value: 0,
        unit: 'MJ/m²/d',
      },
    ],
  }
}
