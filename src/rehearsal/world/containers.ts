import type { ContainerFlow } from '../../flow/container-flow.js'
import { randomNumbers } from '../../numerics/random.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { Effects } from '../faults/effects.js'
import type { RehearsalZone } from '../scenario/zone.js'

/** The containers of a zone: one for each probe, and one for the mean of all others. */
export interface Containers {
  /** Share of the zone that each stands for. Unit: 1. */
  readonly weights: Float64Array
  /** Flow of each one's drippers, as a share of the mean. Unit: 1. */
  readonly drippers: Float64Array
  /** Water contents. Unit: m³/m³. */
  readonly waterContents: Float64Array
  /** Mean water content. Unit: m³/m³. */
  readonly mean: () => number
  /** All water. Unit: L a container. */
  readonly held: () => number
  /** Lets them drink and drain. Gives drain and use. Unit: L a container. */
  readonly step: (applied: Float64Array, use: number, duration: number, effects: Effects) => Passed
}

interface Passed {
  drained: number
  used: number
}

export function containersOf(zone: RehearsalZone, seed: number): Containers {
  const { medium, containers, probes } = zone
  const random = randomNumbers(seed)
  const places = containers > probes ? probes + 1 : probes
  const weights = new Float64Array(places).fill(1 / containers)
  if (places > probes) weights[probes] = (containers - probes) / containers
  const drippers = new Float64Array(places).fill(1)
  const uses = new Float64Array(places).fill(1)
  for (let i = 0; i < probes; i++) {
    drippers[i] = Math.max(0.5, 1 + zone.dripperSpread * random.normal())
    uses[i] = Math.max(0.5, 1 + zone.dripperSpread * random.normal())
  }
  const states = Array.from({ length: places }, () => medium.flow.startFrom(zone.waterContent))
  const waterContents = new Float64Array(places).fill(zone.waterContent)
  let flow = medium.flow
  let capacity = 0
  const during = { duration: 0 as Duration, applied: 0 as Volume, demand: 0 as Volume }

  return {
    weights,
    drippers,
    waterContents,
    mean: () => {
      let sum = 0
      for (let i = 0; i < places; i++) sum += weights[i]! * waterContents[i]!
      return sum
    },
    held: () => states.reduce<number>((sum, state, i) => sum + weights[i]! * medium.held(state), 0),
    step: (applied, use, duration, effects) => {
      if (effects.capacity !== capacity) {
        capacity = effects.capacity
        flow = otherFlow(zone, capacity)
      }
      const passed: Passed = { drained: 0, used: 0 }
      for (let i = 0; i < places; i++) {
        const past = applied[i]! * passing(effects, zone.waterContent - waterContents[i]!)
        during.duration = duration as Duration
        during.applied = (applied[i]! - past) as Volume
        during.demand = (use * uses[i]!) as Volume
        const [next, outcome] = flow.step(states[i], during)
        states[i] = next
        waterContents[i] = flow.waterContent(next)
        passed.drained += weights[i]! * (outcome.drained + past)
        passed.used += weights[i]! * outcome.taken
      }
      return passed
    },
  }
}

/** Share of a shot that runs past a medium that is so much drier than in the beginning. */
function passing({ bypass, repellence }: Effects, drier: number): number {
  if (bypass === 0 && repellence === 0) return 0
  return Math.min(0.95, bypass + repellence * Math.min(1, Math.max(0, drier / 0.1)))
}

function otherFlow({ medium, waterContent }: RehearsalZone, change: number): ContainerFlow<unknown> {
  if (change === 0) return medium.flow
  if (medium.withCapacity === undefined)
    throw new InputError(
      'faults',
      'capacity-low needs a medium whose capacity can change',
      'take storedMedium(), or another fault',
    )
  return medium.withCapacity((waterContent + change) as WaterContent)
}
