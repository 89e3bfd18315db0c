import { type DailyUseState, newDailyUseState } from '../../record/forecast/daily-use-state.js'
import type { LevelState } from '../../record/forecast/level-state.js'
import type { DrainedLevel } from './zone-day.js'

/** So many days on which salt may show are remembered. */
export const SALT_DAYS = 14

/** A day on which salt in the readings may show. */
export interface SaltDay {
  /** Its end. Unit: s. */
  readonly at: number
  /** Conductivity of the drain. Unit: dS/m. */
  readonly drainEC: number
  /** Level after drain of each probe of the zone, in their order; null where it was not found on this day. Unit: m³/m³. */
  readonly levels: readonly (number | null)[]
}

/** What is learned from one day for the next: plain data that does not grow with the record. */
export interface ZoneMemory {
  /** The last level after drain of each probe, by its name. */
  readonly levels: Readonly<Record<string, DrainedLevel>>
  /** The last days on which both the drain's conductivity and a level after drain were known. */
  readonly salt: readonly SaltDay[]
  /** End of the last day on which drain was logged. Unit: s. */
  readonly lastDrain: number | null
  /** How each probe dries by the clock, by its name, as `forecastLevel` learns it. */
  readonly drying: Readonly<Record<string, LevelState>>
  /** How much water a day takes, as `forecastDailyUse` learns it. */
  readonly use: DailyUseState
}

/** The memory of a zone of which nothing is known yet. */
export function noMemory(): ZoneMemory {
  return { levels: {}, salt: [], lastDrain: null, drying: {}, use: newDailyUseState() }
}
