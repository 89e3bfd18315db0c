import { middle, spread } from '../../middle.js'
import { known, type WatchedReading } from './input.js'
import { cameBetween, fallByWater, isFarApart, type WaterOfLate } from './leap-by-water.js'
import { newPace, type PaceWatch } from './watch-pace.js'
import type { Watched } from './watched.js'

/** What is remembered of a probe. */
export interface ProbeWatch {
  /** Times and water contents of the newest readings that can be believed. */
  readonly times: readonly number[]
  readonly levels: readonly number[]
  /** Readings that cannot be believed, since the last that could. */
  readonly bad: BadReadings | null
  /** When anything came last, or since when a first reading is awaited. Unit: s. */
  readonly heard: number | null
  /** Readings in all. Unit: 1. */
  readonly count: number
  /** Since when it says the same, how often, and for how long it usually does. Unit: s. */
  readonly flatSince: number | null
  readonly flatCount: number
  readonly flatUsual: number
  /** Noise of the last half hour of readings, and the usual one. Unit: m³/m³. */
  readonly noise: number
  readonly usualNoise: number
  /** Times of spikes. */
  readonly spikes: readonly number[]
  /** The last jump to another level without a shot. */
  readonly step: LevelStep | null
  /** The lowest level since the last shot, and the last climb without one. */
  readonly low: number | null
  readonly lowTime: number
  readonly climb: Climb | null
  /** Fall between shots. Unit: m³/m³/s. */
  readonly fall: number
  /** When that was seen, and at which light. Unit: s, W/m². */
  readonly fallTime: number | null
  readonly fallLight: number | null
  /** Usual rise of a shot as a share of volume over volume, and shots that it was learnt from. Unit: 1. */
  readonly usualRise: number
  readonly rises: number
  /** Mean age at arrival of the last readings, and how much it varies. Unit: s. */
  readonly age: number
  readonly ageSpread: number
  readonly pace: PaceWatch
}

export interface BadReadings {
  readonly kind: 'not-a-number' | 'unbelievable'
  readonly value: number | null
  readonly since: number
  readonly count: number
  /** Whether all of them are alike. */
  readonly alike: boolean
  /** The last level before. Unit: m³/m³. */
  readonly before: number | null
}

export interface LevelStep {
  readonly time: number
  readonly before: number
  readonly after: number
}

export interface Climb {
  readonly time: number
  readonly size: number
  /** How long it took. Unit: s. */
  readonly lasted: number
}

export const newProbe: ProbeWatch = {
  times: [],
  levels: [],
  bad: null,
  heard: null,
  count: 0,
  flatSince: null,
  flatCount: 0,
  flatUsual: 0,
  noise: 0.002,
  usualNoise: 0.002,
  spikes: [],
  step: null,
  low: null,
  lowTime: 0,
  climb: null,
  fall: 0,
  fallTime: null,
  fallLight: null,
  usualRise: 0,
  rises: 0,
  age: 0,
  ageSpread: 0,
  pace: newPace,
}

/** Readings that are kept. */
export const KEPT = 24
/** Most of a shot shows in half of the time in which all of it does. */
const HALF = 0.5
/** A smaller jump is no step: one shot of the rehearsals, and thirteen times the noise of a probe. Unit: m³/m³. */
const MIN_STEP = 0.02

export function withReading(
  probe: ProbeWatch,
  reading: WatchedReading,
  now: number,
  quietFrom: number,
  zone: Watched,
): ProbeWatch {
  const time = known(reading.time) ?? now
  const value = known(reading.waterContent)
  const heard = { ...probe, heard: now, count: probe.count + 1 }
  if (value === null || value < zone.min || value > zone.max) return withBad(heard, value, now)
  const aged = withAge(heard, Math.max(-86400, Math.min(86400, now - time)))
  const late = Math.abs(now - time) > zone.maxAge
  const last = aged.times[aged.times.length - 1] ?? Number.NEGATIVE_INFINITY
  if (late || time <= last) return aged
  const flat = withFlat(returned(aged, value), value, time)
  const noisy = withNoise(flat, value, time, quietFrom, zone)
  return {
    ...noisy,
    bad: null,
    times: [...noisy.times, time].slice(-KEPT),
    levels: [...noisy.levels, value].slice(-KEPT),
  }
}

function withBad(probe: ProbeWatch, value: number | null, now: number): ProbeWatch {
  const { bad, levels } = probe
  const kind = value === null ? 'not-a-number' : 'unbelievable'
  if (bad === null || bad.kind !== kind)
    return {
      ...probe,
      bad: { kind, value, since: now, count: 1, alike: true, before: levelOf(probe) ?? levels[0] ?? null },
    }
  return { ...probe, bad: { ...bad, value, count: bad.count + 1, alike: bad.alike && bad.value === value } }
}

/** So far outside what water content can be, a number is a code for "no reading" and no spike. */
const BEYOND = 0.5

