import { civilDateText, dayOfCivilDate } from '../../numerics/civil-date.js'
import type { LocalOffset } from '../../record/local-time.js'

/** A local day: its date, its first moment and the first moment of the next. */
export interface LocalDay {
  readonly date: string
  readonly from: number
  readonly to: number
}

const DAY = 86400

/** How far local clocks are ahead of universal time at a moment, in seconds. */
function aheadAt(clock: readonly LocalOffset[], time: number): number {
  let ahead = clock[0]?.ahead ?? 0
  for (const offset of clock) if (time >= offset.from) ahead = offset.ahead
  return ahead
}

/**
 * The local day in which a moment lies. A clock that is put back over midnight, as in Newfoundland until 2011, shows the evening again: the new day
 * has begun by then, and goes on.
 */
export function localDayOf(clock: readonly LocalOffset[], time: number): LocalDay {
  const shown = Math.floor((time + aheadAt(clock, time)) / DAY)
  const day = time >= midnight(clock, shown + 1) ? shown + 1 : shown
  return { date: civilDateText(day), from: midnight(clock, day), to: midnight(clock, day + 1) }
}

/** The local day of a date such as `2026-05-19`, or undefined for a date that does not exist. */
export function localDayOfDate(clock: readonly LocalOffset[], date: string): LocalDay | undefined {
  if (typeof date !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(date)) return undefined
  const day = dayOfCivilDate(Number(date.slice(0, 4)), Number(date.slice(5, 7)), Number(date.slice(8)))
  if (civilDateText(day) !== date) return undefined
  return { date, from: midnight(clock, day), to: midnight(clock, day + 1) }
}

/** The clock on the wall, as `07:10`. */
export function wallClock(clock: readonly LocalOffset[], time: number): string {
  const minutes = Math.floor((time + aheadAt(clock, time)) / 60)
  const two = (n: number) => String(n).padStart(2, '0')
  return `${two(Math.floor(minutes / 60) - 24 * Math.floor(minutes / 1440))}:${two(minutes - 60 * Math.floor(minutes / 60))}`
}

/** The first moment of a local day; where the clock skips midnight, the moment of the change. */
function midnight(clock: readonly LocalOffset[], day: number): number {
  const local = day * DAY
  let first = Infinity
  for (const { ahead } of clock) {
    const moment = local - ahead
    if (aheadAt(clock, moment) === ahead) first = Math.min(first, moment)
  }
  if (first < Infinity) return first
  for (const { from } of clock) if (from + aheadAt(clock, from) >= local) first = Math.min(first, from)
  return first
}
