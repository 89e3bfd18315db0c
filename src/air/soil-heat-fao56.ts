import { answerOf } from '../quantity/answer.js'
import type { DailySoilHeat, Duration, Length, Temperature, TemperatureChange } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import {
  HEAT_CAPACITY,
  MONTH_TEMPERATURE,
  SOIL_DEPTH,
  TEMPERATURE_CHANGE,
  TIME_BETWEEN_TEMPERATURES,
} from './domains.js'
import type { MonthBefore } from './terms.js'

/** How fast the air, and so the soil, warmed. */
export interface SoilWarming {
  /** Temperature at the end less that at the start. Unit: K. Range: [-60, 60]. */
  readonly change: TemperatureChange
  /** Time between. Unit: s. Range: (0, ∞). */
  readonly time: Duration
  /** Depth of soil that takes part. Unit: cm. Range: [0, 500]. */
  readonly depth: Length
  /** Heat capacity of the soil; 2.1 by default. Unit: MJ/m³/K. Range: (0, 4.2]. */
  readonly heatCapacity?: number
}

/** Mean temperatures of three months in a row. */
export interface MonthsAround extends MonthBefore {
  /** Mean air temperature of the month after. Unit: °C. Range: [-60, 60]. */
  readonly after: Temperature
}

/** Mean temperatures of two months in a row. */
export interface MonthsSoFar extends MonthBefore {
  /** Mean air temperature of the month. Unit: °C. Range: [-60, 60]. */
  readonly current: Temperature
}

/**
 * Heat that goes into the ground in a month, from the temperatures of the months around it.
 *
 * @equation `G_i = 0.07\,(T_{i+1} - T_{i-1})`
 * @returns Soil heat flux, as a mean of the days. Unit: MJ/m²/d.
 * @source allen-1998, Eq. 43
 * @example
 * soilHeatOfMonthFao56({ before: celsius(14.1), after: celsius(18.8) }) // => 0.33
 */
export function soilHeatOfMonthFao56(months: MonthsAround): DailySoilHeat {
  const { before, after } = optionsOf(months)
  return (0.07 *
    (numberIn(after, MONTH_TEMPERATURE, 'after') - numberIn(before, MONTH_TEMPERATURE, 'before'))) as DailySoilHeat
}

/**
 * Heat that goes into the ground in a month whose following month is not known yet.
 *
 * @equation `G_i = 0.14\,(T_i - T_{i-1})`
 * @returns Soil heat flux, as a mean of the days. Unit: MJ/m²/d.
 * @source allen-1998, Eq. 44
 * @example
 * soilHeatOfCurrentMonthFao56({ before: celsius(14.1), current: celsius(16.1) }) // => 0.28
 */
export function soilHeatOfCurrentMonthFao56(months: MonthsSoFar): DailySoilHeat {
  const { before, current } = optionsOf(months)
  return (0.14 *
    (numberIn(current, MONTH_TEMPERATURE, 'current') - numberIn(before, MONTH_TEMPERATURE, 'before'))) as DailySoilHeat
}

/**
 * Heat that goes into the ground while the air warms.
 *
 * @equation `G = c_s \frac{T_i - T_{i-1}}{\Delta t} \Delta z`
 * @returns Soil heat flux, as a mean of the days; negative while the ground cools. Unit: MJ/m²/d.
 * @validity Periods of several days; the soil temperature lags behind that of the air.
 * @source allen-1998, Eq. 41
 * @example
 * soilHeatOfWarmingFao56({ change: kelvinsOfChange(2), time: days(30), depth: metres(1) }) // => 0.14
 */
export function soilHeatOfWarmingFao56(warming: SoilWarming): DailySoilHeat {
  const { change, time, depth, heatCapacity } = optionsOf(warming)
  const perDay =
    numberIn(change, TEMPERATURE_CHANGE, 'change') / (numberIn(time, TIME_BETWEEN_TEMPERATURES, 'time') / 86400)
  return answerOf(
    numberIn(optionOr(heatCapacity, 2.1), HEAT_CAPACITY, 'heatCapacity') *
      perDay *
      (numberIn(depth, SOIL_DEPTH, 'depth') / 100),
    'time',
  ) as DailySoilHeat
}
