import type { Duration, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { requireObject, requireRows } from '../../quantity/guard.js'
import type { DryDownLine } from './dry-down.js'
import { type FindDryDownsInput, type FoundDryDown, findDryDowns } from './find-dry-downs.js'
import type { LightPeriod } from './light-periods.js'

/** A series with the times of light between which its nights lie. */
export interface OvernightInput extends Omit<FindDryDownsInput, 'light' | 'minDuration'> {
  /** Times with light, in order. A night lies between two of them. */
  readonly light: readonly LightPeriod[]
}

/** What a night took, or why that is not known. */
export type OvernightDryDown = {
  /** When the dark began. Unit: s. */
  readonly dark: number
} & (
  | {
      readonly known: true
      /** Water content on the line when the dry-down began: at dark, or after the last shot had drained. Unit: m³/m³. */
      readonly evening: WaterContent
      /** Water content on the line at its last reading before light. Unit: m³/m³. */
      readonly morning: WaterContent
      /** By how much it fell; negative where it rose. Unit: m³/m³. */
      readonly fall: WaterContentChange
      /** Time from the first to the last reading. Unit: s. */
      readonly duration: Duration
      readonly line: DryDownLine
    }
  | {
      readonly known: false
      readonly reason: 'few-readings' | 'shot-in-night' | 'short'
    }
)

/**
 * Overnight dry-down: by how much the water content falls in each night.
 *
 * @procedure Takes the dry-down of `findDryDowns` in each dark time. A night with a break or a shot in it, or of which readings cover less
 * than three quarters, is not known.
 * @param input - Series, shots, times with light and limits.
 * @returns One result for each night between two times with light.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths or periods of light out of order.
 * @validity A fall that grows from night to night may be more leaves, warmer pipes, or a probe that drifts.
 * @source common practice, no source
 * @example
 * const time = Array.from({ length: 25 }, (_, i) => i * 3600)
 * const content = time.map((_, i) => 0.6 - 0.003 * i)
 * const light = [{ start: -28800, end: 18000 }, { start: 61200, end: 100000 }]
 * const nights = overnightDryDowns({ time, waterContent: content, shots: [], drainTime: minutes(30), maxStep: hours(2), light })
 * nights // => [{ known: true, dark: 18000, evening: 0.585, fall: 0.033, duration: 39600 }]
 */
export function overnightDryDowns(input: OvernightInput): OvernightDryDown[] {
  requireObject(input, 'input')
  const { light, shots } = input
  requireRows(light, 'light')
  const nights = findDryDowns({ ...input, minDuration: 1 as Duration }).filter(({ regime }) => regime === 'night')
  const results: OvernightDryDown[] = []
  let k = 0
  let s = 0
  for (let n = 0; n + 1 < light.length; n++) {
    const dark = light[n]!.end
    const dawn = light[n + 1]!.start
    if (!(dawn > dark)) continue
    while (k < nights.length && nights[k]!.end < dark) k++
    let best: FoundDryDown | undefined
    for (let j = k; j < nights.length && nights[j]!.start < dawn; j++) {
      const one = nights[j]!
      if (best === undefined || one.end - one.start > best.end - best.start) best = one
    }
    while (s < shots.length && shots[s]!.peak < dark) s++
    const shotInside = s < shots.length && shots[s]!.start > dark && shots[s]!.start < dawn
    results.push(nightOf(dark, dawn, best, shotInside))
  }
  return results
}

function nightOf(dark: number, dawn: number, best: FoundDryDown | undefined, shotInside: boolean): OvernightDryDown {
  if (best === undefined) return { known: false, dark, reason: 'few-readings' }
  if (shotInside) return { known: false, dark, reason: 'shot-in-night' }
  const lasted = (best.end - best.start) as Duration
  if (lasted < 0.75 * (dawn - dark)) return { known: false, dark, reason: 'short' }
  const { line } = best
  const fall = (-line.slopePerHour * lasted) / 3600
  return {
    known: true,
    dark,
    evening: (line.last + fall) as WaterContent,
    morning: line.last,
    fall: fall as WaterContentChange,
    duration: lasted,
    line,
  }
}
