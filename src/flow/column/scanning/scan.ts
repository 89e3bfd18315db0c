import type { MediumTable } from '../table/medium-table.js'

/**
 * A medium that drains and wets on different curves. From a turn it follows one of its main curves, scaled so that it passes through the
 * turn: the drying curve towards its driest, the wetting curve towards saturation.
 */
export interface Scan {
  readonly drying: MediumTable
  readonly wetting: MediumTable
  /** Ends of the two scalings, a hair beyond what the curves reach, so that no share is nothing over nothing. Unit: m³/m³. */
  readonly driest: number
  readonly fullest: number
  /** Room for one reading. */
  readonly content: Float64Array
  readonly capacity: Float64Array
}

/** How far the ends of the scalings lie beyond those of the curves: more than films of the table, and hardly anything. Unit: m³/m³. */
const BELOW = 1e-5
const ABOVE = 1e-9

export function scanOf(drying: MediumTable, wetting: MediumTable): Scan {
  return {
    drying,
    wetting,
    driest: drying.residual - BELOW,
    fullest: drying.saturated + ABOVE,
    content: new Float64Array(1),
    capacity: new Float64Array(1),
  }
}

/** Water content at a suction on the drying curve of a share. */
export function whileDrying({ drying, driest, content, capacity }: Scan, share: number, suction: number): number {
  drying.readWaterContent(suction, content, capacity, 0)
  return driest + share * (content[0]! - driest)
}

/** Water content at a suction on the wetting curve of a share. */
export function whileWetting({ wetting, fullest, content, capacity }: Scan, share: number, suction: number): number {
  wetting.readWaterContent(suction, content, capacity, 0)
  return fullest - share * (fullest - content[0]!)
}

/** The share of the drying curve that passes through a water content at a suction; from saturation it is the main one. */
export function dryingShare(scan: Scan, suction: number, waterContent: number): number {
  if (suction <= 0) return 1
  return (waterContent - scan.driest) / (whileDrying(scan, 1, suction) - scan.driest)
}

/** The share of the wetting curve that passes through a water content at a suction. */
export function wettingShare(scan: Scan, suction: number, waterContent: number): number {
  return (scan.fullest - waterContent) / (scan.fullest - whileWetting(scan, 1, suction))
}
