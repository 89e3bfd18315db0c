import { solveTridiagonal } from '../numerics/tridiagonal.js'
import type { ColumnEquations, Conditions } from './column-equations.js'

/** Difference from the balance, as a water content, at which an iteration may end; the next step makes good for it. */
const ENOUGH = 1e-10
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

  /** The first guess becomes the solution, to which `equations` then belong; false when there is none near it. */
  return (s: Float64Array, target: Float64Array, during: Conditions, dt: number): boolean => {
    equations.evaluate(s, during, dt)
    let off = difference(s, target, dt)
    for (let iteration = 0; iteration < 15 && !(off < ENOUGH); iteration++) {
      solveTridiagonal(lower, diagonal, upper, right)
      move.set(right)
      if (off < 1e-6 && largest(move, s) < ROUNDING) return true
      let next = Number.NaN
      for (let share = 1; share > 0.01 && !(next < off || next < ENOUGH); share /= 3) {
        for (let i = 0; i < nodes; i++) trial[i] = s[i]! + limited(share * move[i]!, s[i]!)
        equations.evaluate(trial, during, dt)
        next = difference(trial, target, dt)
      }
      if (!(next < Infinity)) return false
      s.set(trial)
      off = next
    }
    return off < ENOUGH
  }
}

function largest(move: Float64Array, s: Float64Array): number {
  let most = 0
  for (let i = 0; i < s.length; i++) most = Math.max(most, Math.abs(move[i]!) / Math.max(Math.abs(s[i]!), 1))
  return most
}

/** A change of suction that stays where the slopes mean something: a node wets to a tenth, or dries to the fourfold, at most. */
export function limited(change: number, suction: number): number {
  const scale = Math.max(Math.abs(suction), 1)
  return Math.min(Math.max(change, -0.9 * scale), 3 * scale)
}
