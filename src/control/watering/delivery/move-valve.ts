import { clockMode } from '../clock/clock.js'
import type { ProbeView } from '../probes/probes.js'
import { beforeShot } from '../probes/rises.js'
import { judgePassing } from '../refill/full-zone.js'
import { owed } from '../refill/owed.js'
import type { Limits } from '../settings/checked-settings.js'
import { addWater, takeWater } from '../state/given-water.js'
import type { WateringFill, WateringState, WateringValve } from '../state/state.js'
import { countedVolume, judgeDelivery } from './delivery.js'
import { judgeDrain, judgeFlow, judgeShare } from './feedback.js'
import { isCoarse, judgePulses, meteredOf } from './pulses.js'

/** Orders one opening, which counts at once and in full, and judges the one before. */
export function openValve(
  limits: Limits,
  state: WateringState,
  views: readonly ProbeView[],
  reason: WateringValve['reason'],
  run: number,
): WateringState {
  const { clock, valve } = state
  const isByPulses = isCoarse(state.counters, limits)
  const counters = isByPulses ? judgePulses(state.counters) : state.counters
  // Of a zone that is filled until it drains, probes and drain show less than came.
  const delivery = valve.reason === 'refill' || isByPulses ? counters.delivery : judgeDelivery(state, limits)
  const shot = run * limits.litresPerSecond
  return {
    ...state,
    // Counted at once and in full: an order that was sent may have been carried out.
    ...volumes(addWater(state.water, shot)),
    valve: {
      opened: clock.elapsed,
      duration: run,
      counted: shot,
      reason,
      closed: valve.closed,
      rested: valve.closed,
      openings: nextNumber(state),
    },
    probes: state.probes.map((probe, i) => beforeShot(probe, views[i]!, limits)),
    zone: { ...state.zone, told: null, given: state.zone.given + shot, spell: state.zone.spell + shot },
    fill: { ...filled(judgePassing(state, limits), shot, limits), before: views.map(({ seen }) => seen) },
    counters: {
      ...judgeShare(judgeDrain(counters, valve.reason === 'dry' ? valve.counted : 0, limits), delivery),
      ordered: 0,
      shown: null,
      meteredSince: 0,
      drainedSince: 0,
      leaked: 0,
    },
  }
}

/** Later than any number before, also of a state that was lost: an actuator that gives each number once would take a count from one on for old orders. */
function nextNumber({ clock, valve }: WateringState): number {
  return Math.max(valve.openings + 1, Math.floor((clock.base ?? 0) + clock.elapsed))
}

/** Closes the valve and counts what it gave: as long as it was open, or as much as the meter says if that is more. */
export function closeValve(limits: Limits, state: WateringState): WateringState {
  const { clock, valve } = state
  if (valve.opened === null) return state
  const lps = limits.litresPerSecond
  const ran = clock.elapsed - valve.opened
  const isSure = clockMode(clock) === 'runs' && clock.doubt === 0 && lps * valve.duration >= valve.counted * (1 - 1e-9)
  // After a leap the clock may be right: nothing closed such a valve in the meantime.
  const gap = Math.min(86400, Math.max(0, (clock.raw ?? 0) - (clock.base ?? 0) - clock.elapsed))
  const lasted = limits.closesByItself ? Math.min(ran, valve.duration) : ran + gap
  // Where the clock failed nobody knows how long it was: the whole shot stands, or the longest opening where nothing closed it.
  const doubtful = limits.closesByItself ? valve.counted : limits.maxRun * lps
  const timed = isSure ? lasted * lps : Math.max(doubtful, lasted * lps)
  const given = countedVolume(timed, meteredOf(state.counters, limits), state.counters.delivery)
  const closed = valve.opened + (isSure ? lasted : ran)
  return {
    ...state,
    // Taken back from the quarter in which it was counted, which may be another one by now.
    ...volumes(
      given < valve.counted
        ? takeWater(state.water, valve.counted - given, valve.opened)
        : addWater(state.water, given - valve.counted),
    ),
    valve: { ...valve, opened: null, duration: 0, counted: given, closed, rested: closed },
    zone: {
      ...state.zone,
      given: Math.max(0, state.zone.given + given - valve.counted),
      spell: state.zone.spell + given - valve.counted,
    },
    fill: filled(state.fill, given - valve.counted, limits),
    // An opening in which the clock leapt, as in a state of yesterday, is not judged.
    counters:
      clockMode(clock) === 'settles'
        ? { ...state.counters, ordered: 0 }
        : { ...judgeFlow(state.counters, timed, limits), ordered: timed },
  }
}

/** Water that was given, in the balance since the zone was full and in a refill. */
function filled(fill: WateringFill, volume: number, limits: Limits): WateringFill {
  const under = fill.under === null ? null : Math.max(0, fill.under + volume)
  return { ...fill, net: fill.net + volume, under, owed: owed(fill, volume, 0, limits) }
}

function volumes(water: WateringState['water']): Pick<WateringState, 'water' | 'spare'> {
  return { water, spare: water }
}
