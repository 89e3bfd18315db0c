import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { Flow, Pressure } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { DISCHARGE_COEFFICIENT, DISCHARGE_EXPONENT, EMITTER_FLOW, EMITTER_PRESSURE } from '../domains.js'
import type { DischargeExponent } from '../terms.js'
import type { EmitterFinding } from './emitter-finding.js'
import { type EmitterPressureUnit, kilopascalsIn } from './emitter-pressure-unit.js'

/** How the flow of an emitter depends on pressure: plain data. */
export interface EmitterCurve {
  /** Discharge coefficient with pressure in kPa. Unit: L/h. */
  readonly perKilopascal: number
  /** Discharge exponent. Unit: 1. */
  readonly exponent: number
  /** Pressures between which the curve is known to hold; left out where nobody said. */
  readonly holds?: EmitterPressureSpan
}

/** Pressures between which an emitter follows its curve. */
export interface EmitterPressureSpan {
  /** Lowest pressure; of a compensating emitter the least at which it compensates. Unit: kPa. Range: (0, ∞). */
  readonly from: Pressure
  /** Highest pressure. Unit: kPa. Range: (0, ∞). */
  readonly to: Pressure
}

/** An emitter as a catalogue prints it. */
export interface EmitterCurveInput extends DischargeExponent {
  /** Discharge coefficient: the flow at one unit of pressure. Unit: L/h. Range: (0, ∞). */
  readonly coefficient: number
  /** Unit of pressure to which the coefficient belongs. */
  readonly pressureUnit: EmitterPressureUnit
  /** Working pressures that the maker names. */
  readonly holds?: EmitterPressureSpan
}

/**
 * The curve of an emitter from its printed discharge coefficient and exponent.
 *
 * A coefficient belongs to one unit of pressure: with another it is another number, and using the wrong one is off by a factor of three
 * between metres and kilopascals. An exponent near 0 is that of a compensating emitter, which holds only above its least pressure.
 *
 * @equation `q = k H^x, \quad k_{kPa} = k_u \, u^{-x}`
 * @returns The curve.
 * @throws `DomainError` outside the ranges, `InputError` for an unknown unit or pressures in the wrong order.
 * @source savva-2002, Eq. 13
 * @example
 * emitterCurve({ coefficient: 0.6325, pressureUnit: 'metre-of-water', exponent: 0.5 }).perKilopascal // => 0.20198
 */
export function emitterCurve(input: EmitterCurveInput): EmitterCurve {
  requireObject(input, 'input')
  const { coefficient, pressureUnit, exponent, holds } = input
  const k = numberIn(coefficient, DISCHARGE_COEFFICIENT, 'coefficient')
  const x = numberIn(exponent, DISCHARGE_EXPONENT, 'exponent')
  const curve = { perKilopascal: k / kilopascalsIn(pressureUnit) ** x, exponent: x }
  if (holds === undefined) return curve
  requireSpan(holds)
  return { ...curve, holds }
}

/** A curve may come out of a file: a number that was lost there must not become a flow that is none. */
function requireCurve(curve: EmitterCurve): void {
  requireObject(curve, 'curve')
  numberIn(curve.perKilopascal, DISCHARGE_COEFFICIENT, 'perKilopascal')
  if (!Number.isFinite(curve.exponent))
    throw new InputError('exponent', `${String(curve.exponent)} is no number`, 'make the curve by emitterCurve')
  if (curve.holds !== undefined) requireSpan(curve.holds)
}

function requireSpan(holds: EmitterPressureSpan): void {
  requireObject(holds, 'holds')
  const from = numberIn(holds.from, EMITTER_PRESSURE, 'from')
  const to = numberIn(holds.to, EMITTER_PRESSURE, 'to')
  if (to < from)
    throw new InputError('holds', `ends at ${to} kPa, below its beginning`, 'give the lower pressure first')
}

