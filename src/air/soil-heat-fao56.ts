import type { DailySoilHeat } from '../quantity/daily-radiation.js'
import { within } from '../quantity/guard.js'
import type { Span } from '../quantity/span.js'
import type { Temperature } from '../quantity/temperature.js'

const MONTH: Span = {
  quantity: 'mean air temperature of a month',
  unit: '°C',
  min: -60,
  max: 60,
  hint: 'give the mean temperature of the air in degrees Celsius',
}

/** Mean temperatures of three months in a row. */
export interface MonthsAround {
  /** Mean air temperature of the month before. Unit: °C. Range: [-60, 60]. */
  readonly before: Temperature
  /** Mean air temperature of the month after. Unit: °C. Range: [-60, 60]. */
  readonly after: Temperature
}

/** Mean temperatures of two months in a row. */
export interface MonthsSoFar {
  /** Mean air temperature of the month before. Unit: °C. Range: [-60, 60]. */
  readonly before: Temperature
  /** Mean air temperature of the month. Unit: °C. Range: [-60, 60]. */
  readonly current: Temperature
}

/**
 * Heat that goes into the ground in a month, from the temperatures of the months around it.
 *
 * ```math
 * G_i = 0.07\,(T_{i+1} - T_{i-1})
 * ```
 *
 * @param months - Mean temperatures of the month before and the month after.
 * @returns Soil heat flux, as a mean of the days. Unit: MJ/m²/d.
 * @throws `DomainError` outside the ranges.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 43
 * @example
 * ```ts
 * soilHeatOfMonthFao56({ before: celsius(14.1), after: celsius(18.8) }) // => 0.33
 * ```
 */
export function soilHeatOfMonthFao56({ before, after }: MonthsAround): DailySoilHeat {
  return (0.07 * (within(after, MONTH) - within(before, MONTH))) as DailySoilHeat
}

/**
 * Heat that goes into the ground in a month whose following month is not known yet.
 *
 * ```math
 * G_i = 0.14\,(T_i - T_{i-1})
 * ```
 *
 * @param months - Mean temperatures of the month and the month before.
 * @returns Soil heat flux, as a mean of the days. Unit: MJ/m²/d.
 * @throws `DomainError` outside the ranges.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 44
 * @example
 * ```ts
 * soilHeatOfCurrentMonthFao56({ before: celsius(14.1), current: celsius(16.1) }) // => 0.28
 * ```
 */
export function soilHeatOfCurrentMonthFao56({ before, current }: MonthsSoFar): DailySoilHeat {
  return (0.14 * (within(current, MONTH) - within(before, MONTH))) as DailySoilHeat
}
