import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { PlanCause, PlanFinding, PlanFindingCode } from './plan-finding.js'

/** Numbers of a finding as they are read aloud. */
interface Said {
  readonly reached: string
  readonly wanted: string
  readonly cause: string
}

const WORDS: Readonly<Record<PlanFindingCode, (said: Said) => string>> = {
  'impossible-water-content': ({ reached, cause }) =>
    `a water content of ${reached} cannot be in a container with living plants: ${cause}; no shot is planned on it: look at the probe, its calibration and the plants`,
  'water-content-above-capacity': ({ reached, wanted }) =>
    `the water content of ${reached} is above the container capacity of ${wanted}: it still drains, or the probe or the capacity is off`,
  'measured-content-doubted': ({ reached, wanted }) =>
    `the measured ${reached} cannot come of what was given and used, which leave about ${wanted}: it is not used; look at the probe, or take a spot check by hand`,
  'unusual-demand': ({ reached, wanted }) =>
    `the plants would drink ${reached} a day from ${wanted} of medium: check the unit of the demand and for how many plants it is`,
  'large-shot': ({ reached, wanted }) =>
    `a shot of ${reached} is more than ${wanted} at once: much of it may run through; set maxPerShot to split it`,
  'given-more-than-allowed': ({ reached, wanted }) =>
    `a shot of ${reached} was given where the valve gives ${wanted} at most: check the unit, the meter, and whether the valve closes`,
  'set-time-dropped': ({ cause }) => `a shot at a set time is not planned: ${cause}`,
  'no-time-to-water': ({ cause }) => `there is no time for a shot: ${cause}`,
  'night-not-planned': () =>
    'the plan ends before the first shot of the next day, so that the dry-down is judged at its end: plan a whole day to know the night',
  'below-refill-point': ({ reached, wanted }) =>
    `the water content falls to ${reached} while the refill point is ${wanted}: longer or larger shots, shorter pauses or more emitters are needed`,
  'more-drain-than-wanted': ({ reached, wanted, cause }) => `${reached} should drain instead of ${wanted}: ${cause}`,
  'less-drain-than-wanted': ({ reached, wanted, cause }) => `${reached} should drain instead of ${wanted}: ${cause}`,
  'more-dry-down-than-wanted': ({ reached, wanted }) =>
    `the container should dry by ${reached} until the first shot of the next day instead of ${wanted}: water later`,
  'less-dry-down-than-wanted': ({ reached, wanted }) =>
    `the container should dry by ${reached} until the first shot of the next day instead of ${wanted}: stop earlier, or ask for less`,
  'runs-dry': ({ reached }) => `the container is dry before the next day's first shot (${reached}): plants would wilt`,
  'daily-limit-reached': ({ reached, wanted }) =>
    `the plan uses ${reached} of the ${wanted} that a day allows; what else the plants need is not given`,
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
  'outside-plan': 'it lies before or after the plan',
  rest: 'the valve is open or at rest then, or another set time lies in the same step',
  full: 'the container lacks less than the valve gives at least',
  'day-limit': 'the limit of the day is reached',
}

/**
 * Puts a finding of `planDay` or `replanDay` into words: what is wrong, by how much, and what to do.
 *
 * @procedure Looks up the sentences of code and cause and writes the numbers with their units into them.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that a plan does not give.
 * @source common practice, no source
 * @example
 * const { message } = explainPlanFinding({ code: 'runs-dry', level: 'danger', about: 'waterContent', reached: 0.15, wanted: 0.15, unit: 'm³/m³' })
 * message // => "the container is dry before the next day's first shot (15.0 %): plants would wilt"
 */
export function explainPlanFinding(finding: PlanFinding): Finding {
  requireObject(finding, 'finding')
  const { code, level, about, reached, wanted, unit, because } = finding
  if (!Object.hasOwn(WORDS, code))
    throw new InputError('finding', `"${code}" is no code of a plan`, `give one of ${Object.keys(WORDS).join(', ')}`)
  const said = (number: number | undefined) => (number === undefined ? '' : inWords(number, unit))
  const message = WORDS[code]({
    reached: said(reached),
    wanted: said(wanted),
    cause: because === undefined ? '' : CAUSES[because],
  })
  return {
    code,
    level,
    message,
    about,
    ...(reached === undefined ? {} : { value: reached }),
    ...(unit === undefined ? {} : { unit }),
    source: 'common practice, no source',
  }
}

function inWords(number: number, unit: PlanFinding['unit']): string {
  return unit === 'L' ? `${Number(number.toPrecision(3))} L` : `${(number * 100).toFixed(1)} %`
}
