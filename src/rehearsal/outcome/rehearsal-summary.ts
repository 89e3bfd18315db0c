import { maxOf } from '../../quantity/extremes.js'
import type { Duration, Volume } from '../../quantity/generated/kinds.js'
import type { FaultName } from '../faults/fault-table.js'
import { faultRow } from '../faults/fault-table.js'
import type { RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import type { RehearsalOutcome } from './rehearsal-outcome.js'
import type { NamedShare, TimeToAlarm } from './rehearsal-reason.js'

/** What came of many rehearsals with the same faults. */
export interface RehearsalSummary {
  readonly faults: readonly FaultName[]
  /** Unit: 1. */
  readonly runs: number
  /** Water that the controller wanted in the worst 24 h of all, as a share of the limit. Unit: 1. */
  readonly worstDayShare: number
  /** The same with what passed against its will. Unit: 1. */
  readonly worstDayShareInAll: number
  /** Longest opening as a share of its limit. Unit: 1. */
  readonly maxOpeningShare: number
  /** Openings outside the allowed hours, by the controller's own clock, in all runs. Unit: 1. */
  readonly outsideHoursByOwnClock: number
  /** Openings outside the allowed hours, by the true clock, in all runs. Unit: 1. */
  readonly outsideHours: number
  /** Openings outside them by both clocks, in all runs: with a wrong clock either of the two can be right. Unit: 1. */
  readonly outsideByBothClocks: number
  /** Mean openings without a reading that could be believed. Unit: 1. */
  readonly blindOpenings: number
  /** Mean time below the stress level. Unit: s. */
  readonly stressTime: Duration
  /** Most of it in one run. Unit: s. */
  readonly maxStressTime: Duration
  /** Mean time above the full level. Unit: s. */
  readonly fullTime: Duration
  /** Mean water through the valve. Unit: L. */
  readonly given: Volume
  /** Mean use of the plants. Unit: L. */
  readonly used: Volume
  /** Share of faults that an alarm named. */
  readonly namedShare: NamedShare
  /** Share of faults that one of the first two alarms named. */
  readonly namedFirstShare: NamedShare
  /** Median time to the right alarm, of the faults that were named. */
  readonly timeToAlarm: TimeToAlarm
  /** Mean number of false alarms. Unit: 1. */
  readonly falseAlarms: number
  /** Calls in which the controller threw, in all runs. Unit: 1. */
  readonly refusals: number
  /** Largest amount of water that a simulation lost or made. Unit: L. */
  readonly imbalance: Volume
  /** Place of the scenario and seed of the run with the worst 24 h. */
  readonly worstDayIn: RunPlace
  /** Place of the scenario and seed of the run with the most stress. */
  readonly maxStressIn: RunPlace
}

/** Which run it was, so that it can be seen again. */
export interface RunPlace {
  /** Number of the scenario in the list. Unit: 1. */
  readonly scenario: number
  /** Unit: 1. */
  readonly seed: number
}

/** One run with the scenario that it was in. */
export interface Run {
  readonly outcome: RehearsalOutcome
  readonly scenario: RehearsalScenario
  readonly place: number
}

export function summaryOf(faults: readonly FaultName[], runs: readonly Run[]): RehearsalSummary {
  const sum = (of: (run: Run) => number) => runs.reduce((total, run) => total + of(run), 0)
  const mean = (of: (run: Run) => number) => sum(of) / runs.length
  const worst = (of: (run: Run) => number) => runs.reduce((max, run) => (of(run) > of(max) ? run : max))
  const placeOf = ({ outcome, place }: Run): RunPlace => ({ scenario: place, seed: outcome.seed })
  const dayShare = ({ outcome, scenario }: Run) => outcome.worstDay / scenario.limits.maxPerDay
  const inAll = ({ outcome, scenario }: Run) => outcome.worstDayInAll / scenario.limits.maxPerDay
  const openingShare = ({ outcome, scenario }: Run) => outcome.maxOpening / scenario.limits.maxRunTime
  const stress = ({ outcome }: Run) => outcome.stressTime
  return {
    faults,
    runs: runs.length,
    worstDayShare: dayShare(worst(dayShare)),
    worstDayShareInAll: inAll(worst(inAll)),
    maxOpeningShare: openingShare(worst(openingShare)),
    outsideHoursByOwnClock: sum(({ outcome }) => outcome.outsideHoursByOwnClock),
    outsideHours: sum(({ outcome }) => outcome.outsideHours),
    outsideByBothClocks: sum(
      ({ outcome }) => outcome.openings.filter((one) => one.outside && one.outsideByOwnClock).length,
    ),
    blindOpenings: mean(({ outcome }) => outcome.blindOpenings),
    stressTime: mean(stress) as Duration,
    maxStressTime: stress(worst(stress)) as Duration,
    fullTime: mean(({ outcome }) => outcome.fullTime) as Duration,
    given: mean(({ outcome }) => outcome.given) as Volume,
    used: mean(({ outcome }) => outcome.used) as Volume,
    ...alarmsOf(faults, runs),
    falseAlarms: mean(({ outcome }) => outcome.falseAlarms),
    refusals: sum(({ outcome }) => outcome.refusals),
    imbalance: maxOf(runs.map(({ outcome }) => Math.abs(outcome.imbalance))) as Volume,
    worstDayIn: placeOf(worst(dayShare)),
    maxStressIn: placeOf(worst(stress)),
  }
}

/** How often and how soon the faults were named. */
function alarmsOf(
  faults: readonly FaultName[],
  runs: readonly Run[],
): Pick<RehearsalSummary, 'namedShare' | 'namedFirstShare' | 'timeToAlarm'> {
  const loud = faults.flatMap((name, i) => (faultRow(name)!.sign === 'none' ? [] : [i]))
  const times = runs.flatMap(({ outcome }) => loud.map((i) => outcome.timeToAlarm[i]!))
  const firsts = runs.flatMap(({ outcome }) => loud.map((i) => outcome.timeToFirstAlarms[i]!))
  if (times.length === 0) {
    const nothing = { known: false, reason: 'nothing-to-name' } as const
    return { namedShare: nothing, namedFirstShare: nothing, timeToAlarm: nothing }
  }
  const share = (list: readonly TimeToAlarm[]): NamedShare => ({
    known: true,
    share: list.filter(({ known }) => known).length / list.length,
  })
  const named = times.flatMap((one) => (one.known ? [one.time] : [])).sort((a, b) => a - b)
  const time = named[named.length >> 1]
  return {
    namedShare: share(times),
    namedFirstShare: share(firsts),
    timeToAlarm: time === undefined ? { known: false, reason: 'never-named' } : { known: true, time },
  }
}
