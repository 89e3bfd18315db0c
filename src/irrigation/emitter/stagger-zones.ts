import { ADVICE, type Advice } from '../../quantity/advice.js'
import type { Instant } from '../../quantity/calendar.js'
import { INSTANT, MAX_RUN_TIME, VALVE_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Flow } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { onlyNames } from '../../quantity/one-of.js'
import { PUMP_FLOW, ZONE_FLOW } from '../domains.js'
import { listOf } from '../list-of.js'
import { firstFit, forgetBefore, idlePump, type PumpProfile, take } from './pump-profile.js'
import type { StaggerFinding } from './stagger-findings.js'

/** One opening of one valve. */
export interface ZoneShot {
  /** Name of the zone; its own shots never overlap. */
  readonly zone: string
  /** When it is wanted. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly time: Instant
  /** How long the valve is open. Unit: s. Range: [0, 86400]. */
  readonly runTime: Duration
  /** Flow of the whole zone while it is open. Unit: L/h. Range: (0, ∞). */
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
  /** Rest from the end of one opening to the start of the next that waited for it. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
  /** A shot that must end later is told as a danger; by default no moment is too late. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly lastEnd?: Instant
  /** A shot that begins later than wanted by more than this is told; half an hour by default. Unit: s. Range: [0, 86400]. */
  readonly maxDelay?: Duration
}

/** The shots of all zones in the order in which the pump can serve them. */
export interface StaggeredShots extends Advice {
  /** The same shots by their new beginnings. */
  readonly shots: readonly StaggeredShot[]
  /** Shots that begin late, run for more than two hours or end after the last allowed moment; `explainIrrigationFinding` has the words. */
  readonly findings: readonly StaggerFinding[]
}

interface Placed extends StaggeredShot {
  readonly end: number
}

/**
 * The shots of several zones, moved so far apart that a shared pump can serve all that run at one time.
 *
 * No zone overlaps itself: its next shot begins a rest after its last one has ended. A shot that is wanted while the last one should still
 * run is told, for a message may have come twice, and one of more than two hours, whose run time may be in another unit. A shot that is put off for long may come when
 * nobody wants it, in the night or after the plant has wilted; it is told and not dropped, because only you know which is worse.
 *
 * @procedure Takes the shots in the order in which they are wanted and begins each at the first moment from then on at which the
 * flow of all valves that are open, or at rest after it, stays within the pump's. No shot is dropped or shortened, and none begins early.
 * @param shots - Shots of all zones. The list may be in any order.
 * @returns The same shots in the order of their new beginnings, with their delays, and what is to be known of them.
 * @throws `InputError` when a single zone asks for more than the pump gives or has no name, `DomainError` outside the ranges.
 * @source common practice, no source
 * @example
 * const wanted = ['north', 'south'].map((zone) => ({ zone, time: instant(1779148800), runTime: minutes(5), flow: litresPerHour(800) }))
 * const { shots } = staggerZones(wanted, { maxFlow: litresPerHour(1000), minRest: seconds(10) })
 * shots.map((shot) => shot.delay) // => [0, 310]
 */
export function staggerZones(shots: readonly ZoneShot[], pump: SharedPump): StaggeredShots {
  onlyNames(pump, { maxFlow: 1, minRest: 1, lastEnd: 1, maxDelay: 1 }, 'pump')
  const max = numberIn(pump.maxFlow, PUMP_FLOW, 'maxFlow')
  const rest = numberIn(pump.minRest, VALVE_TIME, 'minRest')
  const profile = idlePump()
  const free = new Map<string, number>()
  const wanted = wantedOrder(shots, max)
  const placed = wanted.map((shot): Placed => {
    const own = Math.max(shot.time, free.get(shot.zone) ?? Number.NEGATIVE_INFINITY)
    const one = place(profile, shot, own, rest, max)
    free.set(shot.zone, one.end + rest)
    return one
  })
  placed.sort((a, b) => a.time - b.time)
  return {
    shots: placed.map(({ end, ...shot }) => shot),
    findings: [...wantedTwice(wanted), ...findingsOf(placed, pump)],
    caution: ADVICE,
  }
}

/** The shots by the moment at which they are wanted, each checked. */
function wantedOrder(shots: readonly ZoneShot[], max: number): ZoneShot[] {
  for (const [i, shot] of listOf(shots, 'shots').entries()) {
    requireObject(shot, `shots[${i}]`)
    const { zone, time, runTime, flow } = shot
    if (typeof zone !== 'string' || zone === '')
      throw new InputError(`shots[${i}].zone`, 'is no name', 'name the zone of each shot; equal names are one valve')
    numberIn(time, INSTANT, 'time')
    numberIn(runTime, VALVE_TIME, 'runTime')
    if (numberIn(flow, ZONE_FLOW, 'flow') > max)
      throw new InputError(
        `shots[${i}].flow`,
        `of ${zone} is ${flow} L/h where the pump gives ${max} L/h`,
        'split the zone or lower its flow',
      )
  }
  return [...shots].sort((a, b) => a.time - b.time || (a.zone < b.zone ? -1 : a.zone > b.zone ? 1 : 0))
}

/** Shots that are wanted while one of the same zone should still run. */
function wantedTwice(wanted: readonly ZoneShot[]): StaggerFinding[] {
  const ends = new Map<string, number>()
  const findings: StaggerFinding[] = []
  for (const { zone, time, runTime } of wanted) {
    const end = ends.get(zone) ?? time
    if (end > time) findings.push({ code: 'wanted-twice', level: 'caution', zone, time, value: end - time, unit: 's' })
    ends.set(zone, Math.max(end, time + runTime))
  }
  return findings
}

function place(profile: PumpProfile, shot: ZoneShot, own: number, rest: number, max: number): Placed {
  forgetBefore(profile, shot.time)
  // Rounding in sums of flows must not put a shot off.
  const from = firstFit(profile, own, shot.runTime + rest, shot.flow, max * (1 + 1e-12))
  take(profile, from, from + shot.runTime + rest, shot.flow)
  return { ...shot, time: from as Instant, delay: (from - shot.time) as Duration, end: from + shot.runTime }
}

function findingsOf(placed: readonly Placed[], pump: SharedPump): StaggerFinding[] {
  const maxDelay = numberIn(optionOr(pump.maxDelay, 1800), VALVE_TIME, 'maxDelay')
  const lastEnd = pump.lastEnd === undefined ? Number.POSITIVE_INFINITY : numberIn(pump.lastEnd, INSTANT, 'lastEnd')
  const findings: StaggerFinding[] = []
  for (const { zone, time, runTime, delay, end } of placed) {
    if (runTime > MAX_RUN_TIME.max)
      findings.push({ code: 'runs-long', level: 'caution', zone, time, value: runTime, unit: 's' })
    if (end > lastEnd)
      findings.push({ code: 'ends-too-late', level: 'danger', zone, time, value: end - lastEnd, unit: 's' })
    else if (delay > maxDelay)
      findings.push({ code: 'begins-late', level: 'caution', zone, time, value: delay, unit: 's' })
  }
  return findings
}
