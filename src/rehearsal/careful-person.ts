import { requireObject } from '../quantity/require-object.js'
import { type CheckedLimits, isAllowedHour } from './rehearsal-limits.js'
import { checkedScene, type RehearsalScene } from './rehearsal-scene.js'
import type { Observation, RehearsedController, ValveOrder } from './rehearsed-controller.js'

/** What a careful person remembers; plain data. */
export interface PersonState {
  /** The clock at the last look. Unit: s. */
  readonly last: number | null
  /** When the shots of the last 24 h began. Unit: s. */
  readonly shots: readonly number[]
  /** What each probe said last, and when, where it could be believed. Unit: m³/m³, s. */
  readonly seen: readonly { readonly level: number; readonly time: number }[]
}

/** Time after which a reading is old, and between two shots. Unit: s. */
const OLD = 1800
const REST = 900
/** More than the usual water, because some days are hot and drain costs less than thirst. */
const MARGIN = 1.15

/**
 * What a careful person with a timetable would do, for comparison: a shot every so often through the allowed hours, so that a day gets
 * a little more than its usual water; sooner where both probes say dry, none where one of them says wet, never more than the limit of a day. A person
 * who finds the clock unreadable waits.
 *
 * @procedure Spreads 1.15 of the usual water of a day evenly over the allowed hours; halves or skips the wait by the probes that can be believed.
 * @param scene - Zone, limits and levels, made by `rehearsalScene`.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` and `InputError` for a zone or limits that make no sense, as `rehearse` does.
 * @source common practice, no source
 * @example
 * ```ts
 * const scene = rehearsalScene('coir dust')
 * const faults = [{ fault: 'probes-silent' as const, from: hours(10) }]
 * const outcome = rehearse({ zone: scene.zone, limits: scene.limits, controller: carefulPerson(scene), days: 3, seed: 7, faults, keepCourse: false })
 * outcome.stressTime // => 0
 * ```
 */
export function carefulPerson(scene: RehearsalScene): RehearsedController<PersonState, Observation, ValveOrder> {
  requireObject(scene, 'scene')
  const { zone, limits, shot } = checkedScene(scene)
  const { opensFrom = 0, opensUntil = 24, believedFrom = 0.05, believedTo = 0.98 } = limits
  const hours = { opensFrom, opensUntil } as CheckedLimits
  const run = (shot / zone.flow) * 3600
  const long = (opensUntil > opensFrom ? opensUntil - opensFrom : 24 - opensFrom + opensUntil) * 3600
  const wait = Math.max(REST, long / ((MARGIN * scene.usualPerDay) / shot))

  const look = (state: PersonState, { now, readings }: Observation): PersonState['seen'] => {
    const seen = [...state.seen]
    for (const { probe, value, time } of readings)
      if (typeof value === 'number' && value >= believedFrom && value <= believedTo && time <= now)
        seen[probe] = { level: value, time }
    return seen
  }
  /** The wait that the believed probes ask for. */
  const waitFor = (seen: PersonState['seen'], now: number): number => {
    const levels = seen.filter((one) => one !== undefined && now - one.time < OLD).map(({ level }) => level)
    if (levels.length === 0) return wait
    if (levels.some((level) => level >= scene.upper)) return Number.POSITIVE_INFINITY
    return levels.every((level) => level <= scene.lower) ? REST : 2 * wait
  }
  return {
    reducer: {
      start: { last: null, shots: [], seen: [] },
      step: (state, observed) => {
        const { now, locked, override } = observed
        const closed: ValveOrder = { open: false, closeAfter: 0 }
        if (!Number.isFinite(now)) return [{ ...state, seen: [] }, closed]
        // After a clock that was set back nobody knows how long ago a shot was: all of them count from now.
        if (state.last !== null && now < state.last)
          return [{ last: now, shots: state.shots.map(() => now - run), seen: [] }, closed]
        const shots = state.shots.length > 0 && now - state.shots[0]! >= 86400 ? state.shots.slice(1) : state.shots
        const next = { last: now, shots, seen: look(state, observed) }
        const since = shots.length === 0 ? Number.POSITIVE_INFINITY : now - shots.at(-1)!
        if (locked || override === 'closed') return [next, closed]
        if (since < run) return [next, { open: true, closeAfter: run - since }]
        const hour = (((now / 3600) % 24) + 24) % 24
        const room = (shots.length + 1) * shot <= limits.maxPerDay
        if (!room || !isAllowedHour(hours, hour) || since < waitFor(next.seen, now)) return [next, closed]
        return [
          { ...next, shots: [...shots, now] },
          { open: true, closeAfter: run },
        ]
      },
    },
    input: (observed) => observed,
    order: (order) => order,
  }
}
