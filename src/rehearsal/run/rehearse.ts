import { minOf } from '../../quantity/extremes.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { type Ears, earsFor } from '../outcome/heard-alarms.js'
import { type Recorder, recorderOf } from '../outcome/rehearsal-course.js'
import { findingsOf } from '../outcome/rehearsal-findings.js'
import type { RehearsalOutcome } from '../outcome/rehearsal-outcome.js'
import type { RestBetweenOpenings } from '../outcome/rehearsal-reason.js'
import type { Tally } from '../outcome/tally.js'
import { worstWindow } from '../outcome/worst-window.js'
import { type CheckedRehearsal, checkedRehearsal, type Rehearsal } from '../world/rehearsal.js'
import { type World, worldOf } from '../world/world.js'
import { runController } from './run-controller.js'

const DAY = 86400

/**
 * Simulates a zone for some days with everything that goes wrong in it, lets a controller water it, and tells what came of it. One seed
 * is one history: the same controller, zone, seed and faults give the same course to the last bit, so every failure can be seen again.
 *
 * It drives any logic that is a `Reducer`, yours as well as `controlWatering`, through two small functions: what the logic is fed from what
 * can be known, and what the logic wants in the words of a valve.
 *
 * @procedure Calls the controller every so often with the readings that have arrived, gives its order to the valve, and lets time pass
 * for valve, line, containers, plants, probes and gauges, each with the faults that last at that moment. Counts water, openings,
 * stress and alarms against the truth that the controller cannot see.
 * @returns Course, openings, alarms, sums, and findings against the limits.
 * @throws `DomainError` outside the ranges, `InputError` for contradictions. What the controller throws is counted and closes the valve.
 * @validity A zone on paper: it shows how a logic fails, not how much water your plants need. The sizes of the faults are invented.
 * @source common practice, no source
 * @example
 * const scenario = rehearsalScenario('coir-dust')
 * const byTheClock = {
 *   reducer: { start: 0, step: (given: number, now: number) => [given + 1, now % 7200 < 60] as const },
 *   input: (observed: Observation) => observed.now,
 *   order: (open: boolean) => ({ open, closeAfter: 150 }),
 * }
 * const outcome = rehearse({ zone: scenario.zone, limits: scenario.limits, controller: byTheClock, days: 2, seed: 7 })
 * outcome.openings.length // => 24
 * outcome.findings.map((finding) => finding.code) // => ['opened-outside-hours', 'stress']
 */
export function rehearse<State, Input, Output>(rehearsal: Rehearsal<State, Input, Output>): RehearsalOutcome {
  requireObject(rehearsal, 'rehearsal')
  const checked = checkedRehearsal(rehearsal)
  const { end, poll, zone, start } = checked
  const world = worldOf(checked)
  const ears = earsFor(checked.faults, rehearsal.controller.alarmsFor)
  const every = Math.max(60, poll)
  const recorder = checked.keepCourse ? recorderOf(Math.ceil(end / every), zone.probes, every, start) : undefined
  const refusals = runController(rehearsal.controller, checked, world, ears, recorder)
  return outcomeOf(rehearsal, checked, world, ears, recorder, refusals)
}

function outcomeOf<State, Input, Output>(
  rehearsal: Rehearsal<State, Input, Output>,
  checked: CheckedRehearsal,
  { tally, water, imbalance }: World,
  ears: Ears,
  recorder: Recorder | undefined,
  refusals: number,
): RehearsalOutcome {
  const outcome: Omit<RehearsalOutcome, 'findings'> = {
    seed: checked.seed,
    faults: rehearsal.faults ?? [],
    ...(recorder !== undefined && { course: recorder.course }),
    openings: tally.openings,
    alarms: ears.heard,
    given: water.given as Volume,
    unordered: water.unordered as Volume,
    byHand: water.byHand as Volume,
    drained: water.drained as Volume,
    used: water.used as Volume,
    spilt: water.spilt as Volume,
    ...countsOf(tally),
    stressTime: tally.stress() as Duration,
    fullTime: tally.full() as Duration,
    driest: tally.driest() as WaterContent,
    wettest: tally.wettest() as WaterContent,
    timeToAlarm: ears.named,
    timeToFirstAlarms: ears.namedFirst,
    falseAlarms: ears.heard.filter(({ right }) => !right).length,
    refusals,
    imbalance: imbalance() as Volume,
  }
  return { ...outcome, findings: findingsOf(outcome, checked.limits) }
}

/** What the openings are judged by. */
function countsOf({ openings, passages }: Tally) {
  const rests = openings.slice(1).map(({ from }, i) => from - openings[i]!.until)
  const minRest: RestBetweenOpenings =
    rests.length === 0
      ? { known: false, reason: 'fewer-than-two-openings' }
      : { known: true, time: minOf(rests) as Duration }
  const blind = openings.filter((opening) => opening.blind)
  return {
    worstDay: worstWindow(openings, DAY) as Volume,
    worstDayInAll: worstWindow(passages, DAY) as Volume,
    maxOpening: openings.reduce((max, { from, until }) => Math.max(max, until - from), 0) as Duration,
    minRest,
    outsideHours: openings.filter(({ outside }) => outside).length,
    outsideHoursByOwnClock: openings.filter(({ outsideByOwnClock }) => outsideByOwnClock).length,
    blindOpenings: blind.length,
    worstBlindDay: worstWindow(blind, DAY) as Volume,
  }
}
