import type { ColumnEquations } from '../equations/equations.js'
import { passesTurn } from '../scanning/history.js'

/** Share of a small change that a cell may make where it crosses saturation, at which slopes end, and where it turns, at which they change. */
const CROSSING = 0.01
const TURNING = 0.4
/** Changes up to which slopes hold: of suction as a share of itself and some millimetres, of conductivity, of how far an element is trusted. */
const SUCTION = 0.15
const AND = 0.2
const CONDUCTIVITY = 0.15
const TRUST = 0.01
/** Suction up to which a full cell may empty by its slopes, which say nothing of what comes then. Unit: cm. */
const EMPTIES = 0.01

/** Whether slopes carry over a whole move: little water moves, and no end crosses saturation. */
export function isSmallMove(equations: ColumnEquations, s: Float64Array, move: Float64Array, small: number): boolean {
  const { nodes, grid, terms, points } = equations
  const { history } = points
  const top = nodes - 1
  if (crosses(s[0]!, move[0]!) || crosses(s[top]!, move[top]!)) return false
  for (let i = 0; i < nodes; i++) {
    const change = Math.abs(move[i]!)
    const whole = small * grid.volumes[i]!
    const brings = change * Math.abs(terms.waterByOwn[i]!)
    // Beside a node that is full there may be a middle that fills within the move; water on the surface follows its slope.
    if (brings > CROSSING * whole && (crosses(s[i]!, move[i]!) || (s[i]! <= 0 && i < top))) return false
    if (brings > TURNING * whole && history !== undefined && passesTurn(history, grid, s, move, i)) return false
    if (brings > whole) return false
    if (s[i]! > 0 ? change > SUCTION * (s[i]! + AND) : s[i]! + move[i]! > EMPTIES) return false
  }
  return bendsLittle(equations, move, CONDUCTIVITY)
}

function crosses(suction: number, move: number): boolean {
  return suction > 0 !== suction + move > 0
}

function bendsLittle({ grid, points, terms }: ColumnEquations, move: Float64Array, max: number): boolean {
  const { conductivity, conductivitySlope } = points.at
  const { trustByBelow, trustByAbove } = terms
  const { layers } = grid
  for (let e = 0; e < layers.length; e++) {
    const p = e + layers[e]!
    if (Math.abs(move[e]! * conductivitySlope[p]!) > max * conductivity[p]!) return false
    // How far an element is trusted bends most where it holds most: under water that stands, as a rule.
    if (Math.abs(move[e]! * trustByBelow[e]! + move[e + 1]! * trustByAbove[e]!) > TRUST) return false
  }
  return true
}
