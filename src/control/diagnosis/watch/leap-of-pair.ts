import { maxOf, minOf } from '../../../quantity/extremes.js'
import type { PairWatch, Swap } from './watch-pairs.js'
import type { ProbeWatch } from './watch-probe.js'

/** Readings before and after a leap of the difference; shares and sizes of this file are chosen on rehearsals. */
const OLD = 6
const YOUNG = 4
/** Over a longer time places grow apart by themselves. Unit: s. */
const SOON = 3600
/** Standard deviations of the difference, within both, that the leap must measure: more than five of its own. */
const CLEAR = 3.5
/** Smallest difference of which a leap to its mirror is told. Unit: m³/m³. */
const MIN_LEAP = 0.003

/** Beside a shot, the smallest such difference, and the share of it by which each of them leaps. */
const MIN_BESIDE = 0.006
const EACH = 0.5

/**
 * From one reading to the next the difference leaps to its mirror, which no water can do: it does not take from one place at once what it brings
 * to another.
 */
export function withLeap(pairs: PairWatch, probes: readonly ProbeWatch[], quietFrom: number): PairWatch {
  for (let a = 0; a < probes.length; a++)
    for (let b = a + 1; b < probes.length; b++) {
      const swap = leapOf(probes, a, b, quietFrom)
      if (swap !== null) return { ...pairs, swap }
    }
  return pairs
}

function leapOf(probes: readonly ProbeWatch[], first: number, second: number, quietFrom: number): Swap | null {
  const [one, other] = [probes[first]!, probes[second]!]
  const [n, m] = [one.times.length - OLD - YOUNG, other.times.length - OLD - YOUNG]
  const lasted = n < 0 || m < 0 ? Infinity : one.times[n + OLD + YOUNG - 1]! - one.times[n]!
  if (lasted > SOON) return null
  const apart = (i: number) => one.levels[n + i]! - other.levels[m + i]!
  let [before, after, shift] = [0, 0, 0]
  for (let i = 0; i < OLD + YOUNG; i++) {
    // Probes of one round speak some seconds after each other.
    if (Math.abs(one.times[n + i]! - other.times[m + i]!) > lasted / (2 * (OLD + YOUNG))) return null
    const sum = one.levels[n + i]! + other.levels[m + i]!
    if (i >= OLD - 2 && i < OLD + 2) shift += i < OLD ? -sum / 2 : sum / 2
    if (i < OLD) before += apart(i) / OLD
    else after += apart(i) / YOUNG
  }
  // Where one of them leapt and the other stayed, their sum leaps as far as their difference.
  if (Math.abs(shift) > Math.abs(after - before) / 2) return null
  const size = Math.abs(before)
  if (size < Math.max(MIN_LEAP, 2.5 * Math.max(one.noise, other.noise))) return null
  if (Math.sign(after) !== -Math.sign(before) || Math.abs(before + after) > 0.4 * size) return null
  // Differences that scatter this much turn their sign by themselves.
  let squares = 0
  for (let i = 0; i < OLD + YOUNG; i++) squares += (apart(i) - (i < OLD ? before : after)) ** 2
  if (Math.abs(after - before) < CLEAR * Math.sqrt(squares / (OLD + YOUNG - 2))) return null
  const leap = (apart(OLD) - apart(OLD - 1)) / (after - before)
  if (leap < 0.6) return null
  const leaps = [one.levels[n + OLD]! - one.levels[n + OLD - 1]!, other.levels[m + OLD]! - other.levels[m + OLD - 1]!]
  const each = Math.min(maxOf(leaps), -minOf(leaps))
  if (one.times[n]! < quietFrom && (size < MIN_BESIDE || each < EACH * size)) return null
  return { time: one.times[n + OLD]!, first, second, before, after }
}
