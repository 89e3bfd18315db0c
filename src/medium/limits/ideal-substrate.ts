import { numberIn, requireObject } from '../../quantity/guard.js'
import { WATER_CLASS } from '../domains.js'
import type { MediumFinding } from '../medium-finding.js'
import type { WaterClasses } from './water-classes.js'

const IDEAL = [
  { about: 'totalPoreSpace', min: 0.85, max: 1 },
  { about: 'airCapacity', min: 0.2, max: 0.3 },
  { about: 'easilyAvailableWater', min: 0.2, max: 0.3 },
  { about: 'waterBufferingCapacity', min: 0.04, max: 0.1 },
] as const

/**
 * Which air and water classes of a medium lie outside the ranges of an ideal substrate: total pore space from 85 %, air capacity 20
 * to 30 %, easily available water 20 to 30 %, water buffering capacity 4 to 10 % of the volume.
 *
 * A medium outside them can be grown on; it asks for other shots. Stone wool, for one, gives nearly all its water easily.
 *
 * @procedure Compares each class with its range, ends included.
 * @returns One note for each class outside; none when all are inside.
 * @source de-boodt-1972 [not confirmed, source not seen]
 * @example
 * const classes = waterClassesDeBoodt1972({
 *   totalPoreSpace: percent(95),
 *   at10: percentWaterContent(70),
 *   at50: percentWaterContent(42),
 *   at100: percentWaterContent(40),
 * })
 * outsideIdealSubstrate(classes).map((finding) => finding.about) // => ['waterBufferingCapacity']
 */
export function outsideIdealSubstrate(classes: WaterClasses): MediumFinding[] {
  requireObject(classes, 'classes')
  for (const { about } of IDEAL) numberIn(classes[about], WATER_CLASS, about)
  // A range that a rounded percentage meets is met.
  const outside = IDEAL.filter(
    ({ about, min, max }) => !(classes[about] >= min - 1e-12 && classes[about] <= max + 1e-12),
  )
  return outside.map(({ about, min, max }) => {
    return { code: 'outside-ideal-substrate', level: 'note', about, value: classes[about], min, max, unit: '1' }
  })
}
