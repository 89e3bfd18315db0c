import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { Share } from '../../quantity/generated/kinds.js'
import { numberIn, requireList } from '../../quantity/guard.js'
import { CATCH } from '../domains.js'

/**
 * Distribution uniformity of the low quarter: the mean of the driest quarter over the mean of all.
 *
 * Where the number of catches is not a multiple of four, the quarter ends inside one value, which then counts by the part of it that
 * belongs to the quarter: of 15 catches the 3 lowest in full and the 4th with a weight of 0.75.
 *
 * @equation `DU_{lq} = \frac{\bar q_{lq}}{\bar q}`
 * @param catches - Volumes or flows in one unit, four at least. Unit: any. Range: each in [0, ∞).
 * @returns Share from 0 to 1. Unit: 1.
 * @throws `DomainError` outside the range, `InputError` for fewer than four catches or none with water.
 * @source merriam-1978; the weight of the boundary value is a definition of this package
 * @example
 * lowQuarterUniformity([47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12]) // => 0.47722
 */
export function lowQuarterUniformity(catches: ArrayLike<number>): Share {
  const mean = meanOf(catches, 4)
  const sorted = Float64Array.from(catches).sort()
  const quarter = sorted.length / 4
  let low = 0
  for (let i = 0; i < quarter; i++) low += sorted[i]! * Math.min(1, quarter - i)
  // The rounding of sums of equal values must not lift the lowest quarter above the mean.
  return Math.min(1, low / quarter / mean) as Share
}

/**
 * Christiansen's coefficient of uniformity: one less the mean deviation over the mean. It is negative where the deviations are larger
 * than the mean.
 *
 * @equation `CU = 1 - \frac{\sum_i |q_i - \bar q|}{n \, \bar q}`
 * @param catches - Volumes or flows in one unit, two at least. Unit: any. Range: each in [0, ∞).
 * @returns Share, 1 at best. Unit: 1.
 * @throws `DomainError` outside the range, `InputError` for fewer than two catches or none with water.
 * @source christiansen-1942
 * @example
 * const catches = [47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12]
 * inPercent(christiansenUniformity(catches)) // => 69.13955
 */
export function christiansenUniformity(catches: ArrayLike<number>): Share {
  const mean = meanOf(catches, 2)
  let deviations = 0
  for (let i = 0; i < catches.length; i++) deviations += Math.abs(catches[i]! - mean)
  return (1 - deviations / (catches.length * mean)) as Share
}

/**
 * Coefficient of variation of catches: the standard deviation of the sample (with n - 1) over the mean.
 *
 * That of manufacture is measured on new emitters at one pressure; in the field pressure, wear and clogging come on top of it.
 *
 * @equation `CV = \frac{1}{\bar q} \sqrt{\frac{\sum_i (q_i - \bar q)^2}{n - 1}}`
 * @param catches - Volumes or flows in one unit, two at least. Unit: any. Range: each in [0, ∞).
 * @returns Coefficient of variation. Unit: 1.
 * @throws `DomainError` outside the range, `InputError` for fewer than two catches or none with water.
 * @source definition
 * @example
 * flowVariationCoefficient([3.9, 4, 4.1, 4, 3.8, 4.2, 4, 4]) // => 0.02988
 */
export function flowVariationCoefficient(catches: ArrayLike<number>): number {
  const mean = meanOf(catches, 2)
  let squares = 0
  for (let i = 0; i < catches.length; i++) squares += (catches[i]! - mean) ** 2
  return answerOf(Math.sqrt(squares / (catches.length - 1)) / mean, 'catches')
}

/**
 * Statistical uniformity: one less the coefficient of variation. It is negative where the spread is larger than the mean.
 *
 * @equation `U_s = 1 - CV`
 * @param catches - Volumes or flows in one unit, two at least. Unit: any. Range: each in [0, ∞).
 * @returns Share, 1 at best. Unit: 1.
 * @throws `DomainError` outside the range, `InputError` for fewer than two catches or none with water.
 * @source asabe-ep458
 * @example
 * inPercent(statisticalUniformity([3.9, 4, 4.1, 4, 3.8, 4.2, 4, 4])) // => 97.012
 */
export function statisticalUniformity(catches: ArrayLike<number>): Share {
  return (1 - flowVariationCoefficient(catches)) as Share
}

/**
 * Flow variation along a line: how much the lowest flow lacks of the highest. Design keeps it below about 10 %; above 20 % it is poor.
 *
 * @equation `q_{var} = \frac{q_{max} - q_{min}}{q_{max}}`
 * @param flows - Flows in one unit, two at least. Unit: any. Range: each in [0, ∞).
 * @returns Share from 0 to 1. Unit: 1.
 * @throws `DomainError` outside the range, `InputError` for fewer than two flows or none with water.
 * @source wu-1974
 * @example
 * inPercent(flowVariation([3.9, 4, 4.1, 4, 3.8, 4.2, 4, 4])) // => 9.5238
 */
export function flowVariation(flows: ArrayLike<number>): Share {
  meanOf(flows, 2, 'flows')
  let [min, max] = [Infinity, -Infinity]
  for (let i = 0; i < flows.length; i++) {
    min = Math.min(min, flows[i]!)
    max = Math.max(max, flows[i]!)
  }
  return ((max - min) / max) as Share
}

/** The mean of catches that were all checked, which is above zero. */
function meanOf(catches: ArrayLike<number>, min: number, argument = 'catches'): number {
  requireList(catches, argument)
  if (catches.length < min)
    throw new InputError(
      argument,
      `${catches.length} are too few`,
      `measure ${min} at least, 16 or more for a sound answer`,
    )
  let sum = 0
  for (let i = 0; i < catches.length; i++) sum += numberIn(catches[i]!, CATCH, argument)
  if (sum === 0) throw new InputError(argument, 'none holds water', 'check that the zone ran')
  return sum / catches.length
}
