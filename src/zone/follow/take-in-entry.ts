import type { ZoneDay } from '../day/zone-day.js'
import { lastTime, type Row, withNewRow, withRow } from '../record/kept-rows.js'
import { BEFORE_ALL, type LeftOut, leftOutSince, type ZoneTable } from '../record/left-out.js'
import { isProven, mayCount } from '../record/order-of-time.js'
import { LOOK_BACK } from '../record/zone-window.js'
import type { HeldEntry, TableEntry, ZoneFollowState } from '../restore/follow-state.js'
import type { Zone } from '../zone.js'
import { admitted, type Step } from './turn-day.js'

/** Climate and log so far behind the day under way wait for a reading of their time. Unit: s. */
const WAITS = 172800
/** Readings that go on may be so much older than what came beside them: a day since its midnight, and the hours in which they wait. Unit: s. */
const GOES_ON = 172800
/** Blocks of rows that are kept of climate and log while no reading has come. */
const MAX_BLOCKS = 400

/** Takes in an entry of climate, log or forecasts. */
export function withTime(state: ZoneFollowState, entry: TableEntry): ZoneFollowState {
  const [table, [time]] = entry
  const late = state.day !== null && time < state.day.from
  const told = late ? withLeftOut(state, [time, table, 'too-late']) : state
  const next = { ...told, newest: { ...state.newest, [table]: time } }
  if (state.day === null || time < state.day.to + WAITS) return withEntry(next, entry)
  // What nobody reads beside is kept for the look-back of the day on which readings may go on; one stamp from the future ends nothing.
  const since = Math.min(time, state.held.at(-1)?.[1][0] ?? time) - GOES_ON - LOOK_BACK
  const held = state.held.filter(([kind, row]) => kind === 'reading' || row[0] >= since)
  return { ...next, held: [...held, entry] }
}

/** An entry without a time counts for that of the one before it. */
export function withoutTime(state: ZoneFollowState, table: ZoneTable): ZoneFollowState {
  return withLeftOut(state, [state.newest[table] ?? BEFORE_ALL, table, 'without-time'])
}

/** One more entry that is left out; what counts for a day that has ended is told on the one that is under way. */
function withLeftOut(state: ZoneFollowState, entry: LeftOut): ZoneFollowState {
  return { ...state, leftOut: [...state.leftOut, ...leftOutSince([entry], state.day?.from ?? BEFORE_ALL)] }
}

/** Takes in a reading, as `orderOfReadings` takes in those of a record. */
export function withReading(zone: Zone, state: ZoneFollowState, row: Row, far: number): Step {
  const now = row[0]
  const last = lastTime(state.reading)
  if (now > last && now - last <= far) return admitted(zone, withoutHeld(state), row)
  if (!(now > last)) return [late(state, 1), []]
  const { held, ...rest } = withoutHeld(state, now)
  const all: HeldEntry[] = [...held, ['reading', row]]
  const waiting = all.filter(([kind]) => kind === 'reading')
  return isProven(last, waiting.length, waiting[0]![1][0], now)
    ? released(zone, { ...rest, held: all })
    : [{ ...rest, held: all }, []]
}

/** What waited is taken in: readings first, since they say what day it is, but before a day ends what stands beside it. */
function released(zone: Zone, { held, ...rest }: ZoneFollowState): Step {
  let state: ZoneFollowState = { ...rest, held: [] }
  const days: ZoneDay[] = []
  let waiting = held.filter(isOfTable)
  const enter = (isDue: (time: number) => boolean) => {
    for (const entry of waiting) if (isDue(entry[1][0])) state = withEntry(state, entry)
    waiting = waiting.filter(([, [time]]) => !isDue(time))
  }
  for (const [kind, row] of held) {
    if (kind !== 'reading') continue
    const end = state.day?.to ?? Infinity
    if (row[0] >= end) enter((time) => time < end)
    const [next, ended] = admitted(zone, state, row)
    state = next
    for (const day of ended) days.push(day)
  }
  enter(() => true)
  return [state, days]
}

function isOfTable(entry: HeldEntry): entry is TableEntry {
  return entry[0] !== 'reading'
}

/** Where nothing else is known, the last readings are all there is. */
export function settled(zone: Zone, state: ZoneFollowState): Step {
  const waiting = state.held.filter(([kind]) => kind === 'reading').length
  return lastTime(state.reading) === -Infinity || mayCount(waiting) ? released(zone, state) : [late(state, waiting), []]
}

/** Readings that waited in vain are out of order: all of them, or those that are not before a moment. */
function withoutHeld(state: ZoneFollowState, before = -Infinity): ZoneFollowState {
  const held = state.held.filter(([kind, row]) => kind !== 'reading' || row[0] < before)
  const dropped = state.held.length - held.length
  return dropped === 0 ? state : { ...late(state, dropped), held }
}

/** Some more readings that are out of order. */
function late(state: ZoneFollowState, count: number): ZoneFollowState {
  const last = Math.max(lastTime(state.reading), BEFORE_ALL)
  return { ...state, outOfOrder: [...state.outOfOrder, ...new Array<number>(count).fill(last)] }
}

function withEntry(state: ZoneFollowState, [kind, row]: TableEntry): ZoneFollowState {
  if (state.day !== null && row[0] < state.day.from - LOOK_BACK) return state
  const rows = (kind === 'climate' ? withNewRow : withRow)(state[kind], row)
  if (rows === state[kind]) return withLeftOut(state, [row[0], kind, 'doubled'])
  // Before the first reading nobody knows what will be needed, but not everything is kept for ever.
  const kept = state.day === null && rows.full.length > MAX_BLOCKS ? { ...rows, full: rows.full.slice(1) } : rows
  return { ...state, [kind]: kept }
}