/** A reading or two beyond the band, and then the level of before: a spike that was too large for the medium. */
function returned(probe: ProbeWatch, value: number): ProbeWatch {
  const { bad } = probe
  if (bad === null || bad.count > 2 || bad.value === null || bad.before === null) return probe
  const isSpike = Math.abs(bad.value - bad.before) < BEYOND && Math.abs(value - bad.before) < MIN_STEP
  return isSpike ? { ...probe, spikes: withSpike(probe, bad.since) } : probe
}

/** Up to three readings beside each other lie off the line between their neighbours when one of them has a spike: they are one. */
function withSpike({ spikes, times }: ProbeWatch, time: number): readonly number[] {
  const last = spikes[spikes.length - 1]
  if (last !== undefined && last >= (times[times.length - 3] ?? Number.NEGATIVE_INFINITY)) return spikes
  return [...spikes, time].slice(-8)
}

/** Ages far from the usual are a new usual if they go on: the mean goes there at once, and the spread tells how sure that is. */
function withAge(probe: ProbeWatch, age: number): ProbeWatch {
  const off = Math.abs(age - probe.age)
  if (probe.count > 20 && off > Math.max(300, 4 * probe.ageSpread))
    return { ...probe, age, ageSpread: probe.ageSpread + 0.3 * (off - probe.ageSpread) }
  const share = Math.max(1 / probe.count, 0.05)
  const mean = probe.age + share * (age - probe.age)
  return { ...probe, age: mean, ageSpread: probe.ageSpread + share * (Math.abs(age - mean) - probe.ageSpread) }
}

function withFlat(probe: ProbeWatch, value: number, time: number): ProbeWatch {
  const last = probe.levels[probe.levels.length - 1]
  if (last === value && probe.flatSince !== null) return { ...probe, flatCount: probe.flatCount + 1 }
  const ran = probe.flatSince === null ? 0 : probe.times[probe.times.length - 1]! - probe.flatSince
  return { ...probe, flatSince: time, flatCount: 1, flatUsual: Math.max(0.98 * probe.flatUsual, ran) }
}

/**
 * Noise from how far each reading lies off the line between its neighbours. Means over thirty readings, and five hundred for the usual; spans
 * chosen on rehearsals. A shot of which most shows between two readings bends that line, and is no noise.
 */
function withNoise(probe: ProbeWatch, value: number, time: number, quietFrom: number, zone: Watched): ProbeWatch {
  const n = probe.levels.length
  if (n < 2 || (time - probe.times[n - 1]! > HALF * zone.responseTime && probe.times[n - 2]! < quietFrom)) return probe
  const off = Math.abs(probe.levels[n - 1]! - (probe.levels[n - 2]! + value) / 2)
  // The mean distance from zero of a normal number is 0.798 of its deviation, and this one holds 1.5 times the variance of the noise.
  const one = off / 0.798 / Math.sqrt(1.5)
  const clipped = Math.min(one, Math.max(0.01, 5 * probe.noise))
  const noise = probe.noise + (clipped - probe.noise) / 30
  const learns = noise < Math.max(0.004, 2 * probe.usualNoise)
  const usualNoise = learns ? probe.usualNoise + (noise - probe.usualNoise) / 500 : probe.usualNoise
  const spike = one > Math.max(0.04, 10 * probe.usualNoise)
  const spikes = spike ? withSpike(probe, time) : probe.spikes
  return { ...probe, noise, usualNoise, spikes }
}

/** The level now: the middle of the last five readings. */
export function levelOf({ levels }: ProbeWatch): number | null {
  return levels.length === 0 ? null : middle(levels.slice(-5))
}

/** Mean of the readings from a time on, with the mean time; readings that leap away from the middle one are left out. */
export function meanSince(probe: ProbeWatch, from: number): { level: number; time: number } | null {
  const { times, levels } = probe
  let first = times.length
  while (first > 0 && times[first - 1]! >= from) first--
  const centre = first === times.length ? 0 : middle(levels.slice(first))
  const far = Math.max(MIN_STEP, 6 * probe.noise)
  let [n, level, time] = [0, 0, 0]
  for (let i = first; i < times.length; i++) {
    if (Math.abs(levels[i]! - centre) > far) continue
    n++
    level += levels[i]!
    time += times[i]!
  }
  return n === 0 ? null : { level: level / n, time: time / n }
}

/** Beside a shot: since when the probes are quiet, what water a shot can bring, and the water of late, which few readings ask for. Unit: s, m³/m³/s. */
export interface Beside {
  readonly quietFrom: number
  readonly maxRate: number
  readonly water: () => WaterOfLate
}

/**
 * Looks for a jump between the last five readings and the five before. Beside a shot only a leap from one reading to the next counts that
 * no water can make: a fall by more than is drunk and drains, and a rise by twice of what the valve passes in that time, or less once it is
 * known how its place rises.
 */
