import type { Duration } from '../quantity/duration.js'
import type { Volume } from '../quantity/volume.js'
import type { Reducer } from '../record/reducer.js'
import { switched } from './dead-band.js'
import { type CheckedSettings, checkedSettings, type WateringSettings } from './watering-settings.js'

/** A moment at which something is decided, with the reading that is known then. */
export interface WateringInput {
  /** Now. Unit: s. */
  readonly now: number
  /** Newest reading that may be trusted; NaN where there is none that is new enough. Unit: m³/m³. */
  readonly content: number
}

/** What is remembered from one decision to the next; plain data. */
export interface WateringState {
  /** When the last decision was made. Unit: s. */
  readonly last: number | null
  /** When the valve was opened, if it is open. Unit: s. */
  readonly opened: number | null
  /** When it was closed last. Unit: s. */
  readonly closed: number | null
  /** Whether the dead-band asks for water. */
  readonly dry: boolean
  /** Back-up shots since the last reading. Unit: 1. */
  readonly backUps: number
  /** Number of the day to which the volume belongs. Unit: d. */
  readonly day: number
  /** Volume given in that day. Unit: L. */
  readonly given: number
}

/** Why a valve is open or closed. */
export type WateringReason =
  | 'dry'
  | 'back-up shot'
  | 'wet enough'
  | 'shot given'
  | 'waiting'
  | 'day used up'
  | 'no reading'
  | 'clock went back'
  | 'clock unknown'

/** What is decided. It is a proposal to a controller that has limits of its own, never an order past them. */
export interface WateringDecision {
  readonly open: boolean
  /** Close after this time, whether or not another decision comes. Unit: s. */
  readonly closeAfter: Duration
  readonly reason: WateringReason
  /** Volume given in the present day. Unit: L. */
  readonly givenToday: Volume
}

/**
 * Waters in shots inside a dead-band and inside hard limits: a shot has a volume and ends by time, not by the probe, which lags the
 * dripper; after a shot it waits until the probe can know; a day has a most volume; a missing reading never holds a valve open.
 *
 * It decides and does not act. What moves water needs a longest run time and a leak check of its own, which work when this does not.
 *
 * @procedure Counts what an open valve gave; closes it when the shot is given, or at once when the reading is at the upper limit, when the
 * clock goes back, when there is no clock, and when the reading is missing unless back-up shots are allowed;
 * opens it for one shot when the dead-band asks for water, the pause is over and the day has room for the whole shot. Without a reading it
 * stays closed, or gives a limited number of shots by time.
 * @param settings - The limits.
 * @returns A reducer that takes moments with readings and gives decisions.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other.
 * @source common practice, no source
 * @example
 * ```ts
 * const reducer = controlWatering({
 *   lower: waterContent(0.5), upper: waterContent(0.6), flow: litresPerHour(4), shot: millilitres(200), maxRunTime: minutes(5),
 *   maxPerDay: litres(4), minRest: minutes(10), probeLag: minutes(15), dayStart: instant(0),
 *   whenMissing: { by: 'staying closed' },
 * })
 * const inputs = [0.52, 0.5, 0.5, 0.51, NaN].map((content, i) => ({ now: 180 * i, content }))
 * const reasons = runReducer({ reducer, inputs }).outputs.map((decision) => decision.reason)
 * reasons // => ['wet enough', 'dry', 'shot given', 'waiting', 'no reading']
 * ```
 */
export function controlWatering(settings: WateringSettings): Reducer<WateringState, WateringInput, WateringDecision> {
  const limits = checkedSettings(settings)
  return {
    start: { last: null, opened: null, closed: null, dry: false, backUps: 0, day: 0, given: 0 },
    step: (state, input) => decide(limits, state, input),
  }
}

function decide(
  limits: CheckedSettings,
  state: WateringState,
  { now, content }: WateringInput,
): readonly [WateringState, WateringDecision] {
  if (!Number.isFinite(now)) {
    // Without a clock nothing can be counted: what ran is taken to have given a whole shot, and to have closed at its end.
    const given = state.given + (state.opened === null ? 0 : limits.shot)
    const closed = state.opened === null ? state.last : state.opened + limits.run
    return answer(limits, { ...state, opened: null, closed, given }, 'clock unknown')
  }
  if (state.last !== null && now < state.last) {
    // How long a valve was open, and how long ago, is lost: count a whole shot and start every pause again.
    const given = state.given + (state.opened === null ? 0 : limits.shot)
    return answer(limits, { ...state, last: now, opened: null, closed: now, given }, 'clock went back')
  }
  const passed = countWater(limits, state, now)
  const missing = Number.isNaN(content)
  const dry = switched(passed.dry, content, limits.lower, limits.upper)
  const known = { ...passed, dry, backUps: missing ? passed.backUps : 0 }
  if (known.opened !== null) {
    const shut = { ...known, opened: null, closed: now }
    if (now - known.opened >= limits.run) return answer(limits, shut, 'shot given')
    if (missing && limits.backUps === 0) return answer(limits, shut, 'no reading')
    if (!missing && !dry) return answer(limits, shut, 'wet enough')
    return answer(limits, known, missing ? 'back-up shot' : 'dry')
  }
  const since = known.closed === null ? Infinity : now - known.closed
  const full = known.given + limits.shot > limits.perDay * (1 + 1e-12)
  if (missing) return withoutReading(limits, known, now, since, full)
  if (!dry) return answer(limits, known, 'wet enough')
  if (since < limits.pause) return answer(limits, known, 'waiting')
  if (full) return answer(limits, known, 'day used up')
  return answer(limits, { ...known, opened: now }, 'dry')
}

function withoutReading(limits: CheckedSettings, state: WateringState, now: number, since: number, full: boolean) {
  // Silence from the very beginning is no reason to water: the time counts from the first decision.
  const waited = state.closed === null ? 0 : since
  const first = state.closed === null ? { ...state, closed: now } : state
  if (waited < Math.max(limits.pause, limits.backUpAfter) || state.backUps >= limits.backUps)
    return answer(limits, first, 'no reading')
  if (full) return answer(limits, first, 'day used up')
  return answer(limits, { ...first, opened: now, backUps: state.backUps + 1 }, 'back-up shot')
}

/** Adds what an open valve gave since the last decision, to the day in which it ran. */
function countWater(limits: CheckedSettings, state: WateringState, now: number): WateringState {
  const day = Math.floor((now - limits.dayStart) / 86400)
  const running = state.opened === null || state.last === null ? 0 : now - state.last
  // Nothing says that the valve did close by itself while nobody decided: it is taken to have run on.
  const midnight = limits.dayStart + day * 86400
  const today = Math.min(running, now - midnight)
  // A clock that was set back to an earlier day does not bring the volume of that day back.
  const before = day > state.day && state.last !== null ? 0 : state.given
  return { ...state, last: now, day, given: before + today * limits.litresPerSecond }
}

function answer(
  limits: CheckedSettings,
  state: WateringState,
  reason: WateringReason,
): readonly [WateringState, WateringDecision] {
  const left = state.opened === null || state.last === null ? 0 : limits.run - (state.last - state.opened)
  return [
    state,
    {
      open: state.opened !== null,
      closeAfter: Math.max(0, left) as Duration,
      reason,
      givenToday: state.given as Volume,
    },
  ]
}
