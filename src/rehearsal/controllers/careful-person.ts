import { allowedSeconds, type Hours } from '../../control/watering/settings/hours.js'
import { requireObject } from '../../quantity/guard.js'
import { checkedLimits, isAllowedHour } from '../scenario/rehearsal-limits.js'
import { checkedScenario, type RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import type { Observation, RehearsalTruth, RehearsedController, ValveOrder } from './rehearsed-controller.js'

/** What a careful person remembers; plain data. */
export interface PersonState {
  /** When the shots of the last 24 h began, by their own watch. Unit: s. */
  readonly shots: readonly number[]
  /** What each probe said last where it could be believed, when that came, and since when it has said so. Unit: m³/m³, s. */
  readonly seen: readonly { readonly level: number; readonly time: number; readonly since: number }[]
}

/** What a careful person looks at: everything that comes in, and a watch of their own. */
export interface PersonView {
  readonly observed: Observation
  /** Seconds since the start, and the hour of the day, by the watch. */
  readonly time: number
  readonly hour: number
}

/** Time after which a reading is old, and between two shots. Unit: s. */
const OLD = 1800
const REST = 900
/** A number that stands still for so long is not believed. Unit: s. */
const STILL = 7200
/** More than the usual water, because some days are hot and drain costs less than thirst. */
const MARGIN = 1.15

/**
 * What a careful person with a timetable would do, for comparison: a shot every so often through the allowed hours, so that a day gets
 * a little more than its usual water; sooner where both probes say dry, none where one of them says wet, never more than the limit of a day. A person
 * has a watch, remembers across restarts of a machine what is still there to be read, and does not believe a number that stands still.
 *
 * @procedure Spreads 1.15 of the usual water of a day evenly over the allowed hours; halves or skips the wait by the probes that can be believed.
 * @param scenario - Zone, limits and levels, made by `rehearsalScenario`.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` and `InputError` for a zone or limits that make no sense, as `rehearse` does.
 * @source common practice, no source
 * @example
 * const scenario = rehearsalScenario('coir-dust')
 * const faults = [{ fault: 'probes-silent' as const, from: hours(10) }]
 * const outcome = rehearse({ zone: scenario.zone, limits: scenario.limits, controller: carefulPerson(scenario), days: 3, seed: 7, faults, keepCourse: false })
 * outcome.stressTime // => 0
 */
export function carefulPerson(scenario: RehearsalScenario): RehearsedController<PersonState, PersonView, ValveOrder> {
  requireObject(scenario, 'scenario')
  const { zone, limits, shot } = checkedScenario(scenario)
  const { minBelievable, maxBelievable, allowedHours: hours } = checkedLimits(limits)
  const run = (shot / zone.flow) * 3600
  const wait = usualWait(hours, scenario.usualPerDay, shot)

  const isBelieved = (value: unknown): value is number =>
    typeof value === 'number' && value >= minBelievable && value <= maxBelievable
  /** The wait that the believed probes ask for. */
  const waitFor = (seen: PersonState['seen'], time: number): number => {
    const levels = seen.filter((one) => isGood(one, time)).map(({ level }) => level)
    if (levels.length === 0) return wait
    if (levels.some((level) => level >= scenario.upper)) return Number.POSITIVE_INFINITY
    return levels.every((level) => level <= scenario.lower) ? REST : 2 * wait
  }
  return {
    reducer: {
      start: START,
      step: (state, { observed, time, hour }) => {
        const shots = state.shots.length > 0 && time - state.shots[0]! >= 86400 ? state.shots.slice(1) : state.shots
        const next = { shots, seen: lookedAt(state.seen, observed, time, isBelieved) }
        const since = shots.length === 0 ? Number.POSITIVE_INFINITY : time - shots.at(-1)!
        if (observed.locked || observed.override === 'closed') return [next, { open: false, closeAfter: 0 }]
        if (since < run) return [next, { open: true, closeAfter: run - since }]
        const room = (shots.length + 1) * shot <= limits.maxPerDay
        if (!room || !isAllowedHour(hours, hour) || since < waitFor(next.seen, time))
          return [next, { open: false, closeAfter: 0 }]
        return [
          { ...next, shots: [...shots, time] },
          { open: true, closeAfter: run },
        ]
      },
    },
    input: (observed: Observation, { time, hour }: RehearsalTruth) => ({ observed, time, hour }),
    order: (order) => order,
    restore,
  }
}

/** The wait between shots that spreads the water of a day over the allowed hours. Unit: s. */
function usualWait(hours: readonly Hours[], usualPerDay: number, shot: number): number {
  return Math.max(REST, allowedSeconds(hours) / ((MARGIN * usualPerDay) / shot))
}

function lookedAt(
  before: PersonState['seen'],
  { readings }: Observation,
  time: number,
  isBelieved: (value: unknown) => value is number,
): PersonState['seen'] {
  const seen = [...before]
  for (const { probe, value } of readings) {
    if (!isBelieved(value)) continue
    const last = seen[probe]
    seen[probe] = { level: value, time, since: last?.level === value ? last.since : time }
  }
  return seen
}

function isGood(one: PersonState['seen'][number] | undefined, time: number): boolean {
  return one !== undefined && time - one.time < OLD && time - one.since < STILL
}

const START: PersonState = { shots: [], seen: [] }

/** Notes that are torn are no notes. */
function restore(stored: unknown): PersonState {
  const { shots, seen } = (stored ?? {}) as { readonly [K in keyof PersonState]?: unknown }
  return Array.isArray(shots) && Array.isArray(seen) ? ({ shots, seen } as PersonState) : START
}
