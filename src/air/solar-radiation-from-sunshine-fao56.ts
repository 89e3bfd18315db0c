import type { DailyRadiation } from '../quantity/daily-radiation.js'
import type { Duration } from '../quantity/duration.js'
import { InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { Span } from '../quantity/span.js'

const SUNSHINE: Span = {
  quantity: 'sunshine of the day',
  unit: 's',
  min: 0,
  max: 86400,
  hint: 'give the hours of bright sunshine of the day, from 0 to 24',
}
const LENGTH: Span = {
  quantity: 'length of the day',
  unit: 's',
  min: 0,
  max: 86400,
  open: 'min',
  hint: 'give the time from sunrise to sunset, from dayLengthFao56(); it is zero in the polar night',
}
const OUTSIDE: Span = {
  quantity: 'extraterrestrial radiation',
  unit: 'MJ/m²/d',
  min: 0,
  max: 60,
  hint: 'give a daily sum in MJ/m², from extraterrestrialRadiationFao56()',
}

/** Sunshine of a day and what could have shone. */
export interface SunshineInput {
  /** Bright sunshine of the day. Unit: s. Range: [0, 86400]. */
  readonly sunshine: Duration
  /** Length of the day. Unit: s. Range: (0, 86400]. */
  readonly dayLength: Duration
  /** Extraterrestrial radiation. Unit: MJ/m²/d. Range: [0, 60]. */
  readonly extraterrestrial: DailyRadiation
}

/**
 * Solar radiation from hours of sunshine, by the Ångström formula with the coefficients 0.25 and 0.50.
 *
 * ```math
 * R_s = \left( 0.25 + 0.50 \frac{n}{N} \right) R_a
 * ```
 *
 * @param input - Sunshine, length of the day and extraterrestrial radiation.
 * @returns Solar radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the ranges, `InputError` for more sunshine than day.
 * @validity Where the coefficients were not calibrated for the site.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 35
 * @example
 * ```ts
 * solarRadiationFromSunshineFao56({
 *   sunshine: hours(7.1), dayLength: hours(10.9), extraterrestrial: megajoulesPerSquareMetreDay(25.1),
 * }) // => 14.4
 * ```
 */
export function solarRadiationFromSunshineFao56({
  sunshine,
  dayLength,
  extraterrestrial,
}: SunshineInput): DailyRadiation {
  const share = within(sunshine, SUNSHINE) / within(dayLength, LENGTH)
  if (share > 1 + 1e-3)
    throw new InputError(
      'sunshine',
      `${sunshine} s is longer than the day, ${dayLength} s`,
      'check the recorder and the day of the year',
    )
  return ((0.25 + 0.5 * share) * within(extraterrestrial, OUTSIDE)) as DailyRadiation
}
