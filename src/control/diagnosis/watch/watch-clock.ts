import { isMoment } from '../../moment.js'

/** What a clock did that no clock should do. */
export interface ClockTrouble {
  readonly kind: 'unreadable' | 'back' | 'ahead' | 'still' | 'rate'
  /** By how much: seconds of a leap, calls that it stood still, or the ratio of its rate. */
  readonly size: number
  /** Number of the call. Unit: 1. */
  readonly call: number
}

/** What is remembered of the clock. */
export interface ClockWatch {
  readonly last: number | null
  /** Usual time between calls, mean distance from it, and that of the last calls. Unit: s. */
  readonly cadence: number
  readonly jitter: number
  readonly recent: number
  readonly calls: number
  readonly still: number
  readonly trouble: ClockTrouble | null
}

export const newClock: ClockWatch = { last: null, cadence: 0, jitter: 0, recent: 0, calls: 0, still: 0, trouble: null }

/** A standing clock is told after so many calls: chosen. */
const STILL = 10

/** By so little a clock is set right, or two messages overtake each other: no time passes meanwhile. Chosen. Unit: s. */
const SET_RIGHT = 10
/** A clock that went back within so many calls, and so long, may flap. Chosen. Unit: 1, s. */
const FLAPS = 100
const FLAPS_FOR = 7200

export interface Tick {
  readonly clock: ClockWatch
  /** Now, if it can be read. */
  readonly now: number | null
  /** Seconds since the last call; zero after a leap. */
  readonly passed: number
  readonly leapt: boolean
}

export function ticked(clock: ClockWatch, told: unknown): Tick {
  const calls = clock.calls + 1
  const troubled = (kind: ClockTrouble['kind'], size: number) => ({ kind, size, call: calls })
  if (!isMoment(told))
    return { clock: { ...clock, calls, trouble: troubled('unreadable', 0) }, now: null, passed: 0, leapt: false }
  const since = clock.last === null ? 0 : told - clock.last
  const step = since < 0 && since >= -SET_RIGHT ? 0 : since
  if (clock.last === null || step === 0) {
    const still = clock.last === null ? 0 : clock.still + 1
    const trouble = still >= STILL ? troubled('still', still) : clock.trouble
    const last = clock.last ?? told
    return { clock: { ...clock, last, calls, still, trouble }, now: last, passed: 0, leapt: false }
  }
  const leap = step < 0 || (clock.calls > STILL && step > Math.max(1800, 10 * clock.cadence))
  if (leap) {
    // A clock that flaps goes ahead as often as back: back is what no power cut explains.
    const flaps = step > 0 && clock.trouble?.kind === 'back' && calls - clock.trouble.call < FLAPS
    const trouble = flaps ? clock.trouble : troubled(step < 0 ? 'back' : 'ahead', step)
    return { clock: { ...clock, last: told, calls, still: 0, trouble }, now: told, passed: 0, leapt: true }
  }
  const next = rated({ ...clock, last: told, calls, still: 0 }, step)
  return { clock: next, now: told, passed: step, leapt: false }
}

/** Shares chosen on rehearsals. Follows the rate of the calls: a clock that gains shows as calls that come farther apart, a little and always. */
function rated(clock: ClockWatch, step: number): ClockWatch {
  // The first call has no step before it.
  const calls = Math.max(1, clock.calls - 1)
  const recent = clock.recent + Math.max(1 / calls, 0.01) * (step - clock.recent)
  const off = clock.cadence === 0 ? 0 : recent / clock.cadence - 1
  const other = Math.abs(off) > 0.2
  // A first step that a shot cut short would weigh in a slow mean for days: at first the usual is what was seen last.
  const begins = calls < 200 || other
  const share = begins ? 1 : Math.abs(off) < rateLimit(clock) / 2 ? Math.max(1 / calls, 0.002) : 0
  const cadence = clock.cadence + share * (recent - clock.cadence)
  const jitter = clock.jitter + Math.max(1 / calls, 0.01) * (Math.abs(step - recent) - clock.jitter)
  const next = { ...clock, recent, cadence, jitter }
  if (calls < 300 || other || Math.abs(off) < rateLimit(next)) return next
  return { ...next, trouble: { kind: 'rate', size: 1 + off, call: clock.calls } }
}

function rateLimit({ jitter, cadence }: ClockWatch): number {
  return Math.max(0.015, cadence === 0 ? 0 : (0.5 * jitter) / cadence)
}

/** Whether the clock went back, or could not be read, of late: meanwhile no time between two moments is known. */
export function mayFlap({ trouble, calls, cadence }: ClockWatch): boolean {
  if (trouble?.kind !== 'back' && trouble?.kind !== 'unreadable') return false
  const passed = calls - trouble.call
  return passed < FLAPS && passed * cadence < FLAPS_FOR
}

/** The trouble of the last day, counted in calls: the clock cannot be asked. */
export function standingTrouble({ trouble, calls, cadence }: ClockWatch): ClockTrouble | null {
  const day = cadence > 0 ? 86400 / cadence : 100
  return trouble !== null && calls - trouble.call < day ? trouble : null
}
