import { requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import type { WaterContentSeries } from '../terms.js'
import { ended, type FoundShot, newShotSearch, type ShotLimits, shotSearch } from './watch-shots.js'

/** A series of water content in which shots are looked for. */
export interface FindShotsInput extends WaterContentSeries, ShotLimits {}

/**
 * The shots that show in a series of water content: rises that are larger than noise and no slower than a shot. No rise is
 * followed across a gap, a clock that was set back or a missing reading, so that none is invented there.
 *
 * @procedure Follows the lowest reading within the longest rise; when a reading stands above it by the least rise, the shot has begun at
 * the last reading that was still as low, to a quarter of the least rise. It ends when a reading falls by half the least rise, or when
 * nothing higher has come for a third of the longest rise. A rise that one reading alone shows is a spike until a second one stands above half the least rise: it is no shot.
 * @returns The shots in order.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths.
 * @validity Shots that reach the probe; a shot that bypasses it, or a series sampled more coarsely than shots follow each other, hides some.
 * @source common practice, no source
 * @example
 * const shots = findShots({
 *   time: [0, 300, 600, 900, 1200, 1500], waterContent: [0.5, 0.499, 0.52, 0.53, 0.528, 0.527],
 *   minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8),
 * })
 * shots // => [{ start: 300, peak: 900, rise: 0.031 }]
 */
export function findShots(input: FindShotsInput): FoundShot[] {
  requireObject(input, 'input')
  const advance = shotSearch(input)
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const shots: FoundShot[] = []
  const search = newShotSearch()
  for (let i = 0; i < time.length; i++) for (const shot of advance(search, time[i]!, waterContent[i]!)) shots.push(shot)
  for (const shot of ended(search)) shots.push(shot)
  return shots
}
