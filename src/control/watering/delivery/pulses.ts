import type { Limits } from '../settings/checked-settings.js'
import { latch } from '../state/latch.js'
import type { WateringCounters, WateringPulses } from '../state/state.js'
import { meanShare } from './delivery.js'

/** Steps in which counters commonly count, largest first. Common practice, no source. Unit: L. */
export const STEPS = [100, 50, 25, 20, 10, 5, 2.5, 2, 1, 0.5, 0.25, 0.2, 0.1] as const
/** Openings are judged together once they make so many steps: a count is then good to a fifth. Own judgement. */
const JUDGED = 5
/** So many steps without one are no chance, however the water falls on them: less than two fifths would have come. Own judgement. */
const SILENT = 2.5
/** Findings that a counter of large steps raises where single openings are judged. */
const OF_FLOW: readonly string[] = ['no-flow', 'flow-too-large', 'flow-too-small']

/** Before the counter has gone on nothing is known of its steps. */
export const NO_PULSES: WateringPulses = { step: null, unmetered: 0, silent: 0, ordered: 0, metered: 0 }

/** Whether the counter's steps are larger than a shot, so that it tells nothing of a single one. */
export function isCoarse({ pulses: { step } }: WateringCounters, { shot }: Limits): boolean {
  return step !== null && step > shot * (1 + 1e-9)
}

/**
 * What is known of the steps of a counter once it has gone on: the largest that all it ever showed is made of, zero where there is none. What single
 * openings said before a large step was known is withdrawn.
 */
export function passStep(
  counters: WateringCounters,
  now: number | null,
  ran: number,
  limits: Limits,
): WateringCounters {
  const { metered: before, pulses } = counters
  if (!(ran > 0) || now === null || before === null || pulses.step === 0) return counters
  const step = commonStep(before, now, pulses.step ?? Infinity)
  if (step === pulses.step) return counters
  const next = { ...counters, pulses: { ...NO_PULSES, step } }
  if (!isCoarse(next, limits) || pulses.step !== null) return next
  return {
    ...next,
    latched: counters.latched.filter((code) => !OF_FLOW.includes(code)),
    delivery: { ...counters.delivery, metered: 1, shots: 0, beyond: 0, agreed: 0, partial: false },
  }
}

/** The largest step up to one that two counts are made of, or zero. Unit: L. */
export function commonStep(before: number, now: number, max: number): number {
  const isMadeOf = (step: number) =>
    [before, now].every((count) => Math.abs(count / step - Math.round(count / step)) < 1e-6)
  return STEPS.find((step) => step <= max && isMadeOf(step)) ?? 0
}

/** What a counter tells of an opening beyond water of openings before, for which its step was still to come. Unit: L. */
export function meteredOf(counters: WateringCounters, limits: Limits): number {
  const { meteredSince, pulses } = counters
  return isCoarse(counters, limits) ? Math.max(0, meteredSince - pulses.unmetered) : meteredSince
}

/** Judges the openings since the counter was judged last by what they come to together, before the next one begins. */
export function judgePulses(counters: WateringCounters): WateringCounters {
  const { ordered, meteredSince, leaked, delivery, pulses } = counters
  const step = pulses.step ?? 0
  if (!(ordered > 0)) return counters
  const metered = meteredSince + leaked
  const silent = metered > 0 ? 0 : pulses.silent + ordered
  const unmetered = Math.max(0, Math.min(step, pulses.unmetered + ordered - metered))
  const run = { step, unmetered, silent, ordered: pulses.ordered + ordered, metered: pulses.metered + metered }
  if (silent >= SILENT * step) return latch({ ...counters, pulses: run }, 'no-flow')
  const anew = { ...run, ordered: 0, metered: 0 }
  // The first step may stand for water of before.
  if (run.metered - step > 1.25 * run.ordered) return latch({ ...counters, pulses: anew }, 'flow-too-large')
  if (run.ordered < JUDGED * step) return { ...counters, pulses: run }
  const shots = Math.min(8, delivery.shots + 1)
  const share = Math.min(10, run.metered / run.ordered)
  return {
    ...counters,
    pulses: anew,
    delivery: { ...delivery, metered: meanShare(delivery.metered, share, shots), shots },
  }
}
