import { isRefused } from './clock-advance.js'
import type { WateringClock } from './state.js'

const DAY = 86400

/** Hours as plain numbers; `to` is after `from`, beyond midnight if need be. */
export interface Hours {
  readonly from: number
  readonly to: number
}

const timeOfDay = (local: number) => local - Math.floor(local / DAY) * DAY

/** Whether water may flow from a moment on for so long, with a margin on both sides. */
export function inHours(hours: readonly Hours[], local: number, run: number, margin: number): boolean {
  const time = timeOfDay(local)
  for (const { from, to } of hours) {
    if (to - from >= DAY) return true
    for (const start of [time, time + DAY]) if (start - margin >= from && start + run + margin <= to) return true
  }
  return false
}

/**
 * Whether water may flow by every clock that may be right: the trusted one, the one that was read where it runs again, and that of the
 * senders. Time that was only counted by decisions needs a margin.
 */
export function hoursAllow(hours: readonly Hours[], ahead: number, clock: WateringClock, run: number): boolean {
  if (clock.base === null) return false
  const margin = clock.doubt > 0 || clock.bad >= 10 ? 600 + 0.015 * clock.doubt : 0
  if (!inHours(hours, clock.base + clock.elapsed + ahead, run, margin)) return false
  const refused = isRefused(clock)
  const raw = clock.raw as number
  if (clock.steady >= 3 && clock.vouched < 3 && !refused && !inHours(hours, raw + ahead, run, 0)) return false
  // Readings may be stamped by the very clock that was refused.
  const isOther = clock.sent !== null && !(refused && Math.abs(clock.sent - raw) < 7200)
  const isSent = isOther && clock.elapsed - clock.sentAt < 3600
  return !isSent || inHours(hours, (clock.sent as number) + ahead, 0, 0)
}

/** How far the allowed hours of a moment have gone on, as a share of them; null outside them. */
export function shareOfHours(hours: readonly Hours[], local: number): number | null {
  const time = timeOfDay(local)
  for (const { from, to } of hours)
    for (const at of [time, time + DAY]) if (at >= from && at < to) return (at - from) / (to - from)
  return null
}

/** Seconds of a day in which water may flow. */
export function allowedSeconds(hours: readonly Hours[]): number {
  let sum = 0
  for (const { from, to } of hours) sum += to - from
  return Math.min(DAY, sum)
}

/** Whether at least a third of the allowed hours are allowed by a clock that is so far ahead as well. */
export function sharesEnough(hours: readonly Hours[], ahead: number): boolean {
  let shared = 0
  for (const { from, to } of hours)
    for (let i = 0; i < 12; i++)
      if (inHours(hours, from + ((i + 0.5) / 12) * (to - from) + ahead, 0, 0)) shared += (to - from) / 12
  return shared * 3 >= allowedSeconds(hours)
}
