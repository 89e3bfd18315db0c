import { InputError } from '../quantity/errors.js'
import type { DailyRadiation, Duration } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import { ANGSTROM_OVERCAST, ANGSTROM_SUNSHINE, OUTSIDE_RADIATION, SOME_DAY_LENGTH, SUNSHINE } from './domains.js'
import type { Extraterrestrial } from './terms.js'

/** Sunshine of a day and what could have shone. */
export interface SunshineInput extends Extraterrestrial {
  /** Bright sunshine of the day. Unit: s. Range: [0, 86400]. */
  readonly sunshine: Duration
  /** Length of the day. Unit: s. Range: (0, 86400]. */
  readonly dayLength: Duration
  /** Share of it that arrives on an overcast day, calibrated for the site; 0.25 by default. Unit: 1. Range: [0, 0.6]. */
  readonly overcastShare?: number
  /** Share of it that full sunshine adds, calibrated for the site; 0.50 by default. Unit: 1. Range: [0, 0.9]. */
  readonly sunshineShare?: number
}

/**
 * Solar radiation from hours of sunshine, by the Ångström formula; without a calibration its coefficients are 0.25 and 0.50.
 *
 * @equation `R_s = \left( a_s + b_s \frac{n}{N} \right) R_a`
 * @returns Solar radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the ranges, `InputError` for more sunshine than day.
 * @validity Where the coefficients were not calibrated for the site.
 * @source allen-1998, Eq. 35
 * @example
 * solarRadiationFromSunshineFao56({
 *   sunshine: hours(7.1), dayLength: hours(10.9), extraterrestrial: megajoulesPerSquareMetreDay(25.1),
 * }) // => 14.4
 */
export function solarRadiationFromSunshineFao56(input: SunshineInput): DailyRadiation {
  const { sunshine, dayLength, extraterrestrial, overcastShare, sunshineShare } = optionsOf(input)
  const share = numberIn(sunshine, SUNSHINE, 'sunshine') / numberIn(dayLength, SOME_DAY_LENGTH, 'dayLength')
  if (share > 1 + 1e-3)
    throw new InputError(
      'sunshine',
      `${sunshine} s is longer than the day, ${dayLength} s`,
      'check the recorder and the day of the year',
    )
  const overcast = numberIn(optionOr(overcastShare, 0.25), ANGSTROM_OVERCAST, 'overcastShare')
  const sunny = numberIn(optionOr(sunshineShare, 0.5), ANGSTROM_SUNSHINE, 'sunshineShare')
  return ((overcast + sunny * share) *
    numberIn(extraterrestrial, OUTSIDE_RADIATION, 'extraterrestrial')) as DailyRadiation
}
