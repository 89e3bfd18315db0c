import { BIN, expectedFalls, fallBetween, learnFall } from './clock-rates.js'
import type { DryDownSoFar, LevelState } from './level-state.js'
import { type ScoreRing, withScore } from './score-ring.js'

/** Shorter dry-downs teach rates, but not how much a usual one falls. Unit: s. */
const LONG_ENOUGH = 7200
const MIN_USUAL_FALL = 0.002
/** Forecasts are tried so far ahead. Unit: s. */
const AHEAD: readonly number[] = [3600, 7200, 14400, 28800]
/** The share of the usual fall that a miss is measured by beside the forecast itself: the forecast may be near zero. */
const SHARE_OF_USUAL = 0.1
/** Dry-downs from which on forecasts are given. */
export const MIN_DRY_DOWNS = 3

/** The state after a dry-down has ended: its forecasts scored by what came, then its rates learnt. */
export function learntFrom(state: LevelState, dryDown: DryDownSoFar): LevelState {
  const { border, levels } = dryDown
  if (levels.length < 2) return state
  const rings = state.dryDowns < MIN_DRY_DOWNS ? state.rings : scored(state, dryDown)
  const falls = state.falls.slice()
  for (let k = 0; k + 1 < levels.length; k++) learnFall(falls, border + k * BIN, levels[k]! - levels[k + 1]!)
  const long = border + (levels.length - 1) * BIN - dryDown.start >= LONG_ENOUGH
  if (!long) return { ...state, rings, falls }
  const fall = dryDown.from - levels[levels.length - 1]!
  const usual = state.dryDowns === 0 ? fall : state.usualFall + 0.2 * (fall - state.usualFall)
  return { ...state, rings, falls, usualFall: Math.max(MIN_USUAL_FALL, usual), dryDowns: state.dryDowns + 1 }
}

/** Which ring holds the misses of a forecast so far ahead. */
export function ringOf(ahead: number): number {
  return ahead < 5400 ? 0 : ahead < 10800 ? 1 : ahead < 21600 ? 2 : 3
}

/** The factor by which this dry-down is quicker or slower than usual. */
export function factorOf(state: LevelState, expected: Float64Array, from: DryDownSoFar, time: number, level: number) {
  const usual = fallBetween(expected, from.start, time) + state.usualFall
  return Math.min(1.33, Math.max(0.75, (from.from - level + state.usualFall) / usual))
}

/** What a miss is measured by. */
export function unitOfMiss(state: LevelState, fall: number): number {
  return fall + SHARE_OF_USUAL * state.usualFall
}

/** The part of it that does not depend on the fall. */
export function fixedUnit(state: LevelState): number {
  return SHARE_OF_USUAL * state.usualFall
}

function scored(state: LevelState, dryDown: DryDownSoFar): readonly ScoreRing[] {
  const expected = expectedFalls(state.falls)
  const rings = state.rings.slice()
  for (const { time, level } of dryDown.replay) {
    const factor = factorOf(state, expected, dryDown, time, level)
    for (const ahead of AHEAD) {
      const reached = levelThen(dryDown, time + ahead)
      if (reached === undefined) break
      const forecast = factor * fallBetween(expected, time, time + ahead)
      const k = ringOf(ahead)
      const score = (level - reached - forecast) / unitOfMiss(state, forecast)
      rings[k] = withScore(rings[k]!, score, 'both')
    }
  }
  return rings
}

/** The level between two borders of half hours, or undefined where the dry-down had ended. */
function levelThen({ border, levels }: DryDownSoFar, time: number): number | undefined {
  const place = (time - border) / BIN
  const k = Math.min(Math.floor(place), levels.length - 2)
  if (k < 0 || place > levels.length - 1) return undefined
  const here = levels[k]!
  return here + (place - k) * (levels[k + 1]! - here)
}
