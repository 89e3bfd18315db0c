import { clockMode } from '../clock/clock.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringClock, WateringState, WateringValve } from '../state/state.js'
import { countedVolume } from './delivery.js'

/**
 * An opening in which the same moment comes again: a message that came twice, or a clock that stands still while water runs. Half of what is
 * left may go on and is counted again; the second time it ends.
 */
export function stalled(
  valve: WateringValve,
  clock: WateringClock,
  { maxRun }: Limits,
): { valve: WateringValve; again: number } {
  if (valve.opened === null || clock.stalls === 0 || clockMode(clock) === 'counts') return { valve, again: 0 }
  const ran = clock.elapsed - valve.opened
  const again = clock.stalls === 1 ? Math.max(0, Math.min((valve.duration - ran) / 2, maxRun - valve.duration)) : 0
  return { valve: { ...valve, duration: ran + again }, again }
}

/**
 * Water that ran after an opening, or without one: it first fills what the opening was short of. What leaked never takes so much of the day that
 * plants which fall dry afterwards get nothing; the medium was given all that ran.
 */
export function lateWater(
  { ordered, meteredSince, leaked, delivery }: WateringState['counters'],
  { opened, counted }: WateringValve,
  given: number,
  limits: Limits,
): { readonly volume: number; readonly ran: number; readonly counted: number } {
  if (opened !== null || leaked === 0) return { volume: 0, ran: 0, counted }
  const due = countedVolume(ordered, meteredSince + leaked, delivery)
  const room = Math.max(0, limits.perDay - limits.usual / 2 - given)
  const ran = Math.max(0, due - counted)
  return { volume: Math.min(room, ran), ran, counted: counted + ran }
}

/** Water that somebody says to have given; null where that cannot be: a slip of the pen must not stop the water of a day. Unit: L. */
export function waterByHand(volume: unknown, { perDay }: Limits): number | null {
  if (volume === undefined || volume === null) return 0
  return typeof volume === 'number' && volume >= 0 && volume <= perDay ? volume : null
}
