import { CAPACITY } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import type { RecordFinding } from '../record-finding.js'
import { trendOf } from './trend.js'

/** Levels after drain on several days, with the drain of those days. */
export interface SaltDriftInput {
  /** Days of the levels, counted from any day. Unit: d. Range: any. */
  readonly day: ArrayLike<number>
  /** Level after drain of each day; NaN where it is missing. Unit: m³/m³. Range: any. */
  readonly plateau: ArrayLike<number>
  /** Electrical conductivity of the drain of each day; NaN where it is missing. Unit: dS/m. Range: any. */
  readonly drainEC: ArrayLike<number>
  /** What the medium can hold. Unit: m³/m³. Range: (0, 1]. */
  readonly containerCapacity: WaterContent
}

/** Trends of the level after drain and of the drain. */
export interface SaltDrift {
  /** Change of the level after drain; NaN with fewer than three days. Unit: m³/m³/d. */
  readonly levelPerDay: number
  /** Its standard error. Unit: m³/m³/d. */
  readonly levelError: number
  /** Change of the drain; NaN with fewer than three days. Unit: dS/m/d. */
  readonly drainPerDay: number
  /** Its standard error. Unit: dS/m/d. */
  readonly drainError: number
  readonly findings: readonly RecordFinding[]
}

/**
 * The signature of salt in a dielectric reading: the level to which shots drain back climbs from day to day together with the
 * conductivity of the drain, and may pass what the medium can hold.
 *
 * @procedure Fits a line to both over the days; both must rise by more than two standard errors, over at least five days. A level above the
 * container capacity is told by itself.
 * @returns Trends, with findings; no finding is no proof, roots that grow and medium that sinks change the level as well.
 * @validity A flush with water of known conductivity, read before and after, tells salt from water.
 * @source common practice, no source
 * @example
 * const day = [0, 1, 2, 3, 4, 5]
 * const drift = saltDrift({
 *   day, plateau: day.map((d) => 0.6 + 0.004 * d), drainEC: day.map((d) => 3.2 + 0.3 * d), containerCapacity: waterContent(0.65),
 * })
 * drift.findings.map((finding) => finding.code) // => ['reading-rises-with-salt']
 */
export function saltDrift(input: SaltDriftInput): SaltDrift {
  requireObject(input, 'input')
  const day = seriesOf(input.day, 'day')
  const plateau = seriesOf(input.plateau, 'plateau')
  const drainEC = seriesOf(input.drainEC, 'drainEC')
  const capacity = numberIn(input.containerCapacity, CAPACITY, 'containerCapacity')
  for (const [argument, { length }] of Object.entries({ plateau, drainEC }))
    if (length !== day.length)
      throw new InputError(
        argument,
        `has ${length} entries for ${day.length} days`,
        'give one for each day, NaN where it is missing',
      )
  const level = trendOf(day, plateau)
  const drain = trendOf(day, drainEC)
  const findings: RecordFinding[] = []
  const rises = (trend: typeof level) => trend.count >= 5 && trend.slope > 2 * trend.error
  if (rises(level) && rises(drain))
    findings.push({
      code: 'reading-rises-with-salt',
      level: 'caution',
      levelPerDay: level.slope,
      drainPerDay: drain.slope,
    })
  let max = -Infinity
  for (let i = 0; i < plateau.length; i++) if (!Number.isNaN(plateau[i])) max = Math.max(max, plateau[i]!)
  if (max > capacity) findings.push({ code: 'above-capacity', level: 'caution', max, containerCapacity: capacity })
  return {
    levelPerDay: level.slope,
    levelError: level.error,
    drainPerDay: drain.slope,
    drainError: drain.error,
    findings,
  }
}
