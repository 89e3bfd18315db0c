import { InputError } from '../quantity/errors.js'
import { requireList } from '../quantity/guard.js'

/** Refuses a series whose times and readings do not belong together; `argument` is the name of the readings. */
export function equalLengths(time: ArrayLike<number>, readings: ArrayLike<number>, argument: string): void {
  requireList(time, 'time')
  requireList(readings, argument)
  if (time.length === readings.length) return
  throw new InputError(
    'time',
    `has ${time.length} entries for ${readings.length} readings`,
    'give one time for each reading',
  )
}
