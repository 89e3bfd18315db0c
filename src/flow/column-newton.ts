import { solveTridiagonal } from '../numerics/tridiagonal.js'
import type { ColumnEquations, Conditions } from './column-equations.js'

/** Difference from the balance, as a water content, at which an iteration may end; the next step makes good for it. */
export const ENOUGH = 1e-10
/** The same after many iterations, when nodes hover about a kink of the curves. */
const NEARLY = 1e-7
/** Change of suction, as a share of itself or of a centimetre, that is rounding: with long steps this is where the balance stays. */
const ROUNDING = 1e-13

/** Solves water(s) = target + dt net(s) by Newton's method with shortened steps where a full one makes it worse. */
export function columnNewton(equations: ColumnEquations) {
  const { nodes, volumes, net, lower, diagonal, upper, water, isHeld } = equations
  const right = new Float64Array(nodes)
  const move = new Float64Array(nodes)
  const trial = new Float64Array(nodes)

  /** Largest difference from the balance, as a water content; the differences stay in `right`. */
  const difference = (s: Float64Array, target: Float64Array, dt: number): number => {
    let most = 0
    for (let i = 0; i < nodes; i++) {
      right[i] = isHeld(i) ? 0 : target[i]! + dt * net[i]! - water(s, i)
      const size = Math.abs(right[i]!) / volumes[i]!
      // Written so that NaN counts as the largest.
      if (!(size <= most)) most = size
    }
    return most
  }

  /** Difference from the balance after a share of the move, which `trial` then holds. */
  const go = (s: Float64Array, target: Float64Array, during: Conditions, dt: number, share: number): number => {
    const driest = during.sink?.driest ?? Infinity
    for (let i = 0; i < nodes; i++) trial[i] = moved(s[i]!, move[i]!, share, driest)
    equations.evaluate(trial, during, dt)
    return difference(trial, target, dt)
  }

  /** The first guess becomes the solution, to which `equations` then belong; false when there is none near it. */
  return (s: Float64Array, target: Float64Array, during: Conditions, dt: number): boolean => {
    equations.evaluate(s, during, dt)
    let off = difference(s, target, dt)
    for (let iteration = 0; iteration < 20 && !(off < ENOUGH); iteration++) {
      if (iteration >= 6 && off < NEARLY) return true
      solveTridiagonal(lower, diagonal, upper, right)
      move.set(right)
      if (off < 1e-6 && largest(move, s) < ROUNDING) return true
      let next = go(s, target, during, dt, 1)
      for (let share = 0.3; share > 0.01 && !(next < off || next < ENOUGH); share *= 0.3)
        next = go(s, target, during, dt, share)
      if (!(next < Infinity)) return false
      s.set(trial)
      off = next
    }
    return off < NEARLY
  }
}

function largest(move: Float64Array, s: Float64Array): number {
  let most = 0
  for (let i = 0; i < s.length; i++) most = Math.max(most, Math.abs(move[i]!) / Math.max(Math.abs(s[i]!), 1))
  return most
}

/**
 * A suction after a share of a change. Dry medium moves on the logarithmic scale on which its curves are nearly straight, and a whole
 * change takes no node further than to a tenth or to the fourfold, nor across the suction at which roots stop drinking: beyond it
 * nothing tells an iteration how to come back.
 */
export function moved(suction: number, change: number, share: number, driest: number): number {
  let next: number
  if (suction < 1) next = suction + share * Math.min(Math.max(change, -10), 3)
  // The plain sum is the same to second order, and most changes are small.
  else if (Math.abs(change) < 0.05 * suction) next = suction + share * change
  else next = suction * Math.exp(share * Math.min(Math.max(change / suction, -2.3), 1.4))
  return next >= driest && suction < driest ? suction + 0.9 * (driest - suction) : next
}
