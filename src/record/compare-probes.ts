import { medianInPlace } from '../numerics/select.js'
import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'
import type { WaterContentChange } from '../quantity/generated/water-content.js'
import { numberIn } from '../quantity/guard.js'
import { estimateNoise } from './estimate-noise.js'
import { trendOf } from './trend.js'

const APART: Domain = {
  quantity: 'drift that matters',
  unit: 'm³/m³/d',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give how far a probe may move away from its neighbours in a day',
}

/** Probes of one zone with readings at the same times. */
export interface CompareProbesInput {
  /** Times of the readings. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** The probes, at least three: of two nobody can say which is wrong. */
  readonly probes: readonly ProbeReadings[]
  /** A probe that moves away from its neighbours faster is told. Unit: m³/m³/d. Range: (0, 1]. */
  readonly driftPerDay: number
}

/** The readings of one probe. */
export interface ProbeReadings {
  /** Name of the probe. */
  readonly name: string
  /** Water content; NaN where a reading is missing. Unit: m³/m³. Range: any. */
  readonly content: ArrayLike<number>
}

/** One probe beside the median of all. */
export interface ComparedProbe {
  readonly name: string
  /** Median distance from the median of all probes. Unit: m³/m³. */
  readonly offset: WaterContentChange
  /** Change of that distance in a day, from the medians of the days; NaN with fewer than three days. Unit: m³/m³/d. */
  readonly driftPerDay: number
  /** Standard error of it. Unit: m³/m³/d. */
  readonly driftError: number
  /** Standard deviation of its noise; NaN where it is not known. Unit: m³/m³. */
  readonly noise: number
  /** Readings that could be compared. Unit: 1. */
  readonly readings: number
  readonly findings: readonly Finding[]
}

/**
 * Compares the probes of a zone: how far each stands from the others, whether it moves away from them, how noisy it is. A probe that
 * falls away from its neighbours has a clogged emitter or air at its pins; one that has three times their noise has a bad contact.
 *
 * @procedure Takes at each time the median of all probes that are there (at least three), then for each probe the median of its distance in
 * each day of 86400 s, and a line through the days.
 * @param input - Times, probes and drift that matters.
 * @returns One result for each probe.
 * @throws `DomainError` outside the range, `InputError` for fewer than three probes or lists of different lengths.
 * @validity Places differ: an offset is no fault by itself, a drift or noise of its own is a reason to look.
 * @source common practice, no source
 * @example
 * ```ts
 * const time = Array.from({ length: 24 * 6 }, (_, i) => i * 3600)
 * const noisy = (level: number, perDay: number) => time.map((t, i) => level + (perDay * t) / 86400 + 0.001 * Math.sin(i * i))
 * const compared = compareProbes({
 *   time, driftPerDay: 0.005,
 *   probes: [{ name: 'A', content: noisy(0.6, 0) }, { name: 'B', content: noisy(0.61, 0) }, { name: 'C', content: noisy(0.6, -0.02) }],
 * })
 * compared[2]?.driftPerDay // => -0.0200
 * compared.map((probe) => probe.findings.map((finding) => finding.code)) // => [[], [], ['falls-away']]
 * ```
 */
export function compareProbes({ time, probes, driftPerDay }: CompareProbesInput): ComparedProbe[] {
  const limit = numberIn(driftPerDay, APART, 'driftPerDay')
  if (probes.length < 3)
    throw new InputError('probes', `are ${probes.length}`, 'give at least three; of two nobody can say which is wrong')
  for (const { name, content } of probes) {
    if (content.length !== time.length)
      throw new InputError('probes', `${name} has ${content.length} readings for ${time.length} times`, 'align them')
  }
  const middle = medians(probes, time.length)
  const noises = probes.map(({ content }) => {
    const noise = estimateNoise({ value: content })
    return noise.known ? noise.deviation : Number.NaN
  })
  return probes.map(({ name, content }, p) => {
    const others = Float64Array.from(noises.filter((noise, k) => k !== p && !Number.isNaN(noise)))
    const usual = others.length > 0 ? medianInPlace(others) : Number.NaN
    return compared(name, apart(time, content, middle), noises[p] as number, usual, limit)
  })
}

function medians(probes: readonly ProbeReadings[], length: number): Float64Array {
  const middle = new Float64Array(length)
  const here = new Float64Array(probes.length)
  for (let i = 0; i < length; i++) {
    let count = 0
    for (const { content } of probes) {
      const x = content[i] as number
      if (!Number.isNaN(x)) here[count++] = x
    }
    middle[i] = count < 3 ? Number.NaN : medianInPlace(here, count)
  }
  return middle
}

interface Apart {
  readonly day: number[]
  readonly ofDay: number[]
  readonly offset: number
  readonly readings: number
}

/** The distance of a probe from the median of all, over all readings and day by day. */
function apart(time: ArrayLike<number>, content: ArrayLike<number>, middle: Float64Array): Apart {
  const all: number[] = []
  const days = new Map<number, number[]>()
  for (let i = 0; i < time.length; i++) {
    const distance = (content[i] as number) - (middle[i] as number)
    if (Number.isNaN(distance)) continue
    all.push(distance)
    const day = Math.floor((time[i] as number) / 86400)
    const list = days.get(day)
    if (list === undefined) days.set(day, [distance])
    else list.push(distance)
  }
  const ofDay = [...days.values()].map((list) => medianInPlace(Float64Array.from(list)))
  const offset = all.length === 0 ? Number.NaN : medianInPlace(Float64Array.from(all))
  return { day: [...days.keys()], ofDay, offset, readings: all.length }
}

function compared(name: string, distance: Apart, noise: number, usual: number, limit: number): ComparedProbe {
  const { slope, error } = trendOf(distance.day, distance.ofDay)
  const findings: Finding[] = []
  const find = (code: string, message: string, value: number, unit: string) =>
    findings.push({ code, level: 'caution', message, about: name, value, unit, source: 'common practice, no source' })
  if (Math.abs(slope) > limit && Math.abs(slope) > 2 * error)
    find(
      slope < 0 ? 'falls-away' : 'rises-away',
      `probe ${name} moves away from its neighbours by ${(100 * slope).toFixed(2)} points a day: ${slope < 0 ? 'clogged emitter, air at its pins or a plant that drinks more' : 'salt, a leaking emitter or a plant that drinks less'}; do a catch test and weigh the container`,
      slope,
      'm³/m³/d',
    )
  if (noise > 3 * usual)
    find(
      'noisy',
      `probe ${name} has ${(noise / usual).toFixed(1)} times the noise of its neighbours: contact, cable or plug`,
      noise,
      'm³/m³',
    )
  return {
    name,
    offset: distance.offset as WaterContentChange,
    driftPerDay: slope,
    driftError: error,
    noise,
    readings: distance.readings,
    findings,
  }
}
