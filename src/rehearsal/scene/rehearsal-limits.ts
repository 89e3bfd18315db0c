import { HOUR_OF_DAY, READING_AGE, WATER } from '../../control/domains.js'
import { MAX_RUN_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { LEVEL } from '../domains.js'

/** What a rehearsal is judged by: limits that must hold whatever happens, and levels at which plants suffer. */
export interface RehearsalLimits {
  /** Most water in any 24 h. Unit: L. Range: (0, ∞). */
  readonly maxPerDay: Volume
  /** Longest opening. Unit: s. Range: (0, 7200]. */
  readonly maxRunTime: Duration
  /** Hour from which the valve may open; left out, at any hour. Unit: h. Range: [0, 24]. */
  readonly opensFrom?: number
  /** Hour until which it may open; before the other one where the night is allowed and the day is not. Unit: h. Range: [0, 24]. */
  readonly opensUntil?: number
  /** Plants suffer below this mean water content. Unit: m³/m³. Range: (0, 1). */
  readonly stressBelow: WaterContent
  /** The medium is short of air above this mean water content. Unit: m³/m³. Range: (0, 1). */
  readonly fullAbove: WaterContent
  /** Readings below this are not to be believed; 0.05 by default. Unit: m³/m³. Range: (0, 1). */
  readonly believedFrom?: WaterContent
  /** Readings above this are not to be believed; 0.98 by default. Unit: m³/m³. Range: (0, 1). */
  readonly believedTo?: WaterContent
  /** Older readings are not to be acted on; an hour by default. Unit: s. Range: (0, 86400]. */
  readonly maxAge?: Duration
}

/** The limits as plain numbers, with their defaults. */
export type CheckedLimits = Required<{ readonly [K in keyof RehearsalLimits]: number }>

export function checkedLimits(limits: RehearsalLimits): CheckedLimits {
  const { opensFrom = 0, opensUntil = 24, maxAge = 3600 as Duration } = limits
  const stressBelow = numberIn(limits.stressBelow, LEVEL, 'stressBelow')
  const fullAbove = numberIn(limits.fullAbove, LEVEL, 'fullAbove')
  if (!(stressBelow < fullAbove))
    throw new InputError('fullAbove', `${fullAbove} is not above the stress level ${stressBelow}`, 'check both levels')
  return {
    maxPerDay: numberIn(limits.maxPerDay, WATER, 'maxPerDay'),
    maxRunTime: numberIn(limits.maxRunTime, MAX_RUN_TIME, 'maxRunTime'),
    opensFrom: numberIn(opensFrom, HOUR_OF_DAY, 'opensFrom'),
    opensUntil: numberIn(opensUntil, HOUR_OF_DAY, 'opensUntil'),
    stressBelow,
    fullAbove,
    believedFrom: numberIn(limits.believedFrom ?? 0.05, LEVEL, 'believedFrom'),
    believedTo: numberIn(limits.believedTo ?? 0.98, LEVEL, 'believedTo'),
    maxAge: numberIn(maxAge, READING_AGE, 'maxAge'),
  }
}

/** Whether the valve may open at an hour of the day. */
export function isAllowedHour({ opensFrom, opensUntil }: CheckedLimits, hour: number): boolean {
  if (opensFrom <= opensUntil) return hour >= opensFrom && hour < opensUntil
  return hour >= opensFrom || hour < opensUntil
}
