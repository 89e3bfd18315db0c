import { knowsPace } from '../clock/known-pace.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringClock } from '../state/state.js'

/**
 * Time of a whole shot: as the settings say, or longer where decisions come so seldom that one shot at each of them does not bring what a zone
 * may need by time. Unit: s.
 */
export function wholeRun({ pace, paces }: WateringClock, limits: Limits): number {
  const { run, maxRun, rest, lag, allowed, backUp, shot } = limits
  if (!knowsPace({ paces })) return run
  // A shot can follow another only at the first decision after rest and lag.
  const every = Math.max(1, Math.ceil((run + Math.max(rest, lag)) / pace - 1e-6)) * pace
  return Math.min(maxRun, run * Math.max(1, (backUp * every) / (allowed * shot)))
}
