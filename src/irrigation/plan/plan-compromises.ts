import { maxOf } from '../../quantity/extremes.js'
import type { DayPlan } from './day-plan.js'
import { missed, type PlanFinding, timeDropped } from './plan-finding.js'
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
): readonly PlanFinding[] {
  // Where nothing can be believed, advice on what is missed would be advice on a lie.
  if (planning.blocked) return planning.doubts
  return [
    ...planning.doubts,
    ...run.dropped.map(({ step, because }) => timeDropped(planning.due.get(step) as number, because)),
    ...tooLarge(planning, run),
    ...tooDry(planning, run, plan.shots),
    ...drainMissed(planning, run, plan.drainFraction),
    ...nightMissed(planning, plan.shots, night),
    ...notGiven(planning, run),
  ]
}

function tooLarge<State>({ maxPerShot, substrateVolume }: Planning<State>, { shots }: PlanRun<State>): PlanFinding[] {
  const wanted = maxPerShot ?? substrateVolume * LARGE_SHOT
  const reached = maxOf(shots.map(({ volume }) => volume))
  return reached > wanted + DROP ? [missed('large-shot', 'maxPerShot', reached, wanted, 'L')] : []
}

/** Falls below the refill point while watering is allowed. */
function tooDry<State>(planning: Planning<State>, run: PlanRun<State>, shots: DayPlan['shots']): PlanFinding[] {
  const { refillPoint, lastStep } = planning
  // The first shots of the day come into a container that has dried overnight; that is the dry-down, not a fault.
  const settled = planning.firstStep + Math.ceil((2 * (planning.minRest + planning.maxRunTime)) / planning.step) + 1
  let min = Infinity
  for (let i = Math.min(settled, lastStep); i <= lastStep; i++) min = Math.min(min, run.waterContent[i]!)
  if (!(refillPoint - min > maxOf(planning.demand) / planning.substrateVolume + 1e-6)) return []
  return [missed('below-refill-point', 'refillPoint', min, refillPoint, 'm³/m³', shots[0] ? 'caution' : 'danger')]
}

function drainMissed<State>(planning: Planning<State>, run: PlanRun<State>, reached: number): PlanFinding[] {
  const { drainFraction: wanted } = planning
  if (run.end.applied <= 0) return []
  const below = planning.fullPoint < planning.containerCapacity - DROP ? 'full-point' : 'limits'
  return wideOf('drain', 'drainFraction', reached, wanted, '1', reached > wanted ? 'bypass' : below)
}

/** What is reached, where it is further from what was wanted than anyone would call the same. */
function wideOf(
  what: 'drain' | 'dry-down',
  about: string,
  reached: number,
  wanted: number,
  unit: NonNullable<PlanFinding['unit']>,
  because?: PlanFinding['because'],
): PlanFinding[] {
  if (Math.abs(reached - wanted) <= 0.01) return []
  const code = `${reached > wanted ? 'more' : 'less'}-${what}-than-wanted` as const
  return [missed(code, about, reached, wanted, unit, 'caution', because)]
}

function nightMissed<State>(planning: Planning<State>, shots: DayPlan['shots'], { peak, end }: Night): PlanFinding[] {
  const { overnightDryDown: wanted, firstStep, minWaterContent } = planning
  const findings: PlanFinding[] = []
  if (wanted !== undefined) {
    if (planning.nightEnd * planning.step < 86400 && planning.nightEnd === planning.demand.length)
      findings.push({ code: 'night-not-planned', level: 'note', about: 'demand' })
    if (shots.length > 0) findings.push(...wideOf('dry-down', 'overnightDryDown', peak - end, wanted, 'm³/m³'))
  }
  if (planning.lastStep < firstStep) {
    // A dry-down that nobody asked for is not to blame.
    const because = planning.allowedStep < firstStep ? 'hours' : 'dry-down'
    findings.push({ code: 'no-time-to-water', level: 'danger', about: 'lastShot', because })
  }
  if (end <= minWaterContent + 1e-6)
    findings.push(missed('runs-dry', 'waterContent', end, minWaterContent, 'm³/m³', 'danger'))
  return findings
}

function notGiven<State>({ maxPerDay, minVolume }: Planning<State>, { end }: PlanRun<State>): PlanFinding[] {
  const left = maxPerDay - end.applied
  if (left >= minVolume + DROP || left > maxPerDay * 0.02) return []
  return [missed('daily-limit-reached', 'maxPerDay', end.applied, maxPerDay, 'L')]
}
