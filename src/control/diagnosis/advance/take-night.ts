import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { changeOfNight } from '../suspect/suspect-reading.js'
import { known, lightOf, type WatchZoneInput } from '../watch/input.js'
import { isBelowRain } from '../watch/watch-feed.js'
import { evidenceOf, linesOf, NIGHTS, newNight, withEvening } from '../watch/watch-night.js'
import { ofShots } from './of-shots.js'

/**
 * Time after a shot until drain has stopped and the night begins to tell: three of the longest time constants of drain in the rehearsals. Unit: s.
 */
const EVENING = 3600

/** Light below which it is dark: chosen, less than a hundredth of a bright day. Unit: W/m². */
const DARK = 5

/** Whether it is dark; null where nobody knows. */
function isDark(input: WatchZoneInput, now: number, { dark }: RememberedZone): boolean | null {
  const light = lightOf(input)
  if (light !== null) return light < DARK
  if (dark === null) return null
  const hour = (((now / 3600) % 24) + 24) % 24
  return dark.from <= dark.until ? hour >= dark.from && hour < dark.until : hour >= dark.from || hour < dark.until
}

/** The dark without shots: it begins an hour after the last shot, and ends with the next or with the light. */
export function withNight(
  state: ZoneWatchState,
  now: number,
  input: WatchZoneInput,
  zone: RememberedZone,
): ZoneWatchState {
  const { valve, night } = state
  if (isDark(input, now, zone) === true && valve.open === null && valve.shot === null) {
    if (valve.lastEnd !== null && now - valve.lastEnd < EVENING) return state
    return { ...state, night: withEvening(night, state.probes, known(input.temperature), now) }
  }
  if (night.from === null) return state
  const { odd } = changeOfNight(linesOf(night, state.probes), state.nights, zone.memo)
  const drained = ofShots(state, zone).recent.drained(3)
  // A dead sensor beside nights on which it was alive would be salt that comes and goes.
  const drainEC = state.drainEC === null || isBelowRain(state.drainEC) ? null : state.drainEC
  const ended = evidenceOf(night, state.probes, { drained, drainEC, odd })
  const nights = ended === null ? state.nights : [...state.nights, ended].slice(-NIGHTS)
  return { ...state, night: newNight(state.probes.length), nights }
}
