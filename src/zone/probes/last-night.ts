import { medianInPlace } from '../../numerics/select.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { overnightDryDowns } from '../../record/dry-down/overnight-dry-down.js'
import { type Known, known, unknown } from '../findings/known.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'
import { isIn } from './answers-to-shots.js'
import { type CheckedProbe, maxStepOf } from './check-probe.js'

/** The longest stretch without a shot that a shot of the day ended. */
export interface ShotFree {
  /** End of the last shot before it. Unit: s. */
  readonly from: number
  /** Beginning of the shot that ended it. Unit: s. */
  readonly to: number
}

/** What a probe saw of the longest stretch without a shot. */
export interface NightDryDown {
  /** First reading after drain. Unit: s. */
  readonly from: number
  /** Last reading before the next shot. Unit: s. */
  readonly to: number
  /** Level at its beginning, middle of three readings. Unit: m³/m³. */
  readonly evening: number
  /** Level at its end, middle of three readings. Unit: m³/m³. */
  readonly morning: number
  /** By how much it fell; negative where it rose. Unit: m³/m³. */
  readonly fall: number
  /** The fall by the time. Unit: m³/m³/h. */
  readonly perHour: number
}

/** Shorter stretches are pauses between shots, no night. */
const MIN = 10800
/** Time after a shot in which drain is not taken for use. */
const SETTLE = 2400

/**
 * The longest stretch without a shot, of those that a shot of the day ended: after any shot that any probe saw, and any opening of
 * the valve. It begins at a shot; where the record begins within it, it is not known.
 */
export function longestShotFree(
  window: ZoneWindow,
  probes: readonly CheckedProbe[],
  openings: readonly number[],
): Known<ShotFree> {
  const shots = [
    ...probes.flatMap((probe) => probe.shots.map(({ start, peak }) => ({ from: start, to: peak }))),
    ...openings.map((time) => ({ from: time, to: time })),
  ].sort((a, b) => a.from - b.from)
  if (!shots.some(({ from }) => isIn(window.day, from))) return unknown('no-shot-on-this-day')
  let best: ShotFree | undefined
  let end = Number.NaN
  let unseen = 0
  for (const shot of shots) {
    if (isIn(window.day, shot.from)) {
      if (Number.isNaN(end)) unseen = shot.from - (window.time[0] ?? shot.from)
      else if (best === undefined || shot.from - end > best.to - best.from) best = { from: end, to: shot.from }
    }
    end = Number.isNaN(end) ? shot.to : Math.max(end, shot.to)
  }
  // A longer stretch whose beginning nobody saw: the night began before the record.
  const max = best === undefined ? 0 : best.to - best.from
  if (unseen > max) return unknown('last-shot-not-in-record')
  if (best === undefined || max < MIN) return unknown('no-long-stretch-without-shots')
  return known(best)
}

/** What a probe saw of that stretch, drain after the last shot left out. */
export function nightOf(zone: Zone, window: ZoneWindow, probe: CheckedProbe, free: ShotFree): Known<NightDryDown> {
  const { time } = window
  const { waterContent } = probe
  const [result] = overnightDryDowns({
    time,
    waterContent,
    shots: probe.shots,
    drainTime: Math.max(SETTLE, Math.min(86400, zone.readingStep)) as Duration,
    maxStep: maxStepOf(zone),
    // The night lies between the last shot before it and the shot that ended it, whatever the light does.
    light: [
      { start: free.from - 1, end: free.from },
      { start: free.to, end: free.to + 1 },
    ],
  })
  if (result === undefined) return unknown('few-readings')
  if (!result.known) return unknown(result.reason)
  const good: number[] = []
  for (let i = firstAt(time, free.from); i < time.length && time[i]! <= free.to; i++)
    if (!Number.isNaN(waterContent[i])) good.push(i)
  const last = good[good.length - 1]!
  // The result lasted from the first reading after drain to the last one before the foot of the shot, which belongs to the night too.
  const before = time[last]! < free.to ? last : good[good.length - 2]!
  const settled = good.filter((i) => time[i]! >= time[before]! - result.duration)
  if (settled.length < 6) return unknown('few-readings')
  const middle = (at: readonly number[]) => medianInPlace(Float64Array.from(at, (i) => waterContent[i]!))
  const [evening, morning] = [middle(settled.slice(0, 3)), middle(settled.slice(-3))]
  const [from, to] = [time[settled[0]!]!, time[last]!]
  const fall = evening - morning
  return known({ from, to, evening, morning, fall, perHour: (fall / (to - from)) * 3600 })
}
