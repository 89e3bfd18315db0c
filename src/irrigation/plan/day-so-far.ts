import type { Instant } from '../../quantity/calendar.js'
import { INSTANT, VALVE_TIME, WATER_GIVEN } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { listOf } from '../list-of.js'
import type { DayPlanRequest } from './plan-request.js'

/** A shot that was really given. */
export interface GivenShot {
  /** When it began. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly time: Instant
  /** Water for the container. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
  /** How long the valve was, or will be, open; by default as long as its emitters need for the volume. Unit: s. Range: [0, 86400]. */
  readonly runTime?: Duration
}

/** What has happened since a plan began. */
export interface DaySoFar {
  /** The moment from which to plan anew; new shots begin with the next step. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly now: Instant
  /** All shots that were really given, the one that runs now among them with its whole volume. */
  readonly given: readonly GivenShot[]
  /** Water content that is measured now, where the prediction should not be trusted. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent?: WaterContent
}

/** The shots that were given, in order; refused where one cannot have been. */
export function givenOf(request: DayPlanRequest, given: readonly GivenShot[], now: number): GivenShot[] {
  listOf(given, 'soFar.given').forEach((shot, i) => {
    requireObject(shot, `soFar.given[${i}]`)
    const { time, volume, runTime } = shot
    numberIn(time, INSTANT, 'time')
    numberIn(volume, WATER_GIVEN, 'volume')
    if (runTime !== undefined) numberIn(runTime, VALVE_TIME, 'runTime')
    const refuse = (problem: string, hint: string) => {
      throw new InputError(`soFar.given[${i}]`, problem, hint)
    }
    if (time < request.start) refuse('lies before the plan', 'leave it out, or plan from an earlier moment')
    if (time > now) refuse('lies after the moment from which to plan', 'give shots of the past only, in seconds')
    if (volume > request.container.substrateVolume)
      refuse(`gives ${volume} L to ${request.container.substrateVolume} L of medium`, 'give litres for one container')
  })
  return [...given].sort((a, b) => a.time - b.time)
}
