import { middle } from '../../middle.js'
import type { Evidence, Suspicion } from '../cause/cause.js'
import type { Memo } from '../state/memo.js'
import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import type { NightLine } from '../watch/night-line.js'
import { linesOf, type NightEvidence } from '../watch/watch-night.js'
import { suspectDrift } from './suspect-drift.js'
import { suspectSalt } from './suspect-salt.js'
import { evidence, suspicion } from './suspicion.js'

const DAY = 86400
/** A probe that falls by so much more or less than itself in a night, a hundredth in a day, drifts: chosen on rehearsals. Unit: m³/m³/h. */
const DRIFT = 0.0004
/** And by so many standard errors: those of the other probe and of the usual fall come on top. With readings every quarter of an hour it decides. */
const ERRORS = 7
/** Answer to temperature that matters: half a shot within five degrees. Chosen. Unit: m³/m³/°C. */
const WARMTH = 0.002

/** Readings that follow something else than water: time, temperature, salt, another probe. */
export function suspectReadings(state: ZoneWatchState, now: number, zone: RememberedZone): Suspicion[] {
  const warm = byWarmth(state, now, zone)
  return [
    ...warm,
    ...byNights(state, now, zone),
    ...suspectSalt(state, now, zone),
    ...suspectDrift(state, now, zone),
    ...bySwap(state, now, zone),
  ]
}

/** The falls of each probe in nights in which it fell like itself, middle one. */
function usualFalls(nights: readonly NightEvidence[], probes: number, memo: Memo): readonly (number | null)[] {
  const old = memo.nights.get(nights)
  if (old !== undefined && old.length === probes) return old
  const falls = usualFallsOf(nights, probes)
  memo.nights.set(nights, falls)
  return falls
}

function usualFallsOf(nights: readonly NightEvidence[], probes: number): (number | null)[] {
  return Array.from({ length: probes }, (_, i) => {
    const falls = nights.flatMap(({ falls, odd }) => {
      const fall = falls[i] ?? null
      return fall === null || odd[i] === true ? [] : [fall]
    })
    return falls.length < 2 ? null : middle(falls.slice(-5))
  })
}

function withoutLast(nights: readonly NightEvidence[], { earlier }: Memo): readonly NightEvidence[] {
  const old = earlier.get(nights)
  if (old !== undefined) return old
  const before = nights.slice(0, -1)
  earlier.set(nights, before)
  return before
}

export interface NightChange {
  /** Fall of each probe beyond its usual one. Unit: m³/m³/h. */
  readonly own: readonly (number | null)[]
  /** Probes that fell unlike themselves, and unlike the others where there are some. */
  readonly odd: readonly boolean[]
}

/** How a night differs from those before. */
export function changeOfNight(
  lines: readonly Pick<NightLine, 'fall' | 'error'>[],
  nights: readonly NightEvidence[],
  memo: Memo,
): NightChange {
  const usual = usualFalls(nights, lines.length, memo)
  const own = lines.map(({ fall }, i) => (fall === null || usual[i] == null ? null : fall - usual[i]!))
  const odd = own.map((change, i) => {
    if (change === null) return false
    const others = own.filter((one, j): one is number => j !== i && one !== null)
    // Of two that differ, the one that changed is the odd one; all together may be the weather.
    const limit = Math.max(DRIFT, 0.25 * Math.abs(usual[i]!), ERRORS * lines[i]!.error)
    const beside = others.length === 0 ? change : change - middle(others)
    return (
      Math.abs(change) > limit &&
      (others.length === 0 || Math.abs(beside) > limit || others.every((one) => Math.abs(one) > limit))
    )
  })
  return { own, odd }
}

function byNights(state: ZoneWatchState, now: number, zone: RememberedZone): Suspicion[] {
  const { nights, night } = state
  const last = nights[nights.length - 1]
  const live = night.from !== null && night.last !== null && night.last - night.from >= 25200
  const lines = live
    ? linesOf(night, state.probes)
    : (last?.falls ?? []).map((fall, i) => ({ fall, error: last!.errors[i]! }))
  const before = live ? nights : withoutLast(nights, zone.memo)
  if (!live && (last === undefined || now - last.end > DAY)) return []
  const { own, odd } = changeOfNight(lines, before, zone.memo)
  const usual = usualFalls(before, zone.names.length, zone.memo)
  const names = zone.names.filter((_, i) => odd[i])
  if (names.length === 0) return []
  const because = odd.flatMap((is, i): Evidence[] => {
    const name = zone.names[i]!
    if (!is) return []
    const time = live ? (night.from as number) : (last as NightEvidence).start
    return [evidence('fall-at-night', lines[i]!.fall as number, 'm³/m³/h', { usual: usual[i]!, about: name, time })]
  })
  const all = names.length === own.filter((one) => one !== null).length
  const again = before[before.length - 1]?.odd.some(Boolean) === true
  // All at once may be a plant that drinks otherwise; a second night makes it likelier.
  const weight = all ? (again ? 0.65 : 0.5) : again ? 0.85 : 0.75
  if (all && !again && names.length > 1) return []
  return [suspicion('probe-drifting', 'caution', weight, because, 'compare-with-hand-meter', names)]
}

function byWarmth(state: ZoneWatchState, now: number, zone: RememberedZone): Suspicion[] {
  const { night, nights, hasTemperature } = state
  if (!hasTemperature) return []
  const last = nights[nights.length - 1]
  const live = night.from !== null && night.last !== null && night.last - night.from >= 21600
  if (!live && (last === undefined || now - last.end > DAY)) return []
  const warmth = live ? linesOf(night, state.probes).map((line) => line.warmth) : (last as NightEvidence).warmth
  const names = zone.names.filter((_, i) => Math.abs(warmth[i] ?? 0) > WARMTH)
  if (names.length === 0) return []
  const because = zone.names.flatMap((name, i) =>
    Math.abs(warmth[i] ?? 0) > WARMTH
      ? [evidence('answer-to-temperature', warmth[i]!, 'm³/m³/°C', { usual: 0, about: name })]
      : [],
  )
  const one = names.length < zone.names.length
  return [suspicion('temperature-driven', 'caution', one ? 0.85 : 0.8, because, 'read-in-the-dark', names)]
}

function bySwap({ pairs }: ZoneWatchState, now: number, zone: RememberedZone): Suspicion[] {
  const { swap } = pairs
  if (swap === null || now - swap.time > DAY) return []
  const names = [zone.names[swap.first]!, zone.names[swap.second]!]
  const because = [evidence('difference-of-probes', swap.after, 'm³/m³', { usual: swap.before, time: swap.time })]
  return [suspicion('probes-swapped', 'caution', 0.92, because, 'read-the-labels', names)]
}
