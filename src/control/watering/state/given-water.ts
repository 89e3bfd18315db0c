import type { WateringVolumes } from './state.js'

/** Quarters of an hour that are kept: a day by a clock that gains two minutes in an hour, and the one that has begun. */
export const SLOTS = 100
/** Those of 24 hours, and the one that has begun. */
const DAY = 97
/** Length of one of them. Unit: s. */
export const SLOT = 900

/** Moves the ring on; quarters older than a day are forgotten. The count is never less than that of the last 24 hours. */
export function passTime(water: WateringVolumes, elapsed: number): WateringVolumes {
  const slot = Math.floor(elapsed / SLOT)
  if (slot === water.slot) return water
  const litres = water.litres.slice()
  for (let i = Math.max(water.slot + 1, slot - SLOTS + 1); i <= slot; i++) litres[i % SLOTS] = 0
  return { ...water, slot, litres }
}

/** Adds a volume to the present quarter. */
export function addWater(water: WateringVolumes, volume: number): WateringVolumes {
  if (volume <= 0) return water
  const litres = water.litres.slice()
  const at = water.slot % SLOTS
  // To the millilitre's thousandth, upwards: a stored state stays small.
  litres[at] = Math.ceil((litres[at]! + volume) * 1e6 - 1e-3) / 1e6
  return { ...water, litres }
}

/** Takes back a volume that was counted too much, from the quarter of a moment and those before. */
export function takeWater(water: WateringVolumes, volume: number, elapsed: number): WateringVolumes {
  if (volume <= 0) return water
  const litres = water.litres.slice()
  const last = Math.floor(elapsed / SLOT)
  let left = volume
  for (let slot = last; slot > last - 10 && slot >= 0 && slot > water.slot - SLOTS; slot--) {
    const taken = Math.min(left, litres[slot % SLOTS]!)
    litres[slot % SLOTS] = Math.ceil((litres[slot % SLOTS]! - taken) * 1e6 - 1e-3) / 1e6
    left -= taken
  }
  return { ...water, litres }
}

/** Volume of the last 24 hours. */
export function givenInDay({ slot, litres }: WateringVolumes): number {
  let sum = 0
  for (let i = 0; i < DAY; i++) sum += litres[(slot - i + 2 * SLOTS) % SLOTS]!
  return sum
}

/** Volume since a moment, rather too much: its quarter counts in full. */
export function givenSince({ slot, litres }: WateringVolumes, moment: number): number {
  let sum = 0
  for (let i = Math.max(0, slot - SLOTS + 1, Math.floor(moment / SLOT)); i <= slot; i++) sum += litres[i % SLOTS]!
  return sum
}

/** Volume of all that is kept: never less than that of the last 24 hours by a clock that is a little slower. */
export function givenInLongDay({ litres }: WateringVolumes): number {
  let sum = 0
  for (let i = 0; i < SLOTS; i++) sum += litres[i]!
  return sum
}
