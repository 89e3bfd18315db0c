import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/require-object.js'
import type { WaterClasses } from './water-classes.js'

const IDEAL = [
  { about: 'totalPoreSpace', words: 'total pore space', min: 0.85, max: 1 },
  { about: 'airCapacity', words: 'air capacity', min: 0.2, max: 0.3 },
  { about: 'easilyAvailableWater', words: 'easily available water', min: 0.2, max: 0.3 },
  { about: 'waterBufferingCapacity', words: 'water buffering capacity', min: 0.04, max: 0.1 },
] as const

const SOURCE = 'de-boodt-1972 [not confirmed, source not seen]'

/**
 * Which air and water classes of a medium lie outside the ranges of an ideal substrate: total pore space from 85 %, air capacity 20
 * to 30 %, easily available water 20 to 30 %, water buffering capacity 4 to 10 % of the volume.
 *
 * A medium outside them can be grown on; it asks for other shots. Stone wool, for one, gives nearly all its water easily.
 *
 * @param classes - Air and water classes of a medium.
 * @procedure Compares each class with its range, ends included.
 * @returns One note for each class outside; none when all are inside.
 * @source de-boodt-1972 [not confirmed, source not seen]
 * @example
 * ```ts
 * const classes = waterClassesDeBoodt1972({
 *   totalPoreSpace: percent(95),
 *   at10: percentWaterContent(70),
 *   at50: percentWaterContent(42),
 *   at100: percentWaterContent(40),
 * })
 * outsideIdealSubstrate(classes).map((finding) => finding.about) // => ['waterBufferingCapacity']
 * ```
 */
export function outsideIdealSubstrate(classes: WaterClasses): Finding[] {
  requireObject(classes, 'classes')
  const findings: Finding[] = []
  for (const { about, words, min, max } of IDEAL) {
    const value = classes[about]
    // A range that a rounded percentage meets is met.
    if (value >= min - 1e-12 && value <= max + 1e-12) continue
    findings.push({
      code: 'outside-ideal-substrate',
      level: 'note',
      message: `${words} is ${(100 * value).toFixed(1)} % of the volume; an ideal substrate has ${100 * min} to ${100 * max} %`,
      about,
      value,
      unit: '1',
      source: SOURCE,
    })
  }
  return findings
}
