import type { PlanCause } from './plan-finding.js'
import { type Chooser, rewetLevel, type Wish } from './plan-run.js'
import { DROP, type Planning, type PlanProgress } from './planning.js'

const NOTHING: Wish = { volume: 0 }

/** Waters by the request's trigger within its limits, sizing each shot so that the share `drain` of it runs through. */
export function byTrigger<State>(planning: Planning<State>, drain: number): Chooser<State> {
  const { flow, minVolume, due, lastStep } = planning
  if (planning.blocked) return () => NOTHING
  return (progress, time, light) => {
    const { steps, closed } = progress
    const asked = due.has(steps)
    if (steps < planning.firstStep || steps > lastStep)
      return asked ? dropped(steps > lastStep && time <= planning.lastShot ? 'dry-down' : 'hours') : NOTHING
    // Before the first opening the difference is no number, and below nothing.
    if (time - (closed as number) < planning.minRest - DROP) return asked ? dropped('rest') : NOTHING
    const waterContent = flow.waterContent(progress.state)
    const reason = reasonNow(planning, progress, light, waterContent, asked)
    if (reason === undefined) return NOTHING
    const left = planning.maxPerDay - progress.applied
    const wanted = volumeFor(planning, waterContent, steps, drain)
    const volume = Math.min(wanted, left)
    if (volume >= minVolume - DROP && volume > DROP) return { volume, reason }
    return asked ? dropped(left < wanted ? 'day-limit' : 'full') : NOTHING
  }
}

/** Waters as it was really done: the water of each step. */
export function byRecord<State>(water: Float64Array): Chooser<State> {
  return ({ steps }) => ({ volume: water[steps]!, reason: 'given' })
}

function dropped(because: PlanCause): Wish {
  return { volume: 0, because }
}

/** What lifts the container to the full point and lets a share of it drain, as far as one opening may. */
function volumeFor<State>(planning: Planning<State>, waterContent: number, step: number, drain: number): number {
  // What the plants take while the shot runs is missing too.
  const { fullPoint, bypass } = planning
  const missing = (fullPoint - waterContent) * planning.substrateVolume + planning.demand[step]!
  // Below capacity only the bypass drains, so that more water would lift the container above the full point.
  const staysBelow = fullPoint < planning.containerCapacity - DROP
  const room = staysBelow ? missing / Math.max(1 - bypass, DROP) : Infinity
  // Less than the bypass cannot drain, and a shot sized for less would leave the container short of full.
  const sized = missing / Math.max(1 - Math.max(drain, bypass), DROP)
  return Math.min(Math.max(sized, planning.minVolume), planning.maxVolume, room)
}

function reasonNow<State>(
  planning: Planning<State>,
  progress: PlanProgress<State>,
  light: number,
  waterContent: number,
  asked: boolean,
): Wish['reason'] {
  const { trigger } = planning
  if (trigger.by === 'light') return light >= trigger.threshold - DROP ? 'light-sum' : undefined
  if (trigger.by === 'clock') return asked ? 'set-time' : undefined
  if (progress.rewetting && waterContent < rewetLevel(planning)) return 'morning-rewet'
  if (waterContent <= planning.refillPoint + DROP) return 'refill-point'
  const missing = (planning.fullPoint - waterContent) * planning.substrateVolume
  // The day ends full, so that the night begins from a known level.
  return progress.steps === planning.lastStep && missing >= planning.minVolume ? 'last-of-day' : undefined
}
