import { InputError } from '../../quantity/errors.js'
import { requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'

/** What one quantity of the weather can be, and how fast it can change. */
export interface WmoLimits {
  /** Unit of the readings. */
  readonly unit: string
  /** Lowest plausible value. Unit: that of `unit`. */
  readonly min: number
  /** Highest plausible value. Unit: that of `unit`. */
  readonly max: number
  /** Change in a minute beyond which a reading is wrong; absent where none is published. Unit: that of `unit` a minute. */
  readonly maxChange?: number
  /** Least change in an hour of a sensor that lives; absent where none is published. Unit: that of `unit` an hour. */
  readonly minChange?: number
}

/** Quantities of the weather with published limits. */
export type WmoQuantity = 'air-temperature' | 'soil-temperature' | 'relative-humidity' | 'global-radiation'

/** Which limits are wanted. */
export interface WmoLimitsInput {
  /** Name of the quantity. */
  readonly of: WmoQuantity
}

const LIMITS: Readonly<Record<WmoQuantity, WmoLimits>> = {
  'air-temperature': { unit: '°C', min: -80, max: 60, maxChange: 3, minChange: 0.1 },
  'soil-temperature': { unit: '°C', min: -50, max: 50 },
  // Saturated air does not change: the least change holds below 95 %.
  'relative-humidity': { unit: '%', min: 0, max: 100, maxChange: 15, minChange: 1 },
  'global-radiation': { unit: 'W/m²', min: 0, max: 1600, maxChange: 1000 },
}

/**
 * Plausible limits of weather readings for the gross range, rate of change and flat line tests. They are wide: the limits of a
 * greenhouse are narrower and belong to its grower.
 *
 * @procedure Looks them up.
 * @returns Limits in the unit that they name.
 * @throws `InputError` for a quantity without limits here.
 * @source zahumensky-2004, as restated in open station code; the limits of the soil temperature and the highest radiation [not confirmed, source not seen]
 * @example
 * wmoLimits({ of: 'air-temperature' }) // => { min: -80, max: 60, maxChange: 3 }
 */
export function wmoLimits(input: WmoLimitsInput): WmoLimits {
  requireObject(input, 'input')
  const { of } = input
  const limits = hasRow(LIMITS, of) ? LIMITS[of] : undefined
  if (limits === undefined)
    throw new InputError(
      'of',
      `there are no limits of "${asName(of)}"`,
      `ask for one of ${Object.keys(LIMITS).join(', ')}`,
    )
  return limits
}
