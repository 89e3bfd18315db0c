import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { SoughtNumber } from './medium-numbers.js'
import type { MediumProblem } from './medium-problem.js'
import type { MediumNumber } from './medium-record.js'

/** What to mind when a fitted medium is used. */
export type MediumFitFinding =
  | {
      readonly code: 'numbers-move-together'
      readonly level: Finding['level']
      readonly first: MediumNumber
      readonly second: MediumNumber
      /** Correlation of their errors. Unit: 1. */
      readonly correlation: number
    }
  | {
      readonly code: 'differences-in-runs'
      readonly level: Finding['level']
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

/**
 * Puts a finding of a fitted medium into words: what is wrong, by how much, and what to do.
 *
 * @procedure Writes the numbers of the finding into the sentence of its code.
 * @param finding - One of the findings of `fitMediumToRecord`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `fitMediumToRecord` does not give.
 * @source definition
 * @example
 * const { message } = explainMediumFit({ code: 'weights-off', level: 'caution', series: 'drain', ratio: 4 })
 * message // => 'the drain is missed by 4.0 times its uncertainty, and the other series by far less: give the uncertainties of both as they are'
 */
export function explainMediumFit(finding: MediumFitFinding): Finding {
  requireObject(finding, 'finding')
  return { code: finding.code, level: finding.level, message: sentence(finding) }
}

function sentence(finding: MediumFitFinding): string {
  switch (finding.code) {
    case 'numbers-move-together':
      return `${finding.first} and ${finding.second} move together (correlation ${finding.correlation.toFixed(2)}): the record tells the two together better than either alone, so fix one from another measurement`
    case 'differences-in-runs':
      return `the simulation stays above or below the ${finding.series} for several steps on end (correlation ${finding.autocorrelation.toFixed(2)} with the next): something that it does not know is at work, and the intervals are too narrow`
    case 'weights-off':
      return `the ${finding.series} is missed by ${finding.ratio.toFixed(1)} times its uncertainty, and the other series by far less: give the uncertainties of both as they are`
    default:
      throw new InputError('finding', 'has a code that no fit gives', 'give one of the findings of `fitMediumToRecord`')
  }
}
