import { type LocalDay, localDayOf } from '../record/local-day.js'
import type { ClimateColumns, ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'

/** Steps in which the light of a day is kept, and in which the next day is planned. */
export const LIGHT_STEP = 600
/** Less light than this is dark, W/m². */
const DARK = 5

/** Light holds on for so long without a reading: a longer gap may hide the noon, and the course of the day is not known. Unit: s. */
export const MAX_LIGHT_GAP = 7200

/** When it was light on a day, and how much in each step. */
export interface DayLight {
  /** Whether light was measured or lamps were described; if not, a day from 6 to 20 o'clock is assumed. */
  readonly source: 'measured' | 'lamps' | 'measured-and-lamps' | 'assumed'
  /** When light began. Unit: s. */
  readonly dawn: number
  /** When light ended; for lamps that burn over midnight after the end of the day. Unit: s. */
  readonly dusk: number
  /** Light in steps of ten minutes from local midnight. Unit: W/m². */
  readonly course: readonly number[]
}

/** The light of a day from the measured radiation and the lamps; what is still to come of a day under way is taken from the day before. */
export function lightOfDay(zone: Zone, { climate, day, now }: ZoneWindow): DayLight {
  const steps = Math.round((day.to - day.from) / LIGHT_STEP)
  const sun = now === undefined ? measuredCourse(climate, day, steps) : courseSoFar(zone, climate, day, now)
  const lamps = zone.lamps === undefined ? undefined : lampCourse(zone, day, steps)
  if (sun === undefined && lamps === undefined) return assumedLight(day, steps)
  const course = Array.from({ length: steps }, (_, i) => (sun?.[i] ?? 0) + (lamps?.[i] ?? 0))
  const source = sun === undefined ? 'lamps' : lamps === undefined ? 'measured' : 'measured-and-lamps'
  const from = (i: number) => day.from + i * LIGHT_STEP
  const first = course.findIndex((light, i) => light > DARK && !((course[i - 1] ?? (wraps(zone) ? light : 0)) > DARK))
  // Light that never begins on the day is light throughout.
  if (first < 0) return { source, dawn: day.from, dusk: day.to, course }
  let last = steps - 1
  while (!(course[last]! > DARK)) last--
  const over = wraps(zone) ? course.findIndex((light) => !(light > DARK)) : 0
  return { source, dawn: from(first), dusk: last === steps - 1 ? day.to + over * LIGHT_STEP : from(last + 1), course }
}

function wraps({ lamps }: Zone): boolean {
  return lamps !== undefined && lamps.off < lamps.on
}

/** The course of a day up to its last reading, and that of the day before from there on. */
function courseSoFar(zone: Zone, climate: ClimateColumns, day: LocalDay, now: number): number[] | undefined {
  const before = localDayOf(zone.place.clock, day.from - 1)
  const whole = measuredCourse(climate, before, Math.round((before.to - before.from) / LIGHT_STEP))
  const done = Math.ceil((now - day.from) / LIGHT_STEP)
  if (whole === undefined) return undefined
  const soFar = measuredSteps(climate, day, done)
  const steps = Math.round((day.to - day.from) / LIGHT_STEP)
  return Array.from({ length: steps }, (_, i) =>
    soFar.covered > 0.8 * done && !soFar.broken && i < done ? soFar.course[i]! : whole[Math.min(i, whole.length - 1)]!,
  )
}

function measuredCourse(climate: ClimateColumns, day: LocalDay, steps: number): number[] | undefined {
  const { course, covered, broken } = measuredSteps(climate, day, steps)
  return covered > 0.8 * steps && !broken && course.some((light) => light > DARK) ? course : undefined
}

/** The course of the light, how many of its steps have readings of the last hour, and whether light broke off in a gap. */
function measuredSteps(climate: ClimateColumns, day: LocalDay, steps: number) {
  const sums = new Array<number>(steps).fill(0)
  const counts = new Array<number>(steps).fill(0)
  let covered = 0
  for (let i = 0; i < climate.time.length; i++) {
    const step = Math.floor((climate.time[i]! - day.from) / LIGHT_STEP)
    const light = climate.irradiance[i]!
    if (step < 0 || step >= steps || Number.isNaN(light)) continue
    sums[step] = sums[step]! + Math.max(0, light)
    counts[step] = counts[step]! + 1
  }
  const holds = MAX_LIGHT_GAP / LIGHT_STEP
  // An hourly mean stands for the steps behind it as well.
  let held = 0
  let since = 0
  let seen = false
  let broken = false
  const course = sums.map((sum, i) => {
    const count = counts[i]!
    if (count > 0) {
      broken ||= since >= holds && Math.max(held, sum / count) > DARK
      held = sum / count
      since = 0
      seen = true
    } else since++
    if (seen && since < 6) covered++
    return since < holds ? held : 0
  })
  return { course, covered, broken: broken || (since >= holds && held > DARK) }
}

function lampCourse(zone: Zone, day: LocalDay, steps: number): number[] {
  const { on, off, irradiance } = zone.lamps as NonNullable<Zone['lamps']>
  return Array.from({ length: steps }, (_, i) => {
    const now = (i + 0.5) * LIGHT_STEP * (86400 / (day.to - day.from))
    const burning = on < off ? now >= on && now < off : now >= on || now < off
    return burning ? irradiance : 0
  })
}

/** Mean light of the lamps over a day. */
export function lampMean(zone: Zone, day: LocalDay): number {
  if (zone.lamps === undefined) return 0
  const course = lampCourse(zone, day, Math.round((day.to - day.from) / LIGHT_STEP))
  return course.reduce((sum, x) => sum + x, 0) / course.length
}

function assumedLight(day: LocalDay, steps: number): DayLight {
  const course = Array.from({ length: steps }, (_, i) =>
    Math.max(0, Math.sin((Math.PI * ((i + 0.5) / 6 - 6)) / 14)),
  ).map((light, i) => ((i + 0.5) / 6 < 20 ? 400 * light : 0))
  return { source: 'assumed', dawn: day.from + 6 * 3600, dusk: day.from + 20 * 3600, course }
}
