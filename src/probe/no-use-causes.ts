import { type LinearFit, leastSquares } from '../numerics/least-squares.js'
import { sumsAboutMeans } from '../numerics/sums-about-means.js'
import { InputError } from '../quantity/errors.js'
import { seriesOf } from '../quantity/missing.js'

/** What may have moved the readings of a probe while the water stayed. */
export interface Cause {
  readonly values: readonly number[]
  readonly reference: number
  readonly min: number
  readonly max: number
}

/** Places of the rows in which nothing is missing; a list that is not given does not count. */
export function wholeRows(
  waterContents: Float64Array,
  given: readonly (Float64Array | undefined)[],
  names: readonly string[],
): number[] {
  seriesOf(waterContents, 'waterContents')
  const n = waterContents.length
  given.forEach((list, k) => {
    if (list === undefined) return
    seriesOf(list, names[k]!)
    if (list.length !== n)
      throw new InputError(names[k]!, `has ${list.length} rows for ${n} water contents`, 'give one for each')
  })
  const lists = given.filter((list) => list !== undefined)
  return Array.from({ length: n }, (_, i) => i).filter((i) =>
    [waterContents, ...lists].every((list) => Number.isFinite(list[i])),
  )
}

/** A cause at the times that are kept, with the reference that it is brought to: its mean unless another is asked for. */
export function causeOf(list: Float64Array, kept: readonly number[], reference: number | undefined): Cause {
  const values = kept.map((i) => list[i]!)
  const mean = values.reduce((total, value) => total + value, 0) / values.length
  const [min, max] = [
    values.reduce((a, b) => Math.min(a, b), Infinity),
    values.reduce((a, b) => Math.max(a, b), -Infinity),
  ]
  return { values, reference: reference ?? mean, min, max }
}

/** Refuses a cause that hardly moved: nothing could be told of it. */
export function refuseNarrow(name: string, cause: Cause | undefined, min: number, unit: string): void {
  if (cause === undefined || cause.max - cause.min >= min) return
  throw new InputError(
    name,
    `spread over only ${(cause.max - cause.min).toPrecision(2)} ${unit}`,
    `record until they have spread over ${min} ${unit}, for example through a warm day and a cool night`,
  )
}

/** Refuses two causes of which more than nine tenths of the spread are the same: nothing could share the effect out. */
export function refuseTogether(causes: readonly Cause[], names: readonly string[]): void {
  for (let a = 0; a < causes.length; a++) {
    for (let b = 0; b < a; b++) {
      const { xx, xy, yy } = sumsAboutMeans(causes[a]!.values, causes[b]!.values)
      const r = xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 1
      if (r * r > 0.9)
        throw new InputError(
          `${names[b]}, ${names[a]}`,
          `go together (correlation ${r.toFixed(2)}), so that their effects cannot be told apart`,
          `fit without ${names[a]}, or record a period in which they differ`,
        )
    }
  }
}

/** The effect of all causes together on the water contents of the same rows. */
export function fitCauses(causes: readonly Cause[], waterContents: readonly number[]): LinearFit {
  const rows = waterContents.map((_, row) => [1, ...causes.map((cause) => cause.values[row]! - cause.reference)])
  const fit = leastSquares(rows, waterContents)
  if (fit === undefined)
    throw new InputError(
      'bulkECs, hours',
      'follow from the others, so that effects cannot be told apart',
      'leave one out',
    )
  return fit
}
