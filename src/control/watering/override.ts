import { isMoment } from '../moment.js'
import type { WateringOrder } from './state.js'

/** The order of a person after an input, and whether what was sent could not be taken. */
export function takeOverride(
  held: WateringOrder | null,
  sent: unknown,
  now: unknown,
  elapsed: number,
): { readonly override: WateringOrder | null; readonly refused: boolean } {
  if (sent === undefined || sent === null) return { override: held, refused: false }
  const { action, until } = sent as { readonly action?: unknown; readonly until?: unknown }
  if ((action !== 'close' && action !== 'water') || !isMoment(until) || !isMoment(now) || until - now > 86400)
    return { override: held, refused: true }
  // The same order sent again must not last longer.
  if (held !== null && held.action === action && held.until === until) return { override: held, refused: false }
  return { override: { action, until, ends: elapsed + Math.max(0, until - now) }, refused: false }
}
