import type { Limits } from '../settings/checked-settings.js'
import type { WateringInput } from '../state/input.js'
import { latch } from '../state/latch.js'
import type { WateringCounters, WateringDelivery, WateringValve } from '../state/state.js'
import { commonStep, isCoarse, passStep } from './pulses.js'

/** Time in which flow settles after the valve moved: lines fill and drain in seconds to a minute. Common practice, no source. Unit: s. */
const SETTLE = 60

/** Reads flow meter, drain counter and the valve's own word since the decision before. */
export function readFeedback(
  counters: WateringCounters,
  input: Partial<WateringInput>,
  valve: WateringValve,
  { from, to, gap }: { readonly from: number; readonly to: number; readonly gap: number },
  limits: Limits,
): WateringCounters {
  const { metered, valve: reported } = input
  const drained = counters.latched.includes('drain-too-large') ? undefined : input.drained
  if (metered === undefined && drained === undefined && reported === undefined) return counters
  const max = 5 * limits.litresPerSecond * (to - from + SETTLE)
  const isClosed = valve.opened === null && from >= valve.closed + SETTLE
  // After a time of which nothing is known, what ran in it was no leak: an old state knows of no shot since. Nor did an opening give more than its own.
  const own = isClosed ? 0 : limits.litresPerSecond * valve.duration
  const flow = Math.min(increase(counters.metered, metered, max, limits.perDay / 2), gap > 0 ? own : Infinity)
  const isStuck = isClosed && reported === 'open'
  const leaked = !isClosed ? 0 : metered === undefined && isStuck ? limits.litresPerSecond * (to - from) : flow
  const sum = counters.leaked + leaked
  const isLeak = sum > Math.max(0.1 * limits.shot, 0.02 * limits.litresPerSecond * (to - valve.closed))
  const leaky = isLeak ? latch(counters, 'flow-while-closed') : counters
  const told = isStuck ? latch(leaky, 'valve-does-not-close') : leaky
  const ran = increase(counters.drained, drained, Infinity)
  const stepped = passStep(told, counter(metered), flow, limits)
  return {
    ...stepped,
    metered: counter(metered) ?? counters.metered,
    drained: counter(drained) ?? counters.drained,
    meteredSince: counters.meteredSince + (isClosed ? 0 : flow),
    drainedSince: counters.drainedSince + ran,
    leaked: sum,
    // A gauge that counts again is dead no more.
    latched: ran > 0 ? stepped.latched.filter((code) => code !== 'no-drain') : stepped.latched,
  }
}

/** Judges the flow of an opening that has ended: none, or too much. */
export function judgeFlow(counters: WateringCounters, given: number, limits: Limits): WateringCounters {
  if (counters.metered === null || given <= 0 || isCoarse(counters, limits)) return counters
  const { meteredSince } = counters
  const code = meteredSince < 0.1 * given ? 'no-flow' : meteredSince > 1.25 * given ? 'flow-too-large' : undefined
  return code === undefined ? counters : latch(counters, code)
}

/** Judges the drain of a shot that was given because the zone was called dry, before the next one begins. */
export function judgeDrain(counters: WateringCounters, given: number, limits: Limits): WateringCounters {
  if (counters.drained === null || given <= 0) return counters
  const drains = counters.drainedSince >= 0.5 * given ? Math.min(48, counters.drains + 1) : 0
  const next = { ...counters, drains }
  return drains >= limits.maxMisses ? latch(next, 'drain-while-dry') : next
}

/** Takes what arrives of the ordered water, and tells where it has long been too little. */
export function judgeShare(counters: WateringCounters, delivery: WateringDelivery): WateringCounters {
  const isLittle = delivery.shots >= 4 && delivery.metered < 0.85 && delivery.metered > 0.1
  const next = { ...counters, delivery }
  return isLittle ? latch(next, 'flow-too-small') : next
}

function counter(value: unknown): number | null {
  return typeof value === 'number' && value >= 0 && value <= 1e12 ? value : null
}

/** What a counter has gone on by; nothing where it was set back, is missing or leaps beyond what can have flowed. */
function increase(before: number | null, value: unknown, max: number, maxStep = 0): number {
  const now = counter(value)
  if (before === null || now === null || now < before) return 0
  // A large step stands for water of some time before.
  return now - before > max && now - before > max + commonStep(before, now, maxStep) ? 0 : now - before
}
