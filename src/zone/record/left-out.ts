import type { LocalDay } from './local-day.js'

/** Tables beside the readings. */
export const TABLES = ['climate', 'watering', 'forecast'] as const
export type ZoneTable = (typeof TABLES)[number]

/** Why an entry of such a table, or a number of it, is left out: no time, a time that another entry of the climate has, a day that had been reviewed when it came, a number that cannot be. */
export const LEFT_OUT_FOR = ['without-time', 'doubled', 'too-late', 'impossible'] as const
export type LeftOutFor = (typeof LEFT_OUT_FOR)[number]

/** An entry that was left out, with the moment for which it counts: its own, or that of the entry before it in its table. Unit: s. */
export type LeftOut = readonly [moment: number, table: ZoneTable, why: LeftOutFor]

/** What keeps count of entries that were left out. */
export interface KeepsLeftOut {
  /** Entries of climate, log and forecasts that were left out. */
  readonly leftOut: readonly LeftOut[]
}

/** The moment of what was left out before anything was taken in: it counts for the first day. Unit: s. */
export const BEFORE_ALL = -1e11

/** How many entries of a table were left out on one day, and why. */
export interface LeftOutCount {
  readonly table: ZoneTable
  readonly because: LeftOutFor
  readonly count: number
}

/** Counts of what was left out, in a fixed order. */
export function countsLeftOut(entries: readonly LeftOut[]): LeftOutCount[] {
  return TABLES.flatMap((table) =>
    LEFT_OUT_FOR.flatMap((because) => {
      const count = entries.filter(([, of, why]) => of === table && why === because).length
      return count > 0 ? [{ table, because, count }] : []
    }),
  )
}

/** What was left out on one day. */
export function leftOutOn(entries: readonly LeftOut[], { from, to }: LocalDay): LeftOut[] {
  return entries.filter(([moment]) => moment >= from && moment < to)
}

/** The same, none of it before a moment. */
export function leftOutSince(entries: readonly LeftOut[], begin: number): LeftOut[] {
  return entries.map(([moment, ...rest]) => [Math.max(moment, begin), ...rest])
}
