import type { ZoneDay } from '../day/zone-day.js'
import type { ZoneMemory } from '../day/zone-memory.js'
import { allRows, lastTime, type Row, rowsSince, withRow } from '../record/kept-rows.js'
import { BEFORE_ALL, leftOutSince } from '../record/left-out.js'
import { localDayOf } from '../record/local-day.js'
import { LOOK_BACK, windowOf } from '../record/zone-window.js'
import type { ZoneFollowState } from '../restore/follow-state.js'
import { reviewWindow } from '../review/review-day.js'
import type { Zone } from '../zone.js'

/** A state, and the days that ended on the way to it. */
export type Step = readonly [ZoneFollowState, readonly ZoneDay[]]

/** Takes in a reading that counts: of a later day it ends the one that is under way. */
export function admitted(zone: Zone, state: ZoneFollowState, row: Row): Step {
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
export function closed(
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
