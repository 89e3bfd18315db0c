import { InputError } from '../quantity/errors.js'
import { numberIn, requireList, requireObject, requireRows } from '../quantity/guard.js'
import { asName } from '../quantity/one-of.js'
import { CORRELATION, DEGREES_OF_FREEDOM, ESTIMATE, STANDARD_UNCERTAINTY } from './domains.js'

/** How the possible values of an input lie around its estimate. */
export type Spread = 'normal' | 'rectangular' | 'triangular' | 'arcsine' | 'student'

/** An input with what is known of its error. */
export interface UncertainInput<Q extends number = number> {
  /** Best value. Unit: any. Range: (-∞, ∞). */
  readonly estimate: Q
  /** Standard uncertainty: for values anywhere within ±a of the estimate it is a/√3 (rectangular), a/√6 (triangular) or a/√2 (arcsine). Unit: that of the estimate. Range: [0, ∞). */
  readonly standardUncertainty: number
  /** Degrees of freedom of the standard uncertainty: readings less one, if it comes from their scatter; unlimited when left out. Unit: 1. Range: [0.1, ∞). */
  readonly degreesOfFreedom?: number
  /** Normal when left out. `student` draws from Student's t, for a mean of few readings; it needs its degrees of freedom. */
  readonly spread?: Spread
}

/** The inputs of a function that takes them by name. */
export type UncertainInputs<V extends Record<string, number>> = { readonly [K in keyof V]: UncertainInput<V[K]> }

/** Two inputs whose errors go together. */
export interface Correlation {
  /** The names of the two. */
  readonly between: readonly [string, string]
  /** Correlation coefficient of their errors; 1 for an error that both share. Unit: 1. Range: [-1, 1]. */
  readonly coefficient: number
}

const SPREADS: readonly unknown[] = ['normal', 'rectangular', 'triangular', 'arcsine', 'student']

/** The inputs as lists, checked. */
export interface CheckedInputs {
  readonly names: readonly string[]
  readonly estimates: readonly number[]
  readonly uncertainties: readonly number[]
  readonly freedoms: readonly (number | undefined)[]
  readonly spreads: readonly Spread[]
  readonly correlations: readonly (readonly number[])[]
  readonly correlated: readonly boolean[]
}

export function checkInputs(
  inputs: Readonly<Record<string, UncertainInput>>,
  given: readonly Correlation[] = [],
): CheckedInputs {
  requireObject(inputs, 'inputs')
  requireRows(given, 'correlations')
  const names = Object.keys(inputs)
  for (const name of names) requireObject(inputs[name], `inputs.${name}`)
  if (names.length === 0) throw new InputError('inputs', 'there are none', 'give at least one input')
  const all = names.map((name) => inputs[name]!)
  const spreads = all.map(({ spread = 'normal', degreesOfFreedom }, i) => {
    if (!SPREADS.includes(spread))
      throw new InputError(`${names[i]}.spread`, `"${asName(spread)}" is not known`, `use one of ${SPREADS.join(', ')}`)
    if (spread === 'student' && degreesOfFreedom === undefined)
      throw new InputError(`${names[i]}.degreesOfFreedom`, "is missing for Student's t", 'give the readings less one')
    return spread
  })
  const correlations = names.map((_, i) => names.map((__, k): number => (i === k ? 1 : 0)))
  for (const { between, coefficient } of given) {
    requireList(between, 'between')
    const [i = -1, k = -1] = between.map((name) => names.indexOf(name))
    if (i < 0 || k < 0 || i === k)
      throw new InputError('correlations', `[${between}] are not two inputs`, `name two of ${names.join(', ')}`)
    const r = numberIn(coefficient, CORRELATION)
    correlations[i]![k] = r
    correlations[k]![i] = r
  }
  return {
    names,
    estimates: all.map(({ estimate }) => numberIn(estimate, ESTIMATE)),
    uncertainties: all.map(({ standardUncertainty }) => numberIn(standardUncertainty, STANDARD_UNCERTAINTY)),
    freedoms: all.map(({ degreesOfFreedom: n }) => (n === undefined ? undefined : numberIn(n, DEGREES_OF_FREEDOM))),
    spreads,
    correlations,
    correlated: correlations.map((row, i) => row.some((r, k) => i !== k && r !== 0)),
  }
}

/**
 * The lower factor L of the correlations, L Lᵀ = R, which makes independent normal numbers correlated. Inputs may depend on each other
 * fully; refused are coefficients that cannot all be true.
 */
export function correlationFactor(correlations: readonly (readonly number[])[]): number[][] {
  const lower: number[][] = correlations.map(() => [])
  correlations.forEach((row, i) => {
    for (let k = 0; k <= i; k++) {
      let left = row[k]!
      for (let m = 0; m < k; m++) left -= lower[i]![m]! * lower[k]![m]!
      if (k < i && lower[k]![k]! > 0) lower[i]!.push(left / lower[k]![k]!)
      else if (k === i && left > 1e-9) lower[i]!.push(Math.sqrt(left))
      else if (Math.abs(left) <= 1e-9) lower[i]!.push(0)
      else
        throw new InputError(
          'correlations',
          'they contradict each other: no errors can be correlated like that',
          'a full correlation of two inputs binds both to the same coefficients with every third one',
        )
    }
  })
  return lower
}
