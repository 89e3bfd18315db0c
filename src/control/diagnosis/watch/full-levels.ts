import { fallNow } from './climb-and-fall.js'
import { meanSince } from './level-of-probe.js'
import type { ProbeWatch } from './watch-probe.js'
import type { GivenShot, ValveWatch } from './watch-valve.js'
import type { Watched } from './watched.js'

/** What each probe said right after a shot that its container had no room for. */
export interface FullLevels {
  readonly time: number
  /** Null where a probe still rose, or cannot be trusted. Unit: m³/m³. */
  readonly levels: readonly (number | null)[]
}

/** Full times that are kept: one in half a day at most. */
export const FULLS = 24
const APART = 43200
/** A container that is full shows less than this share of a shot: between nothing and the three quarters that a place with room shows at least. Chosen. */
const HELD = 0.35
/** And so much more than usual of the shot has drained by then: others must be full too. Chosen, between what runs past and a shot. */
export const DRAINS = 0.15

/** The times of before, with one at which a shot drained and did not raise its probe. */
export function withFull(
  fulls: readonly FullLevels[],
  shot: GivenShot,
  valve: ValveWatch,
  probes: readonly ProbeWatch[],
  trusted: readonly boolean[],
  usualDrain: number,
  now: number,
  light: number | null,
  zone: Watched,
): readonly FullLevels[] {
  const volume = (zone.flow * (shot.end - shot.start)) / 3600
  const waited = Math.min(zone.responseTime, now - shot.end)
  if (
    !valve.hasDrain ||
    !(volume > 0) ||
    waited < 240 ||
    valve.drainedSince - valve.gauge.step < (usualDrain + DRAINS) * volume
  )
    return fulls
  const levels = probes.map((probe, i) => {
    const [before, after] = [shot.before[i], meanSince(probe, shot.end + 0.5 * waited)]
    if (!trusted[i] || !before || after === null) return null
    // A fall that is not known makes a rise look smaller, but not by half of a shot.
    const { fall } = fallNow(probe, now, light)
    const rise = after.level - before.level + fall * (after.time - before.time)
    return (rise * zone.volume) / volume < HELD ? after.level : null
  })
  if (levels.every((level) => level === null)) return fulls
  const last = fulls[fulls.length - 1]
  // A clock that was set back makes a time of its own, and none of the one that it had gone ahead to.
  if (last === undefined || Math.abs(shot.start - last.time) >= APART)
    return [...fulls, { time: shot.start, levels }].slice(-FULLS)
  return [...fulls.slice(0, -1), { time: last.time, levels: levels.map((level, i) => level ?? last.levels[i] ?? null) }]
}
