import type { Duration, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { LEVEL_AHEAD } from '../domains.js'
import { expectedFalls, FARTHEST, timeToFall } from './clock-rates.js'
import { fixedUnit, ringOf } from './learn-dry-down.js'
import type { LearntLevel } from './level-state.js'
import { type UnknownForecast, whereNow } from './present-level.js'
import { bandsOf } from './score-ring.js'

/** A state and a level below the present one. */
export interface ForecastTimeToLevelInput extends LearntLevel {
  /** Water content that is waited for, such as the refill point. Unit: m³/m³. Range: [-1, 2]. */
  readonly level: WaterContent
}

/** The times between which it should happen. */
export interface TimeBand {
  /** It hardly comes sooner. Unit: s. Range: any. */
  readonly earliest: Duration
  /** It hardly comes later; absent where that is beyond two days. Unit: s. Range: any. */
  readonly latest?: Duration
}

/** When a level is reached if nobody waters, or why that is not known. Times count from the last reading. */
export type ForecastTimeToLevel =
  | {
      readonly known: true
      /** The level now, from the last half hour. Unit: m³/m³. */
      readonly from: WaterContent
      /** Expected time, zero where the level is reached already. Unit: s. */
      readonly time: Duration
      /** Holds half of the outcomes. */
      readonly band50: TimeBand
      /** Holds nine of ten outcomes. */
      readonly band90: TimeBand
    }
  | UnknownForecast
  | {
      readonly known: false
      readonly reason: 'beyond-two-days'
      /** The early end of the band that holds nine of ten, where it lies within two days. Unit: s. */
      readonly earliest?: Duration
    }

/**
 * Time until the water content reaches a lower level if nobody waters, with the bands that hold half and nine tenths of the outcomes.
 * An alarm belongs at the early end of the wide band.
 *
 * @procedure Adds up the usual fall of the half hours ahead, times the factor of this dry-down, until the difference is reached. The ends
 * of the bands come from the misses of the last 40 forecasts that looked about as far ahead.
 * @param input - State, made by the reducer of `forecastLevel`, and level.
 * @returns Time and bands from the last reading, or why they are not known.
 * @validity As long as light, climate and crop go on as they did; the factor follows a night that differs, a day that begins is not foreseen.
 * @source common practice, no source; the bands: gibbs-2021
 * @example
 * const forecaster = forecastLevel({ minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(30) })
 * const night = (k: number) => 0.6 - 0.002 * (k % 96) + (k % 96 === 95 ? 0.1 : 0)
 * const inputs = Array.from({ length: 600 }, (_, k) => ({ time: 900 * k, waterContent: night(k) }))
 * const { state } = runReducer({ reducer: forecaster, inputs })
 * // It stands at 0.554 and falls by 0.008 in an hour.
 * forecastTimeToLevel({ state, level: waterContent(0.53) }) // => { known: true, time: 10800 }
 */
export function forecastTimeToLevel(input: ForecastTimeToLevelInput): ForecastTimeToLevel {
  requireObject(input, 'input')
  const { state, level } = input
  const wanted = numberIn(level, LEVEL_AHEAD, 'level')
  const now = whereNow(state)
  if (!now.known) return now
  const { time, factor } = now
  const from = now.level as WaterContent
  const fall = now.level - wanted
  if (fall <= 0) {
    const zero = { earliest: 0 as Duration, latest: 0 as Duration }
    return { known: true, from, time: 0 as Duration, band50: zero, band90: zero }
  }
  const expected = expectedFalls(state.falls).map((one) => one * factor)
  const mean = timeToFall(expected, time, fall)
  const { half, ninety } = bandsOf(state.rings[ringOf(mean ?? FARTHEST)]!)
  // A real fall of X(1 + u) + cu, where X is forecast and u the miss, is the fall that is waited for.
  const when = (miss: number) =>
    miss <= -0.98 ? undefined : timeToFall(expected, time, (fall - fixedUnit(state) * miss) / (1 + miss))
  const band = ([low, high]: readonly [number, number]): TimeBand | undefined => {
    const earliest = when(high)
    const latest = when(low)
    if (earliest === undefined) return undefined
    return { earliest: earliest as Duration, ...(latest === undefined ? {} : { latest: latest as Duration }) }
  }
  const band90 = band(ninety)
  const band50 = band(half)
  if (mean === undefined || band50 === undefined || band90 === undefined)
    return { known: false, reason: 'beyond-two-days', ...(band90 && { earliest: band90.earliest }) }
  return { known: true, from, time: mean as Duration, band50, band90 }
}
