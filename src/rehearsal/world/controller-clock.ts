import type { Effects } from '../faults/effects.js'

/** The clock of the controller `time` seconds after the start, at its call number `call`. */
export function controllerClock(effects: Effects, start: number, time: number, call: number): number {
  if (effects.clockBroken) return Number.NaN
  const at = effects.clockFrozenAt >= 0 ? effects.clockFrozenAt : time
  const gained = effects.clockGain * (at - effects.clockGainSince)
  const flap = call % 2 === 1 ? effects.clockFlap : 0
  const now = effects.clockAhead === Number.NEGATIVE_INFINITY ? at : start + at + effects.clockAhead
  return (now + gained + flap) * effects.clockFactor
}
