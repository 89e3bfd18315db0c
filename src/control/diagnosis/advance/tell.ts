import type { Cause, CauseCode, Diagnosis, Suspicion } from '../cause/cause.js'
import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { gaugeLies } from '../suspect/suspect-drain.js'
import { drainOfLate, stillAgainstGauge } from '../suspect/suspect-gauge.js'
import { suspectLeak } from '../suspect/suspect-leak.js'
import { suspectProbes } from '../suspect/suspect-probe.js'
import { suspectReadings } from '../suspect/suspect-reading.js'
import { suspectRest } from '../suspect/suspect-rest.js'
import { suspectTiming } from '../suspect/suspect-timing.js'
import { suspectWater } from '../suspect/suspect-water.js'
import { fullOrNot } from '../suspect/trust.js'
import { notTold } from '../suspect/what-is-not-told.js'
import { mayFlap } from '../watch/watch-clock.js'
import { oftenBeyond, withDrain } from '../watch/watch-gauge.js'
import { ofShots } from './of-shots.js'
import { ranked } from './rank.js'

/** The state that remembers what it told, and what it tells. */
export function told(state: ZoneWatchState, now: number, zone: RememberedZone): [ZoneWatchState, Diagnosis] {
  const { recent, water, drain } = ofShots(state, zone)
  const full = fullOrNot(state, now, zone)
  const byFull = full.known ? full.value : null
  const gauge = withDrain(state.gauge, drainOfLate(state, recent, drain), now)
  const beyond = oftenBeyond(gauge, now)
  const overcounts = gaugeLies(state, recent) || beyond !== null
  const leaks = suspectLeak(state, overcounts, now, zone)
  if (!water.has(byFull)) water.set(byFull, suspectWater(recent, state.usual, full))
  const timing = suspectTiming(state.timing)
  const found = [
    ...timing,
    ...(water.get(byFull) as readonly Suspicion[]),
    // Drain of a leak says nothing of the shots.
    ...(leaks.length > 0 && !overcounts ? [] : drain),
    ...stillAgainstGauge(gauge, beyond),
    ...leaks,
    ...suspectProbes(state, recent, now, zone),
    ...suspectReadings(state, now, zone),
    ...suspectRest(state, zone),
  ]
  const outOfStep = timing.length > 0 || mayFlap(state.clock)
  const suspicions = outOfStep ? found.filter(({ code }) => !BY_ORDERS.includes(code)) : found
  const causes: readonly Cause[] = ranked(suspicions, state.standing, now)
  const standing = causes.map(({ code, since }) => ({ code, since }))
  return [
    { ...state, standing, gauge },
    { causes, ...notTold(state, suspicions, recent, outOfStep, now, zone), full },
  ]
}

/** What a state shows without a message. */
export function shown(state: ZoneWatchState, zone: RememberedZone): Diagnosis {
  return told(state, state.clock.last ?? 0, zone)[1]
}

/** What rests on orders and on what came of them at their times. */
const BY_ORDERS: readonly CauseCode[] = [
  'no-water',
  'partial-water',
  'line-leak',
  'clogged-dripper',
  'channelling',
  'watered-by-hand',
  'drain-gauge-wrong',
  'flow-meter-wrong',
]
