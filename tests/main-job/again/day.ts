import {
  answered,
  benchTest,
  courseOf,
  DAY,
  dayOfYear,
  inHourLeftOut,
  type Probe,
  probeOf,
  type Setup,
  universal,
} from './facts.js'
import { planOf } from './plan.js'
import { amount, between, mean, median, type Point, type Row, rowsOf, setupOf, sum, valuesOf, wall } from './raw.js'
import { changeOf, longestPause, nightOf, type Shot } from './shots.js'
import { timeToLevel } from './time-to-level.js'
import { useOfNextDay } from './use-of-next-day.js'
import { referenceET } from './weather.js'

/** Where an example lies, and which of its days is asked for. */
export interface Example {
  readonly setup: string
  readonly readings: string
  readonly date: string
}

/** The tables of an example, with the rows in the hour that clocks leave out taken away. */
function tablesOf({ setup: file, readings, date }: Example) {
  const setup: Setup = setupOf(file)
  const folder = readings.replace(/[^/]*$/, '')
  const everyRow = rowsOf(readings)
  const everyWeather = setup.climate ? rowsOf(folder + setup.climate.file) : undefined
  const kept = (rows: readonly Row[], column: string) => rows.filter((row) => !inHourLeftOut(setup.zone, row, column))
  const rows = kept(everyRow, setup.readings.time)
  const weather = setup.climate ?? setup.readings
  const climateRows = everyWeather ? kept(everyWeather, weather.time) : rows
  const climate = (name: string): Point[] =>
    climateRows.flatMap((row) => {
      const cell = row[weather.columns[name].column]
      return cell ? [{ t: wall(row[weather.time]!), x: Number(cell) }] : []
    })
  const log = rowsOf(folder + setup.watering.file).map((row) => ({
    t: wall(row[setup.watering.time]!),
    number: (name: string) => Number(row[setup.watering.columns[name]?.column] || Number.NaN),
  }))
  const leftOut = {
    readings: everyRow.length - rows.length,
    weather: everyWeather ? everyWeather.length - climateRows.length : 0,
  }
  return { setup, rows, climate, log, leftOut, day: wall(date) }
}
type Tables = ReturnType<typeof tablesOf>

/** Levels: of each probe after drain, its refill point, where it ended, and the same of the zone. */
function levelsOf(setup: Setup, probes: readonly Probe[]) {
  const { limits, medium } = setup.zone
  const bench: ReturnType<typeof benchTest> | undefined = medium && benchTest(setup.zone)
  const full = mean(probes.map((probe) => probe.full.level))
  const allowed = limits.allowedFall ?? limits.depletion! * (bench!.capacity - limits.lowerLimit)
  const lasts = probes.map(({ points }) => median(valuesOf(points.slice(-3))))
  return {
    bench,
    lasts,
    refills: probes.map((probe) => probe.full.level - allowed),
    full,
    refill: full - allowed,
    now: full + mean(lasts.map((last, p) => last - probes[p]!.full.level)),
  }
}

/** Water of a container: given, drained, stored and used. */
function waterOf({ setup, log, day }: Tables, probes: readonly Probe[]) {
  const { zone, watering } = setup
  const share = watering.perSquareMetre ? zone.container.plants / zone.plantDensity : 1
  const on = (from: number) => {
    const entries = log.filter(({ t }) => t >= from && t < from + DAY)
    const total = (name: string) => share * sum(entries.map((one) => one.number(name)))
    const [given, drained] = [total('given'), total('drained')]
    const change = mean(probes.map(({ points }) => changeOf(points, from, from + DAY)))
    const stored = amount(zone.container.substrateVolume) * change
    return { entries, given, drained, stored, use: given - drained - stored }
  }
  const today = on(day)
  const weighted = (ec: string, of: string) =>
    sum(today.entries.map((one) => one.number(ec) * one.number(of))) / sum(today.entries.map((one) => one.number(of)))
  const salts = watering.columns.feedEC
    ? { feed: weighted('feedEC', 'given'), drain: weighted('drainEC', 'drained') }
    : undefined
  return { ...today, salts, on }
}

