/**
 * A suction after a share of a change. Dry medium moves on the logarithmic scale on which its curves are nearly straight, and a whole
 * change takes no node further than to a tenth or to the fourfold, nor across the suction at which roots stop drinking: beyond it
 * nothing tells an iteration how to come back.
 */
export function moved(suction: number, change: number, share: number, driest: number): number {
  let next: number
  // Under water the balance is a straight line, however far; out of it no node goes by more than some centimetres.
  if (suction < 1) next = suction + share * Math.min(Math.max(change, -1000), 3 + Math.max(-suction, 0))
  // The plain sum is the same to second order, and most changes are small.
  else if (Math.abs(change) < 0.05 * suction) next = suction + share * change
  else next = suction * Math.exp(share * Math.min(Math.max(change / suction, -2.3), 1.4))
  return next >= driest && suction < driest ? suction + 0.9 * (driest - suction) : next
}
