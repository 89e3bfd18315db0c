import { isMoment } from '../../moment.js'
import type { WateringOrder } from '../state/state.js'

/** An end that is so long past is no moment at all, but a time that somebody meant to last. Unit: s. */
const LONG_PAST = 31_536_000

/** The order of a person after an input. */
export interface TakenOrder {
  readonly override: WateringOrder | null
  /** Whether what was sent could not be taken. */
  readonly refused: boolean
  /** Whether what was sent keeps the valve closed at this decision. */
  readonly closes: boolean
}

/**
 * Takes what a person orders. What is no order that can be taken counts as the worse one: unless it plainly asks for water, the valve stays
 * closed for as long as it is sent.
 */
export function takeOverride(held: WateringOrder | null, sent: unknown, now: unknown, elapsed: number): TakenOrder {
  if (sent === undefined || sent === null || sent === false) return { override: held, refused: false, closes: false }
  const { action, until } = sent as { readonly action?: unknown; readonly until?: unknown }
  const isKnown = (action === 'close' || action === 'water') && isMoment(until) && isMoment(now)
  if (!isKnown || until - now > 86400 || now - until > LONG_PAST)
    return { override: held, refused: true, closes: action !== 'water' }
  // The same order sent again must not last longer.
  if (held !== null && held.action === action && held.until === until)
    return { override: held, refused: false, closes: false }
  return { override: { action, until, ends: elapsed + Math.max(0, until - now) }, refused: false, closes: false }
}
