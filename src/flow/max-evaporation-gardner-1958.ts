import { rootBetween } from '../numerics/root.js'
import { InputError } from '../quantity/errors.js'
import type { WaterFlux } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import {
  ALPHA,
  DEPTH_OF_TABLE,
  RISE_COEFFICIENT_A,
  RISE_COEFFICIENT_B,
  RISE_EXPONENT,
  SATURATED_CONDUCTIVITY,
} from './domains.js'
import type { ExponentialMedium, WaterTableBelow } from './terms.js'

/** An exponential medium over a water table. */
export interface ExponentialOverWaterTable extends ExponentialMedium, WaterTableBelow {}

/** A medium whose conductivity is a / (sⁿ + b), over a water table; suctions in cm and conductivities in cm/h. */
export interface PowerOverWaterTable extends WaterTableBelow {
  /** Coefficient a; tables that print cm/d are divided by 24. Unit: cm^(n+1)/h. Range: (0, ∞). */
  readonly a: number
  /** Coefficient b, zero when only the dry end was fitted. Unit: cm^n. Range: [0, ∞). */
  readonly b: number
  /** Exponent of the suction. Unit: 1. Range: (1, ∞). */
  readonly n: number
}

/**
 * The most that can evaporate from a bare surface over a water table, however dry the air, for an exponential medium: what the
 * medium can lift.
 *
 * @equation `e_{max} = \frac{K_s}{e^{\alpha L} - 1}`
 * @returns Upward flux. Unit: mm/h.
 * @validity Liquid water only, in a steady state; vapour moves besides.
 * @source gardner-1958, exponential conductivity
 * @example
 * maxEvaporationGardner1958({
 *   saturatedConductivity: centimetresPerHour(10), alpha: perCentimetre(0.04), depth: centimetres(100),
 * }) // => 1.8657360
 */
export function maxEvaporationGardner1958(column: ExponentialOverWaterTable): WaterFlux {
  requireObject(column, 'column')
  const conductivity = numberIn(column.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity')
  const alpha = numberIn(column.alpha, ALPHA, 'alpha')
  return finite((10 * conductivity) / Math.expm1(alpha * numberIn(column.depth, DEPTH_OF_TABLE, 'depth')))
}

/**
 * The most that can evaporate from a bare surface over a water table, for a medium whose conductivity is a power of the suction.
 *
 * It is solved for e. With b = 0 this is e = a (c/L)ⁿ, where cⁿ is 3.76, 2.47, 1.77 and 1.52 for n of 1.5, 2, 3 and 4.
 *
 * @equation `L = \left(\frac{a}{e}\right)^{1/n} \frac{\pi}{n \sin(\pi/n)} \left(1 + \frac{e b}{a}\right)^{1/n - 1}, \quad K = \frac{a}{s^n + b}`
 * @returns Upward flux. Unit: mm/h.
 * @throws `DomainError` outside the ranges; `InputError` when the numbers are so far apart that the flux is none.
 * @validity Liquid water only, in a steady state; vapour moves besides.
 * @source gardner-1958
 * @source warrick-1988 (any n above 1, and b of zero; its abstract was read)
 * @example
 * maxEvaporationPowerGardner1958({ a: 1000 / 24, b: 500, n: 2, depth: centimetres(60) }) // => 0.2248888
 */
export function maxEvaporationPowerGardner1958(column: PowerOverWaterTable): WaterFlux {
  requireObject(column, 'column')
  const a = numberIn(column.a, RISE_COEFFICIENT_A, 'a')
  const b = numberIn(column.b, RISE_COEFFICIENT_B, 'b')
  const n = numberIn(column.n, RISE_EXPONENT, 'n')
  const angle = Math.PI / n
  // Near n = 1 the sine is that of the rest of π.
  const logC = Math.log(angle / Math.sin(n < 2 ? Math.PI * ((n - 1) / n) : angle))
  const dry = Math.log(a) + n * (logC - Math.log(numberIn(column.depth, DEPTH_OF_TABLE, 'depth')))
  if (b === 0) return finite(10 * Math.exp(dry))
  const ratio = b / a
  const lack = (y: number) => (1 / n) * (dry - y) - (1 - 1 / n) * Math.log1p(ratio * Math.exp(y))
  // The slope is between -1 and -1/n, so the root is at most n times what is lacking below the flux of a medium without b.
  const y = rootBetween((y) => [lack(y), Number.NaN], dry + n * lack(dry) - 1e-9, dry)
  return finite(10 * Math.exp(y))
}

function finite(flux: number): WaterFlux {
  if (flux < Infinity) return flux as WaterFlux
  throw new InputError('depth', 'the flux is beyond all numbers', 'check the coefficients and the depth')
}
