import { INSTANT } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { numberIn, requireList, requireObject } from '../quantity/guard.js'
import { seriesOf } from '../quantity/missing.js'
import { LOCAL_ADVANCE } from './domains.js'

/** Since when local clocks were how far ahead of universal time. */
export interface LocalOffset {
  /** Moment in universal time from which it holds. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly from: number
  /** How far local clocks are ahead of universal time. Unit: s. Range: [-50400, 50400]. */
  readonly ahead: number
}

/** Local times in the order in which the readings arrived, and what the local clock did. */
export interface LocalTimeInput {
  /** Readings of the local clock, as seconds since 1970-01-01T00:00 on that clock. NaN is a missing one. Unit: s. Range: any. */
  readonly local: ArrayLike<number>
  /** What the clock did, in order of time; the first entry also holds before its own moment. */
  readonly offsets: readonly LocalOffset[]
}

/** Times in universal time, and what was doubtful. */
export interface UniversalTimes {
  /** Times since 1970-01-01T00:00Z; NaN where there is none. Unit: s. */
  readonly time: Float64Array
  /** Readings of the clock that stand twice (the hour that is repeated in autumn); told apart by the order of arrival. Unit: 1. */
  readonly repeated: number
  /** Readings of the clock that do not exist (the hour that is left out in spring); their time is NaN. Unit: 1. */
  readonly skipped: number
  /** Readings that are missing. Unit: 1. */
  readonly missing: number
}

/** Refuses a table of offsets that is empty, out of order, or holds what no clock is ahead by. */
export function checkOffsets(offsets: readonly LocalOffset[], argument: string): void {
  requireList(offsets, argument)
  if (offsets.length === 0) throw new InputError(argument, 'has no entry', 'say how far local time is ahead')
  offsets.forEach((entry, k) => {
    requireObject(entry, `${argument}[${k}]`)
    numberIn(entry.from, INSTANT, `${argument}[${k}].from`)
    numberIn(entry.ahead, LOCAL_ADVANCE, `${argument}[${k}].ahead`)
    if (k > 0 && !(entry.from > offsets[k - 1]!.from))
      throw new InputError(argument, 'is not in order of time', 'sort it and leave out repeated moments')
  })
}

/**
 * Universal time of readings that carry civil local time. The table of offsets comes from the caller: the law of the place, not the
 * settings of some computer, says when clocks change.
 *
 * @procedure Looks for the offset that was in force at the moment that it gives. In the repeated hour the earlier moment is taken until
 * the clock has stepped back, then the later one.
 * @returns Times, with counts of what was doubtful.
 * @throws `DomainError` outside the ranges, `InputError` for a table that is empty or not in order.
 * @source definition
 * @example
 * const clock = [{ from: 0, ahead: 3600 }, { from: 36000, ahead: 7200 }]
 * utcFromLocal({ local: [37800, 39600, 43200], offsets: clock }) // => { time: [34200, NaN, 36000], skipped: 1 }
 */
export function utcFromLocal(input: LocalTimeInput): UniversalTimes {
  requireObject(input, 'input')
  const { offsets } = input
  checkOffsets(offsets, 'offsets')
  const local = seriesOf(input.local, 'local')
  const time = new Float64Array(local.length)
  let [repeated, skipped, missing] = [0, 0, 0]
  let before = -Infinity
  let k = 0
  for (let i = 0; i < local.length; i++) {
    const shown = local[i]!
    time[i] = Number.NaN
    if (Number.isNaN(shown)) {
      missing++
      continue
    }
    // The last entry whose own clock had not passed this reading when it came into force.
    while (k > 0 && shown - offsets[k]!.ahead < offsets[k]!.from) k--
    while (k + 1 < offsets.length && begins(offsets, k + 1, shown)) k++
    const late = momentIn(offsets, k, shown)
    const early = k > 0 ? momentIn(offsets, k - 1, shown) : Number.NaN
    if (Number.isNaN(late) && Number.isNaN(early)) {
      skipped++
      continue
    }
    if (!Number.isNaN(late) && !Number.isNaN(early)) repeated++
    const useEarly = !Number.isNaN(early) && (Number.isNaN(late) || early > before)
    before = useEarly ? early : late
    time[i] = before
  }
  return { time, repeated, skipped, missing }
}

function begins(offsets: readonly LocalOffset[], k: number, shown: number): boolean {
  const { from, ahead } = offsets[k]!
  return shown - ahead >= from
}

/** The moment, if entry k was in force then; NaN otherwise. */
function momentIn(offsets: readonly LocalOffset[], k: number, shown: number): number {
  const { from, ahead } = offsets[k]!
  const moment = shown - ahead
  const ends = offsets[k + 1]?.from ?? Infinity
  return moment < ends && (k === 0 || moment >= from) ? moment : Number.NaN
}
