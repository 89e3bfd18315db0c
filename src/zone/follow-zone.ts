import type { Reducer } from '../record/reducer.js'
import { checkZone } from './checked-zone.js'
import { type LocalDay, localDayOf } from './local-day.js'
import { reviewWindow } from './review-day.js'
import type { Zone } from './zone.js'
import type { ZoneDay } from './zone-day.js'
import { noMemory, type ZoneMemory } from './zone-memory.js'
import type { Missable, ZoneEntry, ZoneRecord } from './zone-record.js'
import { isLater, LOOK_BACK, windowOf } from './zone-window.js'

/** A row of a kind of input: its time and its numbers, null where one is missing. */
type Row = readonly [time: number, ...numbers: Missable[]]

/** Rows of one kind: full blocks and one that is being filled, so that a step copies only a few rows. */
export interface KeptRows {
  readonly full: readonly (readonly Row[])[]
  readonly open: readonly Row[]
}

/** What is remembered between two inputs: the rows of the day and of the 24 hours before it, as JSON keeps them. */
export interface ZoneFollowState {
  /** The day that is under way. */
  readonly day: LocalDay | null
  readonly reading: KeptRows
  readonly climate: KeptRows
  readonly watering: KeptRows
  /** For each reading that was out of order, the time of the last one that was not. Unit: s. */
  readonly outOfOrder: readonly number[]
  readonly memory: ZoneMemory
}

/** `reviewZone` for inputs that come in one by one. */
export interface ZoneFollower extends Reducer<ZoneFollowState, ZoneEntry, readonly ZoneDay[]> {
  /** The review of the day that is under way, as far as it has come. */
  readonly finish: (state: ZoneFollowState) => readonly ZoneDay[]
}

const BLOCK = 64
const EMPTY: KeptRows = { full: [], open: [] }

/**
 * Follows a zone reading by reading, and reviews each local day when it has ended: what `reviewZone` gives for the same record, to the
 * last bit, however the record is cut and whether or not the state went through JSON in between.
 *
 * The state holds two days of readings and the memory of the zone, no more; with two probes and a reading every five minutes that is
 * about 30 kB of JSON.
 *
 * @procedure Keeps the rows of the day and of the 24 hours before it; the first input of a later day ends the day and has it reviewed.
 * @param zone - The zone. Unit: any. Range: any.
 * @returns A reducer that takes readings, climate and entries of the watering log in the order of time, and gives the days that ended.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for parts that contradict each other.
 * @source definition
 * @example
 * ```ts
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
 *     drainFraction: percent(20), depletion: percent(5), lowerLimit: waterContent(0.1),
 *     minBelieved: waterContent(0.05), maxBelieved: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const follower = followZone(zone)
 * const time = Array.from({ length: 300 }, (_, i) => i * 300)
 * const inputs = entriesOfRecord({ time, probes: { A: time.map((t) => 0.6 - 1e-7 * t) } })
 * const { state, outputs } = runReducer({ reducer: follower, inputs })
 * outputs.flat().length // => 1
 * follower.finish(state).map((day) => day.readings) // => [12]
 * ```
 */
export function followZone(zone: Zone): ZoneFollower {
  const checked = checkZone(zone)
  return {
    start: { day: null, reading: EMPTY, climate: EMPTY, watering: EMPTY, outOfOrder: [], memory: noMemory() },
    step: (state, input) => {
      const rows = state[input.kind]
      const last = lastTime(rows)
      if (!isLater(input.time, last, input.kind !== 'watering')) {
        if (input.kind !== 'reading') return [state, []]
        const at = last === -Infinity ? [] : [last]
        return [{ ...state, outOfOrder: [...state.outOfOrder, ...at] }, []]
      }
      const [open, days] =
        state.day === null || input.time >= state.day.to ? turned(checked, state, input.time) : [state, []]
      return [{ ...open, [input.kind]: withRow(open[input.kind], rowOf(checked, input)) }, days]
    },
    finish: (state) => closed(checked, state).days,
  }
}

/** Ends the day that is under way and begins that of a moment. */
function turned(zone: Zone, state: ZoneFollowState, now: number): readonly [ZoneFollowState, readonly ZoneDay[]] {
  const { days, memory } = closed(zone, state)
  const day = localDayOf(zone.place.clock, now)
  const begin = day.from - LOOK_BACK
  return [
    {
      day,
      reading: without(state.reading, begin),
      climate: without(state.climate, begin),
      watering: without(state.watering, begin),
      outOfOrder: state.outOfOrder.filter((time) => time >= day.from),
      memory,
    },
    days,
  ]
}

