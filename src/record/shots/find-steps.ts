import { medianInPlace } from '../../numerics/select.js'
import type { Duration, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows, wholeNumberIn } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { MAX_STEP, MIN_STEP, READINGS_ON_EACH_SIDE } from '../domains.js'
import type { ReadingTime, WaterContentSeries } from '../terms.js'
import { stretchesOf } from './split-record.js'
import type { FoundShot } from './watch-shots.js'

/** A series in which steps are looked for. */
export interface FindStepsInput extends WaterContentSeries {
  /** The shots that the log explains, made by `findShots`; they are no steps. */
  readonly shots: readonly FoundShot[]
  /** Smaller steps are noise. Unit: m³/m³. Range: (0, 1]. */
  readonly minChange: WaterContentChange
  /** Readings that are compared on each side. Unit: 1. Range: integers [3, 100]. */
  readonly side: number
  /** Nothing is compared over a longer step between two good readings. Unit: s. Range: (0, 86400]. */
  readonly maxStep: Duration
}

/** A level that changed at once and stayed changed. */
export interface FoundStep extends ReadingTime {
  /** Position of the first reading at the new level. Unit: 1. */
  readonly index: number
  /** Median before. Unit: m³/m³. */
  readonly before: WaterContent
  /** Median after. Unit: m³/m³. */
  readonly after: WaterContent
  /** After less before. Unit: m³/m³. */
  readonly change: WaterContentChange
}

/**
 * Steps that no shot explains: a probe that was pulled, pushed or bumped, a container that was moved. What comes after is another
 * series: calibrate again and take no trend across it.
 *
 * @procedure Where two readings in a row differ by half the least step, compares the medians of the readings on both sides; of neighbouring
 * places the one with the largest step counts. Shots, from foot to peak, are left out.
 * @param input - Series, shots and limits.
 * @returns The steps in order.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths.
 * @source common practice, no source
 * @example
 * const content = [0.52, 0.521, 0.52, 0.519, 0.47, 0.471, 0.47, 0.469]
 * const time = content.map((_, i) => 300 * i)
 * findSteps({ time, waterContent: content, shots: [], minChange: waterContentChange(0.02), side: 3, maxStep: minutes(8) }) // => [{ index: 4, change: -0.05 }]
 */
export function findSteps(input: FindStepsInput): FoundStep[] {
  requireObject(input, 'input')
  const { shots, ...limits } = input
  const min = numberIn(limits.minChange, MIN_STEP, 'minChange')
  const side = wholeNumberIn(limits.side, READINGS_ON_EACH_SIDE, 'side')
  const maxStep = numberIn(limits.maxStep, MAX_STEP, 'maxStep') as Duration
  requireRows(shots, 'shots')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const steps: FoundStep[] = []
  let s = 0
  for (const { first, last } of stretchesOf(time, waterContent, maxStep)) {
    const rows = rowsThere(waterContent, first, last)
    let from = 0
    for (let k = side; k + side <= rows.length; k++) {
      const index = rows[k]!
      while (s < shots.length && shots[s]!.peakIndex < index) s++
      if (s < shots.length && index > shots[s]!.startIndex) continue
      const jump = waterContent[index]! - waterContent[rows[k - 1]!]!
      if (Math.abs(jump) < min / 2) continue
      const [before, after] = [medianOf(waterContent, rows, k - side, k), medianOf(waterContent, rows, k, k + side)]
      const change = after - before
      if (Math.abs(change) < min || Math.sign(change) !== Math.sign(jump)) continue
      const step: FoundStep = {
        index,
        time: time[index]!,
        before: before as WaterContent,
        after: after as WaterContent,
        change: change as WaterContentChange,
      }
      const latest = steps[steps.length - 1]
      if (latest !== undefined && k < from) {
        if (Math.abs(change) > Math.abs(latest.change)) steps[steps.length - 1] = step
      } else {
        steps.push(step)
        from = k + side
      }
    }
  }
  return steps
}

function rowsThere(waterContent: ArrayLike<number>, first: number, last: number): number[] {
  const rows: number[] = []
  for (let i = first; i <= last; i++) if (!Number.isNaN(waterContent[i])) rows.push(i)
  return rows
}

function medianOf(waterContent: ArrayLike<number>, rows: readonly number[], from: number, to: number): number {
  return medianInPlace(Float64Array.from(rows.slice(from, to), (i) => waterContent[i]!))
}
