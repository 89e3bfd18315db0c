import { middle } from '../../middle.js'
import type { ShotEvidence } from './judge-shot.js'
import { TOGETHER, together } from './waterings.js'

/**
 * Shots of the last 24 hours that were given together, beside earlier ones. The first stands on a drier medium than those that follow: what
 * runs past a dry medium drains of the first, what overflows drains of the later ones, and a gauge that counts wrongly does so alike.
 */
export interface FirstAndLater {
  readonly since: number
  /** Middle of the shares of first shots that drained until the next, and of earlier ones. Unit: 1. */
  readonly drained: number
  readonly drainedBefore: number
  /** How many times as much as before of first and of later shots drained. Unit: 1. */
  readonly firstTimes: number
  readonly laterTimes: number
}

/** Earlier shots of a kind, and shots of the day, that make a comparison. Chosen on rehearsals. */
const EARLIER = 4
const OF_DAY = 3
/** A shot drains so many steps of the gauge at least: else it is a matter of chance how many are counted of it. Chosen. */
const STEPS = 4
/** Pauses after shots that differ by less of them are alike: drain has had the same time. Chosen. */
const ALIKE = 0.2

interface Placed {
  readonly shot: ShotEvidence
  readonly isFirst: boolean
  /** Time until the next shot, no longer than waterings stand apart. Unit: s. */
  readonly pause: number
}

export function firstAndLater(shots: readonly ShotEvidence[], since: number, step: number): FirstAndLater | null {
  const placed = placedIn(shots)
  const before = placed.filter(({ shot }) => shot.time < since)
  const compared = placed.flatMap((one) => {
    const alike = before.filter((other) => isAlike(one, other))
    if (one.shot.time < since || alike.length < EARLIER) return []
    const usual = middle(alike.map(({ shot }) => shot.drained as number))
    if (STEPS * step > usual * one.shot.volume) return []
    return [{ isFirst: one.isFirst, drained: one.shot.drained as number, usual }]
  })
  const [first, later] = [compared.filter(({ isFirst }) => isFirst), compared.filter(({ isFirst }) => !isFirst)]
  if (first.length < OF_DAY || later.length < OF_DAY) return null
  const timesBefore = (some: typeof compared) =>
    middle(some.map(({ drained, usual }) => drained / Math.max(1e-3, usual)))
  return {
    since,
    drained: middle(first.map(({ drained }) => drained)),
    drainedBefore: middle(first.map(({ usual }) => usual)),
    firstTimes: timesBefore(first),
    laterTimes: timesBefore(later),
  }
}

/** Shots that have drained; a first one only where another follows. */
function placedIn(shots: readonly ShotEvidence[]): Placed[] {
  return together(shots).flatMap((group, k, groups) =>
    group.flatMap((shot, place): Placed[] => {
      const next = group[place + 1] ?? groups[k + 1]?.[0]
      if (next === undefined || shot.drained === null || group.length === 1) return []
      return [{ shot, isFirst: place === 0, pause: Math.min(TOGETHER, next.time - shot.time) }]
    }),
  )
}

function isAlike(one: Placed, other: Placed): boolean {
  return one.isFirst === other.isFirst && Math.abs(one.pause - other.pause) <= ALIKE * one.pause
}
