import {
  attempt,
  boxContainer,
  celsius,
  centimetres,
  containerCapacity,
  cropCoefficient,
  cropET,
  type DailyReferenceET,
  type DayPlan,
  type DryDownLine,
  dailyReferenceETFao56,
  dayOfYear,
  demandCourse,
  fitDryDown,
  fraction,
  gramsPerCubicCentimetre,
  instant,
  latitude,
  litres,
  litresPerHour,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  minutes,
  type Plateau,
  type Porosity,
  perCentimetre,
  percent,
  planDay,
  plantsPerSquareMetre,
  plateauAfterDrain,
  porosityFromDensities,
  refillPointByDepletion,
  seconds,
  vanGenuchten1980,
  type WaterContent,
  waterContent,
  waterUsePerPlant,
  wattsPerSquareMetreDayMean,
} from 'porewater'
import type { Checked, CheckedProbe } from './check.js'
import { type Loaded, localDate, midnightOf } from './load.js'
import type { Setup } from './setup.js'
import { Trouble } from './trouble.js'

/** A number that could be found, or why it could not. */
export type Known<T> = { readonly known: true; readonly value: T } | { readonly known: false; readonly reason: string }
const known = <T>(value: T): Known<T> => ({ known: true, value })
const unknown = (reason: string): Known<never> => ({ known: false, reason })

/** What one probe says of the day. */
export interface ProbeDay {
  readonly name: string
  readonly lowest: number
  readonly highest: number
  readonly shots: CheckedProbe['shots']
  readonly plateau: Plateau
  readonly night: Known<{
    readonly from: number
    readonly to: number
    readonly fall: number
    readonly line: DryDownLine
  }>
  readonly last: number
}

export interface Balance {
  readonly feed: number
  readonly drain: number
  readonly events: number
  readonly feedEC: Known<number>
  readonly drainEC: Known<number>
  /** Change of storage between the beginning and the end of the day, as the probes see it. */
  readonly stored: number
  readonly use: number
}

export interface Demand {
  readonly reference: DailyReferenceET
  readonly crop: number
  readonly perPlant: number
  readonly perContainer: number
}

export interface Medium {
  readonly porosity: Porosity
  readonly capacity: WaterContent
  readonly air: number
}

export interface DayAnalysis {
  readonly date: string
  readonly from: number
  readonly to: number
  readonly readings: number
  readonly light: {
    readonly dawn: number
    readonly dusk: number
    readonly measured: boolean
    readonly course: readonly number[]
  }
  readonly probes: readonly ProbeDay[]
  readonly medium: Known<Medium>
  readonly balance: Known<Balance>
  readonly demand: Known<Demand>
  readonly limits: Known<{
    readonly fullPoint: WaterContent
    readonly refillPoint: WaterContent
    readonly lowest: WaterContent
    readonly from: string
  }>
  readonly plan: Known<{
    readonly plan: DayPlan
    readonly use: number
    readonly from: string
    readonly shotReasons: readonly string[]
  }>
}

/** Looks at one local day of a record and plans the next. */
export function analyse(loaded: Loaded, checked: Checked, setup: Setup, wantedDate: string | undefined): DayAnalysis {
  const date = wantedDate ?? lastFullDay(loaded, checked, setup)
  const from = midnightOf(date, setup)
  const to = midnightOf(localDate(from + 36 * 3600, setup), setup)
  const light = lightOf(loaded, from, to)
  const probes = checked.probes.map((probe) => probeDay(probe, loaded.time, from, to, light))
  if (probes.every((probe) => Number.isNaN(probe.last)))
    throw new Trouble(
      `${loaded.file}: there is no reading on ${date} that can be trusted; choose another day with --day`,
    )
  const medium = mediumOf(setup)
  const balance = balanceOf(loaded, checked, setup, from, to)
  const demand = demandOf(loaded, setup, from, to)
  const limits = limitsOf(probes, medium, setup)
  const readings = loaded.time.filter((time) => time >= from && time < to).length
  return {
    date,
    from,
    to,
    readings,
    light,
    probes,
    medium,
    balance,
    demand,
    limits,
    plan: planOf(probes, limits, balance, demand, light, setup, from, to),
  }
}

