import { readFileSync } from 'node:fs'
import {
  type DayOfUse,
  estimateNoise,
  fallAhead,
  findShots,
  forecastDailyUse,
  forecastLevel,
  forecastTimeToLevel,
  hours,
  type LevelState,
  minutes,
  type ShotLimits,
  type TimeBand,
  type Volume,
  type WaterContent,
  waterContentChange,
  waterUseOfNextDay,
} from 'porewater'
import { clockTimesFactor } from './clock-times-factor.js'

/** The open records, walked forward: each forecast has seen readings before its moment only. */

export const shotLimits: ShotLimits = {
  minRise: waterContentChange(0.008),
  maxRiseTime: minutes(40),
  maxStep: minutes(11),
}
/** The least rise as `estimateNoise` advises it, from the first thirty days of a probe. */
export function quietLimits(content: Float64Array): ShotLimits {
  const noise = estimateNoise({ value: content.subarray(0, 30 * 288) })
  return noise.known ? { ...shotLimits, minRise: waterContentChange(noise.threshold) } : shotLimits
}
const SETTLE = 3600

export interface Record01 {
  readonly time: Float64Array
  readonly probes: readonly Float64Array[]
}

export function slabRecord(folder: string, compartment: number): Record01 {
  const rows = readFileSync(`${folder}/01_greenhouse_tomato_slab_5min/slab_5min_compartment_${compartment}.csv`, 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','))
  const column = (k: number) => Float64Array.from(rows, (row) => (row[k] ? Number(row[k]) : Number.NaN))
  return { time: Float64Array.from(rows, (row) => Date.parse(`${row[0]}Z`) / 1000), probes: [column(1), column(2)] }
}

/** A dry-down as it really went: from an hour after a shot to the next shot or gap, found from the whole record. */
export interface DryDown {
  readonly start: number
  readonly end: number
  readonly time: readonly number[]
  readonly waterContent: readonly number[]
}

function dryDownsOf(time: Float64Array, content: Float64Array, limits: ShotLimits): DryDown[] {
  const shots = findShots({ time, waterContent: content, ...limits })
  const found: DryDown[] = []
  let current: { time: number[]; waterContent: number[] } = { time: [], waterContent: [] }
  let from = -Infinity
  let last = -Infinity
  let s = 0
  const close = () => {
    if (current.time.length > 6) found.push({ ...current, start: current.time[0]!, end: current.time.at(-1) as number })
    current = { time: [], waterContent: [] }
  }
  time.forEach((t, i) => {
    const x = content[i]!
    if (Number.isNaN(x)) return
    if (!(t > last) || t - last > limits.maxStep) {
      close()
      from = t + SETTLE
    }
    last = t
    while (s < shots.length && shots[s]!.peakIndex < i) from = Math.max(from, shots[s++]!.peak + SETTLE)
    const shot = shots[s]
    if (shot !== undefined && i > shot.startIndex) {
      close()
      from = shot.peak + SETTLE
    } else if (t >= from) {
      current.time.push(t)
      current.waterContent.push(x)
    }
  })
  close()
  return found
}

/** The end of a straight line through the last half hour. */
function lineEnd(down: DryDown, now: number, back = 1800): number {
  const at = down.time.flatMap((t, i) => (t <= now && t >= now - back ? [i] : []))
  const { slope, mean, meanTime } = line(
    at.map((i) => down.time[i]!),
    at.map((i) => down.waterContent[i]!),
  )
  return at.length < 3 ? mean : mean + slope * (now - meanTime)
}

function line(t: readonly number[], x: readonly number[]) {
  const mean = x.reduce((a, b) => a + b, 0) / x.length
  const meanTime = t.reduce((a, b) => a + b, 0) / t.length
  const tt = t.reduce((sum, one) => sum + (one - meanTime) ** 2, 0)
  const tx = t.reduce((sum, one, i) => sum + (one - meanTime) * (x[i]! - mean), 0)
  return { slope: tt > 0 ? tx / tt : 0, mean, meanTime }
}

/** The fall in a second of a whole dry-down. */
const fallRate = (down: DryDown) => -line(down.time, down.waterContent).slope

export interface TimeForecast {
  readonly kind: '4 h' | 'drop'
  /** Dry-downs of five hours before this one. */
  readonly before: number
  /** Hours since the settled start. */
  readonly watched: number
  /** The most that the level rises anywhere in its dry-down, by the middle of three readings. */
  readonly climb: number
  /** Hours that it really took; NaN where the next shot came first. */
  readonly real: number
  /** Hours until the next shot. */
  readonly left: number
  readonly foreseen: number
  readonly lastSlope: number
  readonly meanSlope: number
  /** By the simple method of `clockTimesFactor`; NaN before it knows a night. */
  readonly simple: number
  readonly band50: readonly [number, number]
  readonly band90: readonly [number, number]
}

