import type { StateReader } from '../../record/restore-state.js'

/** Water contents, whatever a probe was shifted by. */
export const WATER = [-1, 2] as const
/** Moments; milliseconds are none. */
export const EPOCH = [-1e11, 1e11] as const
/** Entries of a day: no more than one a second. */
export const MAX = 86400

/** Least and most of a number, both of them allowed. */
export type Ends = readonly [min: number, max: number]

/** Any number. */
const ANY = [-1.7e308, 1.7e308] as const

export function checkNumber(reader: StateReader, field: string, [min, max]: Ends = ANY): number {
  return reader.number(field, min, max)
}

export function checkNumbers(reader: StateReader, field: string, [min, max]: Ends = ANY): readonly number[] {
  return reader.numbers(field, MAX, min, max)
}

export function checkText(reader: StateReader, field: string): void {
  if (typeof reader.stored[field] !== 'string') reader.refuse(field, 'is no text')
}

/** Whether a result is there; if not, its reason is. */
export function isKnown(result: StateReader): boolean {
  if (result.word('known', [true, false])) return true
  checkText(result, 'reason')
  return false
}

export function checkKnown(reader: StateReader, field: string, read: (value: StateReader) => void): void {
  reader.inside(field, (result) => {
    if (isKnown(result)) result.inside('value', read)
  })
}

export function checkKnownNumber(reader: StateReader, field: string, ends?: Ends): void {
  reader.inside(field, (result) => {
    if (isKnown(result)) checkNumber(result, 'value', ends)
  })
}

/** A use that is foreseen, with its two bands. */
export function checkForeseenUse(reader: StateReader, field: string, litres: Ends): void {
  reader.inside(field, (result) => {
    if (!isKnown(result)) return
    checkNumber(result, 'use', litres)
    for (const band of ['band50', 'band90'])
      if (result.numbers(band, 2).length !== 2) result.refuse(band, 'has not two ends')
  })
}

export function numbersOf(fields: readonly string[], ends?: Ends): (reader: StateReader) => void {
  return (reader) => {
    for (const field of fields) checkNumber(reader, field, ends)
  }
}

export function checkLimits(limits: StateReader): void {
  const full = checkNumber(limits, 'fullPoint', WATER)
  if (!(checkNumber(limits, 'refillPoint', WATER) < full)) limits.refuse('refillPoint', 'is not below the full point')
}
