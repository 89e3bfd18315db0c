import { InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { HydraulicConductivity } from '../quantity/hydraulic-conductivity.js'
import type { Span } from '../quantity/span.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { WaterContent } from '../quantity/water-content.js'
import { WATER_CONTENT } from './phase-spans.js'

/** One measured point of a retention curve. */
export interface RetentionPoint {
  /** Suction at which it was measured. Unit: cm. Range: [0, 1e8]. */
  readonly suction: SuctionHead
  /** Water content there. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
  /** Conductivity there, if it was measured. Unit: cm/h. Range: (0, ∞). */
  readonly conductivity?: HydraulicConductivity
}

const SUCTION: Span = {
  quantity: 'suction',
  unit: 'cm',
  min: 0,
  max: 1e8,
  ends: '[]',
  hint: 'give suction as a positive head in cm; kPa go through kilopascalsOfSuction()',
}
const CONDUCTIVITY: Span = {
  quantity: 'conductivity',
  unit: 'cm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'leave a point that has no conductivity without one',
}

/** What the points cover. */
export interface Covered {
  /** Smallest and largest suction above zero. */
  readonly leastSuction: number
  readonly mostSuction: number
  readonly leastContent: number
  readonly mostContent: number
  /** How many suctions differ. */
  readonly suctions: number
  /** How many points have a conductivity. */
  readonly conductivities: number
}

/** Refuses impossible points and tells what the others cover. */
export function checkPoints(points: readonly RetentionPoint[]): Covered {
  const suctions = points.map((point) => within(point.suction, SUCTION))
  const contents = points.map((point) => within(point.waterContent, WATER_CONTENT))
  let conductivities = 0
  for (const { conductivity } of points) {
    if (conductivity === undefined) continue
    within(conductivity, CONDUCTIVITY)
    conductivities++
  }
  const positive = suctions.filter((suction) => suction > 0)
  const leastContent = Math.min(...contents)
  const mostContent = Math.max(...contents)
  if (positive.length < 2 || !(mostContent > leastContent)) {
    throw new InputError(
      'points',
      'they do not show how the water content falls with suction',
      'measure at several suctions above zero, from near saturation to well drained',
    )
  }
  return {
    leastSuction: Math.min(...positive),
    mostSuction: Math.max(...positive),
    leastContent,
    mostContent,
    suctions: new Set(suctions).size,
    conductivities,
  }
}
