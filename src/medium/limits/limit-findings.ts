import type { MediumFinding } from '../medium-finding.js'
import type { IrrigationLimits, LimitsRequest } from './water-limits.js'

/** Suction at which the water buffering capacity ends, in cm (De Boodt and Verdonck 1972). */
const END_OF_BUFFER = 100

/** What a grower should know about limits that were found. */
export function limitFindings(
  { container, minAir, depletion, lowerLimit }: LimitsRequest,
  { fullPoint: full, refillPoint: refill, bottomSuctionAtRefill }: Omit<IrrigationLimits, 'findings'>,
  airAtCapacity: number,
): MediumFinding[] {
  const found: MediumFinding[] = []
  const [value, limit] = [refill.waterContent, full.waterContent]
  if (value >= limit) found.push({ code: 'no-room', level: 'danger', about: 'refill', value, limit, unit: 'm³/m³' })
  if (minAir !== undefined && airAtCapacity < minAir)
    found.push({
      code: 'air-below-min',
      level: 'caution',
      about: 'minAir',
      value: airAtCapacity,
      limit: minAir,
      unit: '1',
    })
  const topSuction = bottomSuctionAtRefill + container.height
  const end = { limit: END_OF_BUFFER, unit: 'cm' }
  if (topSuction > END_OF_BUFFER)
    found.push({ code: 'beyond-buffer', level: 'caution', about: 'refill', value: topSuction, ...end })
  if (depletion !== undefined) {
    found.push({ code: 'field-soil-guide', level: 'note', about: 'depletion', value: depletion, unit: '1' })
    if (lowerLimit === undefined)
      found.push({ code: 'lower-limit-assumed', level: 'note', about: 'lowerLimit', value: END_OF_BUFFER, unit: 'cm' })
  }
  found.push({ code: 'drying-curve', level: 'note', about: 'medium' })
  return found
}
