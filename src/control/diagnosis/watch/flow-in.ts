import { type Counted, MAX_LAG } from './watch-counter.js'

/** Water in a span, and as a share of the flow; null where a counter that counts in steps cannot tell yet. */
export function flowIn(
  { counter, came, span: silent, since, canBe }: Counted,
  now: number,
  flow: number,
  least: number,
): { readonly share: number; readonly span: number } | null {
  // Of a first change nobody knows in which time it came.
  if (!(silent > 0) || !canBe || (came > 0 && since === Number.NEGATIVE_INFINITY)) return null
  // The least flow that counts needs so long for one step.
  const ofStep = Math.min(MAX_LAG, (3600 * counter.step) / (least * flow))
  if (!(came > 0) && now - (counter.changed ?? -Infinity) < ofStep) return null
  const span = came > 0 ? Math.max(silent, Math.min(MAX_LAG, now - since)) : silent
  return { share: came / ((span / 3600) * flow), span }
}
