import type { Duration, Volume, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { PROBED_VOLUME, TIME_AHEAD } from '../domains.js'
import type { ProbedVolume } from '../terms.js'
import { expectedFalls, fallBetween } from './clock-rates.js'
import { ringOf, unitOfMiss } from './learn-dry-down.js'
import type { LearntLevel } from './level-state.js'
import { type UnknownForecast, whereNow } from './present-level.js'
import { bandsOf } from './score-ring.js'

/** A state and the time that is asked about. */
export interface FallAheadInput extends LearntLevel {
  /** Time ahead; an hour by default. Unit: s. Range: (0, 86400]. */
  readonly ahead?: Duration
}

/** By how much the water content falls if nobody waters, or why that is not known. */
export type FallAhead =
  | {
      readonly known: true
      /** Expected fall. Unit: m³/m³. */
      readonly fall: WaterContentChange
      /** Holds half of the outcomes, the smaller fall first. Unit: m³/m³. */
      readonly band50: readonly [WaterContentChange, WaterContentChange]
      /** Holds nine of ten outcomes, the smaller fall first. Unit: m³/m³. */
      readonly band90: readonly [WaterContentChange, WaterContentChange]
    }
  | UnknownForecast

/**
 * Fall of the water content in the time ahead if nobody waters, with the bands that hold half and nine tenths of the outcomes.
 *
 * @procedure Adds up the usual fall of the half hours ahead, times the factor of this dry-down. The bands come from the misses of the last
 * 40 forecasts that looked about as far ahead.
 * @param input - State, made by the reducer of `forecastLevel`, and time ahead.
 * @returns Fall and bands, or why they are not known.
 * @validity As long as light, climate and crop go on as they did. Outside the hours of watering; between two shots drain is not over.
 * @source common practice, no source; the bands: gibbs-2021
 * @example
 * const forecaster = forecastLevel({ minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(30) })
 * const night = (k: number) => 0.6 - 0.002 * (k % 96) + (k % 96 === 95 ? 0.1 : 0)
 * const inputs = Array.from({ length: 600 }, (_, k) => ({ time: 900 * k, waterContent: night(k) }))
 * const { state } = runReducer({ reducer: forecaster, inputs })
 * fallAhead({ state, ahead: hours(1) }) // => { known: true, fall: 0.0080 }
 */
export function fallAhead(input: FallAheadInput): FallAhead {
  requireObject(input, 'input')
  const { state, ahead = 3600 as Duration } = input
  requireObject(state, 'state')
  const long = numberIn(ahead, TIME_AHEAD, 'ahead')
  const now = whereNow(state)
  if (!now.known) return now
  const fall = now.factor * fallBetween(expectedFalls(state.falls), now.time, now.time + long)
  const { half, ninety } = bandsOf(state.rings[ringOf(long)]!)
  const unit = unitOfMiss(state, fall)
  const band = ([low, high]: readonly [number, number]) =>
    [fall + low * unit, fall + high * unit] as unknown as readonly [WaterContentChange, WaterContentChange]
  return { known: true, fall: fall as WaterContentChange, band50: band(half), band90: band(ninety) }
}

/** A state, the time that is asked about, and the volume of medium. */
export interface WaterUseAheadInput extends ProbedVolume, FallAheadInput {}

/** How much water leaves the medium, or why that is not known. */
export type WaterUseAhead =
  | {
      readonly known: true
      /** Expected use. Unit: L. */
      readonly use: Volume
      /** Holds half of the outcomes, the smaller use first. Unit: L. */
      readonly band50: readonly [Volume, Volume]
      /** Holds nine of ten outcomes, the smaller use first. Unit: L. */
      readonly band90: readonly [Volume, Volume]
    }
  | UnknownForecast

/**
 * Water that leaves the medium in the time ahead if nobody waters: the fall of `fallAhead` in the volume that the probe stands for.
 *
 * @equation `W = V_s \, F`
 * @returns Use and bands, or why they are not known.
 * @validity The probe must stand for the whole medium; a weighed container tells whether it does.
 * @source definition
 * @example
 * const forecaster = forecastLevel({ minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(30) })
 * const night = (k: number) => 0.6 - 0.002 * (k % 96) + (k % 96 === 95 ? 0.1 : 0)
 * const inputs = Array.from({ length: 600 }, (_, k) => ({ time: 900 * k, waterContent: night(k) }))
 * const { state } = runReducer({ reducer: forecaster, inputs })
 * waterUseAhead({ state, ahead: hours(1), substrateVolume: litres(10) }) // => { known: true, use: 0.08 }
 */
export function waterUseAhead(input: WaterUseAheadInput): WaterUseAhead {
  requireObject(input, 'input')
  const { substrateVolume, ...asked } = input
  const volume = numberIn(substrateVolume, PROBED_VOLUME, 'substrateVolume')
  const ahead = fallAhead(asked)
  if (!ahead.known) return ahead
  const litres = (falls: readonly number[]) =>
    falls.map((fall) => fall * volume) as unknown as readonly [Volume, Volume]
  return {
    known: true,
    use: (ahead.fall * volume) as Volume,
    band50: litres(ahead.band50),
    band90: litres(ahead.band90),
  }
}
