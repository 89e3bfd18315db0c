import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { CLOCK_SLACK, MAX_ANSWER_TIME } from '../domains.js'
import type { ValveLog } from '../terms.js'
import type { RecordSegment } from './split-record.js'
import type { FoundShot } from './watch-shots.js'

/** Shots that were seen, shots that were logged, and where readings ran on. */
export interface MatchShotsInput extends ValveLog {
  /** The shots that show in the readings, made by `findShots`. */
  readonly shots: readonly FoundShot[]
  /** Where readings ran on, made by `splitRecord`. */
  readonly segments: readonly RecordSegment[]
  /** A rise begins no later after the valve was opened. Unit: s. Range: (0, 86400]. */
  readonly maxLag: Duration
  /** The last reading before a rise may lie so much before the valve was opened. Unit: s. Range: [0, 86400]. */
  readonly maxLead: Duration
}

/** Which logged shot is which rise. All are positions in the lists that were given; together they hold every logged shot and every rise once. */
export interface MatchedShots {
  /** Logged shots with a rise of their own. */
  readonly matched: readonly { readonly log: number; readonly shot: number }[]
  /** Logged shots that went into the rise of an earlier one, because they followed it closely. */
  readonly joined: readonly { readonly log: number; readonly shot: number }[]
  /** Logged shots without a rise, though readings ran on. Unit: 1. */
  readonly withoutRise: readonly number[]
  /** Logged shots at a gap or a break, which cannot be judged. Unit: 1. */
  readonly notJudged: readonly number[]
  /** Rises that no logged shot explains. Unit: 1. */
  readonly withoutLog: readonly number[]
}

/**
 * Checks the readings against the log of the valve: shots without a rise, rises without a shot.
 *
 * @procedure Gives each logged shot, in order, the first rise that began within the slack before it and the latest answer after it. A shot
 * that falls into a rise that is taken already has joined it; one without readings all the time until the latest answer is not judged.
 * @param input - Rises, log and stretches of readings.
 * @returns Positions of all logged shots and all rises.
 * @source common practice, no source
 * @example
 * const time = [0, 300, 600, 900, 1200, 1500, 1800, 2100, 2400]
 * const content = [0.5, 0.499, 0.52, 0.53, 0.528, 0.527, 0.527, 0.526, 0.526]
 * const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) }
 * const matches = matchShots({
 *   shots: findShots({ time, waterContent: content, ...limits }), log: [320, 1500, 2300],
 *   segments: splitRecord({ time, value: content, maxStep: minutes(8) }), maxLag: minutes(10), maxLead: minutes(5),
 * })
 * matches // => { matched: [{ log: 0, shot: 0 }], withoutRise: [1], notJudged: [2], withoutLog: [] }
 */
export function matchShots(input: MatchShotsInput): MatchedShots {
  requireObject(input, 'input')
  const { shots, segments, ...limits } = input
  requireRows(shots, 'shots')
  const log = seriesOf(input.log, 'log')
  requireRows(segments, 'segments')
  const latest = numberIn(limits.maxLag, MAX_ANSWER_TIME, 'maxLag')
  const slack = numberIn(limits.maxLead, CLOCK_SLACK, 'maxLead')
  const rises = shots.map((shot, k) => ({ shot, k })).sort((a, b) => a.shot.start - b.shot.start)
  const stretches = [...segments].sort((a, b) => a.start - b.start)
  const matched: { log: number; shot: number }[] = []
  const joined: { log: number; shot: number }[] = []
  const withoutRise: number[] = []
  const notJudged: number[] = []
  const taken = new Set<number>()
  let next = 0
  let from = 0
  let last: { shot: FoundShot; k: number } | undefined
  for (let e = 0; e < log.length; e++) {
    const opened = log[e]!
    while (next < rises.length && rises[next]!.shot.start < opened - slack) next++
    const rise = rises[next]
    if (rise !== undefined && rise.shot.start <= opened + latest) {
      matched.push({ log: e, shot: rise.k })
      taken.add(rise.k)
      last = rise
      next++
      continue
    }
    if (last !== undefined && opened <= last.shot.peak + slack) {
      joined.push({ log: e, shot: last.k })
      continue
    }
    while (from < stretches.length && stretches[from]!.end < opened + latest) from++
    const covers = stretches[from] !== undefined && stretches[from]!.start <= opened
    ;(covers ? withoutRise : notJudged).push(e)
  }
  const withoutLog = shots.flatMap((_, k) => (taken.has(k) ? [] : [k]))
  return { matched, joined, withoutRise, notJudged, withoutLog }
}
