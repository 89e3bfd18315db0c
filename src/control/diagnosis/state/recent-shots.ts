import { maxOf, minOf } from '../../../quantity/extremes.js'
import { type DayBesideBefore, dayBesideBefore } from '../shots/day-beside-before.js'
import { type FirstAndLater, firstAndLater } from '../shots/first-and-later.js'
import { hasNoRoom, SHOTS, type ShotEvidence } from '../shots/judge-shot.js'
import { type NothingDrained, nothingDrained } from '../shots/nothing-drained.js'
import { shareOf, shotsToldBy, volumeOf } from '../shots/shares-of-shots.js'
import { type SwappedRises, swappedRises } from '../shots/swapped-rises.js'
import { TOGETHER } from '../shots/waterings.js'
import { gaugeOvercounts } from '../watch/gauge-overcounts.js'
import { tells } from '../watch/steps-of-counter.js'
import type { CounterWatch } from '../watch/watch-counter.js'
import type { Watched } from '../watch/watched.js'
import type { ZoneWatchState } from './zone-state.js'

/** What the last shots say together. */
export interface RecentShots {
  readonly count: number
  /** Mean rise of each probe over its last k shots, as a share of the usual; null with fewer. */
  readonly riseOf: (probe: number, k: number) => number | null
  /** The best of them: what the water did where nothing else is wrong. */
  readonly best: (k: number) => number | null
  readonly worst: (k: number) => number | null
  /** The best of them by the shots for which its place had room; null where one was full before most: it lacks no water. */
  readonly bestWithRoom: (k: number) => number | null
  /** Share that the meter saw of the last k shots, of the usual; null without a meter, or where its steps are too large to tell. */
  readonly metered: (k: number) => number | null
  /** How many shots, and at least k, the meter can tell of. */
  readonly shotsOfMeter: (k: number) => number
  /** Share that drained of the last k shots; null without a gauge. */
  readonly drained: (k: number) => number | null
  /** The newest shots that rose well, if nothing of them drained though it should have. */
  readonly undrained: NothingDrained | null
  /** The last day beside the two before; null where there is too little of either. */
  readonly day: DayBesideBefore | null
  /** Of the same day, shots that were given together; null where they are too few. */
  readonly firstAndLater: FirstAndLater | null
  /** The least share that any of the last k shots drained; null as `drained`. */
  readonly minDrained: (k: number) => number | null
  /** Whether the gauge counts more than shots can have brought. */
  readonly overcounts: boolean
  /** Whether the meter counted nothing of the last shots that rose. */
  readonly meterIsDead: boolean
  /** Probes of which each rises as the other did. */
  readonly swapped: SwappedRises | null
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
  /** Water of as many shots as are kept; of no shots without end. Unit: L. */
  readonly water: number
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
function besideOthers(
  shots: readonly ShotEvidence[],
  probe: number,
  k: number,
  meteredOf: (shots: readonly ShotEvidence[]) => number | null,
  zone: Watched,
): BesideOthers | null {
  const late = shots.slice(-2 * k)
  const top = shots.reduce((max, { levels }) => Math.max(max, levels[probe] ?? 0), 0)
  const clear = late
    .filter(({ levels, rises }) => (levels[probe] ?? top) <= top - 1.5 * OVERFLOW && rises[probe] != null)
    .slice(-k)
  if (clear.length < k) return null
  const others = clear[0]!.rises.flatMap((_, i) => (i === probe ? [] : (shownBy(clear, i, zone) ?? [])))
  // Where the meter shows that the water changed too, a full place is no witness of it.
  const isOdd = clear.some((shot) => Math.abs((meteredOf([shot]) ?? 1) - 1) > 0.15)
  if (others.length === 0 || (isOdd && others.includes('full'))) return null
  return {
    own: clear.reduce((sum, { rises }) => sum + rises[probe]! / k, 0),
    // What is full got its water.
    best: maxOf(others.map((one) => (one === 'full' ? 1 : one))),
    error: clear.reduce((sum, { error }) => sum + error / k, 0) / Math.sqrt(k),
    since: clear[0]!.time,
  }
}

/** Mean rise that a probe shows of shots. Those before which its place was full are left out, unless they are most of them. */
function shownBy(shots: readonly ShotEvidence[], probe: number, zone: Watched): number | 'full' | null {
  const shown = shots.flatMap(({ rises }) => rises[probe] ?? [])
  const full = shots.filter(
    ({ rises, levels, volume }) =>
      rises[probe] == null && levels[probe] != null && hasNoRoom(levels[probe], volume, zone),
  ).length
  if (shots.length === 0 || shown.length + full < shots.length) return null
  return full > shown.length ? 'full' : shown.reduce((sum, one) => sum + one / shown.length, 0)
}

/** A meter is learnt from shots of which it showed half at least: a smaller share comes from a damaged state. */
const MIN_METERED = 0.1
/** A smaller share of shots that rose is nothing: chosen on rehearsals. */
export const DEAD = 0.15

/** So near the highest level an overflow is likely: half a shot of the rehearsals. Unit: m³/m³. */
const OVERFLOW = 0.01

/** Which probes jumped in the day before the last shot: what they show of it is no witness of water. */
export function jumpedLately({ shots, probes }: Pick<ZoneWatchState, 'shots' | 'probes'>): boolean[] {
  const last = shots[shots.length - 1]?.time ?? 0
  return probes.map(({ step }) => step !== null && last - step.time < 86400)
}

export function recentShots(
  { shots, usual, probes, valve }: Pick<ZoneWatchState, 'shots' | 'usual' | 'probes' | 'valve'>,
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
  const usualMeter = usual.meteredShots >= 4 && usual.metered > MIN_METERED ? usual.metered : 1
  const [meterStep, gaugeStep] = [valve.meter.step, valve.gauge.step]
  const meteredOf = (some: readonly ShotEvidence[]) => {
    if (!tells(meterStep, volumeOf(some))) return null
    const share = shareOf(some, { share: (shot) => shot.metered, step: meterStep, usual: usualMeter })
    return share === null ? null : share / usualMeter
  }
  const drainedOf = (some: readonly ShotEvidence[]) =>
    shareOf(some, { share: (shot) => shot.drained, step: gaugeStep, usual: usual.drained })
  // The newest is drained when the next one begins.
  const ended = shots.at(-1)?.drained === null ? shots.slice(0, -1) : shots
  const isLate = valve.gauge.lag >= TOGETHER
  const isDead = meterIsDead(shots, valve.meter)
  const beside = new Map<number, BesideOthers | null>()
  const since = dayOf(shots)
  return {
    count: shots.length,
    riseOf,
    best: remembered((k) => (rises(k).length === 0 ? null : maxOf(rises(k)))),
    worst: remembered((k) => (rises(k).length === 0 ? null : minOf(rises(k)))),
    bestWithRoom: remembered((k) => {
      const shown = probes.flatMap((_, i) => (jumped[i] ? [] : (shownBy(last(k), i, zone) ?? [])))
      return shown.length === 0 || shown.includes('full') ? null : maxOf(shown as number[])
    }),
    // One that counted nothing yet tells no shot.
    metered: (k) => (valve.meter.grain === 0 && !isDead ? null : meteredOf(last(k))),
    shotsOfMeter: (k) => shotsToldBy(shots, meterStep, k) ?? k,
    drained: (k) => (ended.length < k ? null : drainedOf(ended.slice(-k))),
    minDrained: (k) => {
      const shares = ended.slice(-k).map((shot) => shot.drained)
      return shares.length < k || shares.includes(null) ? null : minOf(shares as number[])
    },
    undrained: nothingDrained(ended, usual, gaugeStep),
    overcounts: gaugeOvercounts(usual, probes),
    meterIsDead: isDead,
    swapped: swappedRises(shots, probes),
    // A gauge that counts so late tells of another watering.
    day: isLate ? null : dayBesideBefore(shots, since, gaugeStep, zone),
    firstAndLater: isLate ? null : firstAndLater(shots, since, gaugeStep),
    level: (k) =>
      meanOf(
        last(k).map((shot) => shot.level),
        k,
      ),
    mayOverflow: (k) => {
      const top = shots.slice(0, -k).reduce((max, shot) => Math.max(max, shot.level ?? 0), 0)
      return last(k).reduce((sum, shot) => sum + (shot.level ?? top) / k, 0) > top - OVERFLOW
    },
    mayBeFull: (k) => {
      const near = probes.flatMap((_, i) => (jumped[i] ? [] : [nearTop(shots, i, k)])).filter((one) => one !== null)
      return near.length === 0 || near.some(Boolean)
    },
    beside: (probe, k) => {
      const key = probe * SHOTS + k
      if (!beside.has(key)) beside.set(key, besideOthers(shots, probe, k, meteredOf, zone))
      return beside.get(key) as BesideOthers | null
    },
    error: (k) => last(k).reduce((sum, shot) => sum + shot.error / k, 0) / Math.sqrt(k),
    sure: (k) => last(k).every((shot) => shot.sure),
    filled: (k) => last(k).reduce((sum, { volume }) => sum + volume / k, 0) / zone.volume,
    water: shots.length === 0 ? Infinity : (SHOTS * volumeOf(shots)) / shots.length,
    since: (k) => last(k)[0]?.time ?? 0,
  }
}

/** When the last 24 hours of shots began; of few shots a third are of the day. */
function dayOf(shots: readonly ShotEvidence[]): number {
  const last = shots[shots.length - 1]
  return last === undefined ? 0 : Math.max(last.time - 86400, shots[Math.floor((shots.length * 2) / 3)]!.time)
}

/** A meter that has counted nothing yet may be waiting for its first pulse: most pulse by a litre or less. Chosen. Unit: L. */
const FIRST = 2

/** Three shots that rose make sure, or as many as bring more than the meter counts in one step: chosen. */
function meterIsDead(shots: readonly ShotEvidence[], { grain, step }: CounterWatch): boolean {
  const rose = shots.filter(({ rises }) => rises.some((rise) => rise !== null && rise >= 0.6))
  if (grain === 0) return rose.length >= 3 && volumeOf(rose) > FIRST
  const k = shotsToldBy(rose, step, 3)
  const share = k === null ? null : shareOf(rose.slice(-k), { share: ({ metered }) => metered, step, usual: 1 })
  return share !== null && share < DEAD
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
