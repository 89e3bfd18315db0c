import { answersOf, type Quarter } from './series-moved.js'
import { tells } from './steps-of-counter.js'
import type { Came } from './watch-balance.js'
import type { ProbeWatch } from './watch-probe.js'
import type { ValveWatch } from './watch-valve.js'
import type { Watched } from './watched.js'

/** Water by the order and by the meter, and how far the probes went, in quarters of an hour: what belongs together comes together. */
export interface TimingWatch {
  /** The quarter under way: its beginning, water so far, and the level of each probe at its beginning. Unit: s, L, m³/m³. */
  readonly from: number | null
  readonly ordered: number
  readonly metered: number
  readonly levels: readonly (number | null)[]
  /** Those before, the oldest first. */
  readonly quarters: readonly Quarter[]
  readonly moved: Moved | null
}

/** Orders and answers that come at different times. */
export interface Moved {
  /** How late the answers come. Unit: s. */
  readonly by: number
  /** When that was seen last. Unit: s. */
  readonly time: number
}

/** Unit: s. */
const QUARTER = 900
/** Fifteen hours. */
export const QUARTERS = 60
/** What was seen is told for so long, or until the probes answer in time. Unit: s. */
const TOLD = 86400

export function newTiming(probes: number): TimingWatch {
  return { from: null, ordered: 0, metered: 0, levels: new Array<null>(probes).fill(null), quarters: [], moved: null }
}

export function withTiming(
  timing: TimingWatch,
  came: Came,
  {
    probes,
    valve,
    shots,
  }: {
    readonly probes: readonly ProbeWatch[]
    readonly valve: ValveWatch
    readonly shots: readonly { readonly volume: number }[]
  },
  now: number,
  zone: Watched,
): TimingWatch {
  const { from } = timing
  const sums = { ...timing, ordered: timing.ordered + came.ordered, metered: timing.metered + came.metered }
  if (from !== null && now - from < QUARTER) return sums
  const levels = probes.map((probe) => newest(probe, now, zone))
  const begun = { from: now, ordered: 0, metered: 0, levels }
  // A longer pause than a quarter and a bit has no place in the row.
  if (from === null || now - from > 1.5 * QUARTER) return { ...begun, quarters: [], moved: null }
  const { meter } = valve
  const lastShot = shots[shots.length - 1]?.volume ?? 0
  const quarter: Quarter = {
    ordered: sums.ordered,
    // What a meter counts late, or once in some shots, belongs to another quarter.
    metered: valve.hasMeter && meter.lag < QUARTER && tells(meter.step, lastShot) ? sums.metered : null,
    change: meanChange(timing.levels, levels, zone.full - 0.01),
  }
  const quarters = [...timing.quarters, quarter].slice(-QUARTERS)
  return { ...begun, quarters, moved: movedNow(timing.moved, quarters, now, zone) }
}

function movedNow(old: Moved | null, quarters: readonly Quarter[], now: number, { volume }: Watched): Moved | null {
  const { moved, inTime } = answersOf(quarters, volume)
  if (moved !== null) return { by: moved * QUARTER, time: now }
  return old === null || inTime || now - old.time > TOLD ? null : old
}

/** A reading that is older than a quarter and a bit says nothing of that quarter, however long the zone waits for one. */
function newest({ times, levels, bad }: ProbeWatch, now: number, { maxAge }: Watched): number | null {
  const last = times[times.length - 1]
  return bad !== null || last === undefined || now - last > Math.min(maxAge, 1.5 * QUARTER)
    ? null
    : levels[levels.length - 1]!
}

/** Mean change of the probes whose places have room: others show no shot. */
function meanChange(
  before: readonly (number | null)[],
  after: readonly (number | null)[],
  room: number,
): number | null {
  const changes = after.flatMap((level, i) =>
    level === null || before[i] == null || before[i] > room ? [] : [level - before[i]],
  )
  return changes.length === 0 ? null : changes.reduce((sum, one) => sum + one / changes.length, 0)
}
