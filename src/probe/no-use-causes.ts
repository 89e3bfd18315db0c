import { InputError } from '../quantity/errors.js'

/** What may have moved the readings of a probe while the water stayed. */
export interface Cause {
  readonly values: readonly number[]
  readonly reference: number
  readonly min: number
  readonly max: number
}

/** A cause at the times that are kept, with the reference that it is brought to: its mean unless another is asked for. */
export function causeOf(list: Float64Array, kept: readonly number[], reference: number | undefined): Cause {
  const values = kept.map((i) => list[i]!)
  const mean = values.reduce((total, value) => total + value, 0) / values.length
  const [lowest, highest] = [
    values.reduce((a, b) => Math.min(a, b), Infinity),
    values.reduce((a, b) => Math.max(a, b), -Infinity),
  ]
  return { values, reference: reference ?? mean, min: lowest, max: highest }
}

/** Refuses a cause that hardly moved: nothing could be told of it. */
export function refuseNarrow(name: string, cause: Cause | undefined, least: number, unit: string): void {
  if (cause === undefined || cause.max - cause.min >= least) return
  throw new InputError(
    name,
    `spread over only ${(cause.max - cause.min).toPrecision(2)} ${unit}`,
    `record until they have spread over ${least} ${unit}, for example through a warm day and a cool night`,
  )
}

/** Refuses two causes of which more than nine tenths of the spread are the same: nothing could share the effect out. */
export function refuseTogether(causes: readonly Cause[], names: readonly string[]): void {
  for (let a = 0; a < causes.length; a++) {
    for (let b = 0; b < a; b++) {
      const r = correlation(causes[a]!.values, causes[b]!.values)
      if (r * r > 0.9)
        throw new InputError(
          `${names[b]}, ${names[a]}`,
          `go together (correlation ${r.toFixed(2)}), so that their effects cannot be told apart`,
          `fit without ${names[a]}, or record a period in which they differ`,
        )
    }
  }
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (list: readonly number[]) => list.reduce((total, value) => total + value, 0) / list.length
  const [ma, mb] = [mean(a), mean(b)]
  let [aa, bb, ab] = [0, 0, 0]
  a.forEach((value, i) => {
    aa += (value - ma) ** 2
    bb += (b[i]! - mb) ** 2
    ab += (value - ma) * (b[i]! - mb)
  })
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 1
}
