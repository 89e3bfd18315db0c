import { answerOf } from '../quantity/answer.js'
import { ELAPSED } from '../quantity/domains.js'
import type { Duration, HydraulicConductivity, Sorptivity, WaterDepth } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../quantity/guard.js'
import { GRAVITY_TERM, SORPTIVITY_OF_SURFACE } from './domains.js'

/** A dry medium whose surface has water, and for how long. */
export interface AbsorbingSurface {
  /** Sorptivity of the medium from its present state. Unit: cm/h^½. Range: [0, ∞). */
  readonly sorptivity: Sorptivity
  /** Coefficient of time for the part of gravity, a third to two thirds of the saturated conductivity; none when left out. Unit: cm/h. Range: [0, ∞). */
  readonly gravityTerm?: HydraulicConductivity
  /** Time since the surface was wetted. Unit: s. Range: [0, ∞). */
  readonly time: Duration
}

/**
 * Water that a surface draws in, by Philip's equation of two terms. Without the second it is absorption, in which gravity has no part:
 * sideways, upwards, or in the first minutes.
 *
 * @equation `I = S \sqrt{t} + A t`
 * @returns Water taken up. Unit: mm.
 * @validity Short times only; in the end the rate is that of the saturated conductivity, which A is not. Deep, uniform medium.
 * @source philip-1957
 * @example
 * infiltrationPhilip1957({ sorptivity: centimetresPerSquareRootHour(23.490735), time: minutes(6) }) // => 74.284227
 */
export function infiltrationPhilip1957(surface: AbsorbingSurface): WaterDepth {
  requireObject(surface, 'surface')
  const hours = numberIn(surface.time, ELAPSED, 'time') / 3600
  const gravity = numberIn(optionOr(surface.gravityTerm, 0), GRAVITY_TERM, 'gravityTerm')
  return answerOf(
    10 * (numberIn(surface.sorptivity, SORPTIVITY_OF_SURFACE, 'sorptivity') * Math.sqrt(hours) + gravity * hours),
    'sorptivity',
  ) as WaterDepth
}
