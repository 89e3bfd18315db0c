import type { Domain } from '../quantity/domain.js'
import type { Duration } from '../quantity/generated/duration.js'
import type { WaterContent, WaterContentChange } from '../quantity/generated/water-content.js'
import { numberIn } from '../quantity/guard.js'
import { LONGEST_STEP } from './domains.js'
import { equalLengths } from './equal-lengths.js'

const RISE: Domain = {
  quantity: 'least rise of a shot',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give several times the noise of the probe',
}
const SPREAD: Domain = {
  quantity: 'longest rise',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'give the time in which a shot reaches the probe, some minutes to an hour',
}

/** What counts as a shot. */
export interface ShotLimits {
  /** Smaller rises are noise. Unit: m³/m³. Range: (0, 1]. */
  readonly minRise: WaterContentChange
  /** The rise of one shot takes no longer. Unit: s. Range: (0, 86400]. */
  readonly maxRiseTime: Duration
  /** Nothing is followed over a longer step between two good readings. Unit: s. Range: (0, 86400]. */
  readonly maxStep: Duration
}

/** A series of water content in which shots are looked for. */
export interface FindShotsInput extends ShotLimits {
  /** Times of the readings. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Water content; NaN where a reading is missing or not to be trusted. Unit: m³/m³. Range: any. */
  readonly content: ArrayLike<number>
}

/** A rise of the water content that a shot made. */
export interface FoundShot {
  /** Position of the last reading before the rise. Unit: 1. */
  readonly startIndex: number
  /** Position of the highest reading. Unit: 1. */
  readonly peakIndex: number
  /** Time of the last reading before the rise. Unit: s. */
  readonly start: number
  /** Time of the highest reading. Unit: s. */
  readonly peak: number
  /** Water content before. Unit: m³/m³. */
  readonly before: WaterContent
  /** Highest water content. Unit: m³/m³. */
  readonly top: WaterContent
  /** By how much it rose. Unit: m³/m³. */
  readonly rise: WaterContentChange
}

/**
 * The shots that show in a series of water content: rises that are larger than noise and no slower than a shot. No rise is
 * followed across a gap, a clock that was set back or a missing reading, so that none is invented there.
 *
 * @procedure Follows the lowest reading within the longest rise; when a reading stands above it by the least rise, the shot has begun at
 * the last reading that was still as low, to a quarter of the least rise. It ends when a reading falls by half the least rise, or when nothing higher has come for a third of the longest
 * rise. A rise that one reading alone shows is a spike until a second one stands above half the least rise: it is no shot.
 * @param input - Series and limits.
 * @returns The shots in order.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths.
 * @validity Shots that reach the probe; a shot that bypasses it, or a series sampled more coarsely than shots follow each other, hides some.
 * @source common practice, no source
 * @example
 * ```ts
 * const shots = findShots({
 *   time: [0, 300, 600, 900, 1200, 1500], content: [0.5, 0.499, 0.52, 0.53, 0.528, 0.527],
 *   minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8),
 * })
 * shots // => [{ start: 300, peak: 900, rise: 0.031 }]
 * ```
 */
export function findShots(input: FindShotsInput): FoundShot[] {
  const { time, content } = input
  const { least, longest, step } = checkedLimits(input)
  equalLengths(time, content)
  const shots: FoundShot[] = []
  let low = -1
  let peak = -1
  let before = -1
  let above = 0
  const close = () => {
    if (peak >= 0 && above > 1) shots.push(shotOf(time, content, low, peak))
    peak = -1
  }
  for (let i = 0; i < time.length; i++) {
    const x = content[i] as number
    if (Number.isNaN(x)) continue
    const now = time[i] as number
    if (before >= 0) {
      const passed = now - (time[before] as number)
      if (!(passed > 0) || passed > step) {
        close()
        low = -1
      }
    }
    before = i
    if (peak >= 0) {
      if (x >= (content[low] as number) + least / 2) above++
      if (x > (content[peak] as number) && now - (time[low] as number) <= longest) peak = i
      else if (now - (time[peak] as number) > longest / 3 || x < (content[peak] as number) - least / 2) {
        close()
        low = i
      }
    } else if (low < 0 || x <= (content[low] as number)) low = i
    else {
      // A slow rise is no shot: the lowest reading must lie within the longest rise.
      if (now - (time[low] as number) > longest) low = minWithin(time, content, i, longest)
      if (x - (content[low] as number) >= least) {
        low = footOf(content, low, i, least)
        peak = i
        above = 1
      }
    }
  }
  close()
  return shots
}

/** The limits of `findShots` as plain numbers. */
export function checkedLimits(limits: ShotLimits): { least: number; longest: number; step: number } {
  return {
    least: numberIn(limits.minRise, RISE, 'minRise'),
    longest: numberIn(limits.maxRiseTime, SPREAD, 'maxRiseTime'),
    step: numberIn(limits.maxStep, LONGEST_STEP, 'maxStep'),
  }
}

function minWithin(time: ArrayLike<number>, content: ArrayLike<number>, i: number, longest: number): number {
  let low = i
  for (let j = i - 1; j >= 0 && (time[i] as number) - (time[j] as number) <= longest; j--) {
    // The later of two equal readings is the nearer to the beginning of the rise.
    if ((content[j] as number) < (content[low] as number)) low = j
  }
  return low
}

/** The last reading before the rise: noise may have put the lowest one earlier, where the course was still flat. */
function footOf(content: ArrayLike<number>, low: number, i: number, least: number): number {
  let foot = i - 1
  while (foot > low && !((content[foot] as number) <= (content[low] as number) + least / 4)) foot--
  return foot
}

function shotOf(time: ArrayLike<number>, content: ArrayLike<number>, low: number, peak: number): FoundShot {
  const from = content[low] as number
  const top = content[peak] as number
  return {
    startIndex: low,
    peakIndex: peak,
    start: time[low] as number,
    peak: time[peak] as number,
    before: from as WaterContent,
    top: top as WaterContent,
    rise: (top - from) as WaterContentChange,
  }
}
