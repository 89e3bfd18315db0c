import { amount, between, mean, type Point, type Row, valuesOf, wall } from './raw.js'
import { drained, type Shot, shotsOf } from './shots.js'

export const DAY = 86400

/** A set-up as its file has it. */
// biome-ignore lint/suspicious/noExplicitAny: it is read as it stands, without the schema of the package.
export type Setup = any

export interface Probe {
  readonly name: string
  /** Everything that can be trusted, by the clock on the wall, until the end of the day. */
  readonly points: readonly Point[]
  /** Every reading of the day, also those that are not trusted. */
  readonly raw: readonly Point[]
  /** Shots of the day and the day before. */
  readonly shots: readonly Shot[]
  /** The level to which they drain back. */
  readonly full: ReturnType<typeof drained>
  readonly counts: Readonly<Record<'doubtful' | 'wrong' | 'missing' | 'outside', number>>
}

/** A reading that leaves both its neighbours by so many least rises is wrong, and says nothing of them either. */
const SPIKE = 12
/** So many equal readings in a row that begin with a leap of so many least rises are a frozen probe. */
const FROZEN = { readings: 7, leap: 4 }

export function probeOf(name: string, setup: Setup, rows: readonly Row[], day: number): Probe {
  const described = setup.zone.probes.find((one: { name: string }) => one.name === name)
  const { samples } = described
  const { minRise } = setup.zone.limits
  const raw = rows.flatMap((row) => {
    const t = wall(row[setup.readings.time]!)
    const cell = row[setup.readings.columns[name].column]
    return t < day + DAY ? [{ t, raw: cell ? Number(cell) : Number.NaN }] : []
  })
  const slope =
    samples &&
    (samples.saturated.waterContent - samples.dry.waterContent) / (samples.saturated.reading - samples.dry.reading)
  const content = (x: number) => (samples ? samples.dry.waterContent + slope * (x - samples.dry.reading) : x)
  const all = raw.map((one) => ({ ...one, x: content(one.raw), word: Number.isNaN(one.raw) ? 'missing' : 'good' }))
  all.forEach(({ x }, i) => {
    const [before, after] = [all[i - 1]?.x ?? x, all[i + 1]?.x ?? x]
    if (Math.min(Math.abs(x - before), Math.abs(x - after)) > SPIKE * minRise)
      for (const one of all.slice(i - 1, i + 2)) one.word = 'wrong'
  })
  for (const [from, to] of runsOf(all.map((one) => one.raw))) {
    const leap = Math.abs((all[from]?.x ?? 0) - (all[from - 1]?.x ?? all[from]?.x ?? 0))
    if (to - from >= FROZEN.readings && leap > FROZEN.leap * minRise)
      for (const one of all.slice(from, to)) one.word = 'doubtful'
  }
  const today = all.filter(({ t }) => t >= day)
  const count = (word: string) => today.filter((one) => one.word === word).length
  const points = all.filter(({ word }) => word === 'good')
  const two = points.filter(({ t }) => t >= day - DAY)
  const shots = shotsOf(two, minRise)
  return {
    name,
    points,
    raw: today.filter(({ word }) => word !== 'missing'),
    shots,
    full: drained(two, shots),
    counts: {
      doubtful: count('doubtful'),
      wrong: count('wrong'),
      missing: count('missing'),
      outside: samples
        ? today.filter((one) => one.raw < samples.dry.reading || one.raw > samples.saturated.reading).length
        : 0,
    },
  }
}

/** Where runs of equal readings begin and end. */
function runsOf(raw: readonly number[]): [number, number][] {
  const begins = raw.flatMap((x, i) => (x === raw[i - 1] ? [] : [i]))
  return begins.map((begin, k) => [begin, begins[k + 1] ?? raw.length])
}

/** Stretches of more than half an hour without a reading that can be trusted. */
export function gapsOf(points: readonly Point[], day: number): [number, number][] {
  const moments = [day, ...between(points, day, day + DAY).map(({ t }) => t), day + DAY]
  return moments.flatMap((to, k): [number, number][] => {
    const from = moments[k - 1] ?? to
    return to - from > 1800 ? [[from, to]] : []
  })
}

/** Whether a rise of the probe belongs to an opening of the valve. */
export const answered = ({ shots }: Probe, opening: number) =>
  shots.some(({ start }) => start.t >= opening - 300 && start.t <= opening + 900)

/** Van Genuchten's curve over the height of the container above its drained bottom, in thin slices. */
export function benchTest({ medium, container }: Setup['zone']): { porosity: number; capacity: number } {
  const { residual, saturated, alpha, n } = medium
  const slices = 20000
  const at = (i: number) =>
    residual +
    (saturated - residual) * (1 + (alpha * ((amount(container.height) * (i + 0.5)) / slices)) ** n) ** -(1 - 1 / n)
  return {
    porosity: 1 - medium.bulkDensity / medium.particleDensity,
    capacity: mean(Array.from({ length: slices }, (_, i) => at(i))),
  }
}

interface Place {
  readonly place: { readonly clock: readonly { readonly from: string; readonly ahead: string }[] }
}

/** Whether a row stands in the hour that a change to summer time leaves out. */
export function inHourLeftOut({ place }: Place, row: Row, column: string): boolean {
  const t = wall(row[column]!)
  return place.clock.some(({ from, ahead }, k) => {
    const old = place.clock[k - 1]
    return old !== undefined && t >= wall(from) + 3600 * amount(old.ahead) && t < wall(from) + 3600 * amount(ahead)
  })
}

/** Universal time of a moment on the wall. */
export function universal({ place }: Place, t: number): number {
  const now = place.clock.filter(({ from, ahead }) => t - 3600 * amount(ahead) >= wall(from)).at(-1) ?? place.clock[0]
  return t - 3600 * amount(now?.ahead ?? '0')
}

/** The mean light of each ten minutes of a day; what is missing is as before, for less than two hours. */
export function courseOf(light: readonly Point[], day: number, zone: Place): number[] {
  const [from, to] = [universal(zone, day), universal(zone, day + DAY)]
  const there = light.map(({ t, x }) => ({ t: universal(zone, t), x: Math.max(0, x) }))
  const steps = Array.from({ length: (to - from) / 600 }, (_, i) =>
    valuesOf(between(there, from + 600 * i, from + 600 * (i + 1))),
  )
  return steps.map((_, i) =>
    mean(
      steps
        .slice(Math.max(0, i - 11), i + 1)
        .filter(({ length }) => length > 0)
        .at(-1) ?? [0],
    ),
  )
}

export function dayOfYear(date: string): number {
  return (wall(date) - wall(`${date.slice(0, 4)}-01-01`)) / DAY + 1
}
