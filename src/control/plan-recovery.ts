import { ADVICE, type Advice } from '../quantity/advice.js'
import { readOrRefuse } from '../quantity/attempt.js'
import { DRAIN_FRACTION, SUBSTRATE_VOLUME } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { CodedFinding } from '../quantity/finding.js'
import type { DrainFraction, Duration, Volume, WaterContent } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { type NamesOf, onlyNames } from '../quantity/one-of.js'
import { CONTENT_AFTER_OUTAGE, FULL_POINT, MAX_SHOT, SHOT_INTERVAL, VOLUME_LEFT } from './domains.js'

/** A container after an outage, and how it may be watered. */
export interface RecoveryInput {
  /** Water content now; less, as a dead probe sends it, is none. Unit: m³/m³. Range: [0.01, 1]. */
  readonly waterContent: WaterContent
  /** Water content to come back to. Unit: m³/m³. Range: [0, 1]. */
  readonly fullPoint: WaterContent
  /** Volume of medium. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Share of the shots that should drain. Unit: 1. Range: [0, 1). */
  readonly drainFraction: DrainFraction
  /** Largest shot. Unit: L. Range: (0, ∞). */
  readonly maxPerShot: Volume
  /** Least time from the start of one shot to the next. Unit: s. Range: (0, 86400]. */
  readonly minPeriod: Duration
  /** What may still be given today. Unit: L. Range: [0, ∞). */
  readonly maxTotal: Volume
  /** Whether somebody looked at the clock and at the last shot in the log. Only `true` is true. */
  readonly clockChecked: boolean
}

const NAMES: NamesOf<RecoveryInput> = {
  waterContent: 1,
  fullPoint: 1,
  substrateVolume: 1,
  drainFraction: 1,
  maxPerShot: 1,
  minPeriod: 1,
  maxTotal: 1,
  clockChecked: 1,
}

/** What a person should know before a container is watered again; `explainControlFinding` has the words. */
export type RecoveryFinding = CodedFinding<
  | 'clock-not-checked'
  | 'more-than-allowed'
  | 'already-full'
  | 'short-pauses'
  | 'takes-days'
  | 'watch-first-shots'
  | 'pump'
>

/** Shots that bring a container back. */
export interface RecoveryPlan extends Advice {
  /** Water to give in all, drain included. Unit: L. */
  readonly volume: Volume
  /** Number of equal shots. Unit: 1. */
  readonly shots: number
  /** Volume of one of them. Unit: L. */
  readonly shot: Volume
  /** Time from the start of the first to the start of the last. Unit: s. */
  readonly duration: Duration
  /** Whether the shots may be given; look at the findings either way. */
  readonly allowed: boolean
  readonly findings: readonly RecoveryFinding[]
}

/**
 * How to water again after a power cut: many small shots instead of one that runs past the dry medium, never faster than medium and pump
 * allow, and not before somebody has looked at the clock: a controller that catches up by itself on top of this would water twice.
 *
 * @equation `V = \frac{(\theta_{full} - \theta) \, V_s}{1 - f}, \qquad n = \left\lceil V / V_{shot} \right\rceil`
 * @param input - Container, limits, and whether the clock was checked.
 * @returns Volume, number and pace of the shots, with findings.
 * @throws `DomainError` outside the ranges, `InputError` when the drain fraction asks for more than can be computed.
 * @validity For medium that still takes up water; medium that has become water-repellent drains without getting wet.
 * @source definition: water balance of the container: what is applied is kept or drains; common practice for the rest, no source
 * @example
 * const plan = planRecovery({
 *   waterContent: waterContent(0.334), fullPoint: waterContent(0.6), substrateVolume: litres(3.75), drainFraction: percent(10),
 *   maxPerShot: millilitres(120), minPeriod: minutes(5), maxTotal: litres(3), clockChecked: true,
 * })
 * plan // => { volume: 1.10833, shots: 10, duration: 2700, allowed: true }
 */
export function planRecovery(input: RecoveryInput): RecoveryPlan {
  return readOrRefuse('input', () => planned(input))
}

/** Medium that takes up water slowly is given more time from shot to shot. Common practice, no source. Unit: s. */
const MIN_APART = 60

function planned(input: RecoveryInput): RecoveryPlan {
  onlyNames(input, NAMES, 'input')
  const lack = Math.max(
    0,
    numberIn(input.fullPoint, FULL_POINT, 'fullPoint') -
      numberIn(input.waterContent, CONTENT_AFTER_OUTAGE, 'waterContent'),
  )
  const medium = numberIn(input.substrateVolume, SUBSTRATE_VOLUME, 'substrateVolume')
  const volume = (lack * medium) / (1 - numberIn(input.drainFraction, DRAIN_FRACTION, 'drainFraction'))
  const max = numberIn(input.maxPerShot, MAX_SHOT, 'maxPerShot')
  if (max > medium)
    throw new InputError('maxPerShot', `of ${max} L is larger than the medium, ${medium} L`, 'give litres')
  const apart = numberIn(input.minPeriod, SHOT_INTERVAL, 'minPeriod')
  const allowance = numberIn(input.maxTotal, VOLUME_LEFT, 'maxTotal')
  // Rounding of the division must not cost a shot of its own.
  const shots = Math.ceil((volume / max) * (1 - 1e-12))
  if (!Number.isFinite(shots)) throw new InputError('maxPerShot', 'leads to endless shots', 'give a larger one')
  const duration = Math.max(0, shots - 1) * apart
  const isChecked = input.clockChecked === true
  return {
    volume: volume as Volume,
    shots,
    shot: (shots === 0 ? 0 : volume / shots) as Volume,
    duration: duration as Duration,
    allowed: isChecked && volume <= allowance,
    caution: ADVICE,
    findings: findingsOf(input, { volume, shots, duration }),
  }
}

function findingsOf(
  { waterContent, fullPoint, minPeriod, maxTotal, clockChecked }: RecoveryInput,
  { volume, shots, duration }: { readonly volume: number; readonly shots: number; readonly duration: number },
): RecoveryFinding[] {
  const findings: RecoveryFinding[] = []
  if (clockChecked !== true) findings.push({ code: 'clock-not-checked', level: 'danger' })
  if (volume > maxTotal)
    findings.push({ code: 'more-than-allowed', level: 'caution', value: volume, limit: maxTotal, unit: 'L' })
  if (shots === 0)
    findings.push({ code: 'already-full', level: 'note', value: waterContent, limit: fullPoint, unit: 'm³/m³' })
  if (shots > 1 && minPeriod < MIN_APART)
    findings.push({ code: 'short-pauses', level: 'caution', value: minPeriod, limit: MIN_APART, unit: 's' })
  if (duration > 86400)
    findings.push({ code: 'takes-days', level: 'caution', value: duration, limit: 86400, unit: 's' })
  if (shots > 0) findings.push({ code: 'watch-first-shots', level: 'note' }, { code: 'pump', level: 'caution' })
  return findings
}
