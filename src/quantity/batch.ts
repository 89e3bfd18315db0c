import { isPorewaterError } from './attempt.js'
import { InputError, type PorewaterError } from './errors.js'
import { requireList, requireObject } from './guard.js'
import type { Quantity } from './kind.js'
import { loopOf } from './loop-of.js'

/** Readings, the array for the results, and how one reading is converted. */
export interface BatchWork<Q extends Quantity> {
  /** Readings in the canonical unit of the conversion; NaN is a missing reading. Unit: that of the conversion. Range: any. */
  readonly readings: Float64Array
  /** Where the results go, row by row; it may be the array of readings itself. Unit: that of the result. Range: any. */
  readonly output: Float64Array
  /** Converts one reading and may refuse it. */
  readonly convert: (reading: Q) => number
}

/** Readings that were refused for one reason. */
export interface RefusalCount {
  /** Stable short name of the kind of refusal, in kebab case. */
  readonly code: PorewaterError['code'] | 'not-finite'
  /** Which quantity or argument, and on which side of its range. */
  readonly about: string
  /** How many readings. Unit: 1. */
  readonly count: number
  /** Index of the first of them. Unit: 1. */
  readonly first: number
  /** What was said of the first of them. */
  readonly message: string
}

/** What became of every row: `rows` is the sum of the other three. */
export interface BatchCounts {
  /** Number of readings. Unit: 1. */
  readonly rows: number
  /** Rows that hold a result now. Unit: 1. */
  readonly converted: number
  /** Rows that were missing and stay NaN. Unit: 1. */
  readonly missing: number
  /** Rows that were refused and are NaN now. Unit: 1. */
  readonly refused: number
  /** The refusals by reason, in the order of their first row. */
  readonly refusals: readonly RefusalCount[]
}

/**
 * Converts a long series into an array of the caller, row by row, without losing one.
 *
 * Nothing is allocated for rows that convert, so that the same output can be used again for every series. A refusal costs about as
 * much as two thousand conversions: filter a series that is mostly out of range first. Errors that are not refusals of this package
 * pass through.
 *
 * @procedure A missing reading stays NaN in its place; a reading that the conversion refuses, or to which it gives no finite number,
 * becomes NaN in its place and is counted under its reason with the index of the first.
 * @returns Counts of rows converted, missing and refused by reason.
 * @throws `InputError` when the output is shorter than the readings.
 * @source definition
 * @example
 * const output = new Float64Array(4)
 * convertInto({ readings: Float64Array.of(20, NaN, 0.2, 30), output, convert: waterContentTopp1980 }).refused // => 1
 * output // => [0.3454, NaN, NaN, 0.4441]
 */
export function convertInto<Q extends Quantity>(work: BatchWork<Q>): BatchCounts {
  requireObject(work, 'work')
  const { readings, output, convert } = work
  requireList(readings, 'readings')
  requireList(output, 'output')
  if (typeof convert !== 'function')
    throw new InputError('convert', 'is no function', 'give the conversion itself: convert: waterContentTopp1980')
  const rows = readings.length
  requireRoom(output, rows)
  const refusals: Refusals = new Map()
  const notFinite = (row: number, result: number): void => {
    output[row] = Number.NaN
    count(refusals, 'not-finite', 'result', row, `row ${row} gave ${result}`)
  }
  const refused = (row: number, thrown: unknown): void => {
    if (!isPorewaterError(thrown)) throw thrown
    output[row] = Number.NaN
    count(refusals, thrown.code, reasonOf(thrown), row, thrown.message)
  }
  const byRow = convert as (reading: number) => number
  const missing = loopOf(byRow)(readings, output, byRow, notFinite, refused)
  const list = [...refusals.values()]
  const refusedRows = list.reduce((total, refusal) => total + refusal.count, 0)
  return { rows, converted: rows - missing - refusedRows, missing, refused: refusedRows, refusals: list }
}

function requireRoom(output: Float64Array, rows: number): void {
  if (output.length >= rows) return
  throw new InputError('output', `it has room for ${output.length} of ${rows} rows`, 'make it as long as the readings')
}

type Refusals = Map<string, { -readonly [K in keyof RefusalCount]: RefusalCount[K] }>

function count(refusals: Refusals, code: RefusalCount['code'], about: string, first: number, message: string): void {
  const known = refusals.get(`${code} ${about}`)
  if (known === undefined) refusals.set(`${code} ${about}`, { code, about, count: 1, first, message })
  else known.count++
}

function reasonOf(error: PorewaterError): string {
  if (error.code === 'bad-input') return error.argument
  if (error.code === 'no-convergence') return error.method
  return `${error.quantity} ${error.value <= error.min ? 'below' : 'above'} its range`
}