export interface HourForecast {
  readonly real: number
  readonly foreseen: number
  readonly lastHour: number
  readonly sameHour: number
  readonly band90: readonly [number, number]
}

/** All forecasts of one probe in dry-downs that begin in a time. */
export function walkLevel(time: Float64Array, content: Float64Array, from: number, to: number, limits = shotLimits) {
  const forecaster = forecastLevel(limits)
  let state: LevelState = forecaster.start
  let i = 0
  const stateAt = (now: number) => {
    for (; i < time.length && time[i]! <= now; i++)
      state = forecaster.step(state, { time: time[i]!, waterContent: content[i]! })[0]
    return state
  }
  const times: TimeForecast[] = []
  const hoursAhead: HourForecast[] = []
  const slopes: number[] = []
  const sameHour = new Map<number, number>()
  const simple = clockTimesFactor(lineEnd)
  for (const down of dryDownsOf(time, content, limits)) {
    const wanted = down.start >= from && down.start < to && down.end - down.start <= 86400
    const moments: [number, () => void][] = []
    if (wanted && slopes.length > 0)
      for (let watched = 1; watched <= 6; watched++) {
        const now = down.start + 3600 * watched
        if (now <= down.end)
          moments.push([now, () => times.push(...timesFrom(stateAt(now), down, now, slopes, simple))])
      }
    const falls: [number, number][] = []
    for (let now = Math.ceil((down.start + 3600) / 1800) * 1800; now + 3600 <= down.end; now += 1800) {
      const real = lineEnd(down, now) - lineEnd(down, now + 3600)
      falls.push([now, real])
      const before = sameHour.get((now / 1800) % 48)
      const clock = (now / 3600) % 24
      if (wanted && before !== undefined && (clock >= 17 || clock + 1 <= 8))
        moments.push([
          now,
          () => {
            const ahead = fallAhead({ state: stateAt(now), ahead: hours(1) })
            if (!ahead.known) return
            const lastHour =
              (now - 3600 <= down.start ? down.waterContent[0]! : lineEnd(down, now - 3600)) - lineEnd(down, now)
            hoursAhead.push({ real, foreseen: ahead.fall, lastHour, sameHour: before, band90: ahead.band90 })
          },
        ])
    }
    for (const [, ask] of moments.sort((a, b) => a[0] - b[0])) ask()
    for (const [now, fall] of falls) sameHour.set((now / 1800) % 48, fall)
    if (down.end - down.start >= 5 * 3600) slopes.push(fallRate(down))
    simple.learn(down)
  }
  return { times, hoursAhead, state: stateAt(Infinity) }
}

/** The most that a level rises above the lowest before it, each the middle of three readings. */
function climbOf({ waterContent }: DryDown): number {
  let [lowest, most] = [Infinity, 0]
  for (let i = 1; i + 1 < waterContent.length; i++) {
    const middle = waterContent.slice(i - 1, i + 2).sort((a, b) => a - b)[1]!
    lowest = Math.min(lowest, middle)
    most = Math.max(most, middle - lowest)
  }
  return most
}

function timesFrom(
  state: LevelState,
  down: DryDown,
  now: number,
  slopes: readonly number[],
  simple: ReturnType<typeof clockTimesFactor>,
): TimeForecast[] {
  const climb = climbOf(down)
  const level = lineEnd(down, now)
  const week = slopes.slice(-7)
  const by = (fall: number, slope: number) => (slope > 0 ? Math.min(48, fall / slope / 3600) : 48)
  const ask = (kind: '4 h' | 'drop', fall: number, real: number): TimeForecast[] => {
    const found = forecastTimeToLevel({ state, level: (level - fall) as WaterContent })
    if (!found.known && found.reason !== 'beyond-two-days') return []
    const known = found.known ? found : undefined
    const band = (b?: TimeBand) => [(b?.earliest ?? 0) / 3600, (b?.latest ?? Infinity) / 3600] as const
    return [
      {
        kind,
        before: slopes.length,
        watched: (now - down.start) / 3600,
        climb,
        real,
        left: (down.end - now) / 3600,
        foreseen: (known?.time ?? 172800) / 3600,
        lastSlope: by(fall, slopes.at(-1) as number),
        simple: simple.hours(down, now, fall) ?? Number.NaN,
        meanSlope: by(fall, week.reduce((sum, one) => sum + one, 0) / week.length),
        band50: band(known?.band50),
        band90: band(known?.band90),
      },
    ]
  }
  const fall = now - down.start === 10800 && down.end - now >= 14400 ? level - lineEnd(down, now + 14400) : 0
  const drops = [1, 2, 3, 5].flatMap((points) => {
    const k = down.time.findIndex((t, j) => t > now && down.waterContent[j]! <= level - points / 100 + 1e-9)
    return ask('drop', points / 100, k < 0 ? Number.NaN : (down.time[k]! - now) / 3600)
  })
  return fall > 0.002 ? [...ask('4 h', fall, 4), ...drops] : drops
}

