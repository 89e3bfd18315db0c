import type { Effects } from '../faults/effects.js'
import type { RehearsalZone } from '../scenario/zone.js'
import type { Messages } from './messages.js'
import type { Probes } from './sense.js'

/** What sends readings of the probes, at the pace of the zone and while there is power. */
export interface Sender {
  /** Newest number of each probe; NaN where it sent no number. */
  readonly shown: Float64Array
  /** Sends what is due. `now` is the time by the controller's clock, `salt` what the water of the pores has beyond the feed. */
  readonly send: (effects: Effects, time: number, now: number, salt: number, temperature: number) => void
}

export function senderOf(zone: RehearsalZone, probes: Probes, messages: Messages): Sender {
  const shown = new Float64Array(zone.probes).fill(Number.NaN)
  let next = 0
  return {
    shown,
    send: (effects, time, now, salt, temperature) => {
      if (time < next || !effects.power) return
      next = (Math.floor(time / zone.readingStep) + 1) * zone.readingStep
      for (let probe = 0; probe < zone.probes; probe++) {
        const value = probes.send(probe, effects, time, salt, temperature)
        shown[probe] = typeof value === 'number' ? value : Number.NaN
        if (value === undefined) continue
        messages.send({ probe, value, time: now + effects.senderAhead }, effects, time)
      }
    },
  }
}
