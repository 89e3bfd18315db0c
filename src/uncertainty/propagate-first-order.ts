import { studentTwoSided } from '../numerics/student-t.js'
import { InputError } from '../quantity/errors.js'
import { requireObject } from '../quantity/guard.js'
import { checkConfidence } from './coverage-factor.js'
import { sensitivity } from './sensitivity.js'
import { type Correlation, checkInputs, correlationFactor, type UncertainInputs } from './uncertain-input.js'
import type { UncertaintyFinding } from './uncertainty-finding.js'

/** A function of named inputs and what is known of them. */
export interface FirstOrderInput<V extends Record<string, number>> {
  /** Estimate and standard uncertainty of each input, by name. */
  readonly inputs: UncertainInputs<V>
  /** The function: any calculation that gives one number from the inputs. */
  readonly of: (values: V) => number
  /** Pairs of inputs whose errors go together; all others are independent. */
  readonly correlations?: readonly Correlation[]
  /** Share of cases that the expanded uncertainty shall cover, 0.95 when left out. Unit: 1. Range: [0.5, 0.9999]. */
  readonly confidence?: number
}

/** What one input adds to the uncertainty. */
export interface UncertaintyShare {
  /** Name of the input. */
  readonly input: string
  /** Change of the result per unit of the input. Unit: unit of the result per unit of the input. */
  readonly sensitivity: number
  /** Sensitivity times standard uncertainty. Unit: that of the result. */
  readonly contribution: number
  /** Share of the variance, with half of what it shares with others; all shares sum to 1. Unit: 1. */
  readonly share: number
}

/** A result with its uncertainty and where that comes from. */
export interface UncertainResult {
  /** The function at the estimates. Unit: that of the result. */
  readonly value: number
  /** Combined standard uncertainty. Unit: that of the result. */
  readonly standardUncertainty: number
  /** Effective degrees of freedom; missing when unlimited. Unit: 1. */
  readonly degreesOfFreedom?: number
  /** Factor between standard and expanded uncertainty. Unit: 1. */
  readonly coverageFactor: number
  /** Half width of the interval that covers the wanted share of cases. Unit: that of the result. */
  readonly expandedUncertainty: number
  /** The inputs, that which matters most first. */
  readonly budget: readonly UncertaintyShare[]
  readonly findings: readonly UncertaintyFinding[]
}

/** Bends of less than this share of the standard uncertainty are left unsaid. Common practice, no source. */
const BEND = 0.1

/**
 * Uncertainty of the result of any function from that of its inputs, by the first-order law of propagation, with a budget.
 *
 * The slopes are found by differences, so that the function may be any calculation of this package or a chain of them. Where the
 * function bends over the uncertainty of an input a warning says so: use `propagateMonteCarlo` then. Only the Monte Carlo method sees
 * a product of two inputs that both lie near zero, as in example H.1 of the guide, where it raises 32 nm to 34 nm.
 *
 * @equation `u^2 = \sum_i \sum_j c_i c_j u_i u_j r_{ij}, \quad c_i = \frac{\partial f}{\partial x_i}, \quad
 * \nu = \frac{u^4}{\sum_i (c_i u_i)^4 / \nu_i}, \quad U = k\,u`
 * @returns The value with standard and expanded uncertainty and its budget.
 * @throws `DomainError` outside the ranges, and whatever the function refuses at the estimates; `InputError` for unknown names, correlations that cannot be, or a result that is not finite.
 * @source jcgm-100-2008, Eq. 10, 13 and 16 (propagation), G.2b (Welch-Satterthwaite)
 * @example
 * const result = propagateFirstOrder({
 *   inputs: {
 *     substrateVolume: { estimate: litres(10), standardUncertainty: 0.3 },
 *     rise: { estimate: waterContentChange(0.04), standardUncertainty: 0.004 },
 *   },
 *   of: ({ substrateVolume, rise }) => shotVolume({ substrateVolume, rise, drainFraction: percent(20) }),
 * })
 * result // => { value: 0.5, standardUncertainty: 0.05220 }
 * result.budget[0].input // => 'rise'
 */
export function propagateFirstOrder<V extends Record<string, number>>(input: FirstOrderInput<V>): UncertainResult {
  requireObject(input, 'input')
  const { of, confidence = 0.95 } = input
  const p = checkConfidence(confidence)
  const checked = checkInputs(input.inputs, input.correlations)
  correlationFactor(checked.correlations)
  const { names, estimates, uncertainties, freedoms, correlations, correlated } = checked
  const run = (changed: number, x: number) =>
    of(Object.fromEntries(names.map((name, i) => [name, i === changed ? x : estimates[i]])) as V)
  const value = run(-1, 0)
  if (value - value !== 0) throw new InputError('of', `gives ${value} at the estimates`, 'it must give a finite number')
  const slopes = estimates.map((estimate, i) => sensitivity((x) => run(i, x), estimate, uncertainties[i]!))
  const contributions = slopes.map(({ slope }, i) => slope * uncertainties[i]!)
  const shared = contributions.map((c, i) => c * contributions.reduce((sum, d, k) => sum + correlations[i]![k]! * d, 0))
  const variance = Math.max(
    0,
    shared.reduce((sum, part) => sum + part, 0),
  )
  const u = Math.sqrt(variance)
  const freedom = effectiveFreedom(contributions, freedoms, variance)
  const k = studentTwoSided(p, freedom ?? Infinity)
  const budget = names
    .map((input, i) => {
      const share = variance > 0 ? shared[i]! / variance : 0
      return { input, sensitivity: slopes[i]!.slope, contribution: contributions[i]!, share }
    })
    .sort((a, b) => Math.abs(b.share) - Math.abs(a.share))
  const findings = bends(names, slopes, u)
  if (freedoms.some((n, i) => n !== undefined && correlated[i]))
    findings.push({ code: 'correlated-degrees-of-freedom', level: 'note', about: 'degreesOfFreedom' })
  return {
    value,
    standardUncertainty: u,
    ...(freedom === undefined ? {} : { degreesOfFreedom: freedom }),
    coverageFactor: k,
    expandedUncertainty: k * u,
    budget,
    findings,
  }
}

function effectiveFreedom(
  contributions: readonly number[],
  freedoms: readonly (number | undefined)[],
  variance: number,
): number | undefined {
  const fourth = contributions.reduce((sum, c, i) => sum + (freedoms[i] === undefined ? 0 : c ** 4 / freedoms[i]!), 0)
  return fourth > 0 && variance > 0 ? variance ** 2 / fourth : undefined
}

/** A caution for each input that is not straight within its uncertainty. */
function bends(
  names: readonly string[],
  slopes: readonly { readonly bend: number | undefined }[],
  u: number,
): UncertaintyFinding[] {
  return slopes.flatMap(({ bend }, i) =>
    bend === undefined || Math.abs(bend) > BEND * u ? [bent(names[i]!, bend)] : [],
  )
}

function bent(name: string, bend: number | undefined): UncertaintyFinding {
  if (bend === undefined) return { code: 'input-near-its-end', level: 'caution', about: name }
  return { code: 'not-straight', level: 'caution', about: name, value: bend, unit: 'result' }
}
