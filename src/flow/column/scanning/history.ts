import type { ColumnGrid } from '../grid/grid.js'
import type { LayerMedium } from '../table/layer-medium.js'
import { dryingShare, type Scan, scanOf, wettingShare, whileDrying, whileWetting } from './scan.js'

/**
 * On which curve each point of a column is: those of the nodes first, then the middles of the elements. Beyond the suction of its last turn
 * a point is on a drying curve, before it on a wetting curve, and both pass through the turn. The turn goes along while the point goes on;
 * when enough water has come back, the way back is the new way on.
 */
export interface ColumnHistory {
  /** How each layer scans; undefined where it drains and wets on one curve. */
  readonly scans: readonly (Scan | undefined)[]
  /** Points of the nodes, before those of the middles. */
  readonly nodePoints: number
  /** Shares of the main curves that a point follows. */
  readonly drying: Float64Array
  readonly wetting: Float64Array
  /** Suction of the last turn, or where it would be if the point turned now. Unit: cm. */
  readonly turn: Float64Array
  /** Whether the point last went on by wetting. */
  readonly wets: Uint8Array
  /** Whether the turn has moved since the share of the way back was worked out: most points never ask for it. */
  readonly stale: Uint8Array
  /** Water that must come back before a turn counts, so that rounding makes none. Unit: m³/m³. */
  readonly min: number
  /** Where each point is to be read, and what comes of it: lists, because numbers on their own would be boxed. */
  readonly suction: Float64Array
  readonly content: Float64Array
  readonly capacity: Float64Array
}

/** Suction at which a point is full beyond doubt; no turn is remembered further under water. Unit: cm. */
const FULL = -1

/** The history of a column; none where all media drain and wet on one curve. */
export function columnHistory(grid: ColumnGrid, media: readonly LayerMedium[], min: number): ColumnHistory | undefined {
  if (media.every(({ wetting }) => wetting === undefined)) return undefined
  const nodePoints = grid.nodes + media.length - 1
  const points = nodePoints + grid.nodes - 1
  const scans = media.map(({ table, wetting }) => (wetting === undefined ? undefined : scanOf(table, wetting)))
  return {
    scans,
    nodePoints,
    drying: new Float64Array(points),
    wetting: new Float64Array(points),
    turn: new Float64Array(points).fill(-Infinity),
    wets: new Uint8Array(points),
    stale: new Uint8Array(points),
    min,
    suction: new Float64Array(points),
    content: new Float64Array(points),
    capacity: new Float64Array(points),
  }
}

/** Puts all points on a main curve, with no turn behind them. */
export function forget({ drying, wetting, turn, wets, stale }: ColumnHistory, onWetting: boolean): void {
  drying.fill(1)
  wetting.fill(1)
  stale.fill(0)
  turn.fill(onWetting ? Infinity : -Infinity)
  wets.fill(onWetting ? 1 : 0)
}

/** Lets every point remember where it came by. */
export function follow(history: ColumnHistory, { boundaries }: ColumnGrid, suctions: Float64Array): void {
  const { scans, nodePoints, suction } = history
  for (const [layer, scan] of scans.entries()) {
    if (scan === undefined) continue
    const first = boundaries[layer]!
    const last = boundaries[layer + 1]!
    for (let i = first; i <= last; i++) suction[i + layer] = suctions[i]!
    for (let e = first; e < last; e++) suction[nodePoints + e] = (suctions[e]! + suctions[e + 1]!) / 2
    followPoints(history, scan, first + layer, last + layer + 1)
    followPoints(history, scan, nodePoints + first, nodePoints + last)
  }
}

/** Goes over the points that scan. */
export function eachPoint(
  { scans, nodePoints }: ColumnHistory,
  { boundaries }: ColumnGrid,
  visit: (scan: Scan, point: number) => void,
): void {
  for (const [layer, scan] of scans.entries()) {
    if (scan === undefined) continue
    const [first, last] = [boundaries[layer]!, boundaries[layer + 1]!]
    for (let i = first; i <= last; i++) visit(scan, i + layer)
    for (let e = first; e < last; e++) visit(scan, nodePoints + e)
  }
}

function followPoints(history: ColumnHistory, scan: Scan, start: number, end: number): void {
  const { drying, wetting, turn, wets, stale, min, suction } = history
  for (let p = start; p < end; p++) {
    // Under water all suctions hold the same.
    const s = Math.max(suction[p]!, FULL)
    const from = turn[p]!
    const wet = wets[p] === 1
    if (wet ? s > from : s < from) {
      if (stale[p] === 1) turnBack(history, scan, p)
      const here = wet ? whileDrying(scan, drying[p]!, s) : whileWetting(scan, wetting[p]!, s)
      const there = wet ? whileWetting(scan, wetting[p]!, from) : whileDrying(scan, drying[p]!, from)
      if (Math.abs(here - there) <= min) continue
      wets[p] = 1 - wets[p]!
    }
    turn[p] = s
    stale[p] = 1
  }
}

/** Works out the share of the way back, which passes through the turn. */
export function turnBack({ drying, wetting, turn, wets, stale }: ColumnHistory, scan: Scan, p: number): void {
  const from = turn[p]!
  if (wets[p] === 1) drying[p] = dryingShare(scan, from, whileWetting(scan, wetting[p]!, from))
  else wetting[p] = wettingShare(scan, from, whileDrying(scan, drying[p]!, from))
  stale[p] = 0
}

/**
 * Whether a point at a node, or in the middle of the element below it, passes its turn between two sets of suctions. Beyond the ends of a column
 * there is none, and in a layer that does not scan none is turned at any suction: either lies on the same side of it.
 */
export function passesTurn(
  { nodePoints, turn }: ColumnHistory,
  { layers }: ColumnGrid,
  s: Float64Array,
  move: Float64Array,
  i: number,
): boolean {
  const from = s[i]!
  const to = from + move[i]!
  const middle = (s[i - 1]! + from) / 2
  return (
    isBetween(turn[i + layers[i - 1]!]!, from, to) ||
    isBetween(turn[i + layers[i]!]!, from, to) ||
    isBetween(turn[nodePoints + i - 1]!, middle, middle + (move[i - 1]! + move[i]!) / 2)
  )
}

function isBetween(turn: number, from: number, to: number): boolean {
  return from < turn !== to < turn
}
