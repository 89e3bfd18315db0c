import { maxOf } from '../../../quantity/extremes.js'
import { fallNow } from '../watch/climb-and-fall.js'
import { NOON } from '../watch/leap-by-water.js'
import { meanSince } from '../watch/level-of-probe.js'
import { isSlow, timeApart } from '../watch/time-apart.js'
import type { CounterWatch } from '../watch/watch-counter.js'
import type { ProbeWatch } from '../watch/watch-probe.js'
import type { GivenShot, ValveWatch } from '../watch/watch-valve.js'
import type { Watched } from '../watch/watched.js'

/** What one shot showed. Shares are of the volume that was ordered. */
export interface ShotEvidence {
  readonly time: number
  /** Unit: L. */
  readonly volume: number
  /** Rise of each probe as a share of its usual one; null where it cannot be trusted or the medium was full. Unit: 1. */
  readonly rises: readonly (number | null)[]
  /** Share that the meter saw, null without one. Unit: 1. */
  readonly metered: number | null
  /** Share that drained before the next one began; null until then, and without a gauge. Unit: 1. */
  readonly drained: number | null
  /** Level of each probe before, and their mean. Unit: m³/m³. */
  readonly levels: readonly (number | null)[]
  readonly level: number | null
  /** Standard deviation of a rise by the noise of the probes, as a share. Unit: 1. */
  readonly error: number
  /** Whether what plants drank meanwhile was known. */
  readonly sure: boolean
}

/** Time of which the readings before and after a shot are averaged. Unit: s. */
const SIDE = 300
/** Where plants may have drunk more of a shot, one that came may look like one that is missed. Unit: 1. */
const MAX_DRUNK = 0.65
/** How far a fall in the sun is known wrongly at worst, as a share of it. Chosen. */
const FALL_ERROR = 0.25
/** Shots that are kept: three to four days of them in the rehearsals. */
export const SHOTS = 60
/** Rise that is expected of a probe that nobody knows yet, as a share of volume over volume: it has not all arrived, some ran past. */
const FIRST_RISE = 0.8

/** Whether a place at this level is too full to show half of a shot. */
export function hasNoRoom(level: number, volume: number, zone: Watched): boolean {
  return level + volume / zone.volume / 2 > zone.full
}

/** Whether the probes can have seen the shot by now. */
export function isDue(valve: ValveWatch, probes: readonly ProbeWatch[], now: number, zone: Watched): boolean {
  const { shot, open } = valve
  if (shot === null || open !== null || now < shot.end + zone.responseTime) return false
  if (now >= shot.end + zone.responseTime + zone.maxAge) return true
  return probes.every(({ bad, times, heard }) => {
    const last = times[times.length - 1]
    const silent = heard === null || now - heard > zone.maxAge
    return silent || bad !== null || (last !== undefined && last >= shot.end + 0.8 * zone.responseTime)
  })
}

export interface JudgedShot {
  readonly shot: ShotEvidence
  readonly probes: readonly ProbeWatch[]
}

/** Whether the meter has told of all of the shot by now, and tells it from the next. */
function countsShots({ until, lag }: CounterWatch, { end }: GivenShot, { responseTime }: Watched): boolean {
  return until !== null && until >= end && lag < responseTime
}

function meanLevel(before: GivenShot['before']): number | null {
  const levels = before.flatMap((one) => (one === null ? [] : [one.level]))
  return levels.length === 0 ? null : levels.reduce((sum, one) => sum + one, 0) / levels.length
}

/** What plants may have drunk meanwhile, where nobody saw lately how much it is. Unit: m³/m³. */
function mayDrink({ fallTime }: ProbeWatch, now: number, use: number, passed: number): number {
  return fallTime !== null && now - fallTime < 3600 ? 0 : NOON * use * passed
}

/** Judges a shot by what the probes say now. `trusted` says which of them can be, `use` what plants drink in the mean. */
export function judged(
  shot: GivenShot,
  valve: ValveWatch,
  probes: readonly ProbeWatch[],
  trusted: readonly boolean[],
  now: number,
  light: number | null,
  use: number,
  zone: Watched,
): JudgedShot | null {
  const volume = (zone.flow * (shot.end - shot.start)) / 3600
  if (!(volume > 0)) return null
  const expected = volume / zone.volume
  const waited = Math.min(zone.responseTime, now - shot.end)
  const falls = probes.map((probe) => fallNow(probe, now, light))
  const rises = probes.map((probe, i) => {
    const before = shot.before[i]
    const after = waited < 240 ? null : meanSince(probe, shot.end + 0.5 * waited)
    // Between readings that are far apart plants drink most of a shot, or all of a small one.
    if (!trusted[i] || !before || after === null || isSlow(probe, zone)) return null
    const passed = after.time - before.time
    if (mayDrink(probe, now, use, passed) > MAX_DRUNK * expected || hasNoRoom(before.level, volume, zone)) return null
    return (after.level - before.level + falls[i]!.fall * passed) / expected
  })
  const shares = rises.map((rise, i) => (rise === null ? null : rise / usualRise(probes[i]!)))
  return {
    shot: {
      time: shot.start,
      volume,
      rises: shares,
      metered: countsShots(valve.meter, shot, zone) ? shot.metered / volume : null,
      drained: null,
      levels: shot.before.map((one) => one?.level ?? null),
      level: meanLevel(shot.before),
      error: maxOf(probes.map((probe, i) => (trusted[i] ? errorOf(probe, use) : 0))) / expected,
      sure: falls.every(({ sure }, i) => sure || !trusted[i]),
    },
    probes: probes.map((probe, i) => learnt(probe, rises[i] ?? null, shares[i] ?? null)),
  }
}

/**
 * Error of a difference of two means of five readings or so, as by the minute, or of two readings where the means have no two, and more since they
 * lie far from the shot: then it counts as well that a fall in the sun is known to a quarter at best. Chosen.
 */
function errorOf(probe: ProbeWatch, use: number): number {
  const { noise } = probe
  const apart = timeApart(probe)
  return apart > SIDE / 2 ? Math.hypot(2 * noise, FALL_ERROR * NOON * use * 2 * apart) : 0.63 * noise
}

function usualRise(probe: ProbeWatch): number {
  return probe.rises >= 4 ? probe.usualRise : FIRST_RISE
}

/** Learns the usual rise from shots that look usual, at first within a factor of two; then slowly, over fifty of them. Chosen on rehearsals. */
function learnt(probe: ProbeWatch, rise: number | null, share: number | null): ProbeWatch {
  if (rise === null || share === null) return probe
  const usual = probe.rises < 8 ? share > 0.5 && share < 2 : share > 0.8 && share < 1.3
  if (!usual) return probe
  const rises = probe.rises + 1
  return { ...probe, rises, usualRise: probe.usualRise + Math.max(1 / rises, 0.02) * (rise - probe.usualRise) }
}
