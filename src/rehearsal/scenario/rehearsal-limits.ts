import { READING_AGE, WATER } from '../../control/domains.js'
import { checkedHours, type Hours, shareOfHours } from '../../control/watering/settings/hours.js'
import type { AllowedHours } from '../../control/watering/settings/settings.js'
import { BELIEVABLE, MAX_RUN_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr } from '../../quantity/guard.js'
import { notAbove } from '../../quantity/not-above.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import { LEVEL } from '../domains.js'

/** What a rehearsal is judged by: limits that must hold whatever happens, and levels at which plants suffer. */
export interface RehearsalLimits {
  /** Most water in any 24 h. Unit: L. Range: (0, ∞). */
  readonly maxPerDay: Volume
  /** Longest opening. Unit: s. Range: (0, 7200]. */
  readonly maxRunTime: Duration
  /** Hours of the local day in which the valve may open; at any hour by default. */
  readonly allowedHours?: readonly AllowedHours[]
  /** Plants suffer below this mean water content. Unit: m³/m³. Range: (0, 1). */
  readonly stressBelow: WaterContent
  /** The medium is short of air above this mean water content. Unit: m³/m³. Range: (0, 1). */
  readonly fullAbove: WaterContent
  /** Readings below this are not to be believed; 0.05 by default. Unit: m³/m³. Range: [0, 1]. */
  readonly minBelievable?: WaterContent
  /** Readings above this are not to be believed; 0.98 by default. Unit: m³/m³. Range: [0, 1]. */
  readonly maxBelievable?: WaterContent
  /** Older readings are not to be acted on; an hour by default. Unit: s. Range: (0, 86400]. */
  readonly maxReadingAge?: Duration
}

const NAMES: NamesOf<RehearsalLimits> = {
  maxPerDay: 1,
  maxRunTime: 1,
  allowedHours: 1,
  stressBelow: 1,
  fullAbove: 1,
  minBelievable: 1,
  maxBelievable: 1,
  maxReadingAge: 1,
}

/** What is believed where a rehearsal does not say: what no common medium holds is not. Unit: m³/m³. */
export const MIN_BELIEVABLE = 0.05 as WaterContent
export const MAX_BELIEVABLE = 0.98 as WaterContent
/** Any hour. */
export const WHOLE_DAY = [{ from: 0 as Duration, to: 86400 as Duration }] as const

/** The limits as plain numbers, with their defaults. */
export type CheckedLimits = { readonly [K in Exclude<keyof RehearsalLimits, 'allowedHours'>]-?: number } & {
  readonly allowedHours: readonly Hours[]
}

export function checkedLimits(limits: RehearsalLimits): CheckedLimits {
  onlyNames(limits, NAMES, 'limits')
  const { allowedHours = WHOLE_DAY, maxReadingAge = 3600 as Duration } = limits
  const stressBelow = numberIn(limits.stressBelow, LEVEL, 'stressBelow')
  const fullAbove = numberIn(limits.fullAbove, LEVEL, 'fullAbove')
  const minBelievable = numberIn(optionOr(limits.minBelievable, MIN_BELIEVABLE), BELIEVABLE, 'minBelievable')
  const maxBelievable = numberIn(optionOr(limits.maxBelievable, MAX_BELIEVABLE), BELIEVABLE, 'maxBelievable')
  notAbove('minBelievable', minBelievable, 'maxBelievable', maxBelievable)
  if (!(stressBelow < fullAbove))
    throw new InputError('fullAbove', `${fullAbove} is not above the stress level ${stressBelow}`, 'check both levels')
  return {
    maxPerDay: numberIn(limits.maxPerDay, WATER, 'maxPerDay'),
    maxRunTime: numberIn(limits.maxRunTime, MAX_RUN_TIME, 'maxRunTime'),
    allowedHours: checkedHours(allowedHours),
    stressBelow,
    fullAbove,
    minBelievable,
    maxBelievable,
    maxReadingAge: numberIn(maxReadingAge, READING_AGE, 'maxReadingAge'),
  }
}

/** Whether the valve may open at an hour of the day. */
export function isAllowedHour(hours: readonly Hours[], hour: number): boolean {
  return shareOfHours(hours, hour * 3600) !== null
}
