import { isFrozen, isNoisy } from './probe-doubts.js'
import type { ProbeWatch } from './watch-probe.js'

/** Sums for a line through the levels of a probe over time and temperature, since the last shot has drained. */
export type Sums = readonly [
  n: number,
  t: number,
  y: number,
  warm: number,
  tt: number,
  ty: number,
  tWarm: number,
  warmWarm: number,
  warmY: number,
]

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
/** A stretch tells something from here on. Unit: s. */
const LONG = 14400

const NO_SUMS: Sums = [0, 0, 0, 0, 0, 0, 0, 0, 0]

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

function added(s: Sums, t: number, y: number, warm: number): Sums {
  return [
    s[0] + 1,
    s[1] + t,
    s[2] + y,
    s[3] + warm,
    s[4] + t * t,
    s[5] + t * y,
    s[6] + t * warm,
    s[7] + warm * warm,
    s[8] + warm * y,
  ]
}

/** Fall and answer to temperature of one probe. */
export function lineOf(s: Sums): { readonly fall: number | null; readonly warmth: number | null } {
  const [n, t, y, w] = s
  if (n < 8) return { fall: null, warmth: null }
  const tt = s[4] - (t * t) / n
  const ty = s[5] - (t * y) / n
  const tw = s[6] - (t * w) / n
  const ww = s[7] - (w * w) / n
  const wy = s[8] - (w * y) / n
  if (!(tt > 0)) return { fall: null, warmth: null }
  // What of the temperature is not just time: half a degree must be left to tell both apart.
  const own = ww - (tw * tw) / tt
  if (!(own / n > 0.06)) return { fall: -ty / tt, warmth: null }
  const warmth = (wy - (tw * ty) / tt) / own
  return { fall: -(ty - warmth * tw) / tt, warmth }
}

export function evidenceOf(
  night: NightWatch,
  told: { readonly drained: number | null; readonly drainEC: number | null; readonly odd: readonly boolean[] },
): NightEvidence | null {
  if (night.from === null || night.last === null || night.last - night.from < LONG) return null
  const lines = night.sums.map(lineOf)
  return {
    start: night.from,
    end: night.last,
    falls: lines.map(({ fall }) => fall),
    warmth: lines.map(({ warmth }) => warmth),
    plateaus: night.origin,
    ...told,
  }
}
