import type { Domain } from '../quantity/domain.js'
import type { Duration } from '../quantity/duration.js'
import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'
import { numberIn } from '../quantity/guard.js'
import type { Volume } from '../quantity/volume.js'
import type { WaterContent } from '../quantity/water-content.js'
import { TIME } from './domains.js'

const VOLUME: Domain = {
  quantity: 'volume of water',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more litres',
}
const LEVEL: Domain = {
  quantity: 'water content limit',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a volumetric water content',
}

/** A shot that somebody or something wants to give. */
export interface WateringRequest {
  /** Its volume. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
  /** How long the valve would be open. Unit: s. Range: [0, ∞). */
  readonly runTime: Duration
}

/** Limits that no shot may pass. */
export interface SafeLimits {
  /** Most volume of a shot. Unit: L. Range: [0, ∞). */
  readonly maxPerShot: Volume
  /** Most volume in a day. Unit: L. Range: [0, ∞). */
  readonly maxPerDay: Volume
  /** Longest time that a valve may be open. Unit: s. Range: [0, ∞). */
  readonly maxRunTime: Duration
  /** Least time between two shots. Unit: s. Range: [0, ∞). */
  readonly minRest: Duration
  /** An older reading is not acted on. Unit: s. Range: [0, ∞). */
  readonly oldestReading: Duration
  /** No water at this water content and above. Unit: m³/m³. Range: [0, 1]. */
  readonly fullPoint: WaterContent
}

/** What is known at the moment of the request. What is not known is left out and speaks against watering. */
export interface WateringFacts {
  /** Water given in this day. Unit: L. Range: [0, ∞). */
  readonly givenToday?: Volume
  /** Time since the last shot ended. Unit: s. Range: [0, ∞). */
  readonly sinceLastShot?: Duration
  /** Newest reading. Unit: m³/m³. Range: any. */
  readonly content?: WaterContent
  /** Its age. Unit: s. Range: [0, ∞). */
  readonly age?: Duration
  /** Its quality flag: 1 where it passed. Unit: 1. Range: any. */
  readonly flag?: number
  /** Whether the clock ran on since the last shot, without gap, step or restart. */
  readonly clockRanOn?: boolean
  /** Whether water flows, or drain runs, though every valve should be closed. */
  readonly flowWhileClosed?: boolean
  /** Whether somebody locked the zone, to work on it. */
  readonly locked?: boolean
  /** Alarms that forbid watering, by name. */
  readonly alarms?: readonly string[]
}

/** A request, its limits and what is known. */
export interface CheckWateringInput {
  /** What is wanted. */
  readonly request: WateringRequest
  /** The limits. */
  readonly limits: SafeLimits
  /** What is known. */
  readonly facts: WateringFacts
  /** A small shot by time, given because there is no reading: reading and age are not asked for. */
  readonly backUp?: boolean
}

/** Whether a shot may be given, and every reason why not. */
export interface WateringCheck {
  readonly allowed: boolean
  /** Why not; empty only when it is allowed. */
  readonly refusals: readonly Finding[]
}

/**
 * Refuses a shot that is not known to be safe, with every reason. What is not known counts as unsafe. It stands between whatever
 * plans water and whatever opens valves, and never opens one itself.
 *
 * @procedure Compares the request with each limit and each known fact.
 * @param input - Request, limits and facts.
 * @returns Whether it is allowed, and the reasons against it.
 * @throws `DomainError` outside the ranges, `InputError` for a volume without run time or a run time without volume.
 * @source common practice, no source
 * @example
 * ```ts
 * const limits = {
 *   maxPerShot: litres(0.5), maxPerDay: litres(5), maxRunTime: minutes(10), minRest: minutes(15),
 *   oldestReading: minutes(20), fullPoint: waterContent(0.62),
 * }
 * const facts = {
 *   givenToday: litres(4.8), sinceLastShot: minutes(40), content: waterContent(0.55), age: minutes(3), flag: 1,
 *   clockRanOn: true, flowWhileClosed: false, locked: false, alarms: [],
 * }
 * const verdict = checkWatering({ request: { volume: litres(0.4), runTime: minutes(6) }, limits, facts })
 * verdict.allowed // => false
 * verdict.refusals.map((refusal) => refusal.code) // => ['day-used-up']
 * ```
 */
