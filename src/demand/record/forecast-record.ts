import { InputError } from '../../quantity/errors.js'
import { requireList, requireRows } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'

/** Something that drives use, one number a day: a radiation sum, kPa·h of dryness, hours of lamps. NaN marks what is missing. */
export interface UseCause {
  /** Name that the result repeats. */
  readonly name: string
  /** Its value on each day. Unit: own. Range: any. */
  readonly values: Float64Array
}

/** The days of a record as rows of causes, and which of them are complete. */
export interface ForecastRows {
  readonly rows: number[][]
  readonly use: Float64Array
  readonly complete: readonly number[]
}

/** Joins use and causes by day; negative or infinite use and infinite causes count as missing. */
export function forecastRows(use: Float64Array, causes: readonly UseCause[]): ForecastRows {
  requireList(use, 'use')
  requireRows(causes, 'causes')
  const columns = causes.map(({ name, values }, i) => {
    const column = seriesOf(values, `causes[${i}].values`)
    if (column.length !== use.length)
      throw new InputError('causes', `${name} has another length than use`, 'give one number a day, NaN if missing')
    return column
  })
  const known = Float64Array.from(seriesOf(use, 'use'), (value) =>
    value >= 0 && value < Infinity ? value : Number.NaN,
  )
  const rows = [...use.keys()].map((day) =>
    columns.map((column) => (Number.isFinite(column[day]) ? column[day]! : Number.NaN)),
  )
  const complete = [...use.keys()].filter((day) => ![known[day]!, ...rows[day]!].some(Number.isNaN))
  return { rows, use: known, complete }
}
