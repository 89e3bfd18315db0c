import type { WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { DRAIN_TIME } from '../domains.js'
import type { WaterContentSeries } from '../terms.js'
import type { DrainedShots } from './watch-shots.js'

/** A series with its shots. */
export interface PlateauInput extends DrainedShots, WaterContentSeries {}

/** The level to which shots drain back. */
export type Plateau =
  | {
      readonly known: true
      /** Median of the upper half of the levels after drain. Unit: m³/m³. */
      readonly level: WaterContent
      /** Half of the span that holds the middle half of them. Unit: m³/m³. */
      readonly spread: WaterContentChange
      /** How many levels there are in that half. Unit: 1. */
      readonly shots: number
    }
  | {
      readonly known: false
      readonly reason: 'few-settled-shots'
      /** Shots that drained back and were left alone long enough; it takes some. Unit: 1. */
      readonly settled: number
    }

/**
 * The level of water content to which the container drains back after shots that fill it: what it holds in practice, as the probe sees
 * it. Only shots that drain back count, and at least three are needed. Shots that leave it below full settle lower, so that the upper half
 * of the levels counts.
 *
 * @procedure Takes for each shot the first reading after its peak and the time to drain, if no other shot came in between; the level is
 * the median of the upper half.
 * @returns The level with its spread, or why there is none.
 * @throws `DomainError` outside the range, `InputError` for lists of different lengths.
 * @validity A local reading: the mean of the container needs a scale or more probes.
 * @source common practice, no source
 * @example
 * const series = { time: [0, 300, 600, 900], waterContent: [0.5, 0.53, 0.526, 0.52] }
 * const shots = findShots({ ...series, minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) })
 * plateauAfterDrain({ ...series, shots, drainTime: minutes(5) }).known // => false
 */
export function plateauAfterDrain(input: PlateauInput): Plateau {
  requireObject(input, 'input')
  const { shots, drainTime } = input
  const wait = numberIn(drainTime, DRAIN_TIME, 'drainTime')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const levels: number[] = []
  requireRows(shots, 'shots')
  shots.forEach((shot, k) => {
    const until = Math.min(shots[k + 1]?.start ?? Infinity, shot.peak + 3 * wait)
    for (let i = shot.peakIndex + 1; i < time.length && time[i]! <= until; i++) {
      const x = waterContent[i]!
      if (Number.isNaN(x) || time[i]! < shot.peak + wait) continue
      if (x < shot.top) levels.push(x)
      break
    }
  })
  const full = fullLevelOf(levels)
  if (full === undefined) return { known: false, reason: 'few-settled-shots', settled: levels.length }
  const { level, spread } = full
  return { known: true, level: level as WaterContent, spread: spread as WaterContentChange, shots: full.shots }
}

/**
 * The level of a full container from the levels after shots; undefined where fewer than three are known. Shots that leave the container
 * below full settle lower: the upper half of the levels is that of a full one.
 */
export function fullLevelOf(levels: readonly number[]): { level: number; spread: number; shots: number } | undefined {
  if (levels.length < 3) return undefined
  const upper = [...levels].sort((a, b) => a - b).slice(levels.length >> 1)
  const at = (share: number) => {
    const place = share * (upper.length - 1)
    const below = upper[Math.floor(place)]!
    return below + (place - Math.floor(place)) * (upper[Math.ceil(place)]! - below)
  }
  return { level: at(0.5), spread: (at(0.75) - at(0.25)) / 2, shots: upper.length }
}
