import { isObject } from '../../../quantity/guard.js'
import { STEPS } from '../delivery/pulses.js'
import { LATCHED_CODES, type LatchedCode } from '../findings/latched-codes.js'
import type { WateringCounters, WateringDelivery, WateringPulses } from '../state/state.js'
import { AGES, each, inRange, isCount, type Loose, nullOr } from './field.js'

export function countersSound(counters: Loose<WateringCounters>): boolean {
  return (
    nullOr(counters.metered, 0, AGES) &&
    nullOr(counters.drained, 0, AGES) &&
    inRange(counters.meteredSince, 0, AGES) &&
    inRange(counters.drainedSince, 0, AGES) &&
    inRange(counters.leaked, 0, AGES) &&
    inRange(counters.ordered, 0, AGES) &&
    nullOr(counters.shown, -AGES, AGES) &&
    isObject<Loose<WateringDelivery>>(counters.delivery) &&
    deliverySound(counters.delivery) &&
    isObject<Loose<WateringPulses>>(counters.pulses) &&
    pulsesSound(counters.pulses) &&
    isCount(counters.drains, 48) &&
    Array.isArray(counters.latched) &&
    counters.latched.length <= LATCHED_CODES.length &&
    each(counters.latched, (code) => LATCHED_CODES.includes(code as LatchedCode))
  )
}

function pulsesSound({ step, unmetered, silent, ordered, metered }: Loose<WateringPulses>): boolean {
  return (
    (step === null || step === 0 || STEPS.includes(step as (typeof STEPS)[number])) &&
    inRange(unmetered, 0, AGES) &&
    inRange(silent, 0, AGES) &&
    inRange(ordered, 0, AGES) &&
    inRange(metered, 0, AGES)
  )
}

function deliverySound({
  metered,
  shots,
  shown,
  seen,
  beyond,
  rose,
  usual,
  agreed,
  partial,
}: Loose<WateringDelivery>): boolean {
  return (
    inRange(metered, 0, 10) &&
    isCount(shots, 8) &&
    inRange(shown, 0, 10) &&
    isCount(seen, 8) &&
    inRange(beyond, -10, 17) &&
    inRange(rose, 0, 10) &&
    inRange(usual, 0.6, 1.2) &&
    typeof partial === 'boolean' &&
    isCount(agreed, 8)
  )
}
