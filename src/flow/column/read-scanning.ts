import type { ColumnHistory } from './history.js'
import type { PointValues } from './point-values.js'
import type { Scan } from './scan.js'

/** Largest slope of the effective suction: near saturation it is nothing over nothing. */
const STEEPEST = 100

/** What a medium that scans does at the points of its layer. */
export function readScanning(layer: number, first: number, last: number, points: PointValues): void {
  const { suction, effective, effectiveSlope, middle, at } = points
  const history = points.history!
  const { nodePoints, drying, turn, content, capacity } = history
  for (let p = first + layer; p <= last + layer; p++) history.suction[p] = suction[p]!
  for (let e = first; e < last; e++) history.suction[nodePoints + e] = middle[e]!
  const scan = history.scans[layer]!
  for (let p = first + layer; p <= last + layer; p++) {
    const s = suction[p]!
    const isMain = s <= 0 || (s >= turn[p]! && drying[p] === 1)
    if (isMain) effective[p] = s
    else {
      readPoint(history, scan, p)
      scan.drying.readSuction(content, effective, p)
    }
    effectiveSlope[p] = isMain ? 1 : 0
  }
  scan.drying.read(effective, at, first + layer, last + layer + 1)
  for (let p = first + layer; p <= last + layer; p++) {
    if (effectiveSlope[p] === 1) continue
    const own = at.capacity[p]!
    effectiveSlope[p] = own > 0 ? Math.min(capacity[p]! / own, STEEPEST) : 1
    at.waterContent[p] = content[p]!
    at.capacity[p] = capacity[p]!
  }
  for (let e = first; e < last; e++) {
    const p = nodePoints + e
    readPoint(history, scan, p)
    points.middleWaterContent[e] = content[p]!
    points.middleCapacity[e] = capacity[p]!
  }
}

/** Reads water content and capacity of one point. */
function readPoint(history: ColumnHistory, scan: Scan, p: number): void {
  const { drying, wetting, turn, suction, content, capacity } = history
  if (suction[p]! >= turn[p]!) {
    scan.drying.readWaterContents(suction, content, capacity, p, p + 1)
    content[p] = scan.driest + drying[p]! * (content[p]! - scan.driest)
    capacity[p]! *= drying[p]!
  } else {
    scan.wetting.readWaterContents(suction, content, capacity, p, p + 1)
    content[p] = scan.fullest - wetting[p]! * (scan.fullest - content[p]!)
    capacity[p]! *= wetting[p]!
  }
}
