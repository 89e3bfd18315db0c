import { NO_SPREAD, type RecentSpread } from './recent-spread.js'
import { numbersOf, type RepeatNumbers, type Repeats } from './repeats.js'

/** A reading that is kept; null where its time or value was missing. */
export interface KeptReading {
  /** Its time. Unit: s. */
  readonly time: number | null
  /** The reading. Unit: that of the series. */
  readonly value: number | null
}

/** What is remembered between two readings: so many as the tests look back, and no more. */
export interface ReadingWatchState {
  /** Readings so far. Unit: 1. */
  readonly count: number
  /** The reading that was judged last. */
  readonly before: KeptReading | null
  /** The reading that waits for its later neighbour. */
  readonly waiting: KeptReading | null
  /** Readings before the waiting one since the last missing one, equal ones put together, as many as the flat line test looks back. */
  readonly repeats: Repeats
  /** Spread of the readings before the waiting one, for the rate of change by standard deviations. */
  readonly spread: RecentSpread
  /** Whether the reading before the waiting one stood at an end of the sensor's range after a jump. */
  readonly stuck: boolean
}

/** A state that is changed in place, so that a whole record makes none for each of its readings. What is missing is NaN. */
export interface ReadingSearch {
  /** How many readings are held: none, the one that waits, or that and the one before. */
  held: 0 | 1 | 2
  timeBefore: number
  before: number
  time: number
  value: number
  repeats: RepeatNumbers
  spread: RecentSpread
  stuck: boolean
}

export const NO_READINGS: ReadingWatchState = {
  count: 0,
  before: null,
  waiting: null,
  repeats: [],
  spread: NO_SPREAD,
  stuck: false,
}

/** A state, to be changed in place. */
export function readingSearch({ before, waiting, repeats, spread, stuck }: ReadingWatchState): ReadingSearch {
  return {
    held: waiting === null ? 0 : before === null ? 1 : 2,
    timeBefore: before?.time ?? Number.NaN,
    before: before?.value ?? Number.NaN,
    time: waiting?.time ?? Number.NaN,
    value: waiting?.value ?? Number.NaN,
    repeats: numbersOf(repeats),
    spread,
    stuck,
  }
}
