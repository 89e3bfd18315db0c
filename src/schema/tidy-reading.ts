import { type Instant, instant } from '../quantity/calendar.js'
import { InputError } from '../quantity/errors.js'
import { requireObject } from '../quantity/guard.js'
import { rawReading } from '../quantity/raw-reading.js'
import { bounded, quantityFrom } from './field/field.js'
import type { ReadingKind, ReadingOrigin } from './terms.js'

/** One reading. */
export interface TidyReading extends ReadingOrigin {
  /** When. Unit: s. */
  readonly time: Instant
  /** How much, NaN where the reading is missing. Unit: that of the kind. */
  readonly value: number
  /** Quality flag, as `QUALITY` has them. Unit: 1. */
  readonly quality?: number
}

/** Quality flags that a reading may carry. */
export const FLAGS: readonly number[] = [1, 2, 3, 4, 9]

/** The value of a reading of a kind, from a number, text with a unit, or nothing. */
export function readingValue(input: number | string | null, kind: ReadingKind): number {
  if (input === null) return Number.NaN
  if (kind !== 'RawReading') return bounded(quantityFrom(input, kind))
  if (typeof input === 'string')
    throw new InputError('value', `"${input.slice(0, 60)}" is text`, 'a raw reading is a plain number without unit')
  return bounded(rawReading(input))
}

/** Refuses a name that a spreadsheet would run as a formula, or that does not print. */
export function checkSource(source: string): string {
  if (typeof source !== 'string') throw new InputError('source', `a ${typeof source} is no name`, 'give text')
  const invisible = [...source].some((c) => c.charCodeAt(0) < 32 || c.charCodeAt(0) === 127)
  if (source.trim() === '' || invisible || /^[=+\-@]/.test(source))
    throw new InputError(
      'source',
      `${JSON.stringify(source.slice(0, 60))} is not a name`,
      'begin with a letter or a number and leave control characters out',
    )
  return source
}

/** The reading itself, if every part of it can be kept. */
export function checkReading(reading: TidyReading): TidyReading {
  requireObject(reading, 'reading')
  const { time, source, kind, value, quality } = reading
  instant(time)
  checkSource(source)
  if (!Number.isNaN(value)) readingValue(value, kind)
  if (quality !== undefined && !FLAGS.includes(quality))
    throw new InputError(
      'quality',
      `${String(quality)} is not a flag`,
      'use 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing',
    )
  return reading
}