/** What the climate says of the use, mm and litres a day. */
function demandOf({ setup: { zone }, climate, day }: Tables, date: string) {
  const of = (name: string) => valuesOf(between(climate(name), day, day + DAY))
  const et = referenceET(
    dayOfYear(date),
    zone.place.latitude,
    zone.place.elevation,
    of('airTemperature'),
    of('relativeHumidity'),
    mean(of('irradiance').map((x) => Math.max(0, x))) * 0.0864,
    mean(of('windSpeed')),
  )
  const plant = (zone.cropCoefficient * et) / zone.plantDensity
  return { et, plant, container: plant * zone.container.plants }
}

/** The plan for a use, in seconds of the day and litres. */
function planFor(
  { setup: { zone } }: Tables,
  light: readonly number[],
  levels: ReturnType<typeof levelsOf>,
  use: number,
) {
  const { limits, emitters, container } = zone
  const dawn = 600 * light.findIndex((x) => x > 5)
  const dusk = 600 * (light.length - [...light].reverse().findIndex((x) => x > 5))
  return planOf(
    {
      substrate: amount(container.substrateVolume),
      flow: (emitters.count * amount(emitters.flow)) / 3600,
      lineFill: amount(emitters.lineFill),
      minRun: 60 * amount(limits.minRunTime),
      maxRun: 60 * amount(limits.maxRunTime),
      rest: 60 * amount(limits.minRest),
      perDay: amount(limits.maxPerDay),
      drain: amount(limits.drainFraction),
      first: dawn + 3600 * amount(limits.firstShotAfterLight),
      last: dusk - 3600 * amount(limits.lastShotBeforeDark),
    },
    levels,
    use,
    light,
  )
}

/** When each probe should reach its refill point, learned from its whole record. Nights go by universal time, which has no break. */
function forecastsOf({ setup: { zone } }: Tables, probes: readonly Probe[], refills: readonly number[]) {
  return probes.map(({ points }, p) => {
    const all = points.map(({ t, x }) => ({ t: universal(zone, t), x }))
    return timeToLevel(all, zone.limits.minRise, refills[p]!)
  })
}

/** Everything about a day, worked out from the raw files. */
export function dayAgain(example: Example) {
  const tables = tablesOf(example)
  const { setup, rows, climate, log, day } = tables
  const { zone } = setup
  const probes: Probe[] = zone.probes.map(({ name }: { name: string }) => probeOf(name, setup, rows, day))
  const levels = levelsOf(setup, probes)
  const water = waterOf(tables, probes)
  const today = rows.filter((row) => {
    const t = wall(row[setup.readings.time]!)
    return t >= day && t < day + DAY
  })
  const root = today.flatMap((row) => {
    const cell = row[setup.readings.columns.rootTemperature.column]
    return cell ? [Number(cell)] : []
  })
  const everyOpening = zone.wateringLog === 'days' ? [] : log.map(({ t }) => t).filter((t) => t < day + DAY)
  const openings = everyOpening.filter((t) => t >= day)
  const pause = longestPause(
    probes.flatMap(({ shots }) => shots),
    everyOpening,
    day,
  )
  const seen = probes.map(({ shots }) => shots.filter(({ start }) => start.t >= day))
  const most = seen.reduce((a, b) => (b.length > a.length ? b : a)).map(({ start }: Shot) => start.t)
  // A use is known of days that the readings cover.
  const dates = zone.wateringLog === 'days' ? log.map(({ t }) => t).filter((t) => t <= day) : []
  const next =
    dates.length < 7
      ? undefined
      : useOfNextDay(
          dates.map((from) => water.on(from).use),
          dates.map((from) => mean(courseOf(climate('irradiance'), from, zone))),
        )
  const use = next?.use ?? water.use
  return {
    ...{ setup, zone, day, today, probes, levels, water, root, openings, pause, seen, next, use },
    leftOut: tables.leftOut,
    done: openings.length > 0 ? openings : most,
    unseen: probes.map((probe) => openings.filter((t) => !answered(probe, t))),
    nights: probes.map(({ points, shots }) => nightOf(points, shots, pause)),
    forecasts: forecastsOf(tables, probes, levels.refills),
    demand: demandOf(tables, example.date),
    plan: planFor(tables, courseOf(climate('irradiance'), day, zone), levels, use),
  }
}
export type DayAgain = ReturnType<typeof dayAgain>
