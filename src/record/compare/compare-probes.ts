import { medianInPlace } from '../../numerics/select.js'
import { InputError } from '../../quantity/errors.js'
import type { WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { DRIFT_APART } from '../domains.js'
import { estimateNoise } from '../quality/estimate-noise.js'
import type { RecordFinding } from '../record-finding.js'
import type { ReadingTimes } from '../terms.js'
import { type Trend, trendOf } from './trend.js'

/** Probes of one zone with readings at the same times. */
export interface CompareProbesInput extends ReadingTimes {
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
  readonly waterContent: ArrayLike<number>
}

/** One probe beside the median of all. */
export interface ComparedProbe {
  readonly name: string
  /** Median distance from the median of all probes. Unit: m³/m³. */
  readonly offset: WaterContentChange
  /** Change against its neighbours in a day: of the slower half of those against each of them; NaN with fewer than three days. Unit: m³/m³/d. */
  readonly driftPerDay: number
  /** Standard error of it. Unit: m³/m³/d. */
  readonly driftError: number
  /** Standard deviation of its noise; NaN where it is not known. Unit: m³/m³. */
  readonly noise: number
  /** Readings that could be compared. Unit: 1. */
  readonly readings: number
  readonly findings: readonly RecordFinding[]
}

/**
 * Compares the probes of a zone: how far each stands from the others, whether it moves away from them, how noisy it is. A probe that
 * falls away from its neighbours has a clogged emitter or air at its pins; one that has three times their noise has a bad contact.
 *
 * @procedure Takes for each pair of probes the median difference of each day of 86400 s, so that what stands apart by a constant does not
 * matter, and a line through the days. Of the lines of a probe against its neighbours the middle one counts, of an even number the slower:
 * one neighbour that moved cannot accuse it. The offset is the median distance from the median of all at each time.
 * @param input - Times, probes and drift that matters.
 * @returns One result for each probe.
 * @throws `DomainError` outside the range, `InputError` for fewer than three probes or lists of different lengths.
 * @validity Places differ: an offset is no fault by itself, a drift or noise of its own is a reason to look.
 * @source common practice, no source
 * @example
 * const time = Array.from({ length: 24 * 6 }, (_, i) => i * 3600)
 * const noisy = (level: number, perDay: number) => time.map((t, i) => level + (perDay * t) / 86400 + 0.001 * Math.sin(i * i))
 * const compared = compareProbes({
 *   time, driftPerDay: 0.005,
 *   probes: [{ name: 'A', waterContent: noisy(0.6, 0) }, { name: 'B', waterContent: noisy(0.61, 0) }, { name: 'C', waterContent: noisy(0.6, -0.02) }],
 * })
 * compared[2]?.driftPerDay // => -0.0200
 * compared.map((probe) => probe.findings.map((finding) => finding.code)) // => [[], [], ['falls-away']]
 */
export function compareProbes(input: CompareProbesInput): ComparedProbe[] {
  requireObject(input, 'input')
  const limit = numberIn(input.driftPerDay, DRIFT_APART, 'driftPerDay')
  const time = seriesOf(input.time, 'time')
  const probes = readingsOf(input.probes)
  if (probes.length < 3)
    throw new InputError('probes', `are ${probes.length}`, 'give at least three; of two nobody can say which is wrong')
  for (const { name, waterContent } of probes) {
    if (waterContent.length !== time.length)
      throw new InputError(
        'probes',
        `${name} has ${waterContent.length} readings for ${time.length} times`,
        'align them',
      )
  }
  const middle = medians(probes, time.length)
  const moved = movements(time, probes)
  const noises = probes.map(noiseOf)
  return probes.map(({ name, waterContent }, p) => {
    const others = Float64Array.from(noises.filter((noise, k) => k !== p && !Number.isNaN(noise)))
    // Of none it is no number.
    const usual = medianInPlace(others)
    const noise = noises[p]!
    const { slope, error } = moved[p]!
    const findings: RecordFinding[] = []
    if (Math.abs(slope) > limit && Math.abs(slope) > 2 * error)
      findings.push({ code: slope < 0 ? 'falls-away' : 'rises-away', level: 'caution', about: name, perDay: slope })
    if (noise > 3 * usual)
      findings.push({ code: 'noisy', level: 'caution', about: name, standardDeviation: noise, usual })
    return {
      name,
      ...offsetFrom(waterContent, middle),
      driftPerDay: slope,
      driftError: error,
      noise,
      findings,
    }
  })
}

function medians(probes: readonly ProbeReadings[], length: number): Float64Array {
  const middle = new Float64Array(length)
  const here = new Float64Array(probes.length)
  for (let i = 0; i < length; i++) {
    let count = 0
    for (const { waterContent } of probes) {
      const x = waterContent[i]!
      if (!Number.isNaN(x)) here[count++] = x
    }
    middle[i] = count < 3 ? Number.NaN : medianInPlace(here, count)
  }
  return middle
}

/** Standard deviation of the noise of a probe; NaN where it is not known. */
function noiseOf({ waterContent }: ProbeReadings): number {
  const noise = estimateNoise({ value: waterContent })
  return noise.known ? noise.standardDeviation : Number.NaN
}

/** The distance of a probe from the median of all. */
function offsetFrom(waterContent: ArrayLike<number>, middle: Float64Array) {
  const apart = new Float64Array(middle.length)
  let readings = 0
  for (let i = 0; i < middle.length; i++) {
    const distance = waterContent[i]! - middle[i]!
    if (!Number.isNaN(distance)) apart[readings++] = distance
  }
  const offset = readings === 0 ? Number.NaN : medianInPlace(apart, readings)
  return { offset: offset as WaterContentChange, readings }
}

/** How each probe moves against its neighbours. */
function movements(time: ArrayLike<number>, probes: readonly ProbeReadings[]): Trend[] {
  const pairs = probes.map(() => [] as Trend[])
  for (let a = 0; a < probes.length; a++)
    for (let b = a + 1; b < probes.length; b++) {
      const trend = differenceTrend(time, probes[a]!.waterContent, probes[b]!.waterContent)
      if (Number.isNaN(trend.slope)) continue
      pairs[a]!.push(trend)
      pairs[b]!.push({ ...trend, slope: -trend.slope })
    }
  return pairs.map((trends) => {
    trends.sort((one, other) => Math.abs(one.slope) - Math.abs(other.slope))
    return trends[(trends.length - 1) >> 1] ?? { slope: Number.NaN, error: Number.NaN, count: 0 }
  })
}

/** The line through the median differences of the days. */
function differenceTrend(time: ArrayLike<number>, a: ArrayLike<number>, b: ArrayLike<number>): Trend {
  const days = new Map<number, number[]>()
  for (let i = 0; i < time.length; i++) {
    const difference = a[i]! - b[i]!
    if (Number.isNaN(difference)) continue
    const day = Math.floor(time[i]! / 86400)
    const list = days.get(day)
    if (list === undefined) days.set(day, [difference])
    else list.push(difference)
  }
  return trendOf(
    [...days.keys()],
    [...days.values()].map((list) => medianInPlace(Float64Array.from(list))),
  )
}

function readingsOf(probes: readonly ProbeReadings[]): ProbeReadings[] {
  requireRows(probes, 'probes')
  return Array.from(probes, ({ name, waterContent }, i) => ({
    name,
    waterContent: seriesOf(waterContent, `probes[${i}].waterContent`),
  }))
}
