import type { Limits } from '../settings/checked-settings.js'
import type { WateringCounters, WateringDelivery, WateringState } from '../state/state.js'
import { countsTooMuch, HEARD } from '../state/wrong-meter.js'

/** Two shares within this distance say the same: a shot raises a probe by 0.02 m³/m³ or so, and the mean of three readings is good to a tenth of that before it and after. */
const ALIKE = 0.2
/** By more than this the means of some shots do not differ by chance: `ALIKE` over the root of two or three. */
const APART = 0.13
/** A smaller share is too little water: pulses and pressure alone make meters and drippers differ by a tenth. Own judgement. */
const LITTLE = 0.85
/** Where less than this share comes, many drippers without a probe would have to be clogged; probes that show as little see it themselves. Own judgement. */
const FAR_LESS = 0.6
/** A share that is no water: the few pulses of a line that fills. Own judgement. */
export const NONE = 0.1
/** However small the share, an opening counts for at least this part of what was ordered: two witnesses may both be wrong. Own judgement. */
const MIN_SHARE = 0.25

/** Compares what an opening should have given with what the meter, and what probes and drain saw of it, before the next one begins. */
export function judgeDelivery({ counters, fill }: WateringState, limits: Limits): WateringDelivery {
  const { ordered, shown, drained, delivery } = counters
  if (!(ordered > 0) || counters.metered === null) return delivery
  const metered = Math.min(10, (counters.meteredSince + counters.leaked) / ordered)
  // Of a short opening the meter tells whether water comes; probes cannot.
  if (ordered < 0.6 * limits.shot)
    return { ...delivery, metered: meanShare(delivery.metered, metered, Math.min(8, delivery.shots + 1)) }
  const isSeen = shown !== null && drained !== null
  const share = isSeen ? Math.min(10, Math.max(0, (shown + counters.drainedSince) / ordered)) : delivery.shown
  const shots = Math.min(8, delivery.shots + 1)
  const seen = isSeen ? Math.min(8, delivery.seen + 1) : delivery.seen
  const more = share / delivery.usual - metered
  const apart = isSeen ? Math.abs(more) : ALIKE * 1.5
  const isWhole = isSeen && metered > 0.95 && metered < 1.05
  const usual = isWhole ? delivery.usual + (share - delivery.usual) / 8 : delivery.usual
  const rose = shown === null ? delivery.rose : Math.min(10, Math.max(0, shown / ordered))
  const beyond = isSeen ? delivery.beyond + (more - delivery.beyond) / Math.min(5, seen) : delivery.beyond
  const next = {
    metered: meanShare(delivery.metered, metered, shots),
    shots,
    shown: isSeen ? delivery.shown + (share - delivery.shown) / Math.min(5, seen) : delivery.shown,
    seen,
    rose: delivery.rose + (rose - delivery.rose) / Math.min(5, shots),
    beyond,
    usual: Math.min(1.2, Math.max(0.6, usual)),
    agreed: agreedShots(delivery.agreed, apart, Math.abs(beyond), metered),
    partial: delivery.partial,
  }
  // Containers that are nearly full show little of what came.
  const hasRoom = fill.before.every((level) => level === null || level < limits.upper)
  return { ...next, partial: isPartial(next, metered, hasRoom) }
}

/** A mean that falls quickly where nothing comes, and is forgotten once all comes again. */
export function meanShare(mean: number, last: number, shots: number): number {
  if (last < NONE) return mean < 0.6 ? last : (mean + last) / 2
  return mean < 0.6 && last > 0.95 ? last : mean + (last - mean) / Math.min(5, shots)
}

/**
 * Openings in a row in which meter and probes said the same. It is earned by whole shots only: pressure falls for both at once, and two that
 * err one after the other must not vouch for each other.
 */
function agreedShots(agreed: number, apart: number, inMean: number, metered: number): number {
  if (apart > 2 * ALIKE) return Math.max(0, agreed - HEARD)
  // One shot differs by chance where the last few do not.
  if (apart > ALIKE) return inMean > APART ? Math.max(0, agreed - 1) : agreed
  return metered >= LITTLE || (agreed >= HEARD && metered >= NONE) ? Math.min(8, agreed + 1) : agreed
}

/**
 * Volume that an opening counts for: what was ordered or metered, whichever is more. Where meter and probes have long said the same,
 * and less than ordered for several openings, the meter is believed but for a margin; where they have long said that the meter counts too much, so are they.
 */
export function countedVolume(ordered: number, metered: number, delivery: WateringDelivery): number {
  if (delivery.agreed >= HEARD && !delivery.partial) {
    const min = Math.max(MIN_SHARE, Math.min(1, 1.15 * delivery.metered))
    return Math.max(Math.min(ordered, 1.15 * metered), min * ordered, metered)
  }
  return Math.max(ordered, countsTooMuch(delivery) ? Math.min(metered, 1.25 * ordered) : metered)
}

/** What the last opening counts for too much, once both witnesses have long agreed and say that less came. Unit: L. */
export function countedTooMuch(counters: WateringCounters, counted: number): number {
  const { ordered, shown, drained, meteredSince, drainedSince, leaked, delivery } = counters
  if (!(ordered > 0) || shown === null || drained === null || counters.metered === null) return 0
  if (delivery.agreed < HEARD || delivery.partial || leaked > 0) return 0
  const metered = meteredSince / ordered
  const isAlike = Math.abs((shown + drainedSince) / ordered / delivery.usual - metered) <= ALIKE
  return isAlike && metered < LITTLE ? Math.max(0, counted - Math.max(MIN_SHARE, 1.15 * metered) * ordered) : 0
}

/** Share of the ordered water that arrives, as far as it is known well enough to open for longer; 1 where it is not. */
export function arrivingShare({ metered, shots, agreed }: WateringDelivery): number {
  if (shots < HEARD || metered > LITTLE || (agreed < HEARD && metered < 0.3)) return 1
  return Math.max(0.2, metered)
}

/** Whether meter and probes have long said the same of shots. */
export function isAgreed({ agreed }: WateringDelivery): boolean {
  return agreed >= HEARD
}

/** The same where it may change what is allowed in a day: only where it is told by more than the meter. */
export function allowanceShare(delivery: WateringDelivery): number {
  return delivery.agreed >= HEARD || delivery.partial ? arrivingShare(delivery) : 1
}

/**
 * Whether the zone gets less than its probes show of the same openings: their places do not stand for the others. It lasts until the meter sees all
 * again, or both have said the same for so long that they differed by chance.
 */
function isPartial(next: WateringDelivery, last: number, hasRoom: boolean): boolean {
  const { metered, shots, seen, beyond, agreed, partial } = next
  // A meter that sees nothing at all is dead, or no water comes: both are told by other findings.
  if (last <= 0.3) return false
  if (partial) return metered < 0.9 && !(hasRoom && metered < FAR_LESS && agreed >= HEARD && beyond < APART / 2)
  const isApart = agreed < HEARD || beyond > APART
  return shots >= 6 && seen >= 6 && metered < LITTLE && metered > 0.3 && isApart
}
