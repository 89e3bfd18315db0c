import { readable, readOrRefuse } from '../quantity/attempt.js'
import type { Duration } from '../quantity/generated/kinds.js'
import { numberIn, optionOr } from '../quantity/guard.js'
import { type NamesOf, onlyNames } from '../quantity/one-of.js'
import type { Reducer } from '../quantity/reducer.js'
import type { ForecastTimeToLevel } from '../record/forecast/forecast-time-to-level.js'
import { type AlarmInput, type AlarmReport, type AlarmState, alarmLifeCycle } from './alarm.js'
import { type AlarmCondition, alarmConditions } from './alarm-conditions.js'
import { nothingTold } from './diagnosis/cause/cause.js'
import { WARNED_AHEAD, WEIGHT_BAND } from './domains.js'
import type { AlarmWeight, AskedNow, OfDiagnosis } from './terms.js'

/** When the alarms of a zone are raised, and when they return to normal. */
export interface ZoneAlarmSettings extends AlarmWeight {
  /** On-delay: a condition must last so long before its alarm is raised; none by default, since the diagnosis waits itself. Unit: s. Range: [0, 86400]. */
  readonly onDelay?: Duration
  /** Off-delay: it must be gone so long before the alarm returns to normal; thirty minutes by default. Unit: s. Range: [0, 86400]. */
  readonly offDelay?: Duration
  /** Longest time for which an alarm can be shelved; eight hours by default. Unit: s. Range: (0, 604800]. */
  readonly maxShelving?: Duration
  /** Dead-band: an alarm that is there stays until the weight has fallen by so much more; 0.1 by default. Unit: 1. Range: [0, 0.5]. */
  readonly deadBand?: number
  /** The alarm by forecast comes so long before the refill point is likely to be reached; two hours by default. Unit: s. Range: [0, 172800]. */
  readonly warnAhead?: Duration
}

const NAMES: NamesOf<ZoneAlarmSettings> = {
  onDelay: 1,
  offDelay: 1,
  maxShelving: 1,
  deadBand: 1,
  warnAhead: 1,
  minWeight: 1,
}

/** What a moment brings: a diagnosis, a forecast, somebody who acts on one alarm. */
export interface ZoneAlarmsInput extends AskedNow, OfDiagnosis {
  /** When the refill point is reached if nobody waters, by `forecastTimeToLevel`. */
  readonly untilRefill?: ForecastTimeToLevel
  /** What somebody does to one alarm. */
  readonly action?: Pick<AlarmInput, 'action' | 'shelveFor'> & { readonly name: AlarmCondition['name'] }
}

/** States of the alarms that are not at their beginning, by name: plain data. */
export interface ZoneAlarmsState {
  readonly alarms: Readonly<Partial<Record<AlarmCondition['name'], AlarmState>>>
}

/** One alarm that is not normal, or has just become so. */
export interface ZoneAlarm extends AlarmReport, Omit<AlarmCondition, 'condition'> {}

/** A forecast must be better by so much before its alarm returns to normal. Unit: s. */
const LATER = 1800

/**
 * The alarms of a zone through their life cycle, with delays and a dead-band so that a cause that comes and goes, or a weight near the
 * least, raises its alarm once and not again and again.
 *
 * @procedure Takes the conditions of `alarmConditions`; for an alarm that is there with the weight less the dead-band, and with half an hour
 * more ahead; steps an `alarmLifeCycle` for each.
 * @param settings - Delays, dead-band and least weight. Range: any.
 * @returns A reducer that takes diagnoses and actions and gives the alarms that are not normal; feed what is announced to `announceAlarms`.
 * @throws `DomainError` outside the ranges; its step throws `InputError` for a missing diagnosis, an unknown action, and an input
 * of which a part throws when it is read: keep the state of before.
 * @source isa-18-2-2016, on-delay, off-delay and deadband, as restated in public documentation; the defaults are common practice, no source
 * @example
 * const reducer = zoneAlarms({ offDelay: minutes(30) })
 * const cause = { code: 'no-water' as const, level: 'danger' as const, weight: 0.8, evidence: [], check: 'look-at-supply' as const, since: 0 }
 * const at = (minute: number, there: boolean) =>
 *   ({ now: 60 * minute, diagnosis: { causes: there ? [cause] : [], ruledOut: [], cannotTell: [], full: { known: false, reason: 'no-trusted-probe' } } })
 * // The cause goes away for ten minutes and comes again: one announcement.
 * const inputs = [at(0, true), at(10, false), at(20, true), at(30, true)]
 * runReducer({ reducer, inputs }).outputs.flat().filter(({ announce }) => announce).length // => 1
 */
export function zoneAlarms(settings: ZoneAlarmSettings): Reducer<ZoneAlarmsState, ZoneAlarmsInput, ZoneAlarm[]> {
  const { onDelay, offDelay, maxShelving, minWeight, warnAhead, band } = readOrRefuse('settings', () => read(settings))
  const life = alarmLifeCycle({ onDelay, offDelay, maxShelving })
  const raised = { minWeight, warnAhead }
  // Refuses what is outside now, not at the first diagnosis.
  alarmConditions({ diagnosis: nothingTold(), ...raised })
  const held = {
    minWeight: Math.max(0, minWeight - band),
    warnAhead: Math.min(WARNED_AHEAD.max, warnAhead + LATER) as Duration,
  }
  const stepped = (state: ZoneAlarmsState, input: ZoneAlarmsInput): [ZoneAlarmsState, ZoneAlarm[]] => {
    const { now, diagnosis, untilRefill, action } = input
    const told = { diagnosis, ...(untilRefill === undefined ? {} : { untilRefill }) }
    const lenient = alarmConditions({ ...told, ...held })
    const alarms: Partial<Record<AlarmCondition['name'], AlarmState>> = {}
    const reports: ZoneAlarm[] = []
    alarmConditions({ ...told, ...raised }).forEach((strict, i) => {
      const { name } = strict
      // What throws in a stored state is lost: the alarm is raised again rather than kept back.
      const before = readable(() => state?.alarms?.[name] && { ...state.alarms[name] }) ?? life.start
      const { condition, ...about } = before.condition === true ? lenient[i]! : strict
      const [next, report] = life.step(before, {
        now,
        ...(condition === undefined ? {} : { condition }),
        ...(action?.name === name ? action : {}),
      })
      if (next.phase !== 'normal' || next.condition || next.active) alarms[name] = next
      if (report.phase !== 'normal' || report.changed) reports.push({ ...about, ...report })
    })
    return [{ alarms }, reports]
  }
  return {
    start: { alarms: {} },
    step: (state, input) => readOrRefuse('input', () => stepped(state, input)),
  }
}

function read(settings: ZoneAlarmSettings) {
  onlyNames(settings, NAMES, 'settings')
  const { onDelay = 0 as Duration, offDelay = 1800 as Duration, maxShelving = 28800 as Duration } = settings
  const { minWeight = 0.6, warnAhead = 7200 as Duration } = settings
  const band = numberIn(optionOr(settings.deadBand, 0.1), WEIGHT_BAND, 'deadBand')
  return { onDelay, offDelay, maxShelving, minWeight, warnAhead, band }
}
