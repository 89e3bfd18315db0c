import type { Finding } from '../../quantity/finding.js'
import type { SoughtNumber } from './medium-numbers.js'
import type { MediumProblem } from './medium-problem.js'
import type { MediumNumber } from './medium-record.js'

/** What to mind when a fitted medium is used. */
export type MediumFitFinding =
  | {
      readonly code: 'numbers-move-together'
      /** How much it matters. */
      readonly level: Finding['level']
      /** One of the two numbers. */
      readonly first: MediumNumber
      /** The other one. */
      readonly second: MediumNumber
      /** Correlation of their errors. Unit: 1. */
      readonly correlation: number
    }
  | {
      readonly code: 'differences-in-runs'
      readonly level: Finding['level']
      /** What was simulated. */
      readonly series: 'drain' | 'probe'
      /** Correlation of each difference with the next. Unit: 1. */
      readonly autocorrelation: number
    }
  | {
      readonly code: 'weights-off'
      readonly level: Finding['level']
      readonly series: 'drain' | 'probe'
      /** Differences found over the uncertainty that was told. Unit: 1. */
      readonly ratio: number
    }

/** From here on the errors of two numbers count as one. */
const TOGETHER = 0.95
/** How much better or worse than the other series one may be fitted before its weight is doubted. */
const UNEVEN = 3
/** Standard deviations of the autocorrelation of independent errors (one over the root of their number) that one in a hundred exceeds. */
const RUNS = 2.33

/** Findings from correlations and from the differences that are left. */
export function findingsOfFit(
  { sought, drain, readings }: Pick<MediumProblem, 'sought' | 'drain' | 'readings'>,
  differences: Float64Array,
  correlation: readonly (readonly number[])[],
): MediumFitFinding[] {
  const ofDrain = differences.subarray(0, drain.steps.length)
  const ofProbe = differences.subarray(drain.steps.length, drain.steps.length + readings.steps.length)
  return [
    ...together(sought, correlation),
    ...inRuns('drain', ofDrain),
    ...inRuns('probe', ofProbe),
    ...weightsOff(ofDrain, ofProbe),
  ]
}

function together(sought: readonly SoughtNumber[], correlation: readonly (readonly number[])[]): MediumFitFinding[] {
  return sought.flatMap(({ name }, i) =>
    sought.slice(0, i).flatMap((other, j): MediumFitFinding[] => {
      const r = correlation[i]![j]!
      if (!(Math.abs(r) > TOGETHER)) return []
      return [{ code: 'numbers-move-together', level: 'caution', first: other.name, second: name, correlation: r }]
    }),
  )
}

function inRuns(series: 'drain' | 'probe', differences: Float64Array): MediumFitFinding[] {
  let [along, total] = [0, 0]
  differences.forEach((d, i) => {
    total += d * d
    if (i > 0) along += d * differences[i - 1]!
  })
  const autocorrelation = along / total
  if (!(autocorrelation > RUNS / Math.sqrt(differences.length))) return []
  return [{ code: 'differences-in-runs', level: 'caution', series, autocorrelation }]
}

function weightsOff(ofDrain: Float64Array, ofProbe: Float64Array): MediumFitFinding[] {
  const [drain, probe] = [rootMeanSquare(ofDrain), rootMeanSquare(ofProbe)]
  if (ofDrain.length === 0 || ofProbe.length === 0) return []
  if (drain > UNEVEN * probe) return [{ code: 'weights-off', level: 'caution', series: 'drain', ratio: drain }]
  if (probe > UNEVEN * drain) return [{ code: 'weights-off', level: 'caution', series: 'probe', ratio: probe }]
  return []
}

/** Root of the mean square; zero of nothing. */
export function rootMeanSquare(values: Float64Array): number {
  return values.length === 0 ? 0 : Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)
}
