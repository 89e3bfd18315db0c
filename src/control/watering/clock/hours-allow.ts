import { type Hours, inHours } from '../settings/hours.js'
import type { WateringClock } from '../state/state.js'
import { isRefused } from './clock-advance.js'

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
