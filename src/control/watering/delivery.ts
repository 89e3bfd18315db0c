import type { Limits } from './checked-settings.js'
import type { WateringCounters, WateringDelivery } from './state.js'

/** Openings after which a witness is heard. */
const HEARD = 4
/** Two shares within this distance say the same. */
const ALIKE = 0.2
/** A smaller share is too little water. */
const LITTLE = 0.85
/** However small the share, an opening counts for at least this part of what was ordered. */
const LEAST = 0.25

/** Compares what an opening should have given with what the meter, and what probes and drain saw of it, before the next one begins. */
export function judgeDelivery(counters: WateringCounters): WateringDelivery {
  const { ordered, shown, drained, delivery } = counters
  if (!(ordered > 0) || counters.metered === null) return delivery
  const metered = Math.min(10, (counters.meteredSince + counters.leaked) / ordered)
  const isSeen = shown !== null && drained !== null
  const share = isSeen ? Math.min(10, Math.max(0, (shown + counters.drainedSince) / ordered)) : delivery.shown
  const shots = Math.min(8, delivery.shots + 1)
  const seen = isSeen ? Math.min(8, delivery.seen + 1) : delivery.seen
  const apart = isSeen ? Math.abs(share / delivery.usual - metered) : ALIKE * 1.5
  const isWhole = isSeen && metered > 0.95 && metered < 1.05
  const usual = isWhole ? delivery.usual + (share - delivery.usual) / 8 : delivery.usual
  const next = {
    metered: delivery.metered + (metered - delivery.metered) / Math.min(5, shots),
    shots,
    shown: isSeen ? delivery.shown + (share - delivery.shown) / Math.min(5, seen) : delivery.shown,
    seen,
    usual: Math.min(1.2, Math.max(0.6, usual)),
    agreed:
      apart <= ALIKE ? Math.min(8, delivery.agreed + 1) : apart > 2 * ALIKE ? 0 : Math.max(0, delivery.agreed - 1),
    partial: delivery.partial,
  }
  return { ...next, partial: isPartial(next) }
}

/**
 * Volume that an opening counts for: what was ordered or metered, whichever is more. Where meter and probes have long said the same,
 * and less than ordered for several openings, the meter is believed but for a margin; where they have long said that the meter counts too much, so are they.
 */
export function countedVolume(ordered: number, metered: number, delivery: WateringDelivery): number {
  if (delivery.agreed >= HEARD && !delivery.partial) {
    const least = Math.max(LEAST, Math.min(1, 1.15 * delivery.metered))
    return Math.max(Math.min(ordered, 1.15 * metered), least * ordered, metered)
  }
  const isHigh = delivery.shots >= HEARD && delivery.seen >= HEARD && delivery.metered > 1.4
  const isUsual = isHigh && delivery.shown > 0.75 && delivery.shown < 1.25
  return Math.max(ordered, isUsual ? Math.min(metered, 1.25 * ordered) : metered)
}

/** Share of the ordered water that arrives, as far as it is known well enough to open for longer; 1 where it is not. */
export function arrivingShare({ metered, shots, agreed }: WateringDelivery): number {
  if (shots < HEARD || metered > LITTLE || (agreed < HEARD && metered < 0.3)) return 1
  return Math.max(0.2, metered)
}

/** The same where it may change what is allowed in a day: only where it is told by more than the meter. */
export function allowanceShare(delivery: WateringDelivery): number {
  return delivery.agreed >= HEARD || delivery.partial ? arrivingShare(delivery) : 1
}

/** Whether the zone gets less than its probes show: their places do not stand for the others. It lasts until the meter sees all again. */
function isPartial({ metered, shots, seen, agreed, partial }: WateringDelivery): boolean {
  if (partial) return metered < 0.9
  return shots >= 6 && seen >= 6 && metered < LITTLE && metered > 0.3 && agreed < HEARD
}

/** Time of an opening that gives a whole shot of the water that arrives, within the longest one. */
export function runFor(delivery: WateringDelivery, limits: Limits): number {
  // Where nothing comes, longer openings bring no more.
  if (delivery.metered < 0.1) return limits.run
  return Math.min(limits.maxRun, limits.run / arrivingShare(delivery))
}
