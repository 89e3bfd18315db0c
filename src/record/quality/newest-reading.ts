import { INSTANT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import type { ArrivalTimes, Readings } from '../terms.js'
import { QUALITY } from './flags.js'

/** A record with its flags, and the moment at which it is asked. */
export interface NewestReadingInput extends ArrivalTimes, Readings {
  /** Flags of the readings, made by `combineFlags`; without them every reading that is there counts. */
  readonly flags?: Uint8Array
  /** Now. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly now: number
}

/** The newest reading that passed, or why there is none. */
export type NewestReading =
  | {
      readonly known: true
      /** Its position. Unit: 1. */
      readonly index: number
      /** The reading. Unit: that of the series. */
      readonly value: number
      /** Its time. Unit: s. */
      readonly time: number
      /** Time since. Unit: s. */
      readonly age: Duration
      /** Whether it is the last of the record, so that nothing doubtful has come after it. */
      readonly isLast: boolean
    }
  | { readonly known: false; readonly reason: 'clock-ahead' | 'none-passed' }

/**
 * The newest reading that passed its tests, with its age. A sensor that is silent raises no alarm by itself: its age must.
 *
 * @procedure Goes back from the end of the record, in the order of arrival, to the first reading that is there and has passed.
 * @param input - Record, flags and present moment.
 * @returns The reading with its age, or that there is none; a reading from the future is none.
 * @throws `DomainError` outside the range, `InputError` for lists of different lengths.
 * @source definition
 * @example
 * newestReading({ time: [0, 300, 600], value: [0.54, 0.53, NaN], now: 900 }) // => { known: true, index: 1, age: 600, isLast: false }
 */
export function newestReading(input: NewestReadingInput): NewestReading {
  requireObject(input, 'input')
  const { flags, now } = input
  const moment = numberIn(now, INSTANT, 'now')
  const [time, value] = alignedSeries(input.time, input.value, 'value')
  if (flags !== undefined) requireList(flags, 'flags')
  if (flags !== undefined && flags.length !== value.length)
    throw new InputError('flags', `has ${flags.length} entries for ${value.length} readings`, 'test the same readings')
  for (let index = value.length - 1; index >= 0; index--) {
    const one = value[index]!
    if (Number.isNaN(one) || (flags !== undefined && flags[index] !== QUALITY.pass)) continue
    const at = time[index]!
    if (!(at <= moment)) return { known: false, reason: 'clock-ahead' }
    const age = (moment - at) as Duration
    return { known: true, index, value: one, time: at, age, isLast: index === value.length - 1 }
  }
  return { known: false, reason: 'none-passed' }
}
