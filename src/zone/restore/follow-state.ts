import type { ZoneMemory } from '../day/zone-memory.js'
import type { KeptRows, Row } from '../record/kept-rows.js'
import type { KeepsLeftOut, ZoneTable } from '../record/left-out.js'
import type { LocalDay } from '../record/local-day.js'
import type { ZoneEntry } from '../record/zone-record.js'

/** The kinds of inputs. */
export const ENTRY_KINDS = ['reading', 'climate', 'watering', 'forecast'] as const

/** An input that waits: its kind and its row. */
export type HeldEntry = readonly [kind: ZoneEntry['kind'], row: Row]

/** One of a table beside the readings. */
export type TableEntry = readonly [kind: ZoneTable, row: Row]

/** What is remembered between two inputs: the rows of the day and of the 24 hours before it, as JSON keeps them. */
export interface ZoneFollowState extends KeepsLeftOut {
  /** The day that is under way. */
  readonly day: LocalDay | null
  readonly reading: KeptRows
  readonly climate: KeptRows
  readonly watering: KeptRows
  readonly forecast: KeptRows
  /** What came far ahead of the last reading: it counts when six hours of readings have confirmed that time. */
  readonly held: readonly HeldEntry[]
  /** For each reading that was out of order, the time of the last one that was not. Unit: s. */
  readonly outOfOrder: readonly number[]
  /** Time of the entry of each table that came last; null before the first. Unit: s. */
  readonly newest: Readonly<Record<ZoneTable, number | null>>
  readonly memory: ZoneMemory
}
