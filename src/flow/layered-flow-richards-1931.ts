import { requireObject } from '../quantity/guard.js'
import { type RichardsLayers, richardsColumn } from './richards-column.js'
import { richardsFlow } from './richards-flow.js'
import type { RichardsFlow } from './richards-terms.js'

/**
 * Water in layers of different media, one on the other, by the equation of Richards: a plug or a cube on a slab, a pot on a mat, stone
 * wool of two densities. Suction and flow are the same on both sides of a boundary, water contents are not: a fine layer over a coarse one
 * keeps its lowest part wet before anything passes.
 *
 * Within each layer it is `containerFlowRichards1931`, with its roots, salt, evaporation, bottom and surface. Where sections differ, the
 * whole boundary conducts and the flow spreads at once over the wider side.
 *
 * @equation `s_i(z^-) = s_{i+1}(z^+), \quad A_i q_i(z^-) = A_{i+1} q_{i+1}(z^+)`
 * @returns The model as a set of pure functions; water contents are means over all layers.
 * @throws `DomainError` outside the ranges; `InputError` when there is no layer and for impossible roots; its functions as those of
 * `containerFlowRichards1931`.
 * @validity Layers that touch all over: a gap lets nothing pass until water stands over it. A cube wets the slab below it only around
 * its foot; this spreads the water evenly.
 * @source richards-1931; continuity of suction and flow
 * @example
 * const wool = (alpha: number) => ({
 *   medium: vanGenuchten1980({ residual: waterContent(0.02), saturated: waterContent(0.95), alpha: perCentimetre(alpha), n: 2.5 }),
 *   saturatedConductivity: centimetresPerMinute(3),
 * })
 * const slab = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) })
 * const cube = boxContainer({ length: centimetres(30), width: centimetres(10), height: centimetres(6.5) })
 * const flow = layeredFlowRichards1931({ layers: [{ container: slab, ...wool(0.15) }, { container: cube, ...wool(0.08) }] })
 * const rest = flow.startAt((height) => centimetresOfSuction(inCentimetres(height)))
 * const [, { drained }] = flow.step(rest, { duration: minutes(30), applied: litres(0.5), demand: litres(0) })
 * drained // => 0.4448
 */
export function layeredFlowRichards1931(input: RichardsLayers): RichardsFlow {
  requireObject(input, 'input')
  return richardsFlow(richardsColumn(input.layers, input))
}
