import { countedTooMuch } from './delivery/delivery.js'
import { lateWater, waterByHand } from './delivery/late-water.js'
import type { Limits } from './settings/checked-settings.js'
import { addWater, givenInDay, takeWater } from './state/given-water.js'
import type { WateringCounters, WateringState, WateringValve, WateringVolumes } from './state/state.js'

/** Water beside that of an opening, as meter, drain, probes and people tell of it. */
export interface WaterCame {
  readonly counters: WateringCounters
  readonly valve: WateringValve
  readonly water: WateringVolumes
  /** What ran after an opening or without one. Unit: L. */
  readonly late: number
  /** That and what was given by hand. Unit: L. */
  readonly given: number
  readonly drained: number
  /** What was given, less what drained and what was counted too much. Unit: L. */
  readonly stayed: number
  readonly byHandRefused: boolean
}

/** Counts it; `before` are the counters of the decision before, `shown` is what the probe that rose most showed of the last opening, if any did. */
export function waterCame(
  { counters: fed, valve, water }: WateringState,
  before: WateringCounters,
  shown: number | null,
  byHand: unknown,
  limits: Limits,
): WaterCame {
  // Taken back once: as soon as the probes have shown it.
  const counters = shown === null ? fed : { ...fed, shown: Math.max(shown, fed.shown ?? shown) }
  const surplus = shown === null || fed.shown !== null ? 0 : countedTooMuch(counters, valve.counted)
  const known = takeWater(water, surplus, valve.closed)
  const late = lateWater(fed, { ...valve, counted: valve.counted - surplus }, givenInDay(known), limits)
  const hand = waterByHand(byHand, limits)
  const given = late.ran + (hand ?? 0)
  const drained = fed.drainedSince - before.drainedSince
  return {
    counters,
    valve: { ...valve, counted: late.counted },
    water: addWater(known, late.volume + (hand ?? 0)),
    late: late.ran,
    given,
    drained,
    stayed: given - surplus - drained,
    byHandRefused: hand === null,
  }
}