function lastFullDay(loaded: Loaded, checked: Checked, setup: Setup): string {
  const perDay = (24 * 60) / setup.minutesBetweenReadings
  const counts = new Map<string, number>()
  loaded.time.forEach((time, i) => {
    if (checked.probes.some((probe) => !Number.isNaN(probe.content[i])))
      counts.set(localDate(time, setup), (counts.get(localDate(time, setup)) ?? 0) + 1)
  })
  const days = [...counts.entries()].filter(([, count]) => count >= 0.8 * perDay).map(([day]) => day)
  const day = days.sort().at(-1) ?? [...counts.keys()].sort().at(-1)
  if (day === undefined)
    throw new Trouble(`${loaded.file}: no reading can be trusted; check the limits in the setup and the columns`)
  return day
}

/** When it was light, and the course of light over the day in steps of ten minutes. */
function lightOf(loaded: Loaded, from: number, to: number): DayAnalysis['light'] {
  const steps = Math.round((to - from) / 600)
  const sums = new Array<number>(steps).fill(0)
  const counts = new Array<number>(steps).fill(0)
  const { climate } = loaded
  if (climate?.radiation !== undefined) {
    climate.time.forEach((time, i) => {
      const step = Math.floor((time - from) / 600)
      const value = climate.radiation?.[i] as number
      if (step < 0 || step >= steps || Number.isNaN(value)) return
      sums[step] = (sums[step] as number) + value
      counts[step] = (counts[step] as number) + 1
    })
  }
  const course = sums.map((sum, i) => ((counts[i] as number) > 0 ? Math.max(0, sum / (counts[i] as number)) : 0))
  const lit = course.flatMap((value, i) => (value > 5 ? [i] : []))
  if (counts.filter((count) => count > 0).length > 0.8 * steps && lit.length > 0) {
    return {
      dawn: from + (lit[0] as number) * 600,
      dusk: from + ((lit.at(-1) as number) + 1) * 600,
      measured: true,
      course,
    }
  }
  const assumed = Array.from({ length: steps }, (_, i) => Math.max(0, Math.sin((Math.PI * ((i + 0.5) / 6 - 6)) / 14)))
  return { dawn: from + 6 * 3600, dusk: from + 20 * 3600, measured: false, course: assumed }
}

function probeDay(
  probe: CheckedProbe,
  time: Float64Array,
  from: number,
  to: number,
  light: DayAnalysis['light'],
): ProbeDay {
  const inDay = Array.from(time.keys()).filter((i) => (time[i] as number) >= from && (time[i] as number) < to)
  const good = inDay.filter((i) => !Number.isNaN(probe.content[i]))
  const values = good.map((i) => probe.content[i] as number)
  const shots = probe.shots.filter((shot) => shot.start >= from && shot.start < to)
  return {
    name: probe.name,
    lowest: Math.min(...values),
    highest: Math.max(...values),
    shots,
    plateau: plateauAfterDrain({ time, content: probe.content, shots, settle: minutes(20) }),
    night: nightOf(probe, time, from, light),
    last: values.length === 0 ? Number.NaN : median(values.slice(-3)),
  }
}

/** The dry-down from the last shot of the evening, or the beginning of the record, to the first shot of the day. */
function nightOf(
  probe: CheckedProbe,
  time: Float64Array,
  from: number,
  light: DayAnalysis['light'],
): ProbeDay['night'] {
  const first = probe.shots.find((shot) => shot.start >= light.dawn - 4 * 3600)
  const before = probe.shots
    .filter((shot) => shot.start < (first?.start ?? from) && shot.start > from - 24 * 3600)
    .at(-1)
  // The evening begins at the earliest three hours before dark: before that, shots too small to see hide in the curve.
  const evening = light.dusk - 86400 - 3 * 3600
  const begin = Math.max(before ? before.peak + 3600 : evening, evening)
  const end = first?.start ?? light.dawn
  const at = Array.from(time.keys()).filter(
    (i) => (time[i] as number) >= begin && (time[i] as number) <= end && !Number.isNaN(probe.content[i]),
  )
  if (at.length < 12)
    return unknown(`only ${at.length} readings can be trusted between the last shot and the first of the next day`)
  const longest = at
    .slice(1)
    .reduce((most, i, k) => Math.max(most, (time[i] as number) - (time[at[k] as number] as number)), 0)
  if (longest > 2 * 3600) return unknown(`there is a gap of ${(longest / 3600).toFixed(1)} h in the night`)
  const content = at.map((i) => probe.content[i] as number)
  // The line is fitted to the dark hours alone, because light changes the speed.
  const dark = at.filter((i) => (time[i] as number) <= light.dawn)
  const fitted = dark.length >= 12 ? dark : at
  const line = fitDryDown({
    time: fitted.map((i) => time[i] as number),
    content: fitted.map((i) => probe.content[i] as number),
  })
  const fall = median(content.slice(0, 3)) - median(content.slice(-3))
  return known({ from: time[at[0] as number] as number, to: time[at.at(-1) as number] as number, fall, line })
}

