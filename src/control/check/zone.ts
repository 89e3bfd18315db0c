import type { WateringFacts } from './input.js'
import type { Loose } from './known.js'
import type { WateringRefusal } from './refusal.js'

/** What speaks against water by clock, leak, lock and alarms. */
export function judgeZone(facts: Loose<WateringFacts>): WateringRefusal[] {
  const { clockRanOn, flowWhileClosed, locked, alarms } = facts
  const refusals: WateringRefusal[] = []
  if (clockRanOn !== true) refusals.push({ code: 'clock-unknown', level: 'caution' })
  if (flowWhileClosed === true) refusals.push({ code: 'leaks-while-closed', level: 'danger' })
  else if (flowWhileClosed !== false) refusals.push({ code: 'leak-unknown', level: 'caution' })
  if (locked === true) refusals.push({ code: 'zone-locked', level: 'danger' })
  else if (locked !== false) refusals.push({ code: 'lock-unknown', level: 'danger' })
  if (!Array.isArray(alarms)) refusals.push({ code: 'alarms-unknown', level: 'caution' })
  else for (const alarm of alarms) refusals.push({ code: 'alarm', level: 'caution', about: nameOf(alarm) })
  return refusals
}

/** What is no name forbids as well: an object without a prototype cannot even be put into text. */
function nameOf(alarm: unknown): string {
  return typeof alarm === 'object' ? 'object' : String(alarm)
}
