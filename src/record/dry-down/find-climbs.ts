import { InputError } from '../../quantity/errors.js'
import type { WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { MIN_CLIMB } from '../domains.js'
import { addReading, type RecentPoint } from '../forecast/recent-level.js'
import type { ClimbFinding } from '../record-finding.js'
import type { WaterContentSeries } from '../terms.js'
import type { DryStretch } from './find-dry-downs.js'

/** A series with the stretches in which nothing should rise. */
export interface FindClimbsInput extends WaterContentSeries {
  /** The stretches between shots, after drain, made by `findDryDowns`. */
  readonly dryDowns: readonly DryStretch[]
  /** A smaller climb is noise or warmth. Unit: m³/m³. Range: (0, 1]. */
  readonly minRise: WaterContentChange
}

/**
 * Places where the water content climbs between shots, too slowly for a shot: a valve or an emitter that leaks shows so. What a leak
 * adds may be far more than what a plant takes: close the water by hand, look and listen.
 *
 * @procedure In each stretch follows the mean of the last half hour; where it stands above the lowest one before it by the least climb, tells
 * the largest climb of the stretch.
 * @param input - Series, stretches and least climb.
 * @returns One finding for each stretch that climbs, in order.
 * @throws `DomainError` outside the range, `InputError` for lists of different lengths.
 * @validity Rain, a hand that waters, and the warmth of the day at some probes look the same. A leak that only slows the dry-down stays hidden.
 * @source common practice, no source
 * @example
 * const time = Array.from({ length: 49 }, (_, i) => i * 900)
 * const content = time.map((_, i) => 0.6 - 0.002 * Math.min(i, 24) + 0.002 * Math.max(0, i - 24))
 * const dryDowns = findDryDowns({ time, waterContent: content, shots: [], drainTime: minutes(0), maxStep: hours(1), minDuration: hours(2) })
 * findClimbs({ time, waterContent: content, dryDowns, minRise: waterContentChange(0.02) }) // => [{ code: 'climbs-between-shots', rise: 0.0447, end: 43200 }]
 */
export function findClimbs(input: FindClimbsInput): ClimbFinding[] {
  requireObject(input, 'input')
  const { dryDowns, minRise } = input
  const min = numberIn(minRise, MIN_CLIMB, 'minRise')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  requireRows(dryDowns, 'dryDowns')
  return dryDowns.flatMap(({ first, last }, k) => {
    const isInside = Number.isInteger(first) && Number.isInteger(last) && first >= 0 && last < time.length
    if (!isInside || first > last)
      throw new InputError(
        `dryDowns[${k}]`,
        `runs from ${first} to ${last} of ${time.length} readings`,
        'find them in the same series',
      )
    if (maxRise(waterContent, first, last) < min) return []
    const climb = maxClimb(time, waterContent, first, last)
    return climb.rise >= min ? [{ code: 'climbs-between-shots', level: 'caution', ...climb } as const] : []
  })
}

/** The largest rise from any reading to a later one: the mean of half an hour cannot climb by more. */
function maxRise(waterContent: ArrayLike<number>, first: number, last: number): number {
  let [low, rise] = [Infinity, 0]
  for (let i = first; i <= last; i++) {
    const x = waterContent[i]!
    if (x < low) low = x
    else if (x - low > rise) rise = x - low
  }
  return rise
}

function maxClimb(time: ArrayLike<number>, waterContent: ArrayLike<number>, first: number, last: number) {
  const recent: RecentPoint[] = []
  let [low, lowTime] = [Infinity, 0]
  let best = { start: 0, end: 0, rise: 0 }
  for (let i = first; i <= last; i++) {
    const x = waterContent[i]!
    const now = time[i]!
    if (Number.isNaN(x)) continue
    addReading(recent, now, x)
    const level = recent.reduce((sum, point) => sum + point[1] / recent.length, 0)
    if (level < low) [low, lowTime] = [level, now]
    if (level - low > best.rise) best = { start: lowTime, end: now, rise: level - low }
  }
  return best
}
