import { solveTridiagonal } from '../../../numerics/tridiagonal.js'
import type { ColumnEquations, Conditions } from '../equations/equations.js'
import { moveAll } from './moved.js'
import { isSmallMove } from './small-move.js'

/** Difference from the balance, as a water content, at which an iteration ends in any case. */
const ENOUGH = 1e-10
/** The same after many iterations, when nodes hover about a kink of the curves. */
const NEARLY = 1e-7
/** Change of suction, as a share of itself or of a centimetre, that is rounding: with long steps this is where the balance stays. */
const ROUNDING = 1e-13

/** Most iterations. */
const MAX = 20
const MAX_BOLD = 14
/**
 * Iterations of a bold solver that may make the balance worse: where cells fill or begin to drain, the way to a solution leads over
 * suctions that are far off, and shortened moves creep.
 */
const FREE = 6

/** How a balance is solved. */
export interface NewtonLimits {
  /** Change of water content from which an iteration ends with its slopes. */
  readonly small: number
  /** Whether an iteration may look ahead, and gives up soon. */
  readonly bold: boolean
}

/** Solves the balance of a stage. */
export interface ColumnNewton {
  /** The first guess becomes the solution, to which `terms` and `net` then belong; false when there is none near it. */
  readonly solve: (s: Float64Array, target: Float64Array, during: Conditions, dt: number) => boolean
}

/**
 * Solves water(s) = target + dt net(s) by Newton's method with shortened moves where a whole one makes it worse. The last move is carried
 * on by slopes instead of being worked out again: `terms` and `net` then balance to rounding, and the next step mends what the bend
 * of the curves left.
 */
export function columnNewton(equations: ColumnEquations, { small, bold }: NewtonLimits): ColumnNewton {
  const { nodes, lower, diagonal, upper } = equations
  const right = new Float64Array(nodes)
  const move = new Float64Array(nodes)
  const trial = new Float64Array(nodes)
  const max = bold ? MAX_BOLD : MAX

  /** Difference from the balance after a share of the move, which `trial` then holds. */
  const go = (s: Float64Array, target: Float64Array, during: Conditions, dt: number, share: number): number => {
    const driest = during.sink?.h4 ?? Infinity
    moveAll(s, move, share, driest, trial)
    // Of the film that stands on a seepage face the first guess is far too much: it is found from where it begins.
    if (bold && s[0]! > 0 && trial[0]! < 0) trial[0] = 0
    equations.evaluate(trial, during)
    return difference(equations, target, dt, right)
  }
  /** Takes the last move, which stands where the right side stood. */
  const finish = (s: Float64Array, target: Float64Array, during: Conditions, dt: number): true => {
    equations.carryOn(right, during)
    for (let i = 0; i < nodes; i++) s[i]! += right[i]!
    equations.closeHeldEnds(target, dt)
    return true
  }
  const solve: ColumnNewton['solve'] = (s, target, during, dt) => {
    equations.evaluate(s, during)
    let off = difference(equations, target, dt, right)
    for (let iteration = 0; iteration < max; iteration++) {
      equations.assemble(dt)
      solveTridiagonal(lower, diagonal, upper, right)
      if (isSmallMove(equations, s, right, small)) return finish(s, target, during, dt)
      if (off < ENOUGH || (iteration >= FREE && off < NEARLY) || (off < 1e-6 && maxMove(right, s) < ROUNDING)) {
        // Slopes do not hold over the whole move, and it is not needed.
        right.fill(0)
        return finish(s, target, during, dt)
      }
      move.set(right)
      const allowed = bold && iteration < FREE ? Infinity : off
      let next = go(s, target, during, dt, 1)
      for (let share = 0.3; share > 0.01 && !(next < allowed); share *= 0.3) next = go(s, target, during, dt, share)
      if (!(next < Infinity)) return false
      s.set(trial)
      off = next
    }
    return false
  }
  return { solve }
}

/** Largest difference from the balance, as a water content; the differences are filled in. */
function difference(equations: ColumnEquations, target: Float64Array, dt: number, into: Float64Array): number {
  const { nodes, net, heldBase, heldTop } = equations
  const { water } = equations.terms
  const { perVolume } = equations.grid
  let max = 0
  for (let i = 0; i < nodes; i++) {
    const held = (heldBase && i === 0) || (heldTop && i === nodes - 1)
    into[i] = held ? 0 : target[i]! + dt * net[i]! - water[i]!
    const size = Math.abs(into[i]!) * perVolume[i]!
    // Written so that NaN counts as the largest.
    if (!(size <= max)) max = size
  }
  return max
}

function maxMove(move: Float64Array, s: Float64Array): number {
  let max = 0
  for (let i = 0; i < s.length; i++) max = Math.max(max, Math.abs(move[i]!) / Math.max(Math.abs(s[i]!), 1))
  return max
}
