import { maxOf, minOf } from '../../quantity/extremes.js'
import { type DayBesideBefore, dayBesideBefore } from './day-beside-before.js'
import { SHOTS, type ShotEvidence } from './judge-shot.js'
import type { Watched } from './watched.js'
import type { ZoneWatchState } from './zone-state.js'

/** What the last shots say together. */
export interface RecentShots {
  readonly count: number
  /** Mean rise of each probe over its last k shots, as a share of the usual; null with fewer. */
  readonly riseOf: (probe: number, k: number) => number | null
  /** The best of them: what the water did where nothing else is wrong. */
  readonly best: (k: number) => number | null
  readonly worst: (k: number) => number | null
  /** Share that the meter saw of the last k shots, of the usual; null without a meter. */
  readonly metered: (k: number) => number | null
  /** Share that drained of the last k shots; null without a gauge. */
  readonly drained: (k: number) => number | null
  /** The last day beside the two before; null where there is too little of either. */
  readonly day: DayBesideBefore | null
  readonly level: (k: number) => number | null
  /** Whether the last k shots began near the highest level of those before: what did not rise may have overflowed. */
  readonly mayOverflow: (k: number) => boolean
  /** Whether any probe that can be trusted began them near the highest level of its own, or none can tell. */
  readonly mayBeFull: (k: number) => boolean
  /** A probe beside the best of the others, over its last k shots that could not overflow there; null with fewer of late. */
  readonly beside: (probe: number, k: number) => BesideOthers | null
  /** Standard error of a mean rise over the last k, and whether what plants drank meanwhile was known. */
  readonly error: (k: number) => number
  readonly sure: (k: number) => boolean
  /** Mean volume of the last k shots over that of the medium; zero with fewer. Unit: 1. */
  readonly filled: (k: number) => number
  /** Beginning of the first of the last k shots. Unit: s. */
  readonly since: (k: number) => number
}

/** One probe beside the others over the same shots. */
export interface BesideOthers {
  readonly own: number
  readonly best: number
  readonly error: number
  readonly since: number
}

/** A place that is wetter than the others may be full, and overflow, when they are not: such shots say nothing of its dripper. */
function besideOthers(shots: readonly ShotEvidence[], probe: number, k: number): BesideOthers | null {
  const late = shots.slice(-2 * k)
  const top = shots.reduce((most, { levels }) => Math.max(most, levels[probe] ?? 0), 0)
  const clear = late
    .filter(({ levels, rises }) => (levels[probe] ?? top) <= top - 1.5 * OVERFLOW && rises[probe] != null)
    .slice(-k)
  if (clear.length < k) return null
  const mean = (i: number) => {
    const told = clear.map(({ rises }) => rises[i] ?? null)
    return told.some((one) => one === null) ? null : (told as number[]).reduce((sum, one) => sum + one / k, 0)
  }
  const others = clear[0]!.rises.flatMap((_, i) => (i === probe ? [] : [mean(i)])).filter((one) => one !== null)
  if (others.length === 0) return null
  return {
    own: mean(probe) as number,
    best: maxOf(others),
    error: clear.reduce((sum, { error }) => sum + error / k, 0) / Math.sqrt(k),
    since: clear[0]!.time,
  }
}

/** A meter is learnt from shots of which it showed half at least: a smaller share comes from a damaged state. */
const LEAST_METERED = 0.1

/** So near the highest level an overflow is likely: half a shot of the rehearsals. Unit: m³/m³. */
const OVERFLOW = 0.01

/** Which probes jumped in the day before the last shot: what they show of it is no witness of water. */
export function jumpedLately({ shots, probes }: Pick<ZoneWatchState, 'shots' | 'probes'>): boolean[] {
  const last = shots[shots.length - 1]?.time ?? 0
  return probes.map(({ step }) => step !== null && last - step.time < 86400)
}

export function recentShots(
  { shots, usual, probes }: Pick<ZoneWatchState, 'shots' | 'usual' | 'probes'>,
  jumped: readonly boolean[],
  zone: Watched,
): RecentShots {
  const last = (k: number): readonly ShotEvidence[] => (shots.length >= k ? shots.slice(-k) : [])
  const meanOf = (values: readonly (number | null)[], k: number): number | null => {
    if (values.length < k || values.some((value) => value === null)) return null
    return (values as number[]).reduce((sum, value) => sum + value / k, 0)
  }
  const riseOf = (probe: number, k: number) =>
    meanOf(
      last(k).map(({ rises }) => rises[probe] ?? null),
      k,
    )
  const rises = (k: number) =>
    probes.flatMap((_, i) => {
      const rise = jumped[i] ? null : riseOf(i, k)
      return rise === null ? [] : [rise]
    })
  const usualMeter = usual.meteredShots >= 4 && usual.metered > LEAST_METERED ? usual.metered : 1
  const metered = (k: number) => {
    const share = meanOf(
      last(k).map((shot) => shot.metered),
      k,
    )
    return share === null ? null : share / usualMeter
  }
  const beside = new Map<number, BesideOthers | null>()
  return {
    count: shots.length,
    riseOf,
    best: remembered((k) => (rises(k).length === 0 ? null : maxOf(rises(k)))),
    worst: remembered((k) => (rises(k).length === 0 ? null : minOf(rises(k)))),
    metered,
    drained: (k) => {
      // The newest is drained when the next one begins.
      const ended = shots.at(-1)?.drained === null ? shots.slice(0, -1) : shots
      return meanOf(
        ended.slice(-k).map((shot) => shot.drained),
        k,
      )
    },
    day: dayBesideBefore(shots, zone),
    level: (k) =>
      meanOf(
        last(k).map((shot) => shot.level),
        k,
      ),
    mayOverflow: (k) => {
      const top = shots.slice(0, -k).reduce((most, shot) => Math.max(most, shot.level ?? 0), 0)
      return last(k).reduce((sum, shot) => sum + (shot.level ?? top) / k, 0) > top - OVERFLOW
    },
    mayBeFull: (k) => {
      const near = probes.flatMap((_, i) => (jumped[i] ? [] : [nearTop(shots, i, k)])).filter((one) => one !== null)
      return near.length === 0 || near.some(Boolean)
    },
    beside: (probe, k) => {
      const key = probe * SHOTS + k
      if (!beside.has(key)) beside.set(key, besideOthers(shots, probe, k))
      return beside.get(key) as BesideOthers | null
    },
    error: (k) => last(k).reduce((sum, shot) => sum + shot.error / k, 0) / Math.sqrt(k),
    sure: (k) => last(k).every((shot) => shot.sure),
    filled: (k) => last(k).reduce((sum, { volume }) => sum + volume / k, 0) / zone.volume,
    since: (k) => last(k)[0]?.time ?? 0,
  }
}

/** Whether a probe began its last k shots near the highest level of its own before; null where it is not known. */
function nearTop(shots: readonly ShotEvidence[], probe: number, k: number): boolean | null {
  const levels = shots.map(({ levels }) => levels[probe] ?? null)
  const late = levels.slice(-k).filter((level) => level !== null)
  const before = levels.slice(0, -k).filter((level) => level !== null)
  if (late.length === 0 || before.length === 0) return null
  return late.reduce((sum, level) => sum + level / late.length, 0) > maxOf(before) - OVERFLOW
}

/** A function of a number that works each answer out once. */
function remembered<T>(work: (k: number) => T): (k: number) => T {
  const answers = new Map<number, T>()
  return (k) => {
    if (!answers.has(k)) answers.set(k, work(k))
    return answers.get(k) as T
  }
}
