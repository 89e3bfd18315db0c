import { digits, type WordsOf } from '../../quantity/explained.js'
import { asPercent } from '../../quantity/in-words.js'
import type { PlanCause, PlanFinding } from './plan-finding.js'

const PRACTICE = 'common practice, no source'

/** What is wrong with a plan, by how much, and what to do. */
export const PLAN_WORDS: WordsOf<PlanFinding> = {
  'impossible-water-content': [
    (one) =>
      `a water content of ${told(one.reached, one)} cannot be in a container with living plants: ${because(one)}; no shot is planned on it: look at the probe, its calibration and the plants`,
    PRACTICE,
  ],
  'water-content-above-capacity': [
    (one) =>
      `the water content of ${told(one.reached, one)} is above the container capacity of ${told(one.wanted, one)}: it still drains, or the probe or the capacity is off`,
    PRACTICE,
  ],
  'measured-content-doubted': [
    (one) =>
      `the measured ${told(one.reached, one)} cannot come of what was given and used, which leave about ${told(one.wanted, one)}: it is not used; look at the probe, or take a spot check by hand`,
    PRACTICE,
  ],
  'unusual-demand': [
    (one) =>
      `the plants would drink ${told(one.reached, one)} a day from ${told(one.wanted, one)} of medium: check the unit of the demand and for how many plants it is`,
    PRACTICE,
  ],
  'large-shot': [
    (one) =>
      `a shot of ${told(one.reached, one)} is more than ${told(one.wanted, one)} at once: much of it may run through; set maxPerShot to split it`,
    PRACTICE,
  ],
  'given-more-than-allowed': [
    (one) =>
      `a shot of ${told(one.reached, one)} was given where the valve gives ${told(one.wanted, one)} at most: check the unit, the meter, and whether the valve closes`,
    PRACTICE,
  ],
  'given-twice': [
    (one) =>
      `a shot of ${told(one.reached, one)} was given while another one ran, and both count: leave one out if the same message came twice`,
    PRACTICE,
  ],
  'given-unlike-run-time': [
    (one) =>
      `a shot of ${told(one.reached, one)} was given in a time in which the emitters give ${told(one.wanted, one)}: check that volumes are litres for one container and run times seconds; if they are, look for a clogged line, a leak, or a wrong flow`,
    PRACTICE,
  ],
  'set-time-dropped': [(one) => `a shot at a set time is not planned: ${because(one)}`, PRACTICE],
  'no-time-to-water': [
    (one) =>
      one.because === 'hours'
        ? 'no step of the plan begins between the first and the last allowed shot: give both as moments of this day, in seconds since 1970, not as hours of the day'
        : `there is no time for a shot: ${because(one)}`,
    PRACTICE,
  ],
  'night-not-planned': [
    'the plan ends before the first shot of the next day, so that the dry-down is judged at its end: plan a whole day to know the night',
    PRACTICE,
  ],
  'below-refill-point': [
    (one) =>
      `the water content falls to ${told(one.reached, one)} while the refill point is ${told(one.wanted, one)}: no more water is asked for, or allowed: look at the trigger (light sensor, threshold, set times), at run times, pauses and emitters, and at the limits of a shot and of the day`,
    PRACTICE,
  ],
  'more-drain-than-wanted': [
    (one) => `${told(one.reached, one)} should drain instead of ${told(one.wanted, one)}: ${because(one)}`,
    PRACTICE,
  ],
  'less-drain-than-wanted': [
    (one) => `${told(one.reached, one)} should drain instead of ${told(one.wanted, one)}: ${because(one)}`,
    PRACTICE,
  ],
  'more-dry-down-than-wanted': [
    (one) =>
      `the container should dry by ${told(one.reached, one)} until the first shot of the next day instead of ${told(one.wanted, one)}: water later`,
    PRACTICE,
  ],
  'less-dry-down-than-wanted': [
    (one) =>
      `the container should dry by ${told(one.reached, one)} until the first shot of the next day instead of ${told(one.wanted, one)}: stop earlier, or ask for less`,
    PRACTICE,
  ],
  'runs-dry': [
    (one) => `the container is dry before the next day's first shot (${told(one.reached, one)}): plants would wilt`,
    PRACTICE,
  ],
  'daily-limit-reached': [
    (one) =>
      `the plan uses ${told(one.reached, one)} of the ${told(one.wanted, one)} that a day allows; what else the plants need is not given`,
    PRACTICE,
  ],
}

const CAUSES: Readonly<Record<PlanCause, string>> = {
  'above-capacity': 'it is far above the container capacity',
  'below-min-water-content': 'it is below what plants can use',
  bypass: 'water that passes by, or the shortest run time, brings more drain',
  'full-point': 'the full point lies below the container capacity, where only water that passes by drains',
  limits:
    'the longest run time, the largest shot, the rest of the valve or the limit of the day leave too little water for it',
  'dry-down': 'the dry-down that is wanted begins earlier; ask for less, or begin the day earlier',
  hours: 'it is not between the first and the last allowed shot; move the hours or the time',
  'outside-plan':
    'it lies before or after the plan: give moments of this day, in seconds since 1970, not as hours of the day',
  rest: 'the valve is open or at rest then, or another set time lies in the same step',
  full: 'the container lacks less than the valve gives at least',
  'day-limit': 'the limit of the day is reached',
}

function because({ because: cause }: PlanFinding): string {
  return cause === undefined ? '' : CAUSES[cause]
}

/** One of the numbers of a finding as it is read aloud. */
function told(number: number | undefined, { unit }: PlanFinding): string {
  if (number === undefined) return ''
  return unit === 'L' ? `${digits(number)} L` : asPercent(number)
}
