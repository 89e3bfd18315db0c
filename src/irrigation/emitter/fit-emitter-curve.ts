import { answersOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { Flow, Pressure } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { EMITTER_FLOW, EMITTER_PRESSURE } from '../domains.js'
import type { EmitterCurve } from './emitter-curve.js'

/** A flow that was measured at a pressure. */
export interface EmitterPoint {
  /** Pressure at the emitter. Unit: kPa. Range: (0, ∞). */
  readonly pressure: Pressure
  /** Flow. Unit: L/h. Range: (0, ∞). */
  readonly flow: Flow
}

/** Two points of the curve of an emitter. */
export interface FitEmitterCurveInput {
  /** Flow at one pressure. */
  readonly first: EmitterPoint
  /** Flow at another pressure. */
  readonly second: EmitterPoint
}

/**
 * The curve of an emitter through two measured points.
 *
 * @equation `x = \frac{\ln(q_1/q_2)}{\ln(H_1/H_2)}, \quad k = q_1 H_1^{-x}`
 * @param input - Two points at different pressures; take them far apart, and the mean flow of several emitters at each.
 * @returns The curve, which holds between the two pressures.
 * @throws `DomainError` outside the ranges, `InputError` when both pressures are the same.
 * @source savva-2002, Eq. 14
 * @example
 * fitEmitterCurve({
 *   first: { pressure: metresOfWater(10), flow: litresPerHour(2) },
 *   second: { pressure: metresOfWater(20), flow: litresPerHour(2.83) },
 * }).exponent // => 0.5008
 */
export function fitEmitterCurve(input: FitEmitterCurveInput): EmitterCurve {
  requireObject(input, 'input')
  const { first, second } = input
  requireObject(first, 'first')
  requireObject(second, 'second')
  const flows = numberIn(first.flow, EMITTER_FLOW, 'flow') / numberIn(second.flow, EMITTER_FLOW, 'flow')
  const pressures =
    numberIn(first.pressure, EMITTER_PRESSURE, 'pressure') / numberIn(second.pressure, EMITTER_PRESSURE, 'pressure')
  if (pressures === 1)
    throw new InputError('first, second', 'were measured at one pressure', 'measure at two pressures far apart')
  const exponent = Math.log(flows) / Math.log(pressures)
  const [from, to] = pressures < 1 ? [first.pressure, second.pressure] : [second.pressure, first.pressure]
  return answersOf({ perKilopascal: first.flow / first.pressure ** exponent, exponent, holds: { from, to } }, 'flow')
}
