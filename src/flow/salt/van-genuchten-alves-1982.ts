import type { PoreWaterEC } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { frontEC, frontParts, type SoluteFront } from './solute-front.js'

/**
 * EC of the pore water at a depth after water of another EC began to come with a steady flow: what comes in is the salt of the new
 * water, so that the surface takes its EC only gradually.
 *
 * with v = q/θ and D = λ v.
 *
 * @equation `\frac{C - C_0}{C_{in} - C_0} = \frac12 \operatorname{erfc} \frac{x - vt}{2\sqrt{Dt}} + \sqrt{\frac{v^2 t}{\pi D}} e^{-(x - vt)^2 / 4Dt} - \frac12 \left( 1 + \frac{vx}{D} + \frac{v^2 t}{D} \right) e^{vx/D} \operatorname{erfc} \frac{x + vt}{2\sqrt{Dt}}`
 * @param front - The steady flow, the place and the time.
 * @returns EC of the pore water. Unit: dS/m.
 * @validity Steady flow through a deep, even medium, without uptake and diffusion.
 * @source van-genuchten-1982, case A2
 * @example
 * soluteFrontVanGenuchtenAlves1982({
 *   depth: centimetres(10), time: hours(4), downwardFlux: millimetresPerHour(20), waterContent: waterContent(0.8),
 *   dispersivity: centimetres(1), ecBefore: decisiemensPerMetre(5), feedEC: decisiemensPerMetre(2),
 * }) // => 3.521
 */
export function soluteFrontVanGenuchtenAlves1982(front: SoluteFront): PoreWaterEC {
  requireObject(front, 'front')
  return frontEC(front, (terms) => {
    const { depth, time, velocity, dispersion } = terms
    const { near, mirrored, gauss } = frontParts(terms)
    const passed = (velocity * velocity * time) / dispersion
    const place = (velocity * depth) / dispersion
    const share = near / 2 + Math.sqrt(passed / Math.PI) * gauss - ((1 + place + passed) * mirrored) / 2
    // Two large terms that cancel leave rounding outside the ends.
    return Math.min(Math.max(share, 0), 1)
  })
}