export function withStep(read: ProbeWatch, beside: Beside, zone: Watched): ProbeWatch {
  const probe = withReturn(read)
  const { times, levels } = probe
  const n = levels.length
  if (n < 10) return probe
  const leap = levels[n - 5]! - levels[n - 6]!
  const passed = times[n - 5]! - times[n - 6]!
  if (Math.abs(leap) < MIN_STEP / 2 || passed > 5 * zone.maxAge) return probe
  const [old, young] = [levels.slice(n - 10, n - 5), levels.slice(n - 5)]
  const [before, after] = [middle(old), middle(young)]
  const change = Math.abs(after - before)
  const jump = leap * Math.sign(after - before)
  const scatter = Math.max(spread(old), spread(young))
  const quiet = times[n - 10]! >= beside.quietFrom
  const water = beside.water()
  const came = cameBetween(water, times[n - 6]!, times[n - 5]!, zone)
  const minSize =
    leap < 0
      ? Math.max(MIN_STEP, fallByWater(levels[n - 6]!, passed, came, water, zone))
      : quiet
        ? MIN_STEP
        : minJump(probe, after, beside, came, passed, zone)
  if (change < Math.max(minSize, 6 * scatter) || jump < (quiet ? change / 2 : Math.max(minSize, change / 2)))
    return probe
  const time = times[n - 5]!
  return {
    ...probe,
    step: { time, before, after },
    low: after,
    lowTime: times[n - 1]!,
    climb: climbBefore(probe, time),
  }
}

/** Rises after which it is known how a place rises. */
export const KNOWN_RISES = 4

/**
 * The least rise that no water makes: half more than all that came lately, or that the valve passes between the two readings. A probe that only
 * comes back to where it was half an hour ago rises by less for other reasons.
 */
function minJump(
  { levels, rises, usualRise, usualNoise }: ProbeWatch,
  after: number,
  { maxRate }: Beside,
  came: number,
  passed: number,
  zone: Watched,
): number {
  const water = Math.min(came, maxRate * passed)
  const isBack = levels.slice(0, -10).some((level) => level > after - MIN_STEP / 2)
  // The valve may have run all the time between two readings that are near each other, but not between any others.
  if (rises < KNOWN_RISES || isBack) return MIN_STEP + 2 * (isFarApart(passed, zone) ? water : maxRate * passed)
  return Math.max(1.5 * MIN_STEP, 5 * usualNoise + 1.5 * Math.max(1, usualRise) * water)
}

/** Times and shares chosen on rehearsals. Within two hours a probe may leap back to where it was: then it did not move for good. */
function withReturn(probe: ProbeWatch): ProbeWatch {
  const { times, levels, step } = probe
  const n = levels.length
  if (step === null || n < 4 || times[n - 3]! - step.time > 7200 || times[n - 3]! <= step.time) return probe
  const share = (levels[n - 4]! - levels[n - 3]!) / (step.after - step.before)
  // A shot between them makes one leap look smaller than the other.
  if (share < 0.6 || share > 2) return probe
  const [low, lowTime] = [middle(levels.slice(-3)), times[n - 1]!]
  return { ...probe, step: null, low, lowTime, climb: climbBefore(probe, times[n - 3]!) }
}

/** What leapt did not climb. */
function climbBefore({ climb }: ProbeWatch, time: number): ProbeWatch['climb'] {
  return climb !== null && climb.time >= time ? null : climb
}

/** Follows the lowest level between shots, and what climbs above it. */
export function withClimb(probe: ProbeWatch, minSize: number): ProbeWatch {
  const n = probe.times.length
  if (n < 5) return probe
  const level = levelOf(probe) as number
  const time = probe.times[n - 1]!
  if (probe.low === null || level < probe.low) return { ...probe, low: level, lowTime: time }
  const size = level - probe.low
  if (size < Math.max(minSize, 6 * probe.noise)) return probe
  return { ...probe, low: level, lowTime: time, climb: { time, size, lasted: time - probe.lowTime } }
}

/** The fall between shots, once a quarter of an hour shows it. */
export function withFall(probe: ProbeWatch, quietFrom: number, light: number | null): ProbeWatch {
  const { times, levels } = probe
  let first = times.length
  while (first > 0 && times[first - 1]! >= quietFrom) first--
  const n = times.length - first
  if (n < 4 || times[times.length - 1]! - times[first]! < 900) return probe
  let [t, y] = [0, 0]
  for (let i = first; i < times.length; i++) {
    t += times[i]! / n
    y += levels[i]! / n
  }
  let [ty, tt] = [0, 0]
  for (let i = first; i < times.length; i++) {
    const dt = times[i]! - t
    ty += dt * (levels[i]! - y)
    tt += dt * dt
  }
  // A fall below zero is noise, a leak or warmth, and corrects no shot.
  return { ...probe, fall: Math.max(0, -ty / tt), fallTime: times[times.length - 1]!, fallLight: light }
}

/** In the dark plants drink about as much as at this light: common practice, no source. Unit: W/m². */
const DARK_USE = 40

/** The fall at this light, and whether it was seen lately or can be told from the light. */
export function fallNow(probe: ProbeWatch, now: number, light: number | null): { fall: number; sure: boolean } {
  const { fall, fallTime, fallLight } = probe
  if (fallTime === null) return { fall, sure: false }
  if (light === null || fallLight === null) return { fall, sure: now - fallTime < 3600 }
  return { fall: (fall * (Math.max(0, light) + DARK_USE)) / (Math.max(0, fallLight) + DARK_USE), sure: true }
}
