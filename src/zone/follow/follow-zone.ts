import { requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import type { Reducer } from '../../quantity/reducer.js'
import { checkZone } from '../checked-zone.js'
import type { ZoneDay } from '../day/zone-day.js'
import { noMemory } from '../day/zone-memory.js'
import { NO_ROWS } from '../record/kept-rows.js'
import { farAhead, timeIn } from '../record/order-of-time.js'
import type { ZoneEntry } from '../record/zone-record.js'
import { ENTRY_KINDS, type ZoneFollowState } from '../restore/follow-state.js'
import { restoredFollow } from '../restore/restore-zone.js'
import type { Zone } from '../zone.js'
import { rowOf } from './row-of-entry.js'
import { settled, withoutTime, withReading, withTime } from './take-in-entry.js'
import { closed } from './turn-day.js'

/** `reviewZone` for inputs that come in one by one. */
export interface ZoneFollower extends Reducer<ZoneFollowState, ZoneEntry, readonly ZoneDay[]> {
  /** The review of the day that is under way, as far as it has come. */
  readonly finish: (state: ZoneFollowState) => readonly ZoneDay[]
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => ZoneFollowState
}

/**
 * Follows a zone reading by reading, and reviews each local day when it has ended: what `reviewZone` gives for the same record, to the
 * last bit, however the record is cut and whether or not the state went through JSON in between.
 *
 * A reading with a time far ahead of the last one waits until six hours of them have come; if time goes on where it was before, they are
 * left out and counted. A clock that is wrong for longer shows only by another clock: where you have one, hold back what claims to come
 * from the future.
 *
 * The state holds two days of readings and the memory of the zone, no more; with two probes and a reading every five minutes that is
 * about 30 kB of JSON.
 *
 * @procedure Keeps the rows of the day and of the 24 hours before it; the first reading of a later day ends the day and has it reviewed.
 * Climate and log may come late, as long as their day is under way.
 * @param zone - The zone. Unit: any. Range: any.
 * @returns A reducer that takes readings, climate and entries of the watering log in the order of time, and gives the days that ended.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for parts that contradict each other.
 * @source definition
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const follower = followZone(zone)
 * const time = Array.from({ length: 300 }, (_, i) => i * 300)
 * const inputs = entriesOfRecord({ time, probes: { A: time.map((t) => 0.6 - 1e-7 * t) } })
 * const { state, outputs } = runReducer({ reducer: follower, inputs })
 * outputs.flat().length // => 1
 * follower.finish(state).map((day) => day.readings) // => [12]
 */
export function followZone(zone: Zone): ZoneFollower {
  const checked = checkZone(zone)
  const far = farAhead(checked)
  return {
    start: {
      day: null,
      reading: NO_ROWS,
      climate: NO_ROWS,
      watering: NO_ROWS,
      forecast: NO_ROWS,
      held: [],
      outOfOrder: [],
      leftOut: [],
      newest: { climate: null, watering: null, forecast: null },
      memory: noMemory(),
    },
    step: (state, input) => {
      requireObject(input, 'input')
      oneOf(input.kind, ENTRY_KINDS, 'kind')
      const time = timeIn(input.time, 'time')
      if (input.kind === 'reading') return withReading(checked, state, rowOf(checked, input, time), far)
      const row = rowOf(checked, input, time)
      return [Number.isNaN(time) ? withoutTime(state, input.kind) : withTime(state, [input.kind, row]), []]
    },
    finish: (state) => {
      const [last, ended] = settled(checked, state)
      return [...ended, ...closed(checked, last, false).days]
    },
    restore: (stored) => restoredFollow(checked, stored),
  }
}
