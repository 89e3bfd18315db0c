import { InputError } from '../quantity/errors.js'
import { seriesOf } from '../quantity/missing.js'

/**
 * Times and readings with NaN where one is missing; refused where they do not belong together. `argument` is the name of the readings.
 */
export function alignedSeries(
  time: ArrayLike<number>,
  readings: ArrayLike<number>,
  argument: string,
): readonly [time: ArrayLike<number>, readings: ArrayLike<number>] {
  const aligned = [seriesOf(time, 'time'), seriesOf(readings, argument)] as const
  if (time.length === readings.length) return aligned
  throw new InputError(
    'time',
    `has ${time.length} entries for ${readings.length} readings`,
    'give one time for each reading',
  )
}
