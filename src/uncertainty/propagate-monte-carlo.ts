import { randomNumbers } from '../numerics/random.js'
import { isPorewaterError } from '../quantity/attempt.js'
import { SEED } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { optionOr, requireObject, wholeNumberIn } from '../quantity/guard.js'
import { checkConfidence } from './coverage-factor.js'
import { DRAWS } from './domains.js'
import { draw } from './draw.js'
import type { FirstOrderInput } from './propagate-first-order.js'
import { checkInputs, correlationFactor } from './uncertain-input.js'
import type { UncertaintyFinding } from './uncertainty-finding.js'

/** A function of named inputs, what is known of them, and how often to try. */
export interface MonteCarloInput<V extends Record<string, number>> extends FirstOrderInput<V> {
  /** Seed of the random numbers: the same seed gives the same result. Unit: 1. Range: integers [0, 4294967295]. */
  readonly seed: number
  /** Number of draws, 100000 when left out. Unit: 1. Range: integers [1000, 10000000]. */
  readonly draws?: number
}

/** Two ends between which the wanted share of the draws lies. */
export interface DrawnInterval {
  /** Lower end. Unit: that of the result. */
  readonly low: number
  /** Upper end. Unit: that of the result. */
  readonly high: number
}

/** The spread of the results of many draws. */
export interface DrawnResult {
  /** Mean of the draws. Unit: that of the result. */
  readonly mean: number
  /** Their middle one. Unit: that of the result. */
  readonly median: number
  /** Their standard deviation. Unit: that of the result. */
  readonly standardUncertainty: number
  /** Interval with as many draws below as above it. */
  readonly interval: DrawnInterval
  /** Shortest interval that holds the wanted share. */
  readonly shortest: DrawnInterval
  /** Draws that gave a result. Unit: 1. */
  readonly draws: number
  /** Draws that the function refused, and that are left out. Unit: 1. */
  readonly refused: number
  readonly findings: readonly UncertaintyFinding[]
}

/**
 * Uncertainty of the result of any function from that of its inputs, by trying the function on many draws of the inputs.
 *
 * It needs no straight line: use it where `propagateFirstOrder` warns. Correlated inputs must be normal. The random numbers come from
 * the seed alone.
 *
 * @procedure Draws all inputs, applies the function, sorts the results and reads mean, standard deviation and intervals from them. Draws that the function refuses are counted and left out.
 * @returns Mean, median, standard uncertainty, symmetric and shortest interval, and counts.
 * @throws `DomainError` outside the ranges; `InputError` for unknown names, correlations that cannot be or of inputs that are not normal, or when the function refuses most draws.
 * @source jcgm-101-2008, clauses 5.9, 6.4 and 7
 * @example
 * const result = propagateMonteCarlo({
 *   inputs: {
 *     substrateVolume: { estimate: litres(10), standardUncertainty: 0.3 },
 *     rise: { estimate: waterContentChange(0.04), standardUncertainty: 0.004 },
 *   },
 *   of: ({ substrateVolume, rise }) => shotVolume({ substrateVolume, rise, drainFraction: percent(20) }),
 *   draws: 20000,
 *   seed: 1,
 * })
 * Math.abs(result.standardUncertainty - 0.0522) < 0.001 // => true
 */
export function propagateMonteCarlo<V extends Record<string, number>>(input: MonteCarloInput<V>): DrawnResult {
  requireObject(input, 'input')
  const { of, confidence = 0.95 } = input
  const p = checkConfidence(confidence)
  const draws = wholeNumberIn(optionOr(input.draws, 100000), DRAWS, 'draws')
  const random = randomNumbers(wholeNumberIn(input.seed, SEED, 'seed'))
  const checked = checkInputs(input.inputs, input.correlations)
  const { names, estimates, uncertainties, freedoms, spreads, correlated } = checked
  const odd = names.find((_, i) => correlated[i] && spreads[i] !== 'normal')
  if (odd !== undefined)
    throw new InputError(
      `${odd}.spread`,
      'is not normal, but the input is correlated',
      'draw it as normal, or write the shared error as an input of its own',
    )
  const factor = correlationFactor(checked.correlations)
  const results = new Float64Array(draws)
  const values: Record<string, number> = {}
  const independent = new Array<number>(names.length).fill(0)
  let kept = 0
  for (let n = 0; n < draws; n++) {
    for (let i = 0; i < names.length; i++) independent[i] = draw(spreads[i]!, random, freedoms[i] ?? Infinity)
    for (let i = 0; i < names.length; i++) {
      let z = independent[i]!
      if (correlated[i]) {
        z = 0
        for (let k = 0; k <= i; k++) z += factor[i]![k]! * independent[k]!
      }
      values[names[i]!] = estimates[i]! + uncertainties[i]! * z
    }
    const result = tried(of, values as V)
    if (result !== undefined) results[kept++] = result
  }
  return summary(results.subarray(0, kept), draws, p)
}

function tried<V>(of: (values: V) => number, values: V): number | undefined {
  try {
    const result = of(values)
    return result - result === 0 ? result : undefined
  } catch (error) {
    if (isPorewaterError(error)) return undefined
    throw error
  }
}

function summary(results: Float64Array, draws: number, p: number): DrawnResult {
  const n = results.length
  const refused = draws - n
  if (n < draws / 2)
    throw new InputError(
      'inputs',
      `the function refused ${refused} of ${draws} draws`,
      'the uncertainties reach far beyond what the function takes: look at the units and at the estimates',
    )
  results.sort()
  let mean = 0
  for (const y of results) mean += y / n
  let squares = 0
  for (const y of results) squares += (y - mean) ** 2
  const inside = Math.round(p * n)
  const below = Math.floor((n - inside) / 2)
  let start = 0
  for (let i = 1; i + inside < n; i++) {
    if (results[i + inside]! - results[i]! < results[start + inside]! - results[start]!) start = i
  }
  const between = (i: number) => ({ low: results[i]!, high: results[Math.min(n - 1, i + inside)]! })
  return {
    mean,
    median: (results[(n - 1) >> 1]! + results[n >> 1]!) / 2,
    standardUncertainty: Math.sqrt(squares / (n - 1)),
    interval: between(below),
    shortest: between(start),
    draws: n,
    refused,
    findings: refused === 0 ? [] : [left(refused, draws)],
  }
}

function left(refused: number, draws: number): UncertaintyFinding {
  const level = refused > draws / 100 ? 'caution' : 'note'
  return { code: 'draws-refused', level, about: 'draws', value: refused, limit: draws, unit: '1' }
}
