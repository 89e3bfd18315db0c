import type { ProbeView } from '../probes/probes.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill } from '../state/state.js'

/** By no more do probes of a full zone differ that both stand in full containers: about three times what good ones are apart. Own judgement. Unit: m³/m³. */
export const LIKE = 0.02
/** A refill tells water to so many shots: what it took beyond that is learned. Own judgement, no source. */
const SURE = 0.75
/** No zone dries faster or slower than its probes show by more than this share of its use: two and a half times `PARTS`. */
const MAX_SLIP = 0.1
/** Plants are not taken to use less than this share of what is usual. Own judgement, no source. */
const MIN_USE = 0.1

/**
 * By how much a zone dries more than its probes show, as a share of its use: their containers drip and drink a little differently from the mean.
 * A refill tells it: the zone took so much more than its probes foretold. It is learned by a gain as that of a Kalman filter, for shares that differ by
 * a twenty-fifth and a refill that tells water to `SURE` shots: the longer the time since the zone was full, the better it is told.
 */
export function learntSlip(
  fill: WateringFill,
  bias: readonly number[],
  known: readonly number[],
  limits: Limits,
): number {
  const { foretold, net, due, slip } = fill
  if (!(due > 0)) return slip
  const gain = due ** 2 / (due ** 2 + limits.usual ** 2)
  // A zone that was full unasked was not as dry as it was taken for.
  if (foretold === null) return slip - gain * Math.max(0, slip)
  // What probes were wrong by of themselves is their error, and no difference of containers.
  const told = bias.reduce((sum, now, i) => sum + now - known[i]!, 0) / bias.length
  const found = net - due - foretold - told * limits.substrate
  const more = Math.sign(found) * Math.max(0, Math.abs(found) - SURE * limits.shot)
  return Math.max(-MAX_SLIP, Math.min(MAX_SLIP, slip + gain * (more / due - slip)))
}

/** Whether a probe stands clearly below what it says of a full zone. */
export function isShortOfFull(views: readonly ProbeView[], atFull: readonly (number | null)[]): boolean {
  return views.some(({ seen }, i) => seen !== null && atFull[i] !== null && seen < atFull[i]! - LIKE)
}

/**
 * Share of the usual use that plants took between two times that the zone was full: what it was given and did not drain, whatever probes say. Not where a
 * probe stands below what it says of a full zone: water may have run past.
 */
export function learntUse(
  { full, net, due, passing, usual }: WateringFill,
  views: readonly ProbeView[],
  atFull: readonly (number | null)[],
  limits: Limits,
): number {
  const isKnown = views.some(({ seen }, i) => seen !== null && atFull[i] !== null)
  if (full === null || !(due > 0) || !isKnown || isShortOfFull(views, atFull)) return usual
  const found = Math.min(1, Math.max(MIN_USE, net / (due * (1 - Math.min(0.2, passing)))))
  return usual + (due / (due + limits.usual)) * (found - usual)
}
