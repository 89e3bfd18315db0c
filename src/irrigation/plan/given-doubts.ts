import { answerOf } from '../../quantity/answer.js'
import type { GivenShot } from './day-so-far.js'
import { missed, type PlanFinding } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'
import { runTimeOf } from './plan-run.js'
import type { Planning } from './planning.js'

/** What is odd in the shots that were given. */
export function doubtsOfGiven<State>(planning: Planning<State>, given: readonly GivenShot[]): PlanFinding[] {
  return [...tooMuch(planning, given), ...twice(planning, given), ...unlikeRunTime(planning, given)]
}

/** How long the valve was open for a shot. */
export function openFor(request: DayPlanRequest, { volume, runTime }: GivenShot): number {
  return runTime ?? (volume > 0 ? answerOf(runTimeOf(request, volume), 'emitters') : 0)
}

/**
 * Shots that begin with the one before them, or in the first half of its time, which one valve cannot do: the same message came twice, or somebody
 * watered by hand. Times in a log are rounded, and a run time that is not given may be shorter.
 */
function twice(request: DayPlanRequest, given: readonly GivenShot[]): PlanFinding[] {
  const isTwice = ({ time }: GivenShot, before: GivenShot | undefined) =>
    before !== undefined && (time === before.time || time < before.time + openFor(request, before) / 2)
  return given
    .filter((shot, i) => isTwice(shot, given[i - 1]))
    .map(({ time, volume }) => ({ ...missed('given-twice', 'soFar.given', volume, volume, 'L'), time }))
}

/** Shots of less than half, or more than twice, of what emitters give in their time: one of the two is in another unit, or water was lost. */
function unlikeRunTime(request: DayPlanRequest, given: readonly GivenShot[]): PlanFinding[] {
  return given.flatMap(({ time, volume: reached, runTime }) => {
    // Water by hand opens no valve.
    if (runTime === undefined || runTime === 0) return []
    const max = (runTime / 3600) * request.emitters * request.emitterFlow
    const wanted = Math.max(0, max - (request.lineFill / 3600) * request.emitters * request.emitterFlow)
    if (reached >= wanted / 2 && reached <= 2 * max) return []
    return [{ ...missed('given-unlike-run-time', 'soFar.given', reached, reached > max ? max : wanted, 'L'), time }]
  })
}

/** Shots larger than the valve gives in its longest time: a wrong unit, a leak, or a valve that stuck open. */
function tooMuch<State>({ maxVolume: wanted }: Planning<State>, given: readonly GivenShot[]): PlanFinding[] {
  const findings: PlanFinding[] = []
  for (const { time, volume: reached } of given) {
    if (reached > wanted * 1.1)
      findings.push({ ...missed('given-more-than-allowed', 'soFar.given', reached, wanted, 'L'), time })
  }
  return findings
}
