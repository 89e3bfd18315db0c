import type { PoreWaterEC } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { frontEC, frontParts, type SoluteFront } from './solute-front.js'

/**
 * EC of the water that flows past a depth after water of another EC began to come: the front blurs as it moves. It is also the EC in
 * the pores where the surface itself is kept at the new EC, for which it was derived.
 *
 * @equation `\frac{C - C_0}{C_{in} - C_0} = \frac12 \operatorname{erfc} \frac{x - vt}{2\sqrt{Dt}} + \frac12 e^{vx/D} \operatorname{erfc} \frac{x + vt}{2\sqrt{Dt}}, \quad v = \frac{q}{\theta}, \quad D = \lambda v`
 * @param front - The steady flow, the place and the time.
 * @returns EC of the flowing water. Unit: dS/m.
 * @validity Steady flow through a deep, even medium, without uptake and diffusion; near the bottom of a container the drain differs a
 * little.
 * @source ogata-1961, for the surface kept at the new concentration; parker-1984, for flowing water
 * @example
 * soluteFrontOgataBanks1961({
 *   depth: centimetres(10), time: hours(4), downwardFlux: millimetresPerHour(20), waterContent: waterContent(0.8),
 *   dispersivity: centimetres(1), ecBefore: decisiemensPerMetre(5), feedEC: decisiemensPerMetre(2),
 * }) // => 3.244
 */
export function soluteFrontOgataBanks1961(front: SoluteFront): PoreWaterEC {
  requireObject(front, 'front')
  return frontEC(front, (terms) => {
    const { near, mirrored } = frontParts(terms)
    return (near + mirrored) / 2
  })
}