/**
 * What no forecast from a probe's own past can be asked to beat: the same night as the other probe of the compartment really saw it, its fall
 * brought to the scale of this one by the middle ratio of their last seven nights. Misses in hours of the time at which the level of 4 h later
 * is reached.
 */
export function replicateMisses(
  time: Float64Array,
  probes: readonly Float64Array[],
  from: number,
  to: number,
  limitsOf = (_: Float64Array) => shotLimits,
): number[] {
  const downs = probes.map((content) => dryDownsOf(time, content, limitsOf(content)))
  const misses: number[] = []
  for (const [own, other] of [
    [0, 1],
    [1, 0],
  ] as const) {
    const ratios: number[] = []
    for (const down of downs[own]!) {
      const now = down.start + 10800
      const then = now + 14400
      const beside = downs[other]?.find(({ start, end }) => start <= now && end >= then)
      if (then > down.end || beside === undefined) continue
      const fall = lineEnd(down, now) - lineEnd(down, then)
      if (fall <= 0.002) continue
      const level = lineEnd(beside, now)
      const fell = level - lineEnd(beside, then)
      const last = ratios.slice(-7).sort((a, b) => a - b)
      const wanted = fall * (last[last.length >> 1] ?? 1)
      ratios.push(Math.min(5, Math.max(0.2, fell / fall)))
      if (last.length < 3 || down.start < from || down.start >= to) continue
      const k = beside.time.findIndex((t, j) => t > now && beside.waterContent[j]! <= level - wanted)
      // Where the next shot came first, the fall of the 4 h goes on.
      const hours = k < 0 ? Math.min(48, (4 * wanted) / Math.max(1e-4, fell)) : (beside.time[k]! - now) / 3600
      misses.push(Math.abs(hours - 4))
    }
  }
  return misses.sort((a, b) => a - b)
}

/** Share of outcomes that a band holds; where the next shot came first, its late end must lie beyond. */
export function coverOf(forecasts: readonly TimeForecast[], band: 'band50' | 'band90', reading = 300): number {
  const half = reading / 2 / 3600
  const inside = forecasts.filter(({ real, left, [band]: [low, high] }) =>
    Number.isNaN(real) ? high > left : real >= low - half && real <= high + half,
  )
  return inside.length / forecasts.length
}

export function errorsOf(pairs: readonly (readonly [got: number, real: number])[]) {
  const sizes = pairs.map(([got, real]) => Math.abs(got - real)).sort((a, b) => a - b)
  const mean = sizes.reduce((sum, one) => sum + one, 0) / sizes.length
  return { count: sizes.length, median: sizes[sizes.length >> 1]!, mean }
}

/** Days of use with the radiation of each. */
export interface UseSeries {
  readonly name: string
  readonly use: readonly number[]
  readonly radiation: readonly number[]
}

function table(file: string): Record<string, string>[] {
  const [head = '', ...lines] = readFileSync(file, 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [names[k], cell])))
}

const number = (cell: string | undefined) => (cell ? Number(cell) : Number.NaN)

/** Mean of each day that has enough readings. */
function dailyMeans(file: string, column: string, enough: number): Map<string, number> {
  const sums = new Map<string, [sum: number, count: number]>()
  for (const row of table(file)) {
    const value = number(row[column])
    if (Number.isNaN(value)) continue
    const day = (row.time_local as string).slice(0, 10)
    const [sum, count] = sums.get(day) ?? [0, 0]
    sums.set(day, [sum + value, count + 1])
  }
  return new Map([...sums].map(([day, [sum, count]]) => [day, count >= enough ? sum / count : Number.NaN]))
}

