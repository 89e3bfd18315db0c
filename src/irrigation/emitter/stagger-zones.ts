import type { Instant } from '../../quantity/calendar.js'
import type { Domain } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/duration.js'
import type { Flow } from '../../quantity/generated/flow.js'
import { numberIn } from '../../quantity/guard.js'

/** One opening of one valve. */
export interface ZoneShot {
  readonly zone: string
  /** When it is wanted. Unit: s. */
  readonly time: Instant
  /** How long the valve is open. Unit: s. */
  readonly runTime: Duration
  /** Flow of the whole zone while it is open. Unit: L/h. */
  readonly flow: Flow
}

/** A shot with the moment at which the pump can serve it. */
export interface StaggeredShot extends ZoneShot {
  /** By how much it begins later than wanted. Unit: s. */
  readonly delay: Duration
}

/** What valves share. */
export interface SharedPump {
  /** Most flow that the pump or the pipe gives at one time. Unit: L/h. Range: (0, ∞). */
  readonly maxFlow: Flow
  /** Rest between the closing of one valve and the opening of the next that waited for it. Unit: s. Range: [0, 3600]. */
  readonly gap: Duration
}

const MOST: Domain = {
  quantity: 'flow of the pump',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the flow that the pump holds at working pressure',
}
const GAP: Domain = {
  quantity: 'rest between valves',
  unit: 's',
  min: 0,
  max: 3600,
  ends: '[]',
  hint: 'give zero to an hour',
}

/**
 * The shots of several zones, moved so far apart that a shared pump can serve all that run at one time.
 *
 * @procedure Takes the shots in the order in which they are wanted and begins each at the first moment from then on at which the
 * flow of all valves that are open, or at rest after it, stays within the pump's. No shot is dropped or shortened, and none begins early.
 * @param shots - Shots of all zones. The list may be in any order.
 * @param pump - What the valves share.
 * @returns The same shots in the order of their new beginnings, with their delays.
 * @throws `InputError` when a single zone asks for more than the pump gives, `DomainError` outside the ranges.
 * @source common practice, no source
 * @example
 * ```ts
 * const shots = ['north', 'south'].map((zone) => ({ zone, time: instant(1779148800), runTime: minutes(5), flow: litresPerHour(800) }))
 * staggerZones(shots, { maxFlow: litresPerHour(1000), gap: seconds(10) }).map((shot) => shot.delay) // => [0, 310]
 * ```
 */
export function staggerZones(shots: readonly ZoneShot[], pump: SharedPump): StaggeredShot[] {
  const most = numberIn(pump.maxFlow, MOST, 'maxFlow')
  const gap = numberIn(pump.gap, GAP, 'gap')
  const placed: { from: number; to: number; flow: number; shot: StaggeredShot }[] = []
  const wanted = [...shots].sort((a, b) => a.time - b.time || (a.zone < b.zone ? -1 : a.zone > b.zone ? 1 : 0))
  for (const shot of wanted) {
    if (shot.flow > most)
      throw new InputError(
        shot.zone,
        `asks for ${shot.flow} L/h where the pump gives ${most} L/h`,
        'split the zone or lower its flow',
      )
    // The flow only falls when a valve closes, so the shot can begin now or a rest after one of the closings.
    const candidates = [shot.time as number, ...placed.map(({ to }) => to + gap)]
      .filter((time) => time >= shot.time)
      .sort((a, b) => a - b)
    const from = candidates.find(
      (time) => peakFlow(placed, time, time + shot.runTime + gap, gap) + shot.flow <= most * (1 + 1e-12),
    ) as number
    const moved: StaggeredShot = { ...shot, time: from as Instant, delay: (from - shot.time) as Duration }
    placed.push({ from, to: from + shot.runTime, flow: shot.flow, shot: moved })
  }
  return placed.sort((a, b) => a.from - b.from).map(({ shot }) => shot)
}

/** The highest flow of the valves that are open, or resting, at any moment of a span, which holds the rest at its end as well. */
function peakFlow(
  placed: readonly { from: number; to: number; flow: number }[],
  from: number,
  to: number,
  gap: number,
): number {
  const overlapping = placed.filter((other) => other.from < to && other.to + gap > from)
  // Moments before the span count too little rather than too much: whatever ran then still runs as it begins.
  const moments = [from, ...overlapping.map((other) => other.from)]
  return Math.max(
    0,
    ...moments.map((time) =>
      overlapping
        .filter((other) => other.from <= time && other.to + gap > time)
        .reduce((sum, other) => sum + other.flow, 0),
    ),
  )
}
