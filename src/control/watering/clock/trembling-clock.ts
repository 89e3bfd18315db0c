import type { WateringClock } from '../state/state.js'
import { knowsPace } from './known-pace.js'

/** A step back by more paces is a clock that was set, and no trembling: as a step on by so many is none of its own. */
const MAX = 8
/** After so many steps on in a row a clock that stepped back was set back, and owes nothing. Own judgement. */
const SET = 20
/** Time goes on at this share of the pace at least, so that no opening lasts longer than `LAGS` in `delivery.ts` allows for. */
export const SLOWEST = 0.85

/**
 * What a clock owes after a step back: it takes away what its steps on bring again. If only steps on counted, a clock that trembles would
 * bring several days in one.
 */
export function owedAfter({ owed, pace, paces }: WateringClock, step: number): number {
  if (!knowsPace({ paces }) || step > 0 || -step > MAX * pace) return 0
  return Math.min(MAX * pace, owed - step + pace)
}

/** What a step on has made beyond what it brings again; a decision always counts for most of its pace, if the clock made so much. */
export function paidBack(clock: WateringClock, step: number): { readonly made: number; readonly owed: number } {
  const { owed, pace, same, steady } = clock
  if (owed === 0 || steady >= SET) return { made: step, owed: 0 }
  const paid = Math.min(owed, Math.max(0, step - SLOWEST * (same + 1) * pace))
  return { made: step - paid, owed: owed - paid }
}
