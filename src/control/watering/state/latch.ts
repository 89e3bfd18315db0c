import type { LatchedCode } from '../findings/latched-codes.js'
import type { WateringCounters } from './state.js'

/** A finding stands until somebody acknowledges it, and once. */
export function latch(counters: WateringCounters, code: LatchedCode): WateringCounters {
  return counters.latched.includes(code) ? counters : { ...counters, latched: [...counters.latched, code] }
}
