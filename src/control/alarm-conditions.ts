import { readOrRefuse } from '../quantity/attempt.js'
import type { Duration } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject, requireRows } from '../quantity/guard.js'
import { type NamesOf, onlyNames } from '../quantity/one-of.js'
import type { ForecastTimeToLevel } from '../record/forecast/forecast-time-to-level.js'
import type { Cause, CauseCode } from './diagnosis/cause/cause.js'
import { MIN_WEIGHT, WARNED_AHEAD } from './domains.js'
import type { AlarmWeight, OfDiagnosis } from './terms.js'

/** How urgent each cause is: `high` can flood the house, burn roots or dry the crop within hours. */
const PRIORITIES: { readonly [Code in CauseCode]: 'high' | 'medium' | 'low' } = {
  'no-water': 'high',
  'valve-stuck-open': 'high',
  'leak-between-shots': 'high',
  'line-leak': 'high',
  'feed-tank-wrong': 'high',
  'no-readings': 'high',
  'clock-wrong': 'high',
  'partial-water': 'medium',
  'clogged-dripper': 'medium',
  'zone-full': 'medium',
  channelling: 'medium',
  'probe-dead': 'medium',
  'probe-lifted': 'medium',
  'probe-frozen': 'medium',
  'probes-swapped': 'medium',
  'probe-reinserted': 'medium',
  'unit-slip': 'medium',
  'probe-drifting': 'low',
  'probe-noisy': 'low',
  'salt-driven': 'low',
  'temperature-driven': 'low',
  'drain-gauge-wrong': 'low',
  'flow-meter-wrong': 'low',
  'watered-by-hand': 'low',
  'power-cut': 'low',
}

/** A diagnosis, and what is foreseen. */
export interface AlarmConditionsInput extends OfDiagnosis, AlarmWeight {
  /** When the refill point is reached if nobody waters, by `forecastTimeToLevel`; left out where nothing is forecast. */
  readonly untilRefill?: ForecastTimeToLevel
  /** The alarm comes so long before the refill point is likely to be reached; two hours by default. Unit: s. Range: [0, 172800]. */
  readonly warnAhead?: Duration
}

const NAMES: NamesOf<AlarmConditionsInput> = { untilRefill: 1, warnAhead: 1, diagnosis: 1, minWeight: 1 }

/** What one alarm should be told. */
export interface AlarmCondition {
  readonly name: CauseCode | 'refill-point-ahead'
  readonly priority: 'high' | 'medium' | 'low'
  /** For `alarmLifeCycle`: true, false, or left out where nobody can tell. */
  readonly condition?: boolean
  readonly cause?: Cause
  /** Time until the refill point is likely to be reached. Unit: s. */
  readonly expected?: Duration
}

/**
 * What each alarm of a zone should be told after a diagnosis: whether its condition is there, is not, or cannot be told, and how urgent
 * it is. One more alarm looks ahead: the refill point is likely to be reached within a time that lets somebody come before.
 *
 * @procedure A cause of enough weight is a condition that is there; one that cannot be told changes nothing; every other is gone. The alarm
 * by forecast counts from the early end of the band that holds nine of ten outcomes.
 * @param input - Diagnosis, least weight and forecast.
 * @returns One entry for each alarm, always in the same order: feed each to a reducer of `alarmLifeCycle` of its own, and what becomes
 * unacknowledged to `announceAlarms`.
 * @throws `DomainError` outside the ranges, `InputError` for a missing input and for one of which a part throws when it is read.
 * @source common practice, no source
 * @example
 * const zone = watchZone({
 *   probes: ['A'], substrateVolume: litres(10), flow: litresPerHour(6),
 *   minBelievable: waterContent(0.1), maxBelievable: waterContent(0.9), fullPoint: waterContent(0.74),
 * })
 * const [, diagnosis] = zone.step(zone.start, { now: 0, readings: [], open: false })
 * const untilRefill = {
 *   known: true as const, from: waterContent(0.6), time: hours(3),
 *   band50: { earliest: hours(2.5) }, band90: { earliest: hours(1.5) },
 * }
 * const alarms = alarmConditions({ diagnosis, untilRefill })
 * alarms.find(({ name }) => name === 'refill-point-ahead') // => { priority: 'medium', condition: true, expected: 10800 }
 */
export function alarmConditions(input: AlarmConditionsInput): AlarmCondition[] {
  return readOrRefuse('input', () => conditionsOf(input))
}

function conditionsOf(input: AlarmConditionsInput): AlarmCondition[] {
  onlyNames(input, NAMES, 'input')
  requireObject(input.diagnosis, 'diagnosis')
  const min = numberIn(optionOr(input.minWeight, 0.6), MIN_WEIGHT, 'minWeight')
  const ahead = numberIn(optionOr(input.warnAhead, 7200), WARNED_AHEAD, 'warnAhead')
  const { causes, cannotTell } = input.diagnosis
  requireRows(causes, 'diagnosis.causes')
  requireRows(cannotTell, 'diagnosis.cannotTell')
  const codes = Object.keys(PRIORITIES) as CauseCode[]
  const alarms = codes.map((name): AlarmCondition => {
    const priority = PRIORITIES[name]
    const cause = causes.find(({ code }) => code === name)
    // A weight that is no number must not keep an alarm back.
    if (cause !== undefined && !(cause.weight < min)) return { name, priority, condition: true, cause }
    if (cannotTell.some(({ code }) => code === name)) return { name, priority }
    return { name, priority, condition: false }
  })
  return [...alarms, refillAhead(input.untilRefill, ahead)]
}

/** Draining and shots pass, and are no dry-down: nothing changes meanwhile. */
function refillAhead(until: ForecastTimeToLevel | undefined, ahead: number): AlarmCondition {
  const alarm = { name: 'refill-point-ahead', priority: 'medium' } as const
  if (until === undefined) return alarm
  requireObject(until, 'untilRefill')
  if (until.known) {
    requireObject(until.band90, 'untilRefill.band90')
    // A forecast without numbers tells nothing.
    if (!Number.isFinite(until.time) || !Number.isFinite(until.band90.earliest)) return alarm
  }
  if (until.known) return { ...alarm, condition: until.band90.earliest <= ahead, expected: until.time }
  if (until.reason !== 'beyond-two-days') return alarm
  return { ...alarm, condition: until.earliest !== undefined && until.earliest <= ahead }
}
