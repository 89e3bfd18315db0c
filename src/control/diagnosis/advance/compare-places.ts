import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { DRAINS } from '../watch/full-levels.js'
import { known, type WatchZoneInput } from '../watch/input.js'
import { withLeap } from '../watch/leap-of-pair.js'
import { isSlow } from '../watch/time-apart.js'
import { withValue } from '../watch/watch-feed.js'
import { BIN, withLevels } from '../watch/watch-pairs.js'
import { quietSince } from './quiet-since.js'

/** What comes beside water: the ECs, and the levels of the places beside each other. */
export function withSteady(
  state: ZoneWatchState,
  input: WatchZoneInput,
  now: number,
  zone: RememberedZone,
): ZoneWatchState {
  const drainEC = known(input.drainEC) ?? state.drainEC
  return {
    ...state,
    drainEC,
    hasTemperature: known(input.temperature) !== null,
    feed: withValue(state.feed, known(input.feedEC), now, 0.2),
    pairs: withLeap(
      withLevels(state.pairs, state.probes, now, movedApart(state, now, zone)),
      state.probes,
      quietSince(state.valve),
    ),
  }
}

/**
 * Shots of two and a half hours, or of as many steps where calls are further apart than half an hour, move two places against each other by an
 * eighth of their water, and so by twice as much of a difference to its mirror; where more drains than usual, one of them may be full, and the
 * other takes all of it. Chosen on rehearsals.
 */
function movedApart({ shots, valve, usual, pairs, probes }: ZoneWatchState, now: number, zone: RememberedZone): number {
  let [watered, drained] = [0, valve.drainedSince]
  const lasts = 5 * Math.max(BIN, now - (pairs.start ?? now))
  for (let k = shots.length - 1; k >= 0 && now - shots[k]!.time < lasts; k--) {
    watered += shots[k]!.volume
    drained += (shots[k]!.drained ?? 0) * shots[k]!.volume
  }
  const overflows = drained > (usual.drained + DRAINS) * watered
  // Between readings that are far apart a shot that one of them does not get looks like a change of places.
  return ((overflows || probes.some((probe) => isSlow(probe, zone)) ? 0.5 : 0.125) * watered) / zone.volume
}
