import type { DayPlan } from './day-plan.js'
import { timeDropped } from './plan-doubts.js'
import { missed, type PlanFinding } from './plan-finding.js'
import type { Night } from './plan-night.js'
import type { PlanRun } from './plan-run.js'
import { DROP, type Planning } from './planning.js'

/** A larger shot runs through or breaks new paths in many media, as a share of the medium. Common practice, no source. */
const LARGE_SHOT = 0.1

/** What is not to be believed of a plan, and what it misses of what was wanted: by how much, and what stands in the way. */
export function compromisesOf<State>(
  planning: Planning<State>,
  run: PlanRun<State>,
  plan: Pick<DayPlan, 'shots' | 'drainFraction'>,
  night: Night,
): PlanFinding[] {
  // Where nothing can be believed, advice on what is missed would be advice on a lie.
  if (planning.blocked) return [...planning.doubts]
  return [
    ...planning.doubts,
    ...run.dropped.map(({ step, because }) => timeDropped(planning.due.get(step) as number, because)),
    ...tooLarge(planning, plan.shots),
    ...tooDry(planning, run),
    ...drainMissed(planning, run, plan.drainFraction),
    ...nightMissed(planning, plan.shots, night),
    ...notGiven(planning, run),
  ]
}

function tooLarge<State>({ request }: Planning<State>, shots: DayPlan['shots']): PlanFinding[] {
  const wanted = request.maxPerShot ?? request.container.substrateVolume * LARGE_SHOT
  let reached = 0
  for (const { volume, reason } of shots) if (reason !== 'given') reached = Math.max(reached, volume)
  return reached > wanted + DROP ? [missed('large-shot', 'maxPerShot', reached, wanted, 'L')] : []
}

/** Falls below the refill point while watering is allowed. */
function tooDry<State>({ request, firstStep, lastStep }: Planning<State>, run: PlanRun<State>): PlanFinding[] {
  const { demand, refillPoint, container } = request
  let lowest = Infinity
  // The first shots of the day come into a container that has dried overnight; that is the dry-down, not a fault.
  const settled = firstStep + Math.ceil((2 * (request.minRest + request.maxRunTime)) / request.step) + 1
  for (let i = settled; i <= lastStep; i++) lowest = Math.min(lowest, run.waterContent[i]!)
  let step = 0
  for (let i = 0; i < demand.length; i++) step = Math.max(step, demand[i]!)
  if (!(refillPoint - lowest > step / container.substrateVolume + 1e-6)) return []
  return [missed('below-refill-point', 'refillPoint', lowest, refillPoint, 'm³/m³')]
}

function drainMissed<State>({ request }: Planning<State>, run: PlanRun<State>, reached: number): PlanFinding[] {
  const { drainFraction: wanted, container, fullPoint } = request
  if (run.end.applied <= 0 || Math.abs(reached - wanted) <= 0.01) return []
  const more = reached > wanted
  const below = fullPoint < container.containerCapacity - DROP ? 'full-point' : 'limits'
  const code = more ? 'more-drain-than-wanted' : 'less-drain-than-wanted'
  return [missed(code, 'drainFraction', reached, wanted, '1', 'caution', more ? 'bypass' : below)]
}

function nightMissed<State>(
  { request, lastStep, allowedStep, firstStep, nightEnd }: Planning<State>,
  shots: DayPlan['shots'],
  { peak, end }: Night,
): PlanFinding[] {
  const { overnightDryDown: wanted, demand, step, container } = request
  const reached = peak - end
  const findings: PlanFinding[] = []
  if (wanted !== undefined) {
    if (nightEnd * step < 86400 && nightEnd === demand.length)
      findings.push({ code: 'night-not-planned', level: 'note', about: 'demand' })
    if (shots.length > 0 && Math.abs(reached - wanted) > 0.01) {
      const code = reached > wanted ? 'more-dry-down-than-wanted' : 'less-dry-down-than-wanted'
      findings.push(missed(code, 'overnightDryDown', reached, wanted, 'm³/m³'))
    }
  }
  if (lastStep < firstStep) {
    // A dry-down that nobody asked for is not to blame.
    const because = allowedStep < firstStep ? 'hours' : 'dry-down'
    findings.push({ code: 'no-time-to-water', level: 'danger', about: 'lastShot', because })
  }
  if (end <= container.minWaterContent + 1e-6)
    findings.push(missed('runs-dry', 'waterContent', end, container.minWaterContent, 'm³/m³', 'danger'))
  return findings
}

function notGiven<State>({ request, minVolume }: Planning<State>, { end }: PlanRun<State>): PlanFinding[] {
  const { maxPerDay } = request
  const left = maxPerDay - end.applied
  if (left >= minVolume + DROP || left > maxPerDay * 0.02) return []
  return [missed('daily-limit-reached', 'maxPerDay', end.applied, maxPerDay, 'L')]
}
