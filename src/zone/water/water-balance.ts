import { medianInPlace } from '../../numerics/select.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { CheckedProbe } from '../probes/check-probe.js'
import type { LocalDay } from '../record/local-day.js'
import { firstAt, lateHours, type ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'
import { sumOf, weightedEC } from './log-sums.js'

/** Water of one container on a day. What is not known is not zero. */
export interface WaterBalance {
  /** Entries of the log on the day. Unit: 1. */
  readonly entries: number
  /** Water given. Unit: L. */
  readonly given: Known<number>
  /** Water drained. Unit: L. */
  readonly drained: Known<number>
  /** Drained by given. Unit: 1. */
  readonly drainFraction: Known<number>
  /** Conductivity of the feed, weighted by volume. Unit: dS/m. */
  readonly feedEC: Known<number>
  /** Conductivity of the drain, weighted by volume. Unit: dS/m. */
  readonly drainEC: Known<number>
  /** Change of the water in the medium, as the probes see it. Unit: L. */
  readonly stored: Known<number>
  /** Given less drained less stored: what the plants used. Unit: L. */
  readonly use: Known<number>
}

/** A probe beside an emitter rises more than its container does, on open records 1.4 times; litres taken for hundreds do more. Common practice, no source. */
const MAX_RISE = 10

/** The water balance of a day, with the change of storage from the probes that are not left out; its beginning is the hour around midnight. */
export function waterBalance(
  zone: Zone,
  window: ZoneWindow,
  probes: readonly CheckedProbe[],
  begin?: readonly [before: number, after: number],
): WaterBalance {
  const { day, watering } = window
  const [a, b] = [firstAt(watering.time, day.from), firstAt(watering.time, day.to)]
  const entries = b - a
  const reason = watering.time.length === 0 ? 'no-watering-log' : entries === 0 ? 'no-entry-on-this-day' : undefined
  const volumes = { a, b, zone }
  const given = sumOf(watering.given, volumes, reason, 'given-not-logged')
  const drained = sumOf(watering.drained, volumes, reason, 'drain-not-logged')
  const change = window.now === undefined ? storedChange(zone, window, probes, begin) : unknown('day-not-over')
  const stored = change.known ? known(change.value * zone.container.substrateVolume) : change
  return {
    entries,
    given,
    drained,
    drainFraction:
      given.known && drained.known && given.value > 0
        ? known(drained.value / given.value)
        : unknown('nothing-given-or-not-logged'),
    feedEC: weightedEC(watering, 'feedEC', 'given', a, b),
    drainEC: weightedEC(watering, 'drainEC', 'drained', a, b),
    stored,
    use:
      given.known && risen(zone, day, probes) > MAX_RISE * given.value
        ? unknown('rises-exceed-log')
        : useOf(given, drained, stored),
  }
}

function useOf(given: Known<number>, drained: Known<number>, stored: Known<number>): Known<number> {
  if (!given.known) return given
  if (!drained.known) return drained
  return stored.known ? known(given.value - drained.value - stored.value) : stored
}

/** The water of all rises of a day, mean of the probes by their weight. Unit: L. */
function risen({ container }: Zone, { from, to }: LocalDay, probes: readonly CheckedProbe[]): number {
  let [sum, weight] = [0, 0]
  for (const probe of probes) {
    for (const { start, rise } of probe.shots) if (start >= from && start < to) sum += probe.weight * rise
    weight += probe.weight
  }
  return weight > 0 ? (sum / weight) * container.substrateVolume : 0
}

/** By how much the water content changed from the beginning to the end of the day, mean of the probes by their weight. */
function storedChange(
  zone: Zone,
  { day, time }: ZoneWindow,
  probes: readonly CheckedProbe[],
  begin?: readonly [number, number],
): Known<number> {
  const near = Math.max(1800, zone.readingStep)
  const [before, after] = begin ?? [-near, near]
  let [sum, weight] = [0, 0]
  for (const probe of probes) {
    const first = levelBetween(time, probe.waterContent, day.from + before, day.from + after)
    const last = levelBetween(time, probe.waterContent, day.to - 2 * near, day.to)
    if (first === undefined || last === undefined) continue
    sum += probe.weight * (last - first)
    weight += probe.weight
  }
  return weight > 0 ? known(sum / weight) : unknown('no-readings-at-midnight')
}

/** Median of the good readings between two moments. */
function levelBetween(time: Float64Array, waterContent: Float64Array, from: number, to: number): number | undefined {
  const there: number[] = []
  for (let i = firstAt(time, from); i < time.length && time[i]! < to; i++)
    if (!Number.isNaN(waterContent[i])) there.push(waterContent[i]!)
  return there.length === 0 ? undefined : medianInPlace(Float64Array.from(there))
}

/** The last three good readings of the late hours of a day, or of the last half hour of one that is under way; their median. */
export function lateLevel(zone: Zone, { day, time, now }: ZoneWindow, waterContent: Float64Array): number | undefined {
  const begin = now === undefined ? day.to - lateHours(zone) : now - Math.max(1800, 3 * zone.readingStep)
  const from = firstAt(time, begin)
  const there: number[] = []
  for (let i = time.length - 1; i >= from && there.length < 3; i--)
    if (!Number.isNaN(waterContent[i])) there.push(waterContent[i]!)
  return there.length === 0 ? undefined : medianInPlace(Float64Array.from(there))
}
