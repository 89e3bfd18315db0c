import { added, lineOf, type NightLine, NO_SUMS, type Sums } from './night-line.js'
import { isFrozen, isNoisy } from './probe-doubts.js'
import type { ProbeWatch } from './watch-probe.js'

/** A stretch without shots that is under way. */
export interface NightWatch {
  readonly from: number | null
  readonly last: number | null
  readonly sums: readonly Sums[]
  /** First levels, so that the sums stay small. Unit: m³/m³. */
  readonly origin: readonly (number | null)[]
  /** Time of the newest reading of each probe that was taken in. Unit: s. */
  readonly seen: readonly (number | null)[]
}

/** What a stretch without shots showed. */
export interface NightEvidence {
  readonly start: number
  readonly end: number
  /** Fall of each probe, warmth taken out where it is measured; null where it is not known. Unit: m³/m³/h. */
  readonly falls: readonly (number | null)[]
  /** Standard errors of the falls by the noise of the readings. Unit: m³/m³/h. */
  readonly errors: readonly number[]
  /** Answer of each to temperature; null where the temperature hardly changed. Unit: m³/m³/°C. */
  readonly warmth: readonly (number | null)[]
  /** Levels in the beginning, after drain. Unit: m³/m³. */
  readonly plateaus: readonly (number | null)[]
  /** Share of the last shots that drained, and EC of the drain. Unit: 1, dS/m. */
  readonly drained: number | null
  readonly drainEC: number | null
  /** Probes that fell unlike themselves. */
  readonly odd: readonly boolean[]
}

/** Nights that are kept. */
export const NIGHTS = 10
/** A stretch tells something from here on: with readings by the minute a fall is known to 0.00008 m³/m³/h then. Unit: s. */
const LONG = 14400

export function newNight(probes: number): NightWatch {
  const nulls = new Array<null>(probes).fill(null)
  return { from: null, last: null, sums: nulls.map(() => NO_SUMS), origin: nulls, seen: nulls }
}

/** Takes in the newest reading of each probe; the stretch begins an hour after a shot. */
export function withEvening(
  night: NightWatch,
  probes: readonly ProbeWatch[],
  temperature: number | null,
  now: number,
): NightWatch {
  const from = night.from ?? now
  const sums: Sums[] = []
  const origin: (number | null)[] = []
  const seen: (number | null)[] = []
  probes.forEach((probe, i) => {
    // What jumped, froze or scatters in the night shows no fall of its own.
    const jumped = probe.step !== null && probe.step.time >= from
    const wetted = probe.climb !== null && probe.climb.time >= from && probe.climb.lasted < 2700
    if (probe.bad !== null || isFrozen(probe) || isNoisy(probe) || jumped || wetted) {
      sums.push(NO_SUMS)
      origin.push(null)
      seen.push(null)
      return
    }
    const time = probe.times[probe.times.length - 1]
    const level = probe.levels[probe.levels.length - 1]
    const old = night.sums[i]!
    const fresh = time !== undefined && level !== undefined && time >= from && time > (night.seen[i] ?? -Infinity)
    origin.push(fresh ? (night.origin[i] ?? level) : (night.origin[i] ?? null))
    seen.push(fresh ? time : (night.seen[i] ?? null))
    sums.push(
      fresh ? added(old, (time - from) / 3600, level - (night.origin[i] ?? level), (temperature ?? 20) - 20) : old,
    )
  })
  return { from, last: now, sums, origin, seen }
}

/** Whether the stretch is long enough to tell something. */
export function isLong(night: NightWatch): night is NightWatch & { readonly from: number; readonly last: number } {
  return night.from !== null && night.last !== null && night.last - night.from >= LONG
}

export function linesOf({ sums }: NightWatch, probes: readonly ProbeWatch[]): readonly NightLine[] {
  return sums.map((one, i) => lineOf(one, probes[i]!.noise))
}

export function evidenceOf(
  night: NightWatch,
  probes: readonly ProbeWatch[],
  told: { readonly drained: number | null; readonly drainEC: number | null; readonly odd: readonly boolean[] },
): NightEvidence | null {
  if (!isLong(night)) return null
  const lines = linesOf(night, probes)
  return {
    start: night.from,
    end: night.last,
    falls: lines.map(({ fall }) => fall),
    errors: lines.map(({ error }) => error),
    warmth: lines.map(({ warmth }) => warmth),
    plateaus: night.origin,
    ...told,
  }
}
