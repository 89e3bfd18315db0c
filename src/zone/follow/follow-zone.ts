import { requireList, requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import type { Reducer } from '../../quantity/reducer.js'
import { checkZone } from '../checked-zone.js'
import type { ZoneDay } from '../day/zone-day.js'
import { noMemory, type ZoneMemory } from '../day/zone-memory.js'
import { climateEntries, forecastEntries, readingEntries, wateringEntries } from '../record/entries-of-record.js'
import { allRows, lastTime, NO_ROWS, type Row, rowsSince, withNewRow, withRow } from '../record/kept-rows.js'
import { BEFORE_ALL, type LeftOut, leftOutSince, type ZoneTable } from '../record/left-out.js'
import { localDayOf } from '../record/local-day.js'
import { farAhead, isProven, mayCount, timeIn, whenPassedOn } from '../record/order-of-time.js'
import type { Missable, ZoneEntry, ZoneRecord } from '../record/zone-record.js'
import { LOOK_BACK, plainNumber, windowOf } from '../record/zone-window.js'
import { ENTRY_KINDS, type HeldEntry, type TableEntry, type ZoneFollowState } from '../restore/follow-state.js'
import { restoredFollow } from '../restore/restore-zone.js'
import { reviewWindow } from '../review/review-day.js'
import type { Zone } from '../zone.js'

/** `reviewZone` for inputs that come in one by one. */
export interface ZoneFollower extends Reducer<ZoneFollowState, ZoneEntry, readonly ZoneDay[]> {
  /** The review of the day that is under way, as far as it has come. */
  readonly finish: (state: ZoneFollowState) => readonly ZoneDay[]
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => ZoneFollowState
}

/** Climate and log so far behind the day under way wait for a reading of their time. Unit: s. */
const WAITS = 172800
/** Readings that go on may be so much older than what came beside them: a day since its midnight, and the hours in which they wait. Unit: s. */
const GOES_ON = 172800
/** Blocks of rows that are kept of climate and log while no reading has come. */
const MAX_BLOCKS = 400

/**
 * Follows a zone reading by reading, and reviews each local day when it has ended: what `reviewZone` gives for the same record, to the
 * last bit, however the record is cut and whether or not the state went through JSON in between.
 *
 * A reading with a time far ahead of the last one waits until six hours of them have come; if time goes on where it was before, they are
 * left out and counted. A clock that is wrong for longer shows only by another clock: where you have one, hold back what claims to come
 * from the future.
 *
 * The state holds two days of readings and the memory of the zone, no more; with two probes and a reading every five minutes that is
 * about 30 kB of JSON.
 *
 * @procedure Keeps the rows of the day and of the 24 hours before it; the first reading of a later day ends the day and has it reviewed.
 * Climate and log may come late, as long as their day is under way.
 * @param zone - The zone. Unit: any. Range: any.
 * @returns A reducer that takes readings, climate and entries of the watering log in the order of time, and gives the days that ended.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for parts that contradict each other.
 * @source definition
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const follower = followZone(zone)
 * const time = Array.from({ length: 300 }, (_, i) => i * 300)
 * const inputs = entriesOfRecord({ time, probes: { A: time.map((t) => 0.6 - 1e-7 * t) } })
 * const { state, outputs } = runReducer({ reducer: follower, inputs })
 * outputs.flat().length // => 1
 * follower.finish(state).map((day) => day.readings) // => [12]
 */
export function followZone(zone: Zone): ZoneFollower {
  const checked = checkZone(zone)
  const far = farAhead(checked)
  return {
    start: {
      day: null,
      reading: NO_ROWS,
      climate: NO_ROWS,
      watering: NO_ROWS,
      forecast: NO_ROWS,
      held: [],
      outOfOrder: [],
      leftOut: [],
      newest: { climate: null, watering: null, forecast: null },
      memory: noMemory(),
    },
    step: (state, input) => {
      requireObject(input, 'input')
      oneOf(input.kind, ENTRY_KINDS, 'kind')
      const time = timeIn(input.time, 'time')
      if (input.kind === 'reading') return withReading(checked, state, rowOf(checked, input, time), far)
      const row = rowOf(checked, input, time)
      return [Number.isNaN(time) ? withoutTime(state, input.kind) : withTime(state, [input.kind, row]), []]
    },
    finish: (state) => {
      const [last, ended] = settled(checked, state)
      return [...ended, ...closed(checked, last, false).days]
    },
    restore: (stored) => restoredFollow(checked, stored),
  }
}

type Step = readonly [ZoneFollowState, readonly ZoneDay[]]

/** Takes in an entry of climate, log or forecasts. */
function withTime(state: ZoneFollowState, entry: TableEntry): ZoneFollowState {
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
function withoutTime(state: ZoneFollowState, table: ZoneTable): ZoneFollowState {
  return withLeftOut(state, [state.newest[table] ?? BEFORE_ALL, table, 'without-time'])
}

/** One more entry that is left out; what counts for a day that has ended is told on the one that is under way. */
function withLeftOut(state: ZoneFollowState, entry: LeftOut): ZoneFollowState {
  return { ...state, leftOut: [...state.leftOut, ...leftOutSince([entry], state.day?.from ?? BEFORE_ALL)] }
}

/** Takes in a reading, as `orderOfReadings` takes in those of a record. */
function withReading(zone: Zone, state: ZoneFollowState, row: Row, far: number): Step {
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
function settled(zone: Zone, state: ZoneFollowState): Step {
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

function admitted(zone: Zone, state: ZoneFollowState, row: Row): Step {
  const now = row[0]
  const [open, days] = state.day === null || now >= state.day.to ? turned(zone, state, now) : [state, []]
  return [{ ...open, reading: withRow(open.reading, row) }, days]
}

/** Ends the day that is under way and begins that of a moment. */
function turned(zone: Zone, state: ZoneFollowState, now: number): Step {
  const { days, memory } = closed(zone, state, true)
  const first = state.day === null ? now : BEFORE_ALL
  const day = localDayOf(zone.place.clock, now)
  const begin = day.from - LOOK_BACK
  return [
    {
      day,
      reading: rowsSince(state.reading, begin),
      climate: rowsSince(state.climate, begin),
      watering: rowsSince(state.watering, begin),
      forecast: rowsSince(state.forecast, begin),
      held: state.held,
      outOfOrder: state.outOfOrder.map((time) => Math.max(time, first)).filter((time) => time >= day.from),
      leftOut: leftOutSince(state.leftOut, first).filter(([moment]) => moment >= day.from),
      newest: state.newest,
      memory,
    },
    days,
  ]
}

/** The review of the day, after a later reading has come or while it is under way; a day without a reading has none. */
function closed(
  zone: Zone,
  state: ZoneFollowState,
  laterReading: boolean,
): { days: readonly ZoneDay[]; memory: ZoneMemory } {
  const { day, memory } = state
  if (day === null || !(lastTime(state.reading) >= day.from)) return { days: [], memory }
  const [reading, climate] = [allRows(state.reading), allRows(state.climate)]
  const [watering, forecast] = [allRows(state.watering), allRows(state.forecast)]
  const column = (rows: readonly Row[], k: number) => Float64Array.from(rows, (row) => row[k] ?? Number.NaN)
  const columns = {
    time: column(reading, 0),
    probes: zone.probes.map((_, p) => column(reading, 2 + p)),
    rootTemperature: column(reading, 1),
    climate: {
      time: column(climate, 0),
      airTemperature: column(climate, 1),
      relativeHumidity: column(climate, 2),
      irradiance: column(climate, 3),
      windSpeed: column(climate, 4),
    },
    watering: {
      time: column(watering, 0),
      given: column(watering, 1),
      drained: column(watering, 2),
      feedEC: column(watering, 3),
      drainEC: column(watering, 4),
    },
    forecast: { time: column(forecast, 0), day: column(forecast, 1), irradiance: column(forecast, 2) },
    outOfOrder: Float64Array.from(state.outOfOrder),
    leftOut: state.leftOut,
  }
  const found = reviewWindow(zone, windowOf(zone, columns, day, laterReading), memory)
  return { days: [found.day], memory: found.memory }
}

function rowOf(zone: Zone, input: ZoneEntry, time: number): Row {
  const number = (x: Missable | undefined, name: string): Missable => {
    const value = plainNumber(x, name)
    return Number.isNaN(value) ? null : value
  }
  if (input.kind === 'reading') {
    const { probes } = input
    requireObject(probes, 'probes')
    const of = (name: string) => (Object.hasOwn(probes, name) ? number(probes[name], `probes.${name}`) : null)
    return [time, number(input.rootTemperature, 'rootTemperature'), ...zone.probes.map(({ name }) => of(name))]
  }
  const named = (columns: Readonly<Record<string, Missable | undefined>>): Missable[] =>
    Object.entries(columns).map(([name, x]) => number(x, name))
  if (input.kind === 'climate') {
    const { airTemperature, relativeHumidity, irradiance, windSpeed } = input
    return [time, ...named({ airTemperature, relativeHumidity, irradiance, windSpeed })]
  }
  if (input.kind === 'forecast') return [time, ...named({ day: input.day, irradiance: input.irradiance })]
  const { given, drained, feedEC, drainEC } = input
  return [time, ...named({ given, drained, feedEC, drainEC })]
}

/**
 * The record of a zone as single inputs in the order of time, to feed a follower with it.
 *
 * @procedure Takes readings, climate, watering log and forecasts one after the other by their times; at the same time climate comes first, then
 * the log.
 * @param record - The record. Unit: any. Range: any.
 * @returns The inputs.
 * @throws `InputError` for a record that lost its times or probes.
 * @source definition
 * @example
 * const inputs = entriesOfRecord({ time: [0, 300], probes: { A: [0.5, null] }, watering: { time: [60], given: [0.4] } })
 * inputs.map((input) => [input.kind, input.time]) // => [['reading', 0], ['watering', 60], ['reading', 300]]
 */
export function entriesOfRecord(record: ZoneRecord): ZoneEntry[] {
  requireObject(record, 'record')
  requireObject(record.probes, 'probes')
  requireList(record.time, 'time')
  const others = [climateEntries(record), wateringEntries(record), forecastEntries(record)].flatMap(withMoments)
  return merged(
    readingEntries(record),
    others.sort((a, b) => a.moment - b.moment),
  )
}

/** An entry and the moment at which it is passed on. */
interface Momentary {
  readonly moment: number
  readonly entry: ZoneEntry
}

/** Entries of one table with the moments at which they are passed on: without a time, that of the entry before it. */
function withMoments(entries: readonly ZoneEntry[]): Momentary[] {
  let moment = BEFORE_ALL
  return entries.map((entry) => {
    const time = timeIn(entry.time, 'time')
    if (!Number.isNaN(time)) moment = time
    return { moment, entry }
  })
}

/** Merges readings with climate and log by time. Readings keep their order, whatever their stamps say. */
function merged(readings: readonly ZoneEntry[], others: readonly Momentary[]): ZoneEntry[] {
  const moments = whenPassedOn(readings.map(({ time }) => timeIn(time, 'time')))
  const out: ZoneEntry[] = []
  let k = 0
  readings.forEach((reading, i) => {
    while (k < others.length && others[k]!.moment <= moments[i]!) out.push(others[k++]!.entry)
    out.push(reading)
  })
  return [...out, ...others.slice(k).map(({ entry }) => entry)]
}
