import { isObject } from '../../../quantity/guard.js'
import { clockMode } from '../clock/clock.js'
import { FIRST_TO_DRAIN, SOONEST_TO_DRAIN } from '../refill/begin-refill.js'
import type { Limits } from '../settings/checked-settings.js'
import { SLOTS } from '../state/given-water.js'
import type { WateringClock, WateringOrigin, WateringState } from '../state/state.js'
import type { Loose } from './field.js'
import { clockSound } from './sound-clock.js'
import { isVolumesOfDay } from './sound-water.js'

/**
 * A fresh state that still knows the water of the last 24 hours, where one of its two copies in a damaged state is whole. Of two that differ
 * nobody knows which is older: the larger volume of each quarter counts.
 */
export function salvaged(state: unknown, fresh: WateringState, { drain }: Limits): WateringState {
  if (!isObject<Loose<WateringState>>(state) || isOfAnother(state.made, fresh.made.zone)) return fresh
  const copies = [state.water, state.spare].filter(isVolumesOfDay).sort((a, b) => b.slot - a.slot)
  const [newest, other] = copies
  if (newest === undefined) return fresh
  const whole = other === undefined ? newest : fuller(newest, other)
  // It begins a day after its start: what was given in that day is known. What a probe is like is not.
  const slot = SLOTS - 1
  const litres = fresh.water.litres.map((_, i) => whole.litres[(whole.slot + i - slot + SLOTS) % SLOTS]!)
  // How old it is nobody knows: room for water begins at nothing, as after a state that is lost.
  const water = { slot, litres, paced: slot, room: 0, taken: 0 }
  const day = 900 * slot
  return {
    ...fresh,
    clock: { ...fresh.clock, elapsed: day, agreed: day, ...knownOf(state.clock, day) },
    valve: { ...fresh.valve, closed: day, rested: day },
    zone: { ...fresh.zone, lastWet: day },
    fill: { ...fresh.fill, tried: drain > 0 ? day - SOONEST_TO_DRAIN + FIRST_TO_DRAIN : day },
    probes: fresh.probes.map((probe) => ({ ...probe, quiet: day })),
    water,
    spare: water,
  }
}

/** The water of another zone says nothing of this one; where the name is gone, it may have been given here. */
function isOfAnother(made: unknown, zone: string): boolean {
  return isObject<Loose<WateringOrigin>>(made) && typeof made.zone === 'string' && made.zone !== zone
}

/** Two copies as one. One that is more than a day behind is not of the same time: it counts as if it were. */
function fuller(newest: WateringState['water'], other: WateringState['water']): WateringState['water'] {
  const behind = newest.slot - other.slot < SLOTS ? newest.slot : other.slot
  const litres = newest.litres.map((_, i) => {
    const back = (newest.slot - i + SLOTS) % SLOTS
    const at = behind - back
    return Math.max(newest.litres[i]!, at > other.slot ? 0 : other.litres[(at + SLOTS) % SLOTS]!)
  })
  return { ...newest, litres }
}

/**
 * What is known of the clock, where that part is whole: the pace of decisions, since a clock that gives nonsense just now must not teach another; and the
 * time by count, where the clock failed already, since what it says would be believed anew.
 */
function knownOf(clock: unknown, day: number): Partial<WateringClock> {
  if (!isObject<Loose<WateringClock>>(clock) || !clockSound(clock)) return {}
  const { raw, base, elapsed, pace, paces, bad } = clock as WateringClock
  const known = { pace, paces }
  const isFailing = base !== null && clockMode(clock as WateringClock) === 'counts'
  return isFailing ? { ...known, raw, base: base + elapsed - day, bad } : known
}
