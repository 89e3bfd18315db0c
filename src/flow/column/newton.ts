import { solveTridiagonal } from '../../numerics/tridiagonal.js'
import type { ColumnEquations, Conditions } from './equations.js'
import { passesTurn } from './history.js'

/** Difference from the balance, as a water content, at which an iteration ends in any case. */
const ENOUGH = 1e-10
/** The same after many iterations, when nodes hover about a kink of the curves. */
const NEARLY = 1e-7
/** Change of suction, as a share of itself or of a centimetre, that is rounding: with long steps this is where the balance stays. */
const ROUNDING = 1e-13

/** Share of a small change that a cell may make where it crosses saturation, at which slopes end, and where it turns, at which they change. */
const CROSSING = 0.01
const TURNING = 0.1

/**
 * Solves water(s) = target + dt net(s) by Newton's method with shortened moves where a whole one makes it worse. The last move is carried
 * on by slopes instead of being worked out again: `terms` and `net` then balance to rounding, and the next step mends what the bend
 * of the curves left. `small` is the change of water content from which that is good enough.
 */
export function columnNewton(equations: ColumnEquations, small: number) {
  const { nodes, grid, net, lower, diagonal, upper, terms, points, heldBase, heldTop } = equations
  const { history } = points
  const top = nodes - 1
  const right = new Float64Array(nodes)
  const move = new Float64Array(nodes)
  const trial = new Float64Array(nodes)
  const work = { iterations: 0 }

  /** Largest difference from the balance, as a water content; the differences stay in `right`. */
  const difference = (target: Float64Array, dt: number): number => {
    let most = 0
    for (let i = 0; i < nodes; i++) {
      right[i] = (heldBase && i === 0) || (heldTop && i === top) ? 0 : target[i]! + dt * net[i]! - terms.water[i]!
      const size = Math.abs(right[i]!) / grid.volumes[i]!
      // Written so that NaN counts as the largest.
      if (!(size <= most)) most = size
    }
    return most
  }

  /** Difference from the balance after a share of the move, which `trial` then holds. */
  const go = (s: Float64Array, target: Float64Array, during: Conditions, dt: number, share: number): number => {
    const driest = during.sink?.h4 ?? Infinity
    for (let i = 0; i < nodes; i++) trial[i] = moved(s[i]!, move[i]!, share, driest)
    equations.evaluate(trial, during)
    work.iterations++
    return difference(target, dt)
  }

  /** Whether slopes carry over the whole move: little water moves, and no end crosses saturation. */
  const isSmall = (s: Float64Array): boolean => {
    if (s[0]! > 0 !== s[0]! + move[0]! > 0 || s[top]! > 0 !== s[top]! + move[top]! > 0) return false
    for (let i = 0; i < nodes; i++) {
      const change = Math.abs(move[i]!)
      let share = 1
      const crosses = s[i]! > 0 !== s[i]! + move[i]! > 0
      // Beside a node that is full there may be a middle that fills within the move; water on the surface follows its slope.
      if (crosses || (s[i]! <= 0 && i < top)) share = CROSSING
      else if (history !== undefined && passesTurn(history, grid, s, move, i)) share = TURNING
      const most = share * small * grid.volumes[i]!
      if (change * Math.abs(terms.waterByOwn[i]!) > most) return false
      if (s[i]! > 0 && change > 0.05 * (s[i]! + 0.2)) return false
      // In a full cell slopes say nothing of what comes when it begins to empty.
      if (s[i]! <= 0 && s[i]! + move[i]! > 0.01) return false
    }
    return bendsLittle(move)
  }
  const bendsLittle = (change: Float64Array): boolean => {
    const { conductivity, conductivitySlope } = points.at
    const { trustByBelow, trustByAbove } = terms
    for (let e = 0; e < top; e++) {
      const p = e + grid.layers[e]!
      if (Math.abs(change[e]! * conductivitySlope[p]!) > 0.05 * conductivity[p]!) return false
      // How far an element is trusted bends most where it holds most: under water that stands, as a rule.
      if (Math.abs(change[e]! * trustByBelow[e]! + change[e + 1]! * trustByAbove[e]!) > 0.01) return false
    }
    return true
  }

  const finish = (s: Float64Array, target: Float64Array, during: Conditions, dt: number): true => {
    equations.carryOn(move, during)
    for (let i = 0; i < nodes; i++) s[i]! += move[i]!
    equations.closeHeldEnds(target, dt)
    return true
  }

  /** The first guess becomes the solution, to which `terms` and `net` then belong; false when there is none near it. */
  const solve = (s: Float64Array, target: Float64Array, during: Conditions, dt: number): boolean => {
    equations.evaluate(s, during)
    work.iterations++
    let off = difference(target, dt)
    for (let iteration = 0; iteration < 20; iteration++) {
      equations.assemble(dt)
      solveTridiagonal(lower, diagonal, upper, right)
      move.set(right)
      if (isSmall(s)) return finish(s, target, during, dt)
      if (off < ENOUGH || (iteration >= 6 && off < NEARLY) || (off < 1e-6 && largest(move, s) < ROUNDING)) {
        // Slopes do not hold over the whole move, and it is not needed.
        move.fill(0)
        return finish(s, target, during, dt)
      }
      let next = go(s, target, during, dt, 1)
      for (let share = 0.3; share > 0.01 && !(next < off || next < ENOUGH); share *= 0.3)
        next = go(s, target, during, dt, share)
      if (!(next < Infinity)) return false
      s.set(trial)
      off = next
    }
    return false
  }
  return { solve, work }
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
  // Under water the balance is a straight line, however far; out of it no node goes by more than some centimetres.
  if (suction < 1) next = suction + share * Math.min(Math.max(change, -1000), 3 + Math.max(-suction, 0))
  // The plain sum is the same to second order, and most changes are small.
  else if (Math.abs(change) < 0.05 * suction) next = suction + share * change
  else next = suction * Math.exp(share * Math.min(Math.max(change / suction, -2.3), 1.4))
  return next >= driest && suction < driest ? suction + 0.9 * (driest - suction) : next
}
