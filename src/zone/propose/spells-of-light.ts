import type { ZoneDay } from '../day/zone-day.js'
import { LIGHT_STEP } from '../weather/light-of-day.js'
import type { Zone } from '../zone.js'
import type { TimeToPlan } from './time-to-plan.js'

/** A part of a day that is planned, with the hours in which it may be watered. */
export interface SpellOfLight {
  /** Its first step of light, and the first behind it, from local midnight on. */
  readonly begin: number
  readonly end: number
  readonly firstShot: number
  readonly lastShot: number
}

/** The spells of light of a day that is planned: one, or two where lamps burn over midnight; none where no shot has time in them. */
export function spellsOfLight({ limits }: Zone, { light, from, to }: ZoneDay, next: TimeToPlan): SpellOfLight[] {
  const shift = next.from - from
  const { firstShotAfterLight: after, lastShotBeforeDark: before } = limits
  const dawn = light.dawn + shift
  // Light that ends after midnight has burnt since the evening before, too.
  const evening = { firstShot: dawn + after, lastShot: light.dusk + shift - before }
  const night = { firstShot: next.from, lastShot: next.from + (light.dusk - to) - before }
  const hours = (light.dusk > to ? [night, evening] : [evening])
    .map(({ firstShot, lastShot }) => ({
      firstShot: Math.max(firstShot, next.earliest),
      lastShot: Math.min(lastShot, next.to - LIGHT_STEP),
    }))
    .filter(({ firstShot, lastShot }) => firstShot <= lastShot)
  const step = (time: number) => Math.floor((time - next.from) / LIGHT_STEP)
  const begun = Math.ceil((next.begin - next.from) / LIGHT_STEP)
  const turn = Math.max(begun, step(Math.min(dawn, dawn + after)))
  return hours.map((one, i) => ({
    ...one,
    begin: i === 0 ? begun : turn,
    end: i === hours.length - 1 ? Math.round((next.to - next.from) / LIGHT_STEP) : turn,
  }))
}
