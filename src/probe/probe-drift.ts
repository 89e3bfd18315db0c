import { answersOf } from '../quantity/answer.js'
import { RAW_READING } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { WaterContentChange } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../quantity/guard.js'
import type { RawReading } from '../quantity/raw-reading.js'
import type { ProbeCalibration, ProbeReading } from './calibration.js'
import { valueAt } from './calibration-curve.js'
import { CONTENT_TOLERANCE } from './domains.js'
import type { ProbeFinding } from './probe-finding.js'

/** A reference that does not change, read twice: air, a bucket of water of known temperature and EC, a block of plastic. */
export interface ReferenceReadings {
  /** Reading when the probe was calibrated. Unit: raw. Range: (-∞, ∞). */
  readonly before: ProbeReading
  /** Reading now, at the same temperature. Unit: raw. Range: (-∞, ∞). */
  readonly now: ProbeReading
}

/** What a probe shows in its references. */
export interface DriftInput {
  /** Any reference, in most cases air. */
  readonly first: ReferenceReadings
  /** A second one with a different reading, in most cases water; without it only an offset can be seen. */
  readonly second?: ReferenceReadings
  /** Calibration that the probe is used with, made by `calibrateTwoPoint`, `fitCalibration` or `restoreCalibration`. */
  readonly calibration?: ProbeCalibration
  /** Error of water content that still is good enough, 0.01 when left out. Unit: m³/m³. Range: (0, 1]. */
  readonly tolerance?: WaterContentChange
}

/** How the readings of a probe have moved since its calibration. */
export interface ProbeDrift {
  /** Reading now for a reading of zero then. Unit: raw. */
  readonly offset: number
  /** Change of the reading now per change of the reading then. Unit: 1. */
  readonly gain: number
  /** Largest error of water content over the calibrated span; missing without a calibration. Unit: m³/m³. */
  readonly maxError?: number
  readonly findings: readonly ProbeFinding[]
}

/**
 * How far a probe has drifted since its calibration, from readings in references that do not change.
 *
 * With one reference the gain is taken as 1. Clean the probe and bring it to the temperature of the first readings before; salt on the
 * rods and a warm probe look like drift.
 *
 * @equation `g = \frac{n_2 - n_1}{t_2 - t_1}, \quad o = n_1 - g\,t_1`
 * @param input - Readings in one or two references, then and now, and the calibration.
 * @returns Offset, gain and the largest error that they make.
 * @throws `DomainError` outside the ranges; `InputError` when the two references are the same or have changed places.
 * @source definition: the line through two references
 * @example
 * const drift = probeDrift({
 *   first: { before: rawReading(290), now: rawReading(296) },
 *   second: { before: rawReading(1190), now: rawReading(1178) },
 * })
 * drift // => { gain: 0.98, offset: 11.8 }
 * correctDrift(drift, rawReading(700)) // => 702.244898
 */
export function probeDrift(input: DriftInput): ProbeDrift {
  requireObject(input, 'input')
  const { first, second, calibration, tolerance } = input
  requireReferences(input)
  const [t1, n1] = [numberIn(first.before, RAW_READING, 'before'), numberIn(first.now, RAW_READING, 'now')]
  const limit = numberIn(optionOr(tolerance, 0.01), CONTENT_TOLERANCE, 'tolerance')
  let gain = 1
  if (second !== undefined) {
    const [t2, n2] = [numberIn(second.before, RAW_READING, 'before'), numberIn(second.now, RAW_READING, 'now')]
    if (t2 === t1)
      throw new InputError(
        'second.before',
        `equals that of the first reference, ${t1}`,
        'use air and water, for example',
      )
    gain = (n2 - n1) / (t2 - t1)
    if (!(gain > 0))
      throw new InputError(
        'second.now',
        `the references have changed places: ${t1} and ${t2} then, ${n1} and ${n2} now`,
        'look for swapped readings; a probe that really does this is broken',
      )
  }
  const offset = n1 - gain * t1
  const findings: ProbeFinding[] = []
  if (Math.abs(gain - 1) > 0.1) findings.push(otherGain(gain))
  if (calibration === undefined) return answersOf({ offset, gain, findings }, 'now')
  const { min, max } = calibration.span
  let maxError = 0
  // The error has no simple largest place for every form of curve; 33 places over the span are close enough to judge by.
  for (let i = 0; i <= 32; i++) {
    const then = min + ((max - min) * i) / 32
    const now = gain * then + offset
    // A root or a power has no value below zero; the drift is then judged where it has one.
    const error = Math.abs(valueAt(calibration, now) - valueAt(calibration, then))
    if (error > maxError) maxError = error
  }
  if (maxError > limit) findings.push(drifted(maxError, limit))
  return answersOf({ offset, gain, maxError, findings }, 'now')
}

/**
 * What a probe would have reported before it drifted.
 *
 * @equation `r = \frac{n - o}{g}`
 * @param drift - Offset and gain, made by `probeDrift`.
 * @param reading - Reading now. Unit: raw. Range: (-∞, ∞).
 * @returns Reading for the old calibration. Unit: raw.
 * @source definition
 * @example
 * const drift = probeDrift({ first: { before: rawReading(290), now: rawReading(296) } })
 * correctDrift(drift, rawReading(700)) // => 694
 */
export function correctDrift(drift: ProbeDrift, reading: ProbeReading): RawReading {
  requireObject(drift, 'drift')
  return ((numberIn(reading, RAW_READING, 'reading') - drift.offset) / drift.gain) as RawReading
}

function otherGain(gain: number): ProbeFinding {
  return { code: 'gain-changed', level: 'caution', about: 'gain', value: gain, unit: '1' }
}

function drifted(error: number, limit: number): ProbeFinding {
  return { code: 'drifted', level: 'caution', about: 'maxError', value: error, limit, unit: 'm³/m³' }
}

function requireReferences({ first, second }: DriftInput): void {
  requireObject(first, 'first')
  if (second !== undefined) requireObject(second, 'second')
}
