import type { Domain } from '../../quantity/domain.js'
import type { Volume, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import type { Reducer } from '../../quantity/reducer.js'
import { DAY_RADIATION, DAY_USE } from '../domains.js'
import { type DailyUseState, newDailyUseState, restoredDailyUse, type UseForecastRecord } from './daily-use-state.js'
import { realMisses, sizesOf, withScore } from './score-ring.js'
import { followed, MEMBERS, memberForecasts, radiationFactor, weighedForecast, withMisses } from './use-members.js'

/** A day that has ended. */
export interface DayOfUse<Q extends Volume | WaterDepth = Volume> {
  /** Water used: given less drained less stored; NaN or null where it is not known. A day of no use or less is passed over. Unit: L or mm, always the same. Range: [-1000000, 1000000000]. */
  readonly use: Q | null
  /** Radiation of the day as it was measured; in any unit, outside or inside, but always the same; NaN or null where it is missing. Unit: that of the series. Range: [0, 1000000000]. */
  readonly radiation?: number | null
  /** Radiation that was expected for it when the forecast was made; NaN or null where it is missing. Unit: that of the series. Range: [0, 1000000000]. */
  readonly expectedRadiation?: number | null
}

/** How the forecast of a day met it; the miss is absent where no forecast could be made or no use came. */
export interface DayScored {
  /** Use less forecast, over the forecast, with the expected radiation where there was one. Unit: 1. */
  readonly miss?: number
}

/** Learns the daily use of a crop and foresees it. */
export interface DailyUseForecaster<Q extends Volume | WaterDepth = Volume>
  extends Reducer<DailyUseState, DayOfUse<Q>, DayScored> {
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => DailyUseState
}

/** How fast the usual radiation follows the season. */
const SEASON = 0.03

/**
 * Learns the water use of a crop day by day, so that `waterUseOfNextDay` foresees it with intervals that were measured to hold. Eight
 * simple forecasters, slow and quick, of no to a strong response to radiation, are mixed by how well each has done of late. The state is
 * plain data, does not grow, and can be kept as JSON.
 *
 * L is the level of a member, which follows the misses of its days by its gain, 0.2 or 0.6; the power k is 0, 0.2, 0.4 or 0.6; E is a
 * slow mean of its squared misses, each of the forecast as it was made, with the radiation that was expected then.
 *
 * @equation `\hat y = \sum_i w_i L_i \left(\frac{R}{\bar R}\right)^{k_i}, \qquad w_i \propto e^{-4 (E_i - \min E)/m}`
 * @returns A reducer that takes days in their order, one for each day, and gives the miss of its forecast. Its `restore` checks a state
 *   that was kept as JSON.
 * @throws `DomainError` when a day is outside its ranges.
 * @validity Tried on the crops of ten open records. The day after pruning, a move or a refilled slab is missed.
 * @source The mixing: vovk-1990; the bands: gibbs-2021; gains and powers: common practice, no source
 * @example
 * const inputs = Array.from({ length: 30 }, (_, d) => ({
 *   use: litres(2 * ((1000 + 100 * (d % 7)) / 1300) ** 0.4), radiation: 1000 + 100 * (d % 7), expectedRadiation: 1000 + 100 * (d % 7),
 * }))
 * const { state } = runReducer({ reducer: forecastDailyUse(), inputs })
 * waterUseOfNextDay({ state, expectedRadiation: 1200 }) // => { known: true, use: 1.94 }
 */
export function forecastDailyUse<Q extends Volume | WaterDepth = Volume>(): DailyUseForecaster<Q> {
  return { start: newDailyUseState(), restore: restoredDailyUse, step }
}

function step(state: DailyUseState, day: DayOfUse<Volume | WaterDepth>): readonly [DailyUseState, DayScored] {
  const use = optional(day.use, DAY_USE, 'use')
  const radiation = optional(day.radiation, DAY_RADIATION, 'radiation')
  const expected = optional(day.expectedRadiation, DAY_RADIATION, 'expectedRadiation')
  const litDays = state.litDays + (radiation === null ? 0 : 1)
  const usual = state.usualRadiation
  const usualRadiation =
    radiation === null
      ? usual
      : usual === null
        ? radiation
        : usual + Math.max(SEASON, 1 / litDays) * (radiation - usual)
  const lit = { litDays, usualRadiation }
  if (use === null || use <= 0) return [{ ...state, ...lit }, {}]
  if (state.days === 0) {
    const levels = new Array<number>(MEMBERS).fill(use)
    return [{ ...state, ...lit, days: 1, levels, spreads: new Array<number>(MEMBERS).fill(0.15) }, {}]
  }
  const days = state.days + 1
  const [without, plain] = scored(state, state.without, null, use)
  const [withRadiation, miss] =
    expected === null ? [state.withRadiation, plain] : scored(state, state.withRadiation, expected, use)
  const members = state.levels.map((level, k) =>
    followed(level, state.spreads[k]!, k, radiationFactor(k, radiation, usual), use, days),
  )
  const levels = members.map((member) => member.level)
  const spreads = members.map((member) => member.spread)
  return [{ ...lit, days, levels, spreads, withRadiation, without }, { miss }]
}

/** A number in its domain, or null where it is missing. */
function optional(value: number | null | undefined, domain: Domain, argument: string): number | null {
  return value === undefined || value === null || Number.isNaN(value) ? null : numberIn(value, domain, argument)
}

/** The record of one kind of forecast after a day, and the relative miss. */
function scored(
  state: DailyUseState,
  record: UseForecastRecord,
  radiation: number | null,
  use: number,
): readonly [UseForecastRecord, number] {
  const forecasts = memberForecasts(state.levels, radiation, state.usualRadiation)
  const forecast = weighedForecast(forecasts, record)
  const miss = use / forecast - 1
  const first = state.days === 1
  const ring = withScore(record.ring, Math.abs(miss), 'size')
  return [{ ...withMisses(record, forecasts, use, forecast, first), ring }, miss]
}

/** Days after which the use of the next one is told. */
const FEWEST = 7

/** What was learnt, and what is expected of the day. */
export interface WaterUseOfNextDayInput {
  /** What was learnt, by the reducer of `forecastDailyUse`. */
  readonly state: DailyUseState
  /** Radiation that is expected, of the same place and unit as that which was learnt from; NaN or null where it is missing. Unit: that of the series. Range: [0, 1000000000]. */
  readonly expectedRadiation?: number | null
}

/** Use of the next day, or why it is not known. */
export type WaterUseOfNextDay<Q extends Volume | WaterDepth = Volume> =
  | {
      readonly known: true
      /** Expected use. Unit: that of the days. */
      readonly use: Q
      /** Holds half of the outcomes, the smaller use first. Unit: that of the days. */
      readonly band50: readonly [Q, Q]
      /** Holds nine of ten outcomes, the smaller use first. Unit: that of the days. */
      readonly band90: readonly [Q, Q]
    }
  | {
      readonly known: false
      /** `few-days`: fewer than seven days with a use were seen. */
      readonly reason: 'few-days'
    }

/**
 * Water use of the next day, with the bands that hold half and nine tenths of the outcomes; with the expected radiation it is
 * closer.
 *
 * @procedure Mixes the members by how well each has done of late, with the expected radiation or without. The bands come from the sizes
 * of the last 40 relative misses of the same kind.
 * @param input - State, made by the reducer of `forecastDailyUse`, and expected radiation.
 * @returns Use and bands, or why they are not known.
 * @throws `DomainError` outside the range.
 * @validity The lower end of a band may lie below zero after wild days; a plan has limits of its own.
 * @source common practice, no source; the bands: gibbs-2021
 * @example
 * const inputs = [2, 2.1, 1.9, 2, 2, 2.1, 1.9, 2].map((use) => ({ use: litres(use) }))
 * const { state } = runReducer({ reducer: forecastDailyUse(), inputs })
 * waterUseOfNextDay({ state }) // => { known: true, use: 1.99 }
 */
export function waterUseOfNextDay<Q extends Volume | WaterDepth = Volume>(
  input: WaterUseOfNextDayInput,
): WaterUseOfNextDay<Q> {
  requireObject(input, 'input')
  const { state } = input
  requireObject(state, 'state')
  const radiation = optional(input.expectedRadiation, DAY_RADIATION, 'expectedRadiation')
  if (state.days < FEWEST) return { known: false, reason: 'few-days' }
  // Misses with radiation are another matter: until enough are known, it is left out.
  const lit = radiation !== null && realMisses(state.withRadiation.ring) >= FEWEST - 1
  const record = lit ? state.withRadiation : state.without
  const use = weighedForecast(memberForecasts(state.levels, lit ? radiation : null, state.usualRadiation), record)
  const { half, ninety } = sizesOf(record.ring)
  const band = (size: number) => [use * (1 - size), use * (1 + size)] as unknown as readonly [Q, Q]
  return { known: true, use: use as Q, band50: band(half), band90: band(ninety) }
}
