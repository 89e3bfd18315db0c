import { normalTailInverse } from '../numerics/normal-tail.js'
import { studentTwoSided } from '../numerics/student-t.js'
import { CONFIDENCE } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../quantity/guard.js'
import { HALF_WIDTH, PROBE_CONTENT, SPREAD_BETWEEN_PLACES } from './domains.js'
import type { ProbeFinding } from './probe-finding.js'
import type { Confidence } from './terms.js'

/** How sure the mean of a zone shall be, and how much its places differ. */
export interface ProbeCountInput extends Confidence {
  /** Standard deviation between places, from a trial with many readings. Unit: m³/m³. Range: (0, 1]. */
  readonly standardDeviation: number
  /** Half width of the confidence interval that would be good enough. Unit: m³/m³. Range: (0, 1]. */
  readonly halfWidth: number
}

/** How many probes are needed. */
export interface ProbeCount {
  /** Smallest number with Student's t. Unit: 1. */
  readonly probes: number
  /** What the normal distribution would say, which is too few. Unit: 1. */
  readonly byNormal: number
  /** Half width that this number gives if the spread is as in the trial. Unit: m³/m³. */
  readonly halfWidth: number
}

/** Beyond this number nobody installs probes; the answer would be to accept a wider interval. */
const MAX = 1e6

/**
 * Number of probes whose mean lies within a wanted distance of the mean of the zone.
 *
 * Student's t depends on n itself, and putting n back in can swing between two numbers for ever: here the smallest n that satisfies
 * the condition is searched. Two containers that differ by nature (edge, lamp, end of the line) are two zones.
 *
 * @equation `n = \min \left\lbrace n \ge 2 : n \ge \left(\frac{t_{n-1}\, s}{E}\right)^2 \right\rbrace`
 * @param input - Spread between places, wanted half width and confidence.
 * @returns Number of probes, what the normal distribution would say, and the half width reached.
 * @throws `DomainError` outside the ranges; `InputError` when more than a million would be needed.
 * @source standard sampling theory: gilbert-1987, section 4.4
 * @example
 * numberOfProbes({ standardDeviation: 0.05, halfWidth: 0.05 }) // => { probes: 7, byNormal: 4 }
 */
export function numberOfProbes(input: ProbeCountInput): ProbeCount {
  requireObject(input, 'input')
  const { standardDeviation, halfWidth, confidence = 0.95 } = input
  const s = numberIn(standardDeviation, SPREAD_BETWEEN_PLACES, 'standardDeviation')
  const ratio = s / numberIn(halfWidth, HALF_WIDTH, 'halfWidth')
  const p = numberIn(confidence, CONFIDENCE, 'confidence')
  const z = normalTailInverse(Math.log((1 - p) / 2))
  const needed = (n: number) => (studentTwoSided(p, n - 1) * ratio) ** 2
  if ((z * ratio) ** 2 > MAX)
    throw new InputError('halfWidth', 'would need more than a million probes', 'accept a wider interval')
  // What is needed falls as n grows, so that the smallest n that is enough can be halved out.
  let [low, high] = [1, 2]
  while (!enough(high, needed)) [low, high] = [high, 2 * high]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (enough(middle, needed)) high = middle
    else low = middle
  }
  return {
    probes: high,
    byNormal: Math.max(1, Math.ceil((z * ratio) ** 2 * (1 - 1e-12))),
    halfWidth: (studentTwoSided(p, high - 1) * s) / Math.sqrt(high),
  }
}

function enough(n: number, needed: (n: number) => number): boolean {
  return n >= needed(n) * (1 - 1e-12)
}

/** Readings of one zone at one time. */
export interface ZoneReadings extends Confidence {
  /** Water content at each probe. Unit: m³/m³. Range: each in [0, 1]. */
  readonly waterContents: readonly WaterContent[]
}

/** The mean of a zone and how sure it is. */
export interface MeanWithConfidence {
  /** Mean. Unit: m³/m³. */
  readonly mean: WaterContent
  /** Standard deviation between the places. Unit: m³/m³. */
  readonly standardDeviation: number
  /** Standard deviation per mean. Unit: 1. */
  readonly coefficientOfVariation: number
  /** Half width of the confidence interval of the mean. Unit: m³/m³. */
  readonly halfWidth: number
  readonly findings: readonly ProbeFinding[]
}

/**
 * Mean water content of a zone with its confidence interval.
 *
 * @equation `\bar\theta \pm t_{n-1}\, \frac{s}{\sqrt n}`
 * @returns Mean, standard deviation, coefficient of variation and half width.
 * @throws `DomainError` outside the ranges; `InputError` for fewer than two readings or a mean of zero.
 * @source definition
 * @example
 * meanWithConfidence({ waterContents: [0.52, 0.58, 0.61, 0.49, 0.55].map(waterContent) }) // => { mean: 0.55, halfWidth: 0.0589 }
 */
export function meanWithConfidence(readings: ZoneReadings): MeanWithConfidence {
  requireObject(readings, 'readings')
  requireList(readings.waterContents, 'waterContents')
  const { waterContents, confidence = 0.95 } = readings
  const p = numberIn(confidence, CONFIDENCE, 'confidence')
  const values = waterContents.map((value) => numberIn(value, PROBE_CONTENT, 'waterContents'))
  const n = values.length
  if (n < 2) throw new InputError('waterContents', `there are ${n}`, 'one reading has no spread: give at least two')
  const mean = values.reduce((total, value) => total + value, 0) / n
  if (mean === 0) throw new InputError('waterContents', 'all are zero', 'look at probes and calibration')
  const s = Math.sqrt(values.reduce((total, value) => total + (value - mean) ** 2, 0) / (n - 1))
  return {
    mean: mean as WaterContent,
    standardDeviation: s,
    coefficientOfVariation: s / mean,
    halfWidth: (studentTwoSided(p, n - 1) * s) / Math.sqrt(n),
    findings: n < 4 ? [few(n)] : [],
  }
}

function few(n: number): ProbeFinding {
  return { code: 'few-probes', level: 'note', about: 'waterContents', value: n, unit: '1' }
}