/**
 * Says whether a pressure lies where an emitter follows its curve. Below its least pressure a compensating emitter behaves like any
 * other, so that plants at the far and high ends get less.
 *
 * @param curve - The emitter, made by `emitterCurve` or `fitEmitterCurve`.
 * @param pressure - Pressure at the emitter. Unit: kPa. Range: (0, ∞).
 * @procedure Compares the pressure with the span that the maker named, or that was measured.
 * @returns One finding when the pressure lies outside; none when it lies inside or nobody said.
 * @source common practice, no source
 * @example
 * const curve = emitterCurve({
 *   coefficient: 2,
 *   pressureUnit: 'bar',
 *   exponent: 0.02,
 *   holds: { from: kilopascals(60), to: kilopascals(400) },
 * })
 * checkEmitterPressure(curve, metresOfWater(2)).map((finding) => finding.code) // => ['pressure-below-curve']
 */
export function checkEmitterPressure(curve: EmitterCurve, pressure: Pressure): EmitterFinding[] {
  requireCurve(curve)
  const value = numberIn(pressure, EMITTER_PRESSURE, 'pressure')
  if (curve.holds === undefined) return []
  const { from, to } = curve.holds
  if (value >= from && value <= to) return []
  return value < from
    ? [{ code: 'pressure-below-curve', level: 'caution', value, limit: from, unit: 'kPa' }]
    : [{ code: 'pressure-above-curve', level: 'caution', value, limit: to, unit: 'kPa' }]
}

/**
 * The discharge coefficient of a curve with pressure in a given unit, as a catalogue would print it.
 *
 * @equation `k_u = k_{kPa} \, u^x`
 * @param curve - The emitter, made by `emitterCurve` or `fitEmitterCurve`.
 * @param pressureUnit - Unit of pressure that is wanted.
 * @returns Flow at one such unit of pressure. Unit: L/h.
 * @throws `InputError` for an unknown unit, and as the others for a curve with a number lost.
 * @source savva-2002, Eq. 13
 * @example
 * const curve = emitterCurve({ coefficient: 0.2, pressureUnit: 'kPa', exponent: 0.5 })
 * emitterCoefficient(curve, 'metre-of-water') // => 0.62631
 */
export function emitterCoefficient(curve: EmitterCurve, pressureUnit: EmitterPressureUnit): number {
  requireCurve(curve)
  return curve.perKilopascal * kilopascalsIn(pressureUnit) ** curve.exponent
}

/**
 * Flow of an emitter at a pressure.
 *
 * @equation `q = k H^x`
 * @param curve - The emitter, made by `emitterCurve` or `fitEmitterCurve`.
 * @param pressure - Pressure at the emitter. Unit: kPa. Range: (0, ∞).
 * @returns Flow. Unit: L/h.
 * @validity Between the pressures from which the curve was found; a compensating emitter below its least pressure behaves otherwise.
 * @source savva-2002, Eq. 13
 * @example
 * const curve = emitterCurve({ coefficient: 0.6325, pressureUnit: 'metre-of-water', exponent: 0.5 })
 * emitterFlowAt(curve, metresOfWater(10)) // => 2.00014
 */
export function emitterFlowAt(curve: EmitterCurve, pressure: Pressure): Flow {
  requireCurve(curve)
  return (curve.perKilopascal * numberIn(pressure, EMITTER_PRESSURE, 'pressure') ** curve.exponent) as Flow
}

/**
 * Pressure that an emitter needs for a flow.
 *
 * @equation `H = \left(q / k\right)^{1/x}`
 * @param curve - The emitter, made by `emitterCurve` or `fitEmitterCurve`.
 * @param flow - Flow that is wanted. Unit: L/h. Range: (0, ∞).
 * @returns Pressure at the emitter. Unit: kPa.
 * @throws `DomainError` outside the range, `InputError` where pressure hardly changes the flow (an exponent of 0.02 or less).
 * @source savva-2002, Eq. 15
 * @example
 * const curve = emitterCurve({ coefficient: 1.52076, pressureUnit: 'metre-of-water', exponent: 0.42 })
 * inMetresOfWater(emitterPressureFor(curve, litresPerHour(4.32))) // => 12.011
 */
export function emitterPressureFor(curve: EmitterCurve, flow: Flow): Pressure {
  requireCurve(curve)
  const ratio = numberIn(flow, EMITTER_FLOW, 'flow') / curve.perKilopascal
  if (!(curve.exponent > 0.02))
    throw new InputError(
      'curve',
      `with an exponent of ${curve.exponent} pressure hardly sets the flow`,
      'choose another emitter',
    )
  return answerOf(ratio ** (1 / curve.exponent), 'flow') as Pressure
}
