import { medianInPlace } from '../../numerics/select.js'
import { READING_TIME } from '../../quantity/domains.js'
import { numberIn } from '../../quantity/guard.js'
import { BEFORE_ALL, type LeftOut, type ZoneTable } from './left-out.js'

/** A reading that comes so long after the last one is no longer believed by itself. Unit: s. */
const FAR = 21600
/** With so many rising readings a jump of the clock may be believed: they come from a logger that was off, not from one wrong stamp. */
const CONFIRMED = 3
/** And they must go on for so long, unless they are the first of all: a clock that is ahead for some hours comes back meanwhile. Unit: s. */
const PROVEN = 21600

/** How far ahead of the last reading a single one is believed. */
export function farAhead({ readingStep }: { readonly readingStep: number }): number {
  return Math.max(FAR, 20 * readingStep)
}

/** Whether readings that wait, in the order of time, are enough to be taken at the end of a record. */
export function mayCount(count: number): boolean {
  return count >= CONFIRMED
}

/** Whether a jump ahead of `last` is believed after so many readings from `first` to `now`. */
export function isProven(last: number, count: number, first: number, now: number): boolean {
  return count >= CONFIRMED && (last === -Infinity || now - first >= PROVEN)
}

/** A time in seconds, or NaN where it is missing; milliseconds and text are refused. */
export function timeIn(value: unknown, argument: string): number {
  if (value === null || value === undefined || Number.isNaN(value)) return Number.NaN
  return numberIn(value as number, READING_TIME, argument)
}

/** What became of the times of readings, in the order in which they came. */
export interface OrderedTimes {
  /** Positions that are kept; their times rise. */
  readonly keep: number[]
  /** For each reading that is left out, the time of the last one that was kept before it; of the first that is kept where there was none. */
  readonly outOfOrder: number[]
}

/**
 * Readings in the order of time. One that is not later than the last is left out. The first of all wait until three in a row have come. One
 * that is far ahead waits until six hours of them have come: a stamp from the future, or a clock that is ahead for some hours, must not make
 * all later readings late. At the end of the record three are enough.
 */
export function orderOfReadings(time: ArrayLike<number>, far: number): OrderedTimes {
  const keep: number[] = []
  const outOfOrder: number[] = []
  let held: number[] = []
  let last = -Infinity
  for (let i = 0; i < time.length; i++) {
    const now = time[i]!
    if (now > last && now - last <= far) {
      for (const _ of held) outOfOrder.push(last)
      held = []
      keep.push(i)
      last = now
    } else if (now > last) {
      // Those that wait must rise, too.
      const before = held.filter((k) => time[k]! < now)
      for (let k = before.length; k < held.length; k++) outOfOrder.push(last)
      held = [...before, i]
      if (!isProven(last, held.length, time[held[0]!]!, now)) continue
      for (const k of held) keep.push(k)
      held = []
      last = now
    } else outOfOrder.push(last)
  }
  // Where nothing else is known, the last readings are all there is.
  if (keep.length === 0 || mayCount(held.length)) for (const k of held) keep.push(k)
  else for (const _ of held) outOfOrder.push(last)
  const first = time[keep[0] ?? 0]!
  return { keep, outOfOrder: outOfOrder.map((moment) => Math.max(moment, first)) }
}

/** Positions in the order of their times, those without a time left out; of equal times all, or of the climate only the first. */
export function sortedByTime(time: ArrayLike<number>, table: ZoneTable): { keep: number[]; leftOut: LeftOut[] } {
  const keep: number[] = []
  const leftOut: LeftOut[] = []
  let rising = true
  let last = BEFORE_ALL
  for (let i = 0; i < time.length; i++) {
    const now = time[i]!
    if (Number.isNaN(now)) {
      leftOut.push([last, table, 'without-time'])
      continue
    }
    if (now < last) rising = false
    last = now
    keep.push(i)
  }
  if (!rising) keep.sort((a, b) => time[a]! - time[b]! || a - b)
  if (table !== 'climate') return { keep, leftOut }
  const isNew = (i: number, k: number) => k === 0 || time[i] !== time[keep[k - 1]!]
  for (const [k, i] of keep.entries()) if (!isNew(i, k)) leftOut.push([time[i]!, table, 'doubled'])
  return { keep: leftOut.length === 0 ? keep : keep.filter(isNew), leftOut }
}

/** Moments at which readings are passed on beside other inputs: their times, or that of the one before where they are out of order. */
export function whenPassedOn(time: ArrayLike<number>): Float64Array {
  const steps = new Float64Array(Math.max(0, time.length - 1))
  for (let i = 0; i < steps.length; i++) steps[i] = Math.abs(time[i + 1]! - time[i]!) || 0
  const readingStep = steps.length === 0 ? 0 : medianInPlace(steps)
  const moments = new Float64Array(time.length)
  let last = -Infinity
  let from = 0
  for (const k of orderOfReadings(time, farAhead({ readingStep })).keep) {
    moments.fill(last, from, k)
    last = time[k]!
    moments[k] = last
    from = k + 1
  }
  return moments.fill(last, from)
}
