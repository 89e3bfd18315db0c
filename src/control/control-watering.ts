import type { Reducer } from '../quantity/reducer.js'
import { decideReadable } from './watering/decide-readable.js'
import type { WateringDecision } from './watering/decision.js'
import { checkedSettings } from './watering/settings/checked-settings.js'
import type { WateringSettings } from './watering/settings/settings.js'
import { startState } from './watering/start.js'
import type { WateringInput } from './watering/state/input.js'
import type { WateringState } from './watering/state/state.js'

/**
 * Waters in shots inside a dead-band and inside hard limits, and doubts what it is told: a reading decides only while it is new,
 * believable, not frozen, not fallen at once, and while shots show in it; otherwise the zone stays closed or gets its usual use by time,
 * spread over the allowed hours. Whatever is said, water stays inside the limits of a shot, of any 24 hours, of the rest and of the hours.
 *
 * Time is trusted only while the clock runs on at the pace of the decisions; where it stands still, leaps or cannot be read, decisions are
 * counted. Decisions that come at an even pace also bound the water of a day where the clock runs too fast; which hours are allowed, such a clock alone
 * tells, and where decisions come unevenly, or always came by that clock and `decideEvery` is left out, nothing can tell. A state that is not whole is a lost state: it closes, and begins again carefully.
 * A decision that is missing may have opened the valve, as where the machine fails each time it does: it counts as if it had, and the rest begins again.
 *
 * It decides and does not act. What moves water needs a maximum run time and a leak check of its own, which work when this does not.
 *
 * @procedure Checks the state field by field; passes time; counts what ran; takes readings, feedback and people's orders; judges each probe by
 * its band, age, change, fall and by the shots that it showed, and the zone by its balance with the usual use; then closes what must close,
 * and opens for one shot where the zone is dry, or a timed shot is due, and every limit has room for the whole of it.
 * @returns A reducer that takes moments with readings and gives decisions with the reason for each.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other and for unknown words.
 * @source common practice, no source
 * @example
 * const reducer = controlWatering({
 *   lower: waterContent(0.5), upper: waterContent(0.6), minBelievable: waterContent(0.2), maxBelievable: waterContent(0.8),
 *   substrateVolume: litres(10), flow: litresPerHour(4), shot: millilitres(200), maxRunTime: minutes(5), maxPerDay: litres(4),
 *   usualPerDay: litres(2), minRest: minutes(10), probeLag: minutes(15), maxReadingAge: minutes(20), maxUnchanged: hours(4),
 *   maxShotsWithoutRise: 4, allowedHours: [{ from: hours(7), to: hours(18) }], valveClosesByItself: true, inDoubt: 'timed-shots',
 * })
 * const start = 8 * 3600
 * const inputs = [0.53, 0.53, 0.52, 0.52, 0.51, 0.5, 0.5, 0.5].map((level, i) => ({
 *   now: start + 180 * i, readings: [{ waterContent: waterContent(level), time: start + 180 * i }], locked: false,
 * }))
 * const { outputs } = runReducer({ reducer, inputs })
 * outputs.map((decision) => decision.reason).slice(4) // => ['wet-enough', 'dry', 'shot-given', 'resting']
 */
export function controlWatering(settings: WateringSettings): Reducer<WateringState, WateringInput, WateringDecision> {
  const limits = checkedSettings(settings)
  return { start: startState(limits), step: (state, input) => decideReadable(limits, state, input) }
}
