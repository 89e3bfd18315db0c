import type { ShotEvidence } from './judge-shot.js'
import { middle } from './middle.js'
import type { Watched } from './watched.js'

/** Shots of the last 24 hours beside earlier ones of their kind. */
export interface DayBesideBefore {
  readonly since: number
  /** Shots after a pause: middle of the shares that drained, and what such shots drained before. Unit: 1. */
  readonly drained: number
  readonly drainedBefore: number
  /** The same shots: mean rise of the probes, as a share of the usual, and its standard error. Unit: 1. */
  readonly rise: number
  readonly riseBefore: number
  readonly error: number
  /** The driest of them: how much more drained than before, and how many times as much. Unit: 1. */
  readonly dryMore: number
  readonly dryTimes: number
  /** All shots: how many times as much as before three of four of them drained at least, and at most. Unit: 1. */
  readonly leastTimes: number
  readonly mostTimes: number
}

/**
 * Shots that follow each other within so long are given as one: the second is begun before the first has drained, and its drain is
 * counted with that of the first. Chosen on rehearsals, in which two thirds of the drain have left after 5 to 20 minutes. Unit: s.
 */
const TOGETHER = 1800
/** Shots of one kind before the day, and after a pause within it, that make a comparison. Chosen on rehearsals. */
const EARLIER = 4
const AFTER_PAUSE = 4
/** Water that overflows does so in the wettest shots; what runs past a dry medium, or is counted wrongly, drains of the driest too. */
const DRIEST = 3

interface Told {
  readonly shot: ShotEvidence
  /** Whether it follows one that has not drained, and whether another follows before it has. */
  readonly kind: 0 | 1 | 2 | 3
  readonly rise: number | null
}

/** A shot beside the middle one of its kind before. */
interface Compared {
  readonly told: Told
  readonly drainedBefore: number
  readonly riseBefore: number | null
}

export function dayBesideBefore(shots: readonly ShotEvidence[], zone: Watched): DayBesideBefore | null {
  const last = shots[shots.length - 1]
  if (last === undefined) return null
  const since = Math.max(last.time - 86400, shots[Math.floor((shots.length * 2) / 3)]!.time)
  const told = kindsOf(shots, zone)
  const before = told.filter(({ shot }) => shot.time < since)
  const compared = told.filter(({ shot }) => shot.time >= since).flatMap((one) => besideKind(one, before))
  const paused = compared.filter(
    ({ told: { kind, rise }, riseBefore }) => kind < 2 && rise !== null && riseBefore !== null,
  )
  if (paused.length < AFTER_PAUSE) return null
  const mean = (of: (one: Compared) => number) => paused.reduce((sum, one) => sum + of(one) / paused.length, 0)
  const times = compared.map(timesBefore).sort((a, b) => a - b)
  const driest = [...paused].sort((a, b) => a.told.shot.level! - b.told.shot.level!).slice(0, DRIEST)
  return {
    since,
    drained: middle(paused.map(({ told }) => told.shot.drained as number)),
    drainedBefore: middle(paused.map(({ drainedBefore }) => drainedBefore)),
    rise: mean(({ told }) => told.rise as number),
    riseBefore: mean(({ riseBefore }) => riseBefore as number),
    error: mean(({ told }) => told.shot.error) / Math.sqrt(paused.length),
    dryMore: middle(driest.map(({ told, drainedBefore }) => told.shot.drained! - drainedBefore)),
    dryTimes: middle(driest.map(timesBefore)),
    leastTimes: times[Math.floor(times.length / 4)]!,
    mostTimes: times[Math.ceil((3 * times.length) / 4) - 1]!,
  }
}

function timesBefore({ told, drainedBefore }: Compared): number {
  return told.shot.drained! / Math.max(1e-3, drainedBefore)
}

/** Shots that have drained, with what they stand between. */
function kindsOf(shots: readonly ShotEvidence[], zone: Watched): Told[] {
  return shots.flatMap((shot, i): Told[] => {
    const [before, after] = [shots[i - 1], shots[i + 1]]
    if (before === undefined || after === undefined || shot.drained === null || shot.level === null) return []
    const kind = ((shot.time - before.time < TOGETHER ? 2 : 0) +
      (after.time - shot.time < TOGETHER ? 1 : 0)) as Told['kind']
    return [{ shot, kind, rise: riseWithRoom(shot, zone) }]
  })
}

/** Mean rise of the probes that had room for all of the shot: others overflow. */
function riseWithRoom({ rises, levels, volume }: ShotEvidence, zone: Watched): number | null {
  const told = rises.filter(
    (rise, i): rise is number => rise !== null && levels[i]! + volume / zone.volume <= zone.full,
  )
  return told.length === 0 ? null : told.reduce((sum, one) => sum + one / told.length, 0)
}

/** Nothing is said of a shot that began wetter than any of its kind: it may overflow. */
function besideKind(one: Told, before: readonly Told[]): Compared[] {
  const alike = before.filter(({ kind }) => kind === one.kind)
  if (alike.length < EARLIER || alike.every(({ shot }) => shot.level! < one.shot.level!)) return []
  const rises = alike.flatMap(({ rise }) => (rise === null ? [] : [rise]))
  return [
    {
      told: one,
      drainedBefore: middle(alike.map(({ shot }) => shot.drained as number)),
      riseBefore: rises.length < EARLIER ? null : middle(rises),
    },
  ]
}
