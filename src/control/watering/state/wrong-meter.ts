import type { WateringDelivery } from './state.js'

/** Openings after which a witness is heard: one may be chance, and a mean of four that each tell to 0.2 tells to half of it. */
export const HEARD = 4

/** Whether the meter has long counted far more than ordered, while probes and drain saw what was ordered. */
export function countsTooMuch({ shots, seen, metered, shown }: WateringDelivery): boolean {
  return shots >= HEARD && seen >= HEARD && metered > 1.4 && shown > 0.75 && shown < 1.25
}

/** Whether probes go on seeing shots of which the meter sees nothing. */
export function isDeadMeter({ shown, seen, rose }: WateringDelivery): boolean {
  return (seen >= HEARD && shown > 0.6) || rose > 0.6
}
