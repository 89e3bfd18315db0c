import { withSteady } from './advance/compare-places.js'
import { withNight } from './advance/take-night.js'
import { awaited, paced, withReadings } from './advance/take-readings.js'
import { withWater } from './advance/take-water.js'
import { told } from './advance/tell.js'
import type { Diagnosis } from './cause/cause.js'
import type { RememberedZone } from './state/settings.js'
import type { ZoneWatchState } from './state/zone-state.js'
import { lightOf, type WatchZoneInput } from './watch/input.js'
import { cameIn, newBalance, withBalance } from './watch/watch-balance.js'
import { ticked } from './watch/watch-clock.js'
import { withoutTimes } from './watch/watch-counter.js'
import { newNight } from './watch/watch-night.js'
import { newPairs } from './watch/watch-pairs.js'
import { newTiming, withTiming } from './watch/watch-timing.js'
import { countsOf, newValve } from './watch/watch-valve.js'

/** The state after a moment, and what it shows. */
export function advanced(
  state: ZoneWatchState,
  input: WatchZoneInput,
  zone: RememberedZone,
): [ZoneWatchState, Diagnosis] {
  const tick = ticked(state.clock, input.now)
  if (tick.now === null) return told({ ...state, clock: tick.clock }, state.clock.last ?? 0, zone)
  const now = tick.now
  const rested = tick.leapt ? afterLeap(state) : state
  const light = lightOf(input)
  const heard = {
    ...rested,
    clock: tick.clock,
    light,
    probes: paced(withReadings(rested, input.readings, now, zone), rested, tick.passed).map((probe) =>
      awaited(probe, now),
    ),
  }
  const { balance, timing, valve } = heard
  const counts = countsOf(valve, input, now, tick.passed, zone)
  const watered = withWater(heard, input, counts, now, tick.passed, zone)
  const came = cameIn(valve, counts, now, tick.passed, zone)
  const balanced = {
    ...watered,
    balance: withBalance(balance, came, watered.valve, watered, now, tick.passed, zone),
    timing: withTiming(timing, came, watered, now, zone),
  }
  const steady = withSteady(balanced, input, now, zone)
  return told(withNight(steady, now, input, zone), now, zone)
}

/** Across a leap of the clock nothing can be compared; what is usual stays. */
function afterLeap(state: ZoneWatchState): ZoneWatchState {
  const { meter, gauge, hasMeter, hasDrain } = state.valve
  return {
    ...state,
    valve: { ...newValve, meter: withoutTimes(meter), gauge: withoutTimes(gauge), hasMeter, hasDrain },
    balance: newBalance,
    timing: newTiming(state.probes.length),
    night: newNight(state.probes.length),
    pairs: newPairs(state.probes.length),
    standing: [],
    probes: state.probes.map((probe) => ({
      ...probe,
      times: [],
      levels: [],
      bad: null,
      heard: null,
      flatSince: null,
      flatCount: 0,
      spikes: [],
      step: null,
      low: null,
      climb: null,
    })),
  }
}
