import { NOTHING, zoneMean } from '../../probe/zone-mean.js'
import type { Duration, WaterContent } from '../../quantity/generated/kinds.js'
import { findSettledLevels } from '../../record/shots/find-settled-levels.js'
import { fullLevelOf } from '../../record/shots/plateau.js'
import type { DrainedLevel, ZoneLevel } from '../day/zone-day.js'
import { allowedFall, type LevelLimits, type MediumAtRest } from '../day/zone-levels.js'
import type { ZoneMemory } from '../day/zone-memory.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import type { ZoneReason } from '../findings/zone-reason.js'
import { type CheckedProbe, maxStepOf } from '../probes/check-probe.js'
import type { ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'

/** A level is remembered so long. */
const REMEMBERED = 604800
/** A probe that stands so much further below its own level than the others do has fallen away, m³/m³. */
const FALLEN = 0.1

/** The level to which shots drain back at a probe: of these two days, or remembered. */
export function drainedLevel(
  zone: Zone,
  { day, time }: ZoneWindow,
  probe: CheckedProbe,
  memory: ZoneMemory,
): Known<DrainedLevel> {
  const drainTime = Math.min(86400, Math.max(1200, zone.readingStep)) as Duration
  const settled = findSettledLevels({
    time,
    waterContent: probe.waterContent,
    shots: probe.shots,
    drainTime,
    maxStep: maxStepOf(zone),
  })
  const full = fullLevelOf(settled.flatMap((one) => (one.known && one.drainBack > 0 ? [one.level] : [])))
  if (full !== undefined) return known({ ...full, at: day.to })
  const before = Object.hasOwn(memory.levels, probe.name) ? memory.levels[probe.name] : undefined
  if (before !== undefined && day.to - before.at <= REMEMBERED) return known(before)
  return unknown('few-settled-shots')
}

/** A probe with what decides whether it counts. */
export interface Candidate {
  readonly name: string
  readonly weight: number
  readonly level: Known<DrainedLevel>
  readonly last: number | undefined
  /** Whether what it reads is doubted. */
  readonly doubted: boolean
  /** Whether it is left out already: doubted, or without a reading at the end of the day. */
  readonly leftOut: boolean
}

/** Probes that have fallen away from the others, each compared with its own level. */
export function fallenAway(candidates: readonly Candidate[]): ZoneFinding[] {
  const below = candidates.flatMap(({ name, level, last, leftOut }) =>
    leftOut || last === undefined || !level.known ? [] : [{ name, below: level.value.level - last }],
  )
  return below.flatMap(({ name, below: own }): ZoneFinding[] => {
    const others = below.filter((other) => other.name !== name).map((other) => other.below)
    if (others.length === 0) return []
    const usual = others.reduce((sum, x) => sum + x, 0) / others.length
    return own - usual > FALLEN ? [{ code: 'fell-away', level: 'danger', probe: name, below: own, others: usual }] : []
  })
}

/** The level of the zone from the probes that count, and the limits of each. */
export function levelOfZone(
  zone: Zone,
  candidates: readonly Candidate[],
  medium: Known<MediumAtRest>,
): { readonly level: Known<ZoneLevel>; readonly limits: ReadonlyMap<string, LevelLimits> } {
  const limits = new Map<string, LevelLimits>()
  const counting = candidates.filter(({ leftOut, last }) => !leftOut && last !== undefined)
  const own = counting.filter(({ level }) => level.known)
  const none = (reason: ZoneReason) => ({ level: unknown(reason), limits })
  // While a day goes on no probe has a reading at its end: that is no fault of theirs.
  if (counting.length === 0)
    return none(candidates.every(({ doubted }) => doubted) ? 'no-trusted-probe' : 'no-reading-late-in-day')
  if (own.length === 0 && !medium.known) return none('no-full-point')
  const shared = own.length > 0 ? own : counting
  const fullOf = ({ level }: Candidate) =>
    level.known ? level.value.level : (medium as Known<MediumAtRest> & { known: true }).value.containerCapacity
  const whole = (value: (one: Candidate) => number) =>
    zoneMean({
      probes: candidates.map((one) => ({
        name: one.name,
        weight: one.weight,
        ...(shared.includes(one) && { waterContent: value(one) as WaterContent }),
      })),
    })
  const fullPoint = whole((one) => inRange(fullOf(one))).mean
  const fall = allowedFall(zone, medium, fullPoint)
  if (!fall.known) return none(fall.reason)
  for (const one of shared) limits.set(one.name, { fullPoint: fullOf(one), refillPoint: fullOf(one) - fall.value })
  const state = whole((one) => inRange((one.last as number) - fullOf(one) + fullPoint))
  return {
    level: known({
      mean: state.mean,
      coverage: state.coverage,
      limits: { fullPoint, refillPoint: fullPoint - fall.value },
      from: own.length > 0 ? 'level-after-drain' : 'container-capacity',
    }),
    limits,
  }
}

/** A level a little outside what can be, because a probe was shifted, stands for the nearest that can. */
function inRange(level: number): number {
  return Math.min(1, Math.max(NOTHING, level))
}
