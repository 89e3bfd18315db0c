import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { alignedSeries } from '../aligned-series.js'
import { ANSWER_TIME } from '../domains.js'
import { QUALITY } from '../quality/flags.js'
import type { Readings, ReadingTimes, ValveLog } from '../terms.js'

/** Flags of a test of steps, with the log of the valve. */
export interface ClearShotRisesInput extends ValveLog, Readings, ReadingTimes {
  /** Flags, made by `spikeTest` or `rateOfChangeTest`. */
  readonly flags: Uint8Array
  /** A shot shows for so long. Unit: s. Range: (0, 86400]. */
  readonly responseTime: Duration
}

/**
 * Takes back what a test of steps said of real shots: a rise after a logged shot, and the peak at its end, are no fault.
 *
 * @procedure In the time after each logged shot, sets suspect and failing flags to pass where the reading stands above the one before, or
 * above the one that was last before the shot. Falls below that level stay flagged.
 * @returns New flags; the given ones are left as they are.
 * @throws `DomainError` outside the range, `InputError` for lists of different lengths.
 * @validity A hand that touches the probe during a shot goes unseen.
 * @source common practice, no source
 * @example
 * const time = [0, 300, 600, 900, 1200, 1500]
 * const value = [0.5, 0.5, 0.56, 0.55, 0.3, 0.549]
 * const flags = spikeTest({ value, suspect: 0.02, fail: 0.05 }) // => [2, 3, 3, 4, 4, 2]
 * clearShotRises({ time, value, flags, log: [310], responseTime: minutes(30) }) // => [2, 3, 1, 1, 4, 2]
 */
export function clearShotRises(input: ClearShotRisesInput): Uint8Array {
  requireObject(input, 'input')
  requireList(input.flags, 'flags')
  const { flags, responseTime } = input
  const log = seriesOf(input.log, 'log')
  const long = numberIn(responseTime, ANSWER_TIME, 'responseTime')
  const [time, value] = alignedSeries(input.time, input.value, 'value')
  if (flags.length !== value.length)
    throw new InputError('flags', `has ${flags.length} entries for ${value.length} readings`, 'test the same readings')
  const excused = flags.slice()
  let e = 0
  let level = Number.NaN
  let before = Number.NaN
  let then = -Infinity
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    const now = time[i]!
    if (Number.isNaN(x)) continue
    // A clock that was set back makes earlier entries of the log count again.
    if (now < then) e = 0
    while (e < log.length && log[e]! <= now) {
      if (log[e]! > then) level = before
      e++
    }
    const since = now - (log[e - 1] ?? -Infinity)
    const doubtful = flags[i] === QUALITY.suspect || flags[i] === QUALITY.fail
    if (doubtful && since <= long && (x > before || x > level)) excused[i] = QUALITY.pass
    before = x
    then = now
  }
  return excused
}
