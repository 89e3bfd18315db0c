import { dirname, join } from 'node:path'
import { applyCalibration, calibrateTwoPoint, type Instant, instant, rawReading, waterContent } from 'porewater'
import { Table } from './read-table.js'
import type { Setup } from './setup.js'
import { Trouble } from './trouble.js'

/** One probe's water content over the record, in the order in which the readings arrived. */
export interface ProbeSeries {
  readonly name: string
  /** Water content; NaN where the reading is missing. */
  readonly content: Float64Array
  /** How many readings lay outside the span of the calibration. */
  readonly extrapolated: number
}

/** Climate over the record, on a time axis of its own. */
export interface Climate {
  readonly time: Float64Array
  readonly airTemperature: Float64Array | undefined
  readonly humidity: Float64Array | undefined
  readonly radiation: Float64Array | undefined
  readonly wind: Float64Array | undefined
}

/** Water given to and drained from one container, by event or by day. */
export interface FeedAndDrain {
  readonly time: Float64Array
  readonly feed: Float64Array
  readonly drain: Float64Array
  readonly feedEC: Float64Array | undefined
  readonly drainEC: Float64Array | undefined
}

/** Everything that was read. */
export interface Loaded {
  readonly file: string
  readonly time: Float64Array
  readonly probes: readonly ProbeSeries[]
  readonly rootTemperature: Float64Array | undefined
  readonly climate: Climate | undefined
  readonly feedAndDrain: FeedAndDrain | undefined
}

export function load(file: string, setup: Setup): Loaded {
  const table = new Table(file)
  const column = (name: string | undefined, from = table) => (name === undefined ? undefined : from.numbers(name))
  const time = table.instants(setup.columns.time, setup.clock)
  const probes = setup.columns.probes.map((probe) => {
    const values = table.numbers(probe.column)
    return probe.calibrated
      ? { name: probe.name, content: values, extrapolated: 0 }
      : calibrated(probe.name, values, setup)
  })
  return {
    file,
    time,
    probes,
    rootTemperature: column(setup.columns.rootTemperature),
    climate: loadClimate(table, time, file, setup),
    feedAndDrain: loadFeed(file, setup),
  }
}

/** Turns raw readings into water content with the samples of that probe. */
function calibrated(name: string, values: Float64Array, setup: Setup): ProbeSeries {
  const samples = setup.samples[name]
  if (samples === undefined)
    throw new Trouble(
      `the setup has no samples for "${name}", whose readings are not calibrated; add them under "samples"`,
    )
  const calibration = calibrateTwoPoint({
    dry: { reading: rawReading(samples.dryReading), waterContent: waterContent(samples.dryWaterContent) },
    saturated: {
      reading: rawReading(samples.saturatedReading),
      waterContent: waterContent(samples.saturatedWaterContent),
    },
  })
  let extrapolated = 0
  const content = values.map((value) => {
    if (Number.isNaN(value)) return Number.NaN
    const { waterContent: found, warnings } = applyCalibration(calibration, rawReading(value))
    if (warnings.length > 0) extrapolated++
    return found
  })
  return { name, content, extrapolated }
}

function loadClimate(table: Table, time: Float64Array, file: string, setup: Setup): Climate | undefined {
  const own = setup.climate
  const from = own === undefined ? table : new Table(join(dirname(file), own.file))
  const names = own ?? setup.columns
  const column = (name: string | undefined) => (name === undefined ? undefined : from.numbers(name))
  const climate = {
    time: own === undefined ? time : from.instants(own.time, setup.clock),
    airTemperature: column(names.airTemperature),
    humidity: column(names.humidityPercent),
    radiation: column(names.radiationWattsPerSquareMetre),
    wind: column(names.windMetresPerSecond),
  }
  return (climate.airTemperature ?? climate.radiation) ? climate : undefined
}

function loadFeed(file: string, setup: Setup): FeedAndDrain | undefined {
  const own = setup.feedAndDrain
  if (own === undefined) return undefined
  const table = new Table(join(dirname(file), own.file))
  const column = (name: string | undefined) => (name === undefined ? undefined : table.numbers(name))
  const scale = own.perSquareMetre ? setup.container.plants / setup.container.plantsPerSquareMetre : 1
  return {
    time: table.instants(own.time, setup.clock),
    feed: table.numbers(own.feedLitres).map((x) => x * scale),
    drain: table.numbers(own.drainLitres).map((x) => x * scale),
    feedEC: column(own.feedEC),
    drainEC: column(own.drainEC),
  }
}

/** How far local clocks are ahead of universal time at a moment, in hours. */
export function hoursAheadAt(second: number, setup: Setup): number {
  const changes = setup.clock.map(({ from, hoursFromUtc }) => ({
    at: Date.parse(`${from}Z`) / 1000 - hoursFromUtc * 3600,
    hoursFromUtc,
  }))
  return changes.filter(({ at }) => second >= at).at(-1)?.hoursFromUtc ?? setup.hoursFromUtc
}

/** The local date of a moment, as `2026-05-19`. */
export function localDate(second: number, setup: Setup): string {
  return new Date((second + hoursAheadAt(second, setup) * 3600) * 1000).toISOString().slice(0, 10)
}

/** The local time of a moment, as `07:10`. */
export function localTime(second: number, setup: Setup): string {
  return new Date((second + hoursAheadAt(second, setup) * 3600) * 1000).toISOString().slice(11, 16)
}

/** Local midnight at the beginning of a date. */
export function midnightOf(date: string, setup: Setup): Instant {
  const guess = Date.parse(`${date}T00:00Z`) / 1000
  return instant(guess - hoursAheadAt(guess - setup.hoursFromUtc * 3600, setup) * 3600)
}
