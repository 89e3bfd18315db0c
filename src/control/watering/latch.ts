import type { WateringCounters } from './state.js'

/** A finding stands until somebody acknowledges it, and once. */
export function latch(counters: WateringCounters, code: WateringCounters['latched'][number]): WateringCounters {
  return counters.latched.includes(code) ? counters : { ...counters, latched: [...counters.latched, code] }
}