/** The review of the day that is under way; a day without a reading has none. */
function closed(zone: Zone, state: ZoneFollowState): { days: readonly ZoneDay[]; memory: ZoneMemory } {
  const { day, memory } = state
  if (day === null || !(lastTime(state.reading) >= day.from)) return { days: [], memory }
  const [reading, climate, watering] = [all(state.reading), all(state.climate), all(state.watering)]
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
    outOfOrder: Float64Array.from(state.outOfOrder),
  }
  const found = reviewWindow(zone, windowOf(columns, day), memory)
  return { days: [found.day], memory: found.memory }
}

function rowOf(zone: Zone, input: ZoneEntry): Row {
  const number = (x: Missable | undefined): Missable => (x === undefined || Number.isNaN(x) ? null : x)
  if (input.kind === 'reading') {
    const { probes } = input
    const of = (name: string) => (Object.hasOwn(probes, name) ? number(probes[name]) : null)
    return [input.time, number(input.rootTemperature), ...zone.probes.map(({ name }) => of(name))]
  }
  if (input.kind === 'climate') {
    const { airTemperature, relativeHumidity, irradiance, windSpeed } = input
    return [input.time, ...[airTemperature, relativeHumidity, irradiance, windSpeed].map(number)]
  }
  return [input.time, ...[input.given, input.drained, input.feedEC, input.drainEC].map(number)]
}

function withRow({ full, open }: KeptRows, row: Row): KeptRows {
  return open.length + 1 < BLOCK ? { full, open: [...open, row] } : { full: [...full, [...open, row]], open: [] }
}

/** Rows from a moment on. */
function without(rows: KeptRows, begin: number): KeptRows {
  const kept = all(rows).filter(([time]) => time >= begin)
  const whole = kept.length - (kept.length % BLOCK)
  const full: Row[][] = []
  for (let i = 0; i < whole; i += BLOCK) full.push(kept.slice(i, i + BLOCK))
  return { full, open: kept.slice(whole) }
}

function all({ full, open }: KeptRows): Row[] {
  return [...full.flat(), ...open]
}

function lastTime({ full, open }: KeptRows): number {
  const row = open[open.length - 1] ?? full[full.length - 1]?.[BLOCK - 1]
  return row?.[0] ?? -Infinity
}

/**
 * The record of a zone as single inputs in the order of time, to feed a follower with it.
 *
 * @procedure Takes readings, climate and watering log one after the other by their times; at the same time climate comes first, then the log.
 * @param record - The record. Unit: any. Range: any.
 * @returns The inputs.
 * @source definition
 * @example
 * ```ts
 * const inputs = entriesOfRecord({ time: [0, 300], probes: { A: [0.5, null] }, watering: { time: [60], given: [0.4] } })
 * inputs.map((input) => [input.kind, input.time]) // => [['reading', 0], ['watering', 60], ['reading', 300]]
 * ```
 */
export function entriesOfRecord(record: ZoneRecord): ZoneEntry[] {
  const { climate, watering } = record
  const names = Object.keys(record.probes)
  const readings = Array.from(
    record.time,
    (time, i): ZoneEntry => ({
      kind: 'reading',
      time,
      probes: Object.fromEntries(names.map((name) => [name, record.probes[name]?.[i] ?? null])),
      rootTemperature: record.rootTemperature?.[i] ?? null,
    }),
  )
  const weather = Array.from(
    climate?.time ?? [],
    (time, i): ZoneEntry => ({
      kind: 'climate',
      time,
      airTemperature: climate?.airTemperature?.[i] ?? null,
      relativeHumidity: climate?.relativeHumidity?.[i] ?? null,
      irradiance: climate?.irradiance?.[i] ?? null,
      windSpeed: climate?.windSpeed?.[i] ?? null,
    }),
  )
  const water = Array.from(
    watering?.time ?? [],
    (time, i): ZoneEntry => ({
      kind: 'watering',
      time,
      given: watering?.given[i] ?? null,
      drained: watering?.drained?.[i] ?? null,
      feedEC: watering?.feedEC?.[i] ?? null,
      drainEC: watering?.drainEC?.[i] ?? null,
    }),
  )
  return merged([weather, water, readings])
}

/** Merges lists by time, each kept in its own order. */
function merged(lists: readonly (readonly ZoneEntry[])[]): ZoneEntry[] {
  const out: ZoneEntry[] = []
  const at = lists.map(() => 0)
  for (;;) {
    let next = -1
    lists.forEach((list, k) => {
      const here = list[at[k]!]
      const best = next < 0 ? undefined : lists[next]?.[at[next]!]
      if (here !== undefined && (best === undefined || here.time < best.time)) next = k
    })
    if (next < 0) return out
    out.push(lists[next]![at[next]!]!)
    at[next] = at[next]! + 1
  }
}