/** Water given less drained, and uptake from lysimeters, of the open records of crops. */
export function useRecords(folder: string): UseSeries[] {
  const house = (room: string, compartments: readonly number[], from: string, to: string) => {
    const light = dailyMeans(`${folder}/${room}/outside_weather_5min.csv`, 'global_radiation_W_m2', 240)
    return compartments.map((compartment): UseSeries => {
      const days = table(`${folder}/${room}/irrigation_drain_daily_compartment_${compartment}.csv`)
      return {
        name: `${room.slice(0, 2)} compartment ${compartment}`,
        // Before the crop stands on its slabs, and on a day without water, given less drained says nothing of use.
        use: days.map(({ date = '', irrigation_L_m2, drain_L_m2 }) =>
          date < from || date > to || number(irrigation_L_m2) === 0
            ? Number.NaN
            : number(irrigation_L_m2) - number(drain_L_m2),
        ),
        radiation: days.map(({ date = '' }) => light.get(date) ?? Number.NaN),
      }
    })
  }
  /** The same with what went into or came out of the slabs: 11 L to two plants at 1.95 plants to a square metre, an assumption. */
  const stored = ({ name, use, radiation }: UseSeries, compartment: number): UseSeries => {
    const days = table(`${folder}/01_greenhouse_tomato_slab_5min/irrigation_drain_daily_compartment_${compartment}.csv`)
    const { time, probes } = slabRecord(folder, compartment)
    const change = days.map(({ date = '' }) => {
      const from = Date.parse(`${date}T00:00Z`) / 1000
      return (5.5 * 1.95 * (midnightChange(time, probes[0]!, from) + midnightChange(time, probes[1]!, from))) / 2
    })
    return { name: `${name} with storage`, use: use.map((one, k) => one - change[k]!), radiation }
  }
  const tomatoes = house('01_greenhouse_tomato_slab_5min', [2, 5], '2020-01-01', '2020-05-26')
  const lysimeters = `${folder}/03_greenhouse_tomato_lysimeter_daily`
  const light = dailyMeans(`${lysimeters}/inside_climate_15min.csv`, 'ppfd_umol_m2_s', 80)
  const rows = table(`${lysimeters}/lysimeter_daily_high_and_low_ec.csv`)
  return [
    ...tomatoes,
    ...tomatoes.map((one, k) => stored(one, [2, 5][k]!)),
    ...house('02_greenhouse_cucumber_daily_and_climate', [3, 4], '2018-08-14', '2018-12-07'),
    ...['high_ec', 'low_ec'].flatMap((treatment) =>
      ['1', '2', '3'].map((replicate): UseSeries => {
        const days = rows.filter((row) => row.treatment === treatment && row.replicate === replicate)
        return {
          name: `03 ${treatment} ${replicate}`,
          use: days.map((row) => number(row.uptake_L_plant_day)),
          radiation: days.map(({ date = '' }) => light.get(date) ?? Number.NaN),
        }
      }),
    ),
  ]
}

/** Median of the half hour about the next midnight less that about this one; NaN without readings there. */
function midnightChange(time: Float64Array, content: Float64Array, from: number): number {
  const at = (midnight: number) => {
    const first = time.findIndex((t) => t >= midnight - 900)
    const there = first < 0 ? [] : Array.from(content.subarray(first, first + 7)).filter((x) => !Number.isNaN(x))
    return there.sort((a, b) => a - b)[there.length >> 1] ?? Number.NaN
  }
  return at(from + 86400) - at(from)
}

/** Error of the forecast of each day over the better of "as yesterday" and the mean of seven days, and how its bands hold. */
export function walkUse({ use, radiation }: UseSeries, expected: (radiation: number) => number) {
  const forecaster = forecastDailyUse()
  let state = forecaster.start
  const past: number[] = []
  let [days, missed, yesterday, week, in50, in90, width, sum] = [0, 0, 0, 0, 0, 0, 0, 0]
  use.forEach((real, day) => {
    const light = radiation[day]!
    const wished = expected(light)
    const found = waterUseOfNextDay({ state, expectedRadiation: wished })
    const asked = Number.isNaN(wished) === Number.isNaN(expected(1))
    if (found.known && asked && past.length >= 7 && !Number.isNaN(real)) {
      const mean = past.slice(-7).reduce((total, one) => total + one / 7, 0)
      days++
      missed += (found.use - real) ** 2
      yesterday += ((past.at(-1) as number) - real) ** 2
      week += (mean - real) ** 2
      if (real >= found.band50[0] && real <= found.band50[1]) in50++
      if (real >= found.band90[0] && real <= found.band90[1]) in90++
      width += found.band90[1] - found.band90[0]
      sum += real
    }
    if (!Number.isNaN(real)) past.push(real)
    const today: DayOfUse = { use: real as Volume, radiation: light, expectedRadiation: wished }
    state = forecaster.step(state, today)[0]
  })
  return {
    days,
    ratio: Math.sqrt(missed / Math.min(yesterday, week)),
    cover50: in50 / days,
    cover90: in90 / days,
    width: width / sum,
  }
}
