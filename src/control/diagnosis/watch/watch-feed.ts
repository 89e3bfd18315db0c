/** Rain has 0.01 to 0.1 dS/m, from memory: a drain or a solution for plants with less is none, and its sensor dead or dry. Unit: dS/m. */
const RAIN = 0.1

/** Whether an EC is less than that of rain. */
export function isBelowRain(ec: number): boolean {
  return ec < RAIN
}

/** What is remembered of a value that should hardly change: the EC of the feed, or a share of drain. */
export interface SteadyWatch {
  readonly usual: number
  readonly count: number
  /** Values in a row that were unlike the usual, and the mean of them. Unit: 1. */
  readonly odd: number
  readonly now: number
  readonly since: number | null
}

export const newSteady: SteadyWatch = { usual: 0, count: 0, odd: 0, now: 0, since: null }

/**
 * Ten values in a row that are alike make a usual one, a slow mean over five hundred follows it: chosen. Takes a value in; what differs from the usual by more than the
 * tolerance is odd, and not learnt from.
 */
export function withValue(watch: SteadyWatch, value: number | null, time: number, tolerance: number): SteadyWatch {
  if (value === null || value < 0) return watch
  const { usual, count } = watch
  const isOff = count > 0 && Math.abs(value - usual) > tolerance * usual
  if (isOff && count >= 10)
    return { ...watch, odd: Math.min(1000, watch.odd + 1), now: value, since: watch.since ?? time }
  if (isOff) return { usual: value, count: 1, odd: 0, now: value, since: null }
  const next = usual + Math.max(1 / (count + 1), 0.002) * (value - usual)
  return { usual: next, count: Math.min(1e6, count + 1), odd: 0, now: value, since: null }
}
