import type { ConductiveModel } from '../../medium/curves/retention-model.js'
import { CONFIDENCE } from '../../quantity/domains.js'
import type { HydraulicConductivity, Share, Volume, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireList, requireObject, requireRows } from '../../quantity/guard.js'
import type { RichardsFlow } from '../richards-terms.js'
import type { DrainMisfit } from '../terms.js'
import { findingsOfFit, type MediumFitFinding, rootMeanSquare } from './medium-findings.js'
import { numberAt } from './medium-numbers.js'
import { mediumProblem } from './medium-problem.js'
import type { MediumNumber, MediumRecord } from './medium-record.js'
import { searchMedium } from './search-medium.js'
import { curveOf, simulationOf } from './simulated-record.js'
import { type MediumNumberTold, toldBySearch } from './told-by-search.js'

/** A number that was sought. */
export interface FittedMediumNumber {
  readonly name: MediumNumber
  /** Its value. Unit: as in `unit`. */
  readonly value: number
  readonly unit: string
  /** How well the record tells it. Unit: as in `unit`. */
  readonly told: MediumNumberTold
}

/** A medium that was found by simulating its container. */
export interface MediumFit extends DrainMisfit {
  /** The curve, ready for use. */
  readonly medium: ConductiveModel
  /** Conductivity of the saturated medium. Unit: cm/h. */
  readonly saturatedConductivity: HydraulicConductivity
  /** Share of the water given that runs past. Unit: 1. */
  readonly bypass: Share
  /** The simulation with all of it. */
  readonly flow: RichardsFlow
  /** What was sought, in the order of `correlation`. */
  readonly numbers: readonly FittedMediumNumber[]
  /** Correlations of the errors of the numbers, on the scale on which each was sought. */
  readonly correlation: readonly (readonly number[])[]
  /** Root of the mean square difference of a reading, its offset taken off. Unit: m³/m³. */
  readonly readingError: WaterContentChange
  /** What to mind; `explainFlowFinding` writes it out. */
  readonly findings: readonly MediumFitFinding[]
}

/**
 * Retention curve (van Genuchten 1980), conductivity and bypass of a medium from what drained from its container and what a probe read: the
 * inverse of `containerFlowRichards1931`. Numbers that the record does not tell are said to be not known, with what is left of
 * their range.
 *
 * The search begins at the best of some trials around the guess and goes on by the method of Levenberg and Marquardt; alpha, n - 1 and the
 * conductivity are sought as logarithms. Intervals follow from the curvature at the end, the scatter of the differences and Student's t.
 *
 * @equation `\min_p \sum_k \left(\frac{D_k(p) - D_k}{u_D}\right)^2 + \sum_k \left(\frac{\theta_k(p) - \theta_k}{u_\theta}\right)^2`
 * @returns The medium, how well each number is told, and the differences that are left.
 * @throws `DomainError` outside the ranges; `InputError` for series that do not match the steps, or too few measurements;
 * `ConvergenceError` when the search or a simulation does not end.
 * @validity First-order intervals for independent errors of equal size: where the differences come in runs, as when the medium shrinks, repels water or
 * is not wetted across, they are too narrow, and a finding says so. Errors are taken as those of each step: from the differences of a balance that
 * drifts they are not. A fitted medium is a medium as this simulation sees it: check it against another record before a plan depends on it.
 * @source van-dam-1994; marquardt-1963
 * @example
 * const pot = boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(15) })
 * const guess = {
 *   residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.7,
 *   saturatedConductivity: centimetresPerHour(60),
 * }
 * const steps = [0.5, 0, 0, 0.5, 0, 0].map((applied) => ({
 *   duration: minutes(5), applied: litres(applied), demand: litres(0),
 * }))
 * const drained = [0.06, 0.247, 0.098, 0.125, 0.271, 0.101].map((volume) => litres(volume))
 * const fit = fitMediumToRecord({
 *   container: pot, steps, drain: { volumes: drained }, guess, fit: ['saturatedConductivity'], nodes: 21,
 * })
 * fit.saturatedConductivity // => 80.1
 */
export function fitMediumToRecord(record: MediumRecord): MediumFit {
  requireObject(record, 'record')
  requireObject(record.guess, 'guess')
  requireRows(record.steps, 'steps')
  requireList(record.fit, 'fit')
  const confidence = numberIn(optionOr(record.confidence, 0.95), CONFIDENCE, 'confidence')
  const problem = mediumProblem(record)
  const { sought, drain, readings } = problem
  const end = searchMedium(problem)
  const prior = sought.some(({ name }) => name === 'start') ? 1 : 0
  const known = drain.steps.length + readings.steps.length
  const { told, correlation } = toldBySearch(sought, end, known + prior - sought.length, confidence)
  const values = problem.valuesAt(end.parameters)
  const differences = new Float64Array(problem.count)
  problem.residuals(end.parameters, differences)
  return {
    medium: curveOf(values),
    saturatedConductivity: values.saturatedConductivity as HydraulicConductivity,
    bypass: values.bypass as Share,
    flow: simulationOf(record, values),
    numbers: sought.map((number, i) => {
      return { name: number.name, value: numberAt(number, end.parameters[i]!), unit: number.unit, told: told[i]! }
    }),
    correlation,
    drainError: (drain.uncertainty * rootMeanSquare(differences.subarray(0, drain.steps.length))) as Volume,
    readingError: (readings.uncertainty *
      rootMeanSquare(differences.subarray(drain.steps.length, known))) as WaterContentChange,
    findings: findingsOfFit(problem, differences, correlation),
  }
}
