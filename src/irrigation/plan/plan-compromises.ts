import type { Finding } from '../../quantity/finding.js'
import { DROP } from './plan-choice.js'
import type { PlannedShot, Planning } from './plan-request.js'
import type { PlanRun } from './plan-run.js'

const percent = (share: number) => `${(share * 100).toFixed(1)} %`

/** What a plan misses of what was wanted, by how much, and which limit stands in the way. */
export function compromisesOf<State>(
  planning: Planning<State>,
  run: PlanRun<State>,
  shots: readonly PlannedShot[],
  drained: number,
): Finding[] {
  return [
    ...tooDry(planning, run),
    ...drainMissed(planning, run, drained),
    ...nightMissed(planning, run, shots),
    ...notGiven(planning, run),
  ]
}

/** Falls below the refill point while watering is allowed. */
function tooDry<State>({ request, firstStep, lastStep }: Planning<State>, run: PlanRun<State>): Finding[] {
  let lowest = Infinity
  // The first shots of the day come into a container that has dried overnight; that is the dry-down, not a fault.
  const settled = firstStep + Math.ceil((2 * request.betweenShots) / request.step) + 1
  for (let i = settled; i <= lastStep; i++) lowest = Math.min(lowest, run.content[i] as number)
  const step =
    Math.max(...Array.from({ length: request.demand.length }, (_, i) => request.demand[i] as number)) /
    request.container.substrateVolume
  const missed = request.refillPoint - lowest
  if (!(missed > step + 1e-6)) return []
  return [
    {
      code: 'below-refill-point',
      level: 'caution',
      message: `the water content falls to ${percent(lowest)} while the refill point is ${percent(request.refillPoint)}: longer shots, shorter pauses or more emitters are needed`,
      about: 'refillPoint',
      value: missed,
      unit: 'm³/m³',
    },
  ]
}

function drainMissed<State>({ request }: Planning<State>, run: PlanRun<State>, drained: number): Finding[] {
  if (run.end.applied <= 0) return []
  const got = drained / run.end.applied
  const missed = got - request.drainFraction
  if (Math.abs(missed) <= 0.01) return []
  const why =
    missed > 0
      ? 'water that passes by, or the shortest run time, brings more drain'
      : request.fullPoint < request.container.containerCapacity - DROP
        ? 'the full point lies below the container capacity, where only water that passes by drains'
        : 'the longest run time, the pause between shots or the day’s limit leave too little water for it'
  return [
    {
      code: missed > 0 ? 'more-drain-than-wanted' : 'less-drain-than-wanted',
      level: 'caution',
      message: `${percent(got)} should drain instead of ${percent(request.drainFraction)}: ${why}`,
      about: 'drainFraction',
      value: missed,
      unit: '1',
    },
  ]
}

function nightMissed<State>(
  { request, lastStep, firstStep }: Planning<State>,
  run: PlanRun<State>,
  shots: readonly PlannedShot[],
): Finding[] {
  const found: Finding[] = []
  const end = run.content[run.content.length - 1] as number
  if (request.overnightDryDown !== undefined && shots.length > 0) {
    const from = Math.round(((shots.at(-1)?.time as number) - request.start) / request.step)
    let peak = -Infinity
    for (let i = from; i < run.content.length; i++) peak = Math.max(peak, run.content[i] as number)
    const missed = peak - end - request.overnightDryDown
    if (Math.abs(missed) > 0.01)
      found.push({
        code: missed > 0 ? 'more-dry-down-than-wanted' : 'less-dry-down-than-wanted',
        level: 'caution',
        message: `the container should dry by ${percent(peak - end)} until the end of the plan instead of ${percent(request.overnightDryDown)}`,
        about: 'overnightDryDown',
        value: missed,
        unit: 'm³/m³',
      })
  }
  if (lastStep < firstStep)
    found.push({
      code: 'no-time-to-water',
      level: 'danger',
      message: 'the dry-down that is wanted leaves no time for a shot: ask for less, or begin earlier',
      about: 'overnightDryDown',
    })
  if (end <= request.container.minContent + 1e-6)
    found.push({
      code: 'runs-dry',
      level: 'danger',
      message: `the container is dry before the plan ends (${percent(end)}): plants would wilt`,
      about: 'content',
      value: end,
      unit: 'm³/m³',
    })
  return found
}

function notGiven<State>({ request, minVolume }: Planning<State>, run: PlanRun<State>): Finding[] {
  if (
    request.maxPerDay - run.end.applied >= minVolume + DROP ||
    request.maxPerDay - run.end.applied > request.maxPerDay * 0.02
  )
    return []
  return [
    {
      code: 'daily-limit-reached',
      level: 'caution',
      message: `the plan uses the whole ${request.maxPerDay} L that a day allows; what else the plants need is not given`,
      about: 'maxPerDay',
      value: run.end.applied,
      unit: 'L',
    },
  ]
}
