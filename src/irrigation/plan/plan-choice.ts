import type { Planning, PlanProgress } from './plan-request.js'
import { type Chooser, rewetLevel, type Wish } from './plan-run.js'

/** Differences below this are rounding, not water. */
export const DROP = 1e-9
const NOTHING: Wish = { volume: 0, reason: '' }

/** Waters by the request's trigger within its limits, sizing each shot so that the share `drain` of it runs through. */
export function byTrigger<State>(planning: Planning<State>, drain: number): Chooser<State> {
  const { request, flow, minVolume, maxVolume } = planning
  const { substrateVolume, containerCapacity, bypass } = request.container
  // Below capacity only the bypass drains, so that more water would lift the container above the full point.
  const staysBelow = request.fullPoint < containerCapacity - DROP
  return (progress, time, light) => {
    if (progress.steps < planning.firstStep || progress.steps > planning.lastStep) return NOTHING
    if (progress.last !== undefined && time - progress.last < request.betweenShots - DROP) return NOTHING
    const content = flow.waterContent(progress.state)
    const reason = reasonNow(planning, progress, time, light, content)
    if (reason === '') return NOTHING
    // What the plants take while the shot runs is missing too.
    const missing = (request.fullPoint - content) * substrateVolume + (request.demand[progress.steps] as number)
    const room = staysBelow ? missing / Math.max(1 - bypass, DROP) : Infinity
    // Less than the bypass cannot drain, and a shot sized for less would leave the container short of full.
    const volume = Math.min(
      Math.max(missing / Math.max(1 - Math.max(drain, bypass), DROP), minVolume),
      maxVolume,
      room,
      request.maxPerDay - progress.applied,
    )
    return volume < minVolume - DROP || volume <= DROP ? NOTHING : { volume, reason }
  }
}

/** Waters as it was really done. */
export function byRecord<State>(
  given: readonly { readonly time: number; readonly volume: number }[],
  step: number,
): Chooser<State> {
  return (_, time) => {
    let volume = 0
    for (const shot of given) if (shot.time >= time && shot.time < time + step) volume += shot.volume
    return { volume, reason: 'given' }
  }
}

function reasonNow<State>(
  { request, minVolume, lastStep }: Planning<State>,
  progress: PlanProgress<State>,
  time: number,
  light: number,
  content: number,
): string {
  const { trigger } = request
  if (trigger.by === 'light') {
    return light >= trigger.threshold - DROP ? `light since the last shot reached ${trigger.threshold} J/cm²` : ''
  }
  if (trigger.by === 'clock') {
    return trigger.times.some((wanted) => wanted >= time && wanted < time + request.step) ? 'set time' : ''
  }
  const level = `${(content * 100).toFixed(1)} %`
  if (progress.rewetting && content < rewetLevel(request)) return `morning rewet from ${level}`
  if (content <= request.refillPoint + DROP) return `${level} is at the refill point`
  const missing = (request.fullPoint - content) * request.container.substrateVolume
  // The day ends full, so that the night begins from a known level.
  return progress.steps === lastStep && missing >= minVolume ? `last shot of the day, from ${level}` : ''
}
