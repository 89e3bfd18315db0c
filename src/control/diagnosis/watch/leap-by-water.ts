import type { Watched } from './watched.js'

/** Between readings so many times farther apart than a probe needs to show a shot, a shot and its drain look like a leap. */
const FAR = 2
/** What plants drink at noon, in means of the day: a sine over fourteen hours has 2.7, and a bright day may follow dull ones. Chosen. */
export const NOON = 4
/** The least that a fall goes beyond what is drunk and drains: half of the smallest step. Unit: m³/m³. */
const BEYOND = 0.01
/** Water of the last half hour before a reading may still be on its way to the probe. Unit: s. */
const ON_ITS_WAY = 1800

/** Water that came to all places, and what plants use. */
export interface WaterOfLate {
  /** Shots with their beginnings. Unit: s, L. */
  readonly shots: readonly { readonly time: number; readonly volume: number }[]
  /** Mean use of the last days, as they were watered. Unit: m³/m³/s. */
  readonly use: number
}

/** Whether a shot between two readings looks like a leap. */
export function isFarApart(passed: number, { responseTime }: Pick<Watched, 'responseTime'>): boolean {
  return passed > FAR * responseTime
}

/** What shots can have raised a place by from one reading to the next. Unit: m³/m³. */
export function cameBetween({ shots }: WaterOfLate, from: number, until: number, { volume }: Watched): number {
  let came = 0
  for (let k = shots.length - 1; k >= 0 && shots[k]!.time > from - ON_ITS_WAY; k--)
    if (shots[k]!.time <= until) came += shots[k]!.volume
  return came / volume
}

/** What a place can fall by from one reading to the next: plants drink, and what a shot brought beyond the full level drains. Unit: m³/m³. */
export function fallByWater(level: number, passed: number, came: number, { use }: WaterOfLate, zone: Watched): number {
  return BEYOND + NOON * use * passed + Math.min(came, Math.max(0, level - zone.full))
}

/** Mean use, by what was given over a day at least: what drained of it makes it look larger. Unit: m³/m³/s. */
export function useOf(shots: WaterOfLate['shots'], now: number, { volume }: Watched): number {
  const given = shots.reduce((sum, shot) => sum + shot.volume, 0)
  return shots.length === 0 ? 0 : given / volume / Math.max(86400, now - shots[0]!.time)
}
