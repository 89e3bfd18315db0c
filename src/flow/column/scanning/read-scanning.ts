import { type ColumnHistory, turnBack } from './history.js'
import type { PointValues } from './point-values.js'
import type { Scan } from './scan.js'

/** Largest slope of the effective suction: near saturation it is nothing over nothing. */
const STEEPEST = 100

/** What a medium that scans does at the points of its layer. */
export function readScanning(layer: number, first: number, last: number, points: PointValues): void {
  const { suction, effective, effectiveSlope, middle, at } = points
  const history = points.history!
  const { nodePoints, content, capacity } = history
  const scan = history.scans[layer]!
  const start = first + layer
  const end = last + layer + 1
  for (let p = start; p < end; p++) history.suction[p] = suction[p]!
  for (let e = first; e < last; e++) history.suction[nodePoints + e] = middle[e]!
  readPoints(history, scan, nodePoints + first, nodePoints + last)
  for (let from = start; from < end; ) {
    // Points beside each other are read together as long as all, or none, are on the main drying curve.
    const isMain = isOnMain(history, from)
    let to = from
    for (; to < end && isOnMain(history, to) === isMain; to++) {
      effectiveSlope[to] = isMain ? 1 : 0
      if (isMain) effective[to] = suction[to]!
    }
    if (isMain) scan.drying.read(effective, at, from, to)
    else {
      readPoints(history, scan, from, to)
      scan.drying.readByContent(content, effective, at, from, to)
    }
    from = to
  }
  for (let p = start; p < end; p++) {
    if (effectiveSlope[p] === 1) continue
    const own = at.capacity[p]!
    effectiveSlope[p] = own > 0 ? Math.min(capacity[p]! / own, STEEPEST) : 1
    at.waterContent[p] = content[p]!
    at.capacity[p] = capacity[p]!
  }
  for (let e = first; e < last; e++) {
    points.middleWaterContent[e] = content[nodePoints + e]!
    points.middleCapacity[e] = capacity[nodePoints + e]!
  }
}

/** Whether a point is on the main drying curve, as far as is known without asking for its way back. */
function isOnMain({ suction, turn, drying, wets }: ColumnHistory, p: number): boolean {
  return suction[p]! <= 0 || (wets[p] === 0 && drying[p] === 1 && suction[p]! >= turn[p]!)
}

/** Reads water content and capacity of points, those beside each other on curves of one kind together. */
function readPoints(history: ColumnHistory, scan: Scan, start: number, end: number): void {
  const { drying, wetting, turn, wets, stale, suction, content, capacity } = history
  const { driest, fullest } = scan
  for (let from = start; from < end; ) {
    const dries = suction[from]! >= turn[from]!
    let to = from + 1
    while (to < end && suction[to]! >= turn[to]! === dries) to++
    const curve = dries ? scan.drying : scan.wetting
    curve.readWaterContents(suction, content, capacity, from, to)
    for (let p = from; p < to; p++) {
      if (stale[p] === 1 && (wets[p] === 1) === dries) turnBack(history, scan, p)
      const share = dries ? drying[p]! : wetting[p]!
      content[p] = dries ? driest + share * (content[p]! - driest) : fullest - share * (fullest - content[p]!)
      capacity[p]! *= share
    }
    from = to
  }
}