function mediumOf(setup: Setup): Known<Medium> {
  const { medium, container } = setup
  if (medium === undefined) return unknown('the setup has no bench test of the medium')
  const found = attempt(() => {
    const porosity = porosityFromDensities({
      bulkDensity: gramsPerCubicCentimetre(medium.dryBulkDensity),
      particleDensity: gramsPerCubicCentimetre(medium.particleDensity),
    })
    const model = vanGenuchten1980({
      residual: waterContent(medium.residual),
      saturated: waterContent(medium.saturated),
      alpha: perCentimetre(medium.alphaPerCentimetre),
      n: medium.n,
    })
    const height = centimetres(container.heightCentimetres)
    // Only the height matters for the capacity of a container with upright walls.
    const capacity = containerCapacity({
      container: boxContainer({ length: centimetres(50), width: centimetres(20), height }),
      medium: model,
    })
    return { porosity, capacity, air: porosity - capacity }
  })
  return found.ok ? known(found.value) : unknown(found.error.message)
}

function balanceOf(loaded: Loaded, checked: Checked, setup: Setup, from: number, to: number): Known<Balance> {
  const log = loaded.feedAndDrain
  if (log === undefined) return unknown('there is no log of feed and drain')
  const at = Array.from(log.time.keys()).filter((i) => (log.time[i] as number) >= from && (log.time[i] as number) < to)
  const pick = (column: Float64Array) => at.map((i) => column[i] as number)
  if (at.length === 0 || pick(log.feed).some(Number.isNaN) || pick(log.drain).some(Number.isNaN))
    return unknown('the log of feed and drain has no complete entry for this day')
  const feed = total(pick(log.feed))
  const drain = total(pick(log.drain))
  const stored = storedChange(loaded, checked, from, to) * setup.container.substrateLitres
  return known({
    feed,
    drain,
    events: at.length,
    feedEC: weighted(log.feedEC, log.feed, at),
    drainEC: weighted(log.drainEC, log.drain, at),
    stored,
    use: feed - drain - stored,
  })
}

/** Volume-weighted mean of a conductivity. */
function weighted(ec: Float64Array | undefined, volume: Float64Array, at: readonly number[]): Known<number> {
  const whole = at.filter((i) => ec !== undefined && !Number.isNaN(ec[i]) && (volume[i] as number) > 0)
  const water = total(whole.map((i) => volume[i] as number))
  if (ec === undefined || !(water > 0)) return unknown('not logged')
  return known(total(whole.map((i) => (volume[i] as number) * (ec[i] as number))) / water)
}

/** By how much the mean of the probes changed over the day. */
function storedChange(loaded: Loaded, checked: Checked, from: number, to: number): number {
  const changes = checked.probes.flatMap((probe) => {
    const near = (begin: number, end: number) =>
      Array.from(loaded.time.keys())
        .filter(
          (i) =>
            (loaded.time[i] as number) >= begin && (loaded.time[i] as number) < end && !Number.isNaN(probe.content[i]),
        )
        .map((i) => probe.content[i] as number)
    const [first, last] = [near(from - 1800, from + 1800), near(to - 3600, to)]
    return first.length > 0 && last.length > 0 ? [median(last) - median(first)] : []
  })
  return changes.length === 0 ? 0 : total(changes) / changes.length
}

function demandOf(loaded: Loaded, setup: Setup, from: number, to: number): Known<Demand> {
  const { climate } = loaded
  if (climate?.airTemperature === undefined || climate.humidity === undefined || climate.radiation === undefined)
    return unknown('air temperature, humidity and radiation are not all in the record')
  const at = Array.from(climate.time.keys()).filter(
    (i) => (climate.time[i] as number) >= from && (climate.time[i] as number) < to,
  )
  const pick = (column: Float64Array) => at.map((i) => column[i] as number).filter((x) => !Number.isNaN(x))
  const [air, humidity, radiation] = [pick(climate.airTemperature), pick(climate.humidity), pick(climate.radiation)]
  const wind = climate.wind === undefined ? [] : pick(climate.wind)
  const needed = 0.8 * ((24 * 60) / setup.minutesBetweenReadings)
  if (Math.min(air.length, humidity.length, radiation.length) < needed)
    return unknown('the climate of the day has too many gaps')
  const { container, crop, place } = setup
  const found = attempt(() => {
    const reference = dailyReferenceETFao56({
      latitude: latitude(place.latitude),
      elevation: metresAboveSeaLevel(place.elevationMetres),
      day: dayOfYear(dayNumber(from)),
      highest: celsius(Math.max(...air)),
      lowest: celsius(Math.min(...air)),
      maxHumidity: percent(Math.min(100, Math.max(...humidity))),
      minHumidity: percent(Math.min(100, Math.min(...humidity))),
      solar: wattsPerSquareMetreDayMean(Math.max(0, total(radiation) / radiation.length)),
      wind: { speed: metresPerSecond(wind.length === 0 ? 0.2 : total(wind) / wind.length), height: metres(2) },
    })
    const crop_ = cropET({ referenceET: reference.referenceET, cropCoefficient: cropCoefficient(crop.coefficient) })
    const perPlant = waterUsePerPlant({
      cropET: crop_,
      plantDensity: plantsPerSquareMetre(container.plantsPerSquareMetre),
    })
    return { reference, crop: crop_, perPlant, perContainer: perPlant * container.plants }
  })
  return found.ok ? known(found.value) : unknown(found.error.message)
}

