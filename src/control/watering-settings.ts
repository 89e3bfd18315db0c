import type { Domain } from '../quantity/domain.js'
import type { Duration } from '../quantity/duration.js'
import { InputError } from '../quantity/errors.js'
import type { Flow } from '../quantity/flow.js'
import { numberIn } from '../quantity/guard.js'
import type { Volume } from '../quantity/volume.js'
import { checkedBand, type DeadBandLimits } from './dead-band.js'

/** What to do while the reading is missing. Holding a valve open is no choice. */
export type WhenMissing =
  | { readonly by: 'staying closed' }
  | {
      readonly by: 'timed shots'
      /** Least time from the end of one shot to a back-up shot. Unit: s. Range: (0, 86400]. */
      readonly every: Duration
      /** Back-up shots in a row, at most; then it stays closed. Unit: 1. Range: integers [1, 48]. */
      readonly atMost: number
    }

/** Limits inside which water may be switched. */
export interface WateringSettings extends DeadBandLimits {
  /** Flow while the valve is open, to the containers that the volumes below are meant for. Unit: L/h. Range: (0, ∞). */
  readonly flow: Flow
  /** Volume of one shot. Unit: L. Range: (0, ∞). */
  readonly shot: Volume
  /** Longest time that the valve may stay open at a time. Unit: s. Range: (0, 7200]. */
  readonly maxRunTime: Duration
  /** Most volume in a day. Unit: L. Range: (0, ∞). */
  readonly maxPerDay: Volume
  /** Least time between the end of a shot and the next. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
  /** Time after a shot in which the probe does not yet show it. Unit: s. Range: [0, 86400]. */
  readonly probeLag: Duration
  /** A moment at which a day begins, by the clock of the place. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly dayStart: number
  /** What to do while the reading is missing. */
  readonly whenMissing: WhenMissing
}

const FLOW: Domain = {
  quantity: 'flow of the valve',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the flow to the containers that the volumes are meant for',
}
const SHOT: Domain = {
  quantity: 'volume of a shot',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a volume above zero',
}
const RUN: Domain = {
  quantity: 'longest run time',
  unit: 's',
  min: 0,
  max: 7200,
  ends: '(]',
  hint: 'give a time of at most two hours; longer watering is several shots',
}
const DAY: Domain = {
  quantity: 'most volume in a day',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give what the containers may get in a day at most',
}
const OFF: Domain = {
  quantity: 'least off time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero to a day',
}
const LAG: Domain = {
  quantity: 'lag of the probe',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero to a day',
}
const START: Domain = {
  quantity: 'start of a day',
  unit: 's',
  min: -62135596800,
  max: 253402300799,
  ends: '[]',
  hint: 'give seconds since the start of 1970 in universal time',
}
const EVERY: Domain = {
  quantity: 'time between back-up shots',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'give a time of at most a day',
}
const COUNT: Domain = {
  quantity: 'back-up shots in a row',
  unit: '1',
  min: 1,
  max: 48,
  ends: '[]',
  hint: 'give a small whole number: somebody should come and look',
}

/** The settings as plain numbers, once they were found to make sense. */
export interface CheckedSettings {
  readonly lower: number
  readonly upper: number
  readonly shot: number
  readonly litresPerSecond: number
  readonly run: number
  readonly perDay: number
  /** Time after a shot in which nothing is decided. */
  readonly pause: number
  readonly dayStart: number
  readonly backUpAfter: number
  readonly backUps: number
}

export function checkedSettings(settings: WateringSettings): CheckedSettings {
  const { lower, upper } = checkedBand(settings)
  const litresPerSecond = numberIn(settings.flow, FLOW, 'flow') / 3600
  const shot = numberIn(settings.shot, SHOT, 'shot')
  const run = shot / litresPerSecond
  const most = numberIn(settings.maxRunTime, RUN, 'maxRunTime')
  const perDay = numberIn(settings.maxPerDay, DAY, 'maxPerDay')
  if (run > most)
    throw new InputError(
      'shot',
      `takes ${Math.round(run)} s at this flow, longer than the longest run time of ${most} s`,
      'make the shot smaller or the run time longer',
    )
  if (shot > perDay) throw new InputError('shot', 'is larger than the most for a day', 'make it smaller')
  const { whenMissing } = settings
  const timed = whenMissing.by === 'timed shots'
  const backUpAfter = timed ? numberIn(whenMissing.every, EVERY, 'every') : Infinity
  const backUps = timed ? numberIn(whenMissing.atMost, COUNT, 'atMost') : 0
  if (!Number.isInteger(backUps)) throw new InputError('atMost', `${backUps} is no whole number`, COUNT.hint)
  const pause = Math.max(numberIn(settings.minRest, OFF, 'minRest'), numberIn(settings.probeLag, LAG, 'probeLag'))
  const dayStart = numberIn(settings.dayStart, START, 'dayStart')
  return { lower, upper, shot, litresPerSecond, run, perDay, pause, dayStart, backUpAfter, backUps }
}
