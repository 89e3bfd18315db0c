import { InputError } from '../quantity/errors.js'
import { numberIn } from '../quantity/guard.js'
import { AHEAD } from './domains.js'

/** The calendar of the language ends here. */
const LAST = 8.64e12

/** Ticks of a time axis: whole local hours, or local midnights on longer spans. Times are seconds since 1970 in universal time. */
export function timeTicks(from: number, to: number, hoursFromUtc: number): { x: number; text: string }[] {
  if (!(Math.abs(from) < LAST && Math.abs(to) < LAST))
    throw new InputError(
      'time',
      `runs from ${from} to ${to}`,
      'give seconds since 1970 in universal time, without a missing first or last one',
    )
  const hours = (to - from) / 3600
  const step =
    [1 / 12, 0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 72, 168, 720].find((candidate) => hours / candidate <= 9) ??
    Math.ceil(hours / 9 / 24) * 24
  const offset = numberIn(hoursFromUtc, AHEAD, 'hoursFromUtc') * 3600
  const first = Math.ceil((from + offset) / (step * 3600))
  const ticks: { x: number; text: string }[] = []
  for (let n = first; n * step * 3600 <= to + offset; n++) {
    const local = Math.round(n * step * 3600)
    ticks.push({ x: local - offset, text: label(local, step >= 24) })
  }
  return ticks
}

/** A moment given in local seconds, as `07:00`; midnights and days as `14 May`. */
function label(local: number, dayOnly: boolean): string {
  const date = new Date(local * 1000)
  const hour = date.getUTCHours()
  const minute = date.getUTCMinutes()
  if (!dayOnly && (hour > 0 || minute > 0)) return clock(local)
  const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
  return `${date.getUTCDate()} ${months[date.getUTCMonth()]}`
}

/** The time of day of a moment given in local seconds, to the nearest minute, as `07:05`. */
export function clock(local: number): string {
  return new Date(Math.round(local / 60) * 60000).toISOString().slice(11, 16)
}

/** Spans longer than `longest` seconds between neighbouring readings, or between readings that are there. */
export function gapsBetween(time: ArrayLike<number>, value: ArrayLike<number>, max: number): [number, number][] {
  const gaps: [number, number][] = []
  let last = Number.NaN
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(value[i])) continue
    const now = time[i]!
    if (now - last > max) gaps.push([last, now])
    last = now
  }
  return gaps
}
