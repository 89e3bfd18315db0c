import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import type { Duration } from '../quantity/generated/duration.js'
import type { WaterContent } from '../quantity/generated/water-content.js'
import { numberIn } from '../quantity/guard.js'
import { REFILL } from './domains.js'

const CONTENT: Domain = {
  quantity: 'water content now',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the newest reading that may be trusted',
}
const SLOPE: Domain = {
  quantity: 'slope of the regime',
  unit: 'm³/m³/h',
  min: -1,
  max: 1,
  ends: '[]',
  hint: 'give the change of water content in an hour, negative while it dries',
}
const ERROR: Domain = {
  quantity: 'error of the slope',
  unit: 'm³/m³/h',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the standard error of the slope, zero or more',
}
const LENGTH: Domain = {
  quantity: 'length of the regime',
  unit: 's',
  min: 0,
  max: 604800,
  ends: '(]',
  hint: 'give how long it lasts from now or from the end of the one before, at most a week',
}

/** A time ahead with the speed of drying that was learned for it. */
export interface RegimeAhead {
  /** How long it lasts. Unit: s. Range: (0, 604800]. */
  readonly lasts: Duration
  /** Change of water content in an hour. Unit: m³/m³/h. Range: [-1, 1]. */
  readonly slopePerHour: number
  /** Standard error of it, from night to night or from day to day. Unit: m³/m³/h. Range: [0, 1]. */
  readonly slopeError: number
}

/** Where a dry-down stands and what lies ahead. */
export interface ForecastRefillInput {
  /** Water content now. Unit: m³/m³. Range: [0, 1]. */
  readonly content: WaterContent
  /** Water content at which to water again. Unit: m³/m³. Range: [0, 1]. */
  readonly refillPoint: WaterContent
  /** The regimes ahead, in order: the rest of the day, the night, the next day. */
  readonly ahead: readonly RegimeAhead[]
}

/** When the refill point comes, or how far the water content falls in the time that was asked about. */
export type RefillForecast =
  | {
      readonly reached: true
      /** Time from now. Unit: s. */
      readonly time: Duration
      /** Time if it dries faster by two standard errors. Unit: s. */
      readonly earliest: Duration
      /** Time if it dries more slowly by two standard errors; absent when it is then not reached. Unit: s. */
      readonly latest?: Duration
    }
  | {
      readonly reached: false
      /** Water content at the end of the last regime. Unit: m³/m³. */
      readonly atEnd: WaterContent
      /** Time if it dries faster by two standard errors; absent when it is not reached even then. Unit: s. */
      readonly earliest?: Duration
    }

/**
 * Time until the refill point over days and nights that dry at different speeds.
 *
 * ```math
 * \theta(t) = \theta_0 + \sum_k b_k \, \Delta t_k
 * ```
 *
 * @param input - Water content, refill point and regimes ahead.
 * @returns The time with its span, or that it is not reached in the time that the regimes cover.
 * @throws `DomainError` outside the ranges, `InputError` when nothing is said of what lies ahead.
 * @validity As long as the days ahead are like those from which the slopes were learned. An alarm belongs at the earliest time.
 * @source definition; two standard errors: common practice, no source
 * @example
 * ```ts
 * const ahead = [
 *   { lasts: hours(3), slopePerHour: -0.008, slopeError: 0.001 }, { lasts: hours(10), slopePerHour: -0.002, slopeError: 0.0005 },
 * ]
 * // It falls by 0.024 in the rest of the day and by the other 0.006 in three hours of the night.
 * const forecast = forecastRefill({ content: waterContent(0.6), refillPoint: waterContent(0.57), ahead })
 * forecast // => { reached: true, time: 21600, earliest: 10800 }
 * ```
 */
export function forecastRefill({ content, refillPoint, ahead }: ForecastRefillInput): RefillForecast {
  const from = numberIn(content, CONTENT, 'content')
  const refill = numberIn(refillPoint, REFILL, 'refillPoint')
  if (ahead.length === 0) throw new InputError('ahead', 'has no regime', 'say how fast it dries and for how long')
  for (const regime of ahead) {
    numberIn(regime.lasts, LENGTH, 'lasts')
    numberIn(regime.slopePerHour, SLOPE, 'slopePerHour')
    numberIn(regime.slopeError, ERROR, 'slopeError')
  }
  const expected = reach(from, refill, ahead, 0)
  const earliest = reach(from, refill, ahead, -2).time
  if (expected.time === undefined)
    return {
      reached: false,
      atEnd: expected.content as WaterContent,
      ...(earliest === undefined ? {} : { earliest }),
    }
  const latest = reach(from, refill, ahead, 2).time
  return {
    reached: true,
    time: expected.time,
    earliest: earliest ?? expected.time,
    ...(latest === undefined ? {} : { latest }),
  }
}

/** Goes through the regimes with slopes that are so many errors off. */
function reach(from: number, refill: number, ahead: readonly RegimeAhead[], errors: number) {
  if (from <= refill) return { content: from, time: 0 as Duration }
  let content = from
  let passed = 0
  for (const { lasts, slopePerHour, slopeError } of ahead) {
    const slope = (slopePerHour + errors * slopeError) / 3600
    const next = content + slope * lasts
    if (next <= refill) return { content: refill, time: (passed + (refill - content) / slope) as Duration }
    content = next
    passed += lasts
  }
  return { content, time: undefined }
}