export function checkWatering({ request, limits, facts, backUp = false }: CheckWateringInput): WateringCheck {
  const volume = numberIn(request.volume, VOLUME, 'volume')
  const runTime = numberIn(request.runTime, TIME, 'runTime')
  if (volume > 0 !== runTime > 0)
    throw new InputError('request', `asks for ${volume} L in ${runTime} s`, 'give the volume and its run time')
  const refusals: Finding[] = []
  const refuse = (code: string, message: string, level: Finding['level'] = 'caution') =>
    refusals.push({ code, level, message, source: 'common practice, no source' })
  const over = (value: number, limit: number, code: string, what: string, unit: string) => {
    if (value > limit) refuse(code, `${what} ${round(value)} ${unit} is above the limit of ${round(limit)} ${unit}`)
  }
  over(volume, numberIn(limits.maxPerShot, VOLUME, 'maxPerShot'), 'shot-too-large', 'the shot of', 'L')
  over(runTime, numberIn(limits.maxRunTime, TIME, 'maxRunTime'), 'run-too-long', 'the run time of', 's')
  const perDay = numberIn(limits.maxPerDay, VOLUME, 'maxPerDay')
  if (facts.givenToday === undefined) refuse('given-unknown', 'it is not known how much was given today')
  else
    over(numberIn(facts.givenToday, VOLUME, 'givenToday') + volume, perDay, 'day-used-up', 'the sum of the day of', 'L')
  const minOff = numberIn(limits.minRest, TIME, 'minRest')
  if (facts.sinceLastShot === undefined) refuse('last-shot-unknown', 'it is not known when the last shot ended')
  else if (numberIn(facts.sinceLastShot, TIME, 'sinceLastShot') < minOff)
    refuse('too-soon', `the last shot ended ${round(facts.sinceLastShot)} s ago; it takes ${round(minOff)} s`)
  const oldest = numberIn(limits.oldestReading, TIME, 'oldestReading')
  const full = numberIn(limits.fullPoint, LEVEL, 'fullPoint')
  const age = facts.age === undefined ? undefined : numberIn(facts.age, TIME, 'age')
  // A trusted reading that says "full" forbids a back-up shot as well.
  const fresh = age !== undefined && age <= oldest && facts.flag === 1
  const known = facts.content !== undefined && !Number.isNaN(facts.content)
  if (!backUp) {
    if (!known) refuse('no-reading', 'there is no reading')
    else if (age === undefined || age > oldest)
      refuse('old-reading', `the newest reading is ${age === undefined ? 'of unknown age' : `${round(age)} s old`}`)
    else if (facts.flag !== 1) refuse('doubtful-reading', `the reading carries the flag ${facts.flag ?? 'none'}`)
  }
  if (known && fresh && !((facts.content as number) < full))
    refuse('full', `the reading of ${round(facts.content as number)} m³/m³ is at the full point or above it`)
  if (facts.clockRanOn !== true)
    refuse('clock-doubtful', 'it is not known that the clock ran on since the last shot; a catch-up could water twice')
  if (facts.flowWhileClosed === undefined) refuse('leak-unknown', 'it is not known whether water flows while closed')
  else if (facts.flowWhileClosed)
    refuse('flow-while-closed', 'water flows though every valve should be closed: shut the main valve', 'danger')
  if (facts.locked === undefined) refuse('lock-unknown', 'it is not known whether somebody works on the zone', 'danger')
  else if (facts.locked) refuse('locked', 'the zone is locked: somebody may be working on it', 'danger')
  if (facts.alarms === undefined) refuse('alarms-unknown', 'it is not known which alarms stand')
  for (const alarm of facts.alarms ?? []) refuse('alarm', `the alarm "${alarm}" forbids watering`)
  return { allowed: refusals.length === 0, refusals }
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000
}
