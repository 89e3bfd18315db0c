/** Change, as a share of the suction, up to which the plain sum is the same to second order as the way on a logarithmic scale. */
const SMALL = 0.05

/**
 * Suctions after a share of their changes. Dry medium moves on the logarithmic scale on which its curves are nearly straight, and a whole
 * change takes no node further than to a tenth or to the fourfold, nor across the suction at which roots stop drinking: beyond it
 * nothing tells an iteration how to come back.
 */
export function moveAll(
  from: Float64Array,
  change: Float64Array,
  share: number,
  driest: number,
  into: Float64Array,
): void {
  for (let i = 0; i < into.length; i++) {
    const suction = from[i]!
    const whole = change[i]!
    let next: number
    // Under water the balance is a straight line, however far; out of it no node goes by more than some centimetres.
    if (suction < 1) next = suction + share * Math.min(Math.max(whole, -1000), 3 + Math.max(-suction, 0))
    else if (Math.abs(whole) < SMALL * suction) next = suction + share * whole
    else next = suction * Math.exp(share * Math.min(Math.max(whole / suction, -2.3), 1.4))
    into[i] = next >= driest && suction < driest ? suction + 0.9 * (driest - suction) : next
  }
}
