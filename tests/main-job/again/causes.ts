import type { Probe, Setup } from './facts.js'
import { median, type Point, type Row, valuesOf, wall } from './raw.js'

/** A level that leaps by at least this from one reading to the next, and stays, has jumped, m³/m³. */
const JUMP = 0.04
/** Readings that are older tell nothing of now, s. */
const OLD = 1200

interface Jump {
  readonly t: number
  readonly by: number
}

/** A jump shows by five readings before it and five behind it, and is told with the fifth. */
function jumpOf(points: readonly Point[]): Jump | undefined {
  for (let n = 10; n <= points.length; n++) {
    const [before, after] = [valuesOf(points.slice(n - 10, n - 5)), valuesOf(points.slice(n - 5, n))]
    const by = median(after) - median(before)
    const leap = after[0]! - before[4]!
    if (by < -JUMP && leap < by / 2) return { t: points[n - 1]!.t, by }
  }
  return undefined
}

/** The first row at which nothing has come for longer than readings are good. */
function silenceOf(rows: readonly { readonly t: number; readonly any: boolean }[]): Jump | undefined {
  let heard = rows[0]?.t ?? 0
  for (const { t, any } of rows) {
    if (any) heard = t
    else if (t - heard > OLD) return { t, by: t - heard }
  }
  return undefined
}

/** Causes that came and went, in the order in which they were told: a probe that jumped may have moved or been lifted. */
export function causesOf(today: readonly Row[], probes: readonly Probe[], setup: Setup) {
  const jumps = probes.flatMap(({ raw }) => jumpOf(raw) ?? [])
  const columns = probes.map(({ name }) => setup.readings.columns[name].column)
  const silence = silenceOf(
    today.map((row) => ({
      t: wall(row[setup.readings.time]!),
      any: columns.some((column) => row[column] !== ''),
    })),
  )
  return { jumps, silence }
}
