import { requireObject } from '../quantity/guard.js'
import { type RichardsContainer, richardsColumn } from './richards-column.js'
import { richardsFlow } from './richards-flow.js'
import type { RichardsFlow } from './richards-terms.js'

/**
 * Water in a container by the equation of Richards: it flows down by its weight and from wet to dry by suction, the slower the drier
 * the medium. Shots are spread evenly over surface and time, roots drink after Feddes, and the bottom drains where it is saturated.
 *
 * U is the demand in a volume of medium, and a(s) the share of it that roots can follow.
 *
 * The water content is what is balanced (the mixed form of Celia and others 1990), the conductivity between two nodes is its mean over
 * their suctions, and the step in time follows the error that it makes. Cells hold what the flows brought, so
 * that what `step` gives is balanced to rounding. Where a bold way through a step finds no end, patient ones follow.
 *
 * With a `wetting` curve the medium drains and rewets on different curves: from its last turn each height follows the main curve of its
 * direction, scaled to pass through the turn (`scanningCurvesScott1983`), and conducts as the water that it holds. Without one it wets along
 * the curve on which it drains.
 *
 * With `salt` the dissolved salts come along: with the water, by dispersion and diffusion, and into the roots as far as they let
 * them; each step then says what the drain carried. With `evaporation` the surface dries until the medium no longer keeps up.
 *
 * @equation `\frac{\partial \theta}{\partial t} =
 * \frac{1}{A} \frac{\partial}{\partial z} \left[ A\,K(s) \left( 1 - \frac{\partial s}{\partial z} \right) \right] - a(s)\,U`
 * @returns The model as a set of pure functions.
 * @throws `DomainError` outside the ranges; `InputError` for impossible roots. Its functions throw `InputError` for a state of another
 * container, for a demand without roots and for water without an EC where salt is followed, and `ConvergenceError` when no step is
 * short enough in any of its ways.
 * @validity One-dimensional flow in a uniform medium without swelling or water repellence, and without trapped air: an upper bound of how evenly a
 * real container wets. Water given at few points of a wide container spreads less than this says.
 * @source richards-1931; celia-1990; scott-1983, for scanning curves; kool-1987; millington-1961, for how much slower salt
 * diffuses in wetted pores than in free water [not confirmed, source not seen]
 * @example
 * const flow = containerFlowRichards1931({
 *   container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.02), saturated: waterContent(0.95), alpha: perCentimetre(0.08), n: 3.5 }),
 *   saturatedConductivity: centimetresPerMinute(6),
 * })
 * const drained = flow.startFrom(waterContent(0.9))
 * const [state, { drained: drain }] = flow.step(drained, { duration: minutes(10), applied: litres(1), demand: litres(0) })
 * drain // => 0.5831
 * flow.waterContent(state) // => 0.9278
 */
export function containerFlowRichards1931(input: RichardsContainer): RichardsFlow {
  requireObject(input, 'input')
  return richardsFlow(richardsColumn([input], input))
}
