import { digits, type WordsOf } from '../../quantity/explained.js'
import { asPercent } from '../../quantity/in-words.js'
import type { PlanCause, PlanFinding } from './plan-finding.js'

const PRACTICE = 'common practice, no source'

/** What is wrong with a plan, by how much, and what to do. */
export const PLAN_WORDS: WordsOf<PlanFinding> = {
  'impossible-water-content': [
    (one) =>
      `a water content of ${told(one.reached, one)} is impossible in a container with living plants: ${because(one)}; no shot is planned on it: look at the probe, its calibration and the plants`,
    PRACTICE,
  ],
  'water-content-above-capacity': [
    (one) =>
      `the water content of ${told(one.reached, one)} is above the container capacity of ${told(one.wanted, one)}: it is still draining, or the probe or the capacity is wrong`,
    PRACTICE,
  ],
  'measured-content-doubted': [
    (one) =>
      `the measured ${told(one.reached, one)} does not fit what was given and used, which leaves about ${told(one.wanted, one)}: the plan ignores the reading; look at the probe, or do a spot check by hand`,
    PRACTICE,
  ],
  'unusual-demand': [
    (one) =>
      `the plants would drink ${told(one.reached, one)} a day from ${told(one.wanted, one)} of medium: check the unit of the demand, and how many plants it is for`,
    PRACTICE,
  ],
  'large-shot': [
    (one) =>
      `a shot of ${told(one.reached, one)} is more than ${told(one.wanted, one)}, and much of it may run through: set maxPerShot to split it`,
    PRACTICE,
  ],
  'given-more-than-allowed': [
    (one) =>
      `a shot of ${told(one.reached, one)} was given, but the valve gives ${told(one.wanted, one)} at most: check the unit, the meter, and whether the valve closes`,
    PRACTICE,
  ],
  'given-twice': [
    (one) =>
      `a shot of ${told(one.reached, one)} was given while another was running, and both count: leave one out if the same message came twice`,
    PRACTICE,
  ],
  'given-unlike-run-time': [
    (one) =>
      `a shot of ${told(one.reached, one)} was given in a run time in which the emitters give ${told(one.wanted, one)}: check that volumes are litres for one container and run times are seconds; if they are, look for a clogged line, a leak, or a wrong flow`,
    PRACTICE,
  ],
  'set-time-dropped': [(one) => `a shot at a set time is not planned: ${because(one)}`, PRACTICE],
  'no-time-to-water': [
    (one) =>
      one.because === 'hours'
        ? 'no step of the plan begins between the first and the last allowed shot: give both as times of this day in seconds since 1970, not as hours of the day'
        : `there is no time for a shot: ${because(one)}`,
    PRACTICE,
  ],
  'night-not-planned': [
    'the plan ends before the first shot of the next day, so the dry-down is judged at the end of the plan: plan a whole day to see the night',
    PRACTICE,
  ],
  'below-refill-point': [
    (one) =>
      `the water content falls to ${told(one.reached, one)}, below the refill point of ${told(one.wanted, one)}, because no more water is asked for or allowed: check the trigger (light sensor, threshold, set times), the run times, rests and emitters, and the limits per shot and per day`,
    PRACTICE,
  ],
  'more-drain-than-wanted': [
    (one) => `${told(one.reached, one)} is expected to drain instead of ${told(one.wanted, one)}: ${because(one)}`,
    PRACTICE,
  ],
  'less-drain-than-wanted': [
    (one) => `${told(one.reached, one)} is expected to drain instead of ${told(one.wanted, one)}: ${because(one)}`,
    PRACTICE,
  ],
  'more-dry-down-than-wanted': [
    (one) =>
      `the container is expected to dry down by ${told(one.reached, one)} before the first shot of the next day instead of ${told(one.wanted, one)}: water later`,
    PRACTICE,
  ],
  'less-dry-down-than-wanted': [
    (one) =>
      `the container is expected to dry down by ${told(one.reached, one)} before the first shot of the next day instead of ${told(one.wanted, one)}: stop earlier, or ask for less`,
    PRACTICE,
  ],
  'runs-dry': [
    (one) =>
      `the container runs dry (${told(one.reached, one)}) before the first shot of the next day: plants would wilt`,
    PRACTICE,
  ],
  'daily-limit-reached': [
    (one) =>
      `the plan uses ${told(one.reached, one)} of the daily limit of ${told(one.wanted, one)}; anything more that the plants need is not given: check the demand, then the limit`,
    PRACTICE,
  ],
}

const CAUSES: Readonly<Record<PlanCause, string>> = {
  'above-capacity': 'it is far above the container capacity',
  'below-min-water-content': 'it is below what plants can use',
  bypass: 'bypass, or the shortest run time, makes more of it drain',
  'full-point': 'the full point is below the container capacity, where only bypass drains',
  limits:
    'the longest run time, the largest shot, the rest between shots or the daily limit leaves too little water for it',
  'dry-down': 'the wanted dry-down begins before then; ask for less, or start the day earlier',
  hours: 'it is not between the first and the last allowed shot; move the hours or the shot',
  'outside-plan': 'it is before or after the plan: give times of this day in seconds since 1970, not hours of the day',
  rest: 'the valve is open or resting then, or another set time falls in the same step',
  full: 'the container has less room than the smallest shot of the valve',
  'day-limit': 'the daily limit is reached',
}

function because({ because: cause }: PlanFinding): string {
  return cause === undefined ? '' : CAUSES[cause]
}

/** One of the numbers of a finding as it is read aloud. */
function told(number: number | undefined, { unit }: PlanFinding): string {
  if (number === undefined) return ''
  return unit === 'L' ? `${digits(number)} L` : asPercent(number)
}
