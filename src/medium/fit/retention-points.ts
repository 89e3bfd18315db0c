import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { maxOf, minOf } from '../../quantity/extremes.js'
import type { HydraulicConductivity, SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { POINT_CONDUCTIVITY, POINT_SUCTION } from '../domains.js'

/** One measured point of a retention curve. */
export interface RetentionPoint {
  /** Suction at which it was measured. Unit: cm. Range: [0, 1e8]. */
  readonly suction: SuctionHead
  /** Water content there. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
  /** Conductivity there, if it was measured. Unit: cm/h. Range: (0, ∞). */
  readonly conductivity?: HydraulicConductivity
}

/** What the points cover. */
export interface Covered {
  /** Smallest and largest suction above zero. */
  readonly minSuction: number
  readonly maxSuction: number
  readonly minWaterContent: number
  readonly maxWaterContent: number
  /** How many suctions differ. */
  readonly suctions: number
  /** How many points have a conductivity. */
  readonly conductivities: number
}

/** Refuses impossible points and tells what the others cover. */
export function checkPoints(points: readonly RetentionPoint[]): Covered {
  const suctions = points.map((point) => numberIn(point.suction, POINT_SUCTION, 'suction'))
  const waterContents = points.map((point) => numberIn(point.waterContent, WATER_CONTENT, 'waterContent'))
  let conductivities = 0
  for (const { conductivity } of points) {
    if (conductivity === undefined) continue
    numberIn(conductivity, POINT_CONDUCTIVITY)
    conductivities++
  }
  const positive = suctions.filter((suction) => suction > 0)
  const minWaterContent = minOf(waterContents)
  const maxWaterContent = maxOf(waterContents)
  if (positive.length < 2 || !(maxWaterContent > minWaterContent)) {
    throw new InputError(
      'points',
      'they do not show how the water content falls with suction',
      'measure at several suctions above zero, from near saturation to well drained',
    )
  }
  return {
    minSuction: minOf(positive),
    maxSuction: maxOf(positive),
    minWaterContent,
    maxWaterContent,
    suctions: new Set(suctions).size,
    conductivities,
  }
}