function dayNumber(second: number): number {
  const date = new Date((second + 43200) * 1000)
  return Math.floor((date.getTime() - Date.UTC(date.getUTCFullYear(), 0, 1)) / 86400000) + 1
}

function limitsOf(probes: readonly ProbeDay[], medium: Known<Medium>, setup: Setup): DayAnalysis['limits'] {
  const levels = probes.flatMap(({ plateau }) => (plateau.known ? [plateau.level as number] : []))
  const [full, from] =
    levels.length > 0
      ? [total(levels) / levels.length, 'the level to which shots drained back, mean of the probes']
      : medium.known
        ? [
            medium.value.capacity as number,
            'the container capacity of the bench test; no level after drain could be found',
          ]
        : [Number.NaN, '']
  if (Number.isNaN(full)) return unknown('neither a level after drain nor a bench test of the medium is known')
  const found = attempt(() => {
    const fullPoint = waterContent(full)
    const lowest = waterContent(setup.medium?.residual ?? 0.1)
    const refillPoint = refillPointByDepletion({
      fullPoint,
      lowerLimit: lowest,
      depletion: fraction(setup.wanted.depletion),
    })
    return { fullPoint, refillPoint, lowest, from }
  })
  return found.ok ? known(found.value) : unknown(found.error.message)
}

function planOf(
  probes: readonly ProbeDay[],
  limits: DayAnalysis['limits'],
  balance: Known<Balance>,
  demand: Known<Demand>,
  light: DayAnalysis['light'],
  setup: Setup,
  from: number,
  to: number,
): DayAnalysis['plan'] {
  if (!limits.known) return unknown(limits.reason)
  const measured = balance.known && balance.value.use > 0
  if (!measured && !demand.known)
    return unknown('neither the water balance nor the climate says how much the plants use')
  const use = measured ? balance.value.use : demand.known ? demand.value.perContainer : 0
  const { container, wanted } = setup
  const { fullPoint, refillPoint, lowest } = limits.value
  const last = probes.map((probe) => probe.last).filter((x) => !Number.isNaN(x))
  const tomorrow = to - from
  const found = attempt(() =>
    planDay({
      start: instant(to),
      step: minutes(10),
      demand: demandCourse({ total: litres(use), light: light.course, evenShare: fraction(0.15) }),
      container: {
        substrateVolume: litres(container.substrateLitres),
        containerCapacity: fullPoint,
        minContent: lowest,
        bypass: fraction(0.1),
        drainLag: minutes(15),
      },
      waterContent: waterContent(Math.min(fullPoint, total(last) / last.length)),
      refillPoint,
      fullPoint,
      drainFraction: fraction(wanted.drainFraction),
      firstShot: instant(light.dawn + tomorrow + wanted.firstShotHoursAfterLight * 3600),
      lastShot: instant(light.dusk + tomorrow - wanted.lastShotHoursBeforeDark * 3600),
      emitters: container.emitters,
      emitterFlow: litresPerHour(container.emitterLitresPerHour),
      lineFill: seconds(container.lineFillSeconds),
      minRunTime: seconds(wanted.leastShotSeconds),
      maxRunTime: minutes(20),
      minRest: minutes(15),
      maxPerDay: litres(2.5 * use + 0.5),
      trigger: { by: 'level' },
    }),
  )
  if (!found.ok) return unknown(found.error.message)
  return known({
    plan: found.value,
    use,
    from: measured ? 'the water balance of this day' : 'the climate of this day',
    shotReasons: found.value.shots.map((shot) => shot.reason),
  })
}

const total = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0)

function median(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2
}
