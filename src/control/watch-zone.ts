import { readable } from '../quantity/attempt.js'
import { requireObject } from '../quantity/guard.js'
import type { Reducer } from '../quantity/reducer.js'
import { shown } from './diagnosis/advance/tell.js'
import { advanced } from './diagnosis/advance.js'
import type { Diagnosis } from './diagnosis/cause/cause.js'
import { restoredZoneWatch, salvagedZoneWatch } from './diagnosis/state/restore-zone-watch.js'
import { checkedWatch, type WatchZoneSettings } from './diagnosis/state/settings.js'
import { newZoneState, type ZoneWatchState } from './diagnosis/state/zone-state.js'
import type { WatchZoneInput } from './diagnosis/watch/input.js'

/** Watches a zone and names what is wrong in it. */
export interface ZoneWatch extends Reducer<ZoneWatchState, WatchZoneInput, Diagnosis> {
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => ZoneWatchState
}

/**
 * Watches a zone, shot by shot and reading by reading, and tells what may be wrong in it: a ranked list of causes with the numbers
 * behind each and the check to do by hand, what those numbers rule out, and what cannot be told and why. It learns what is usual from
 * the zone itself: how each probe rises with a shot, what of a shot drains, how each falls in the dark. It waters nothing, and asks for
 * water by hand only where a probe that can be trusted says that there is room.
 *
 * @procedure Shots are told by the order; their rise at each probe, less the fall before them, stands beside volume over volume of medium and
 * beside the usual share of that probe. Two shots in a row without a rise are no water. Less at one probe is its dripper, less at all is told
 * by meter and drain: partial water, a leak of the line, channels. Water and climbs without an order are leaks. Jumps without a shot are
 * probes that were moved, falls in the dark that differ from those of other nights drift, and those in step with the temperature are its doing.
 * @param settings - Probes, medium, flow, believable levels.
 * @returns A reducer that takes moments and gives diagnoses. What is no number is a missing reading; a message that
 * throws when it is read is marked `unreadable` and changes nothing; a stored state that is damaged goes on with its whole parts. Its `restore` names the first field of a state that is wrong.
 * @throws `DomainError` outside the ranges, `InputError` for settings that contradict each other; its step throws `InputError` where no
 * input is given.
 * @validity Tried in few rehearsals of invented zones, as the guide tells; a record that never saw its zone healthy has nothing to compare with.
 * @source common practice, no source
 * @example
 * const zone = watchZone({
 *   probes: ['A', 'B'], substrateVolume: litres(10), flow: litresPerHour(6),
 *   minBelievable: waterContent(0.1), maxBelievable: waterContent(0.9), fullPoint: waterContent(0.74),
 * })
 * // Two shots of two minutes, an hour apart, and both probes stay at 0.68.
 * const inputs = Array.from({ length: 150 }, (_, minute) => ({
 *   now: 60 * minute, open: minute % 60 === 20 || minute % 60 === 21,
 *   readings: ['A', 'B'].map((probe, i) => ({ probe, waterContent: waterContent(0.68 + 0.001 * ((minute + i) % 3)), time: 60 * minute })),
 * }))
 * const { outputs } = runReducer({ reducer: zone, inputs })
 * const { causes, full } = outputs.at(-1)!
 * causes.map(({ code, check }) => [code, check]) // => [['no-water', 'look-at-supply-and-weigh'], ['zone-full', 'weigh-a-container']]
 * full // => { known: true, value: false }
 */
export function watchZone(settings: WatchZoneSettings): ZoneWatch {
  const zone = checkedWatch(settings)
  const probes = zone.names.length
  const start = newZoneState(probes)
  // States that were made here need no check; what came from elsewhere is checked once.
  const made = new WeakSet<object>([start])
  return {
    start,
    restore: (stored) => restoredZoneWatch(stored, probes),
    step: (stored, input) => {
      // A message that throws is told as unreadable; none at all is a slip in the program.
      if (typeof input !== 'object' || input === null) requireObject(input, 'input')
      const state = made.has(stored ?? {}) ? stored : salvagedZoneWatch(stored, probes)
      const step = readable(() => advanced(state, input, zone))
      if (step === undefined) return [state, { ...shown(state, zone), unreadable: true }]
      made.add(step[0])
      return step
    },
  }
}
