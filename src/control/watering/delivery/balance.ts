import type { Limits } from '../settings/checked-settings.js'
import { MIN_HOURS_OF_USE } from '../settings/hours.js'
import type { WateringZone } from '../state/state.js'

/** A level stands still that moves by less than this share of what plants use. Own judgement, no source. */
const STILL = 0.1

/** What else is known of the window. */
interface Witness {
  readonly level: number | null
  readonly drains: boolean
  readonly leaks: boolean
  /** What plants were found to take of the usual use. Unit: 1. */
  readonly share: number
}

/**
 * Compares what went, by level and by water given, with the usual use over half a day of allowed hours. A probe that says "wet" while
 * plants must have drunk, or that swallows several times what plants can drink, is not believed until a later window is plausible.
 */
export function passBalance(
  zone: WateringZone,
  use: number,
  { level, drains, leaks, share }: Witness,
  limits: Limits,
): WateringZone {
  // What ran through an open valve hides what plants drank: the window begins behind it.
  if (leaks) return { ...zone, use: 0, given: 0, level: null }
  if (use === 0 && (zone.level !== null || level === null)) return zone
  const start = zone.level ?? level
  const next = { ...zone, use: zone.use + use, level: start }
  // Where water may flow all day, or only for some hours, the window is a day, so that nights do not look like probes that stand still and a
  // morning is not held against the use of the whole day; and what is said to be full is doubted later.
  const fell = level === null || start === null ? 0 : (start - level) * limits.substrate
  // A zone that drains stands still because it is full.
  const isStill = !drains && Math.abs(fell) < STILL * share * next.use
  const isLong =
    limits.allowed > 50400 || limits.allowed < MIN_HOURS_OF_USE || (level !== null && level >= limits.upper)
  if (next.use < (isLong ? limits.usual : limits.usual / 2)) return next
  const ended = { ...zone, use: 0, given: 0, level }
  if (level === null || start === null) return ended
  // A level that stands still in a zone that is watered by time agrees with the balance by chance: it has to move before it is believed again.
  if (zone.verdict === 'use-too-small' && isStill) return ended
  return { ...ended, verdict: judged(zone.verdict, (zone.given + fell) / next.use, share) }
}

/**
 * The window goes on without what the level moved by in a silence that was not counted: it would be held against the use of no time at all. Where
 * nothing tells by how much, it begins anew.
 */
export function withoutSilence(zone: WateringZone, told: number | null): WateringZone {
  if (zone.level === null) return zone
  if (zone.told === null || told === null) return { ...zone, use: 0, given: 0, level: null }
  return { ...zone, level: zone.level + told - zone.told }
}

/** Young plants take little, and no less than they were found to; how much plants may take is held against the usual use. */
function judged(before: WateringZone['verdict'], took: number, share: number): WateringZone['verdict'] {
  if (took < 0.2 * share) return 'use-too-small'
  if (took > 3) return 'use-too-large'
  if (before === 'use-too-small' && took < 0.35 * share) return before
  return before === 'use-too-large' && took > 2.5 ? before : 'plausible'
}
