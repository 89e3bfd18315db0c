import type { DrainedLevel } from './zone-day.js'

/** What is learned from one day for the next: plain data that does not grow with the record. */
export interface ZoneMemory {
  /** The last level after drain of each probe, by its name. */
  readonly levels: Readonly<Record<string, DrainedLevel>>
  /** Whether drain was logged within the last days. */
  readonly lastDrain: number | null
}

/** The memory of a zone of which nothing is known yet. */
export const NO_MEMORY: ZoneMemory = { levels: {}, lastDrain: null }
