import { ADVICE, type Advice } from '../../quantity/advice.js'
import type { Domain } from '../../quantity/domain.js'
import { DRAIN_FRACTION, EMITTERS, MAX_RUN_TIME, SUBSTRATE, VALVE_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import type { Duration, Flow, Volume, WaterContentChange } from '../../quantity/generated/kinds.js'
import { requireEnd } from '../../quantity/guard.js'
import { EMITTER_FLOW, WATER_CONTENT_CHANGE } from '../domains.js'
import type { EmitterLine, HowSerious, ShotWish, ValveLimits, WaterPerEmitter } from '../terms.js'

/**
 * What a shot is sized from: a container, what is wanted in it, its emitters, and what valve and pump can do. Without limits the valve
 * may open for any time up to an hour.
 */
export interface SizeShotInput extends ShotWish, EmitterLine, Partial<ValveLimits> {
  /** Rise above which a person should look, for there a decimal place is easily lost; 0.1 by default. Unit: m³/m³. Range: [0, 1]. */
  readonly maxRise?: WaterContentChange
  /** Emitters of all containers on the valve; those of one container by default. Unit: 1. Range: (0, 100000]. */
  readonly emittersOnValve?: number
  /** Flow that the pump holds at working pressure; without it the pump is not checked. Unit: L/h. Range: (0, ∞). */
  readonly pumpFlow?: Flow
}

/** What a person should know before the valve opens, without words; `explainIrrigationFinding` has them. */
export interface ShotFinding extends HowSerious {
  /** Which limit is passed. */
  readonly code: 'max-run-time' | 'min-run-time' | 'max-rise' | 'line-fill' | 'pump-flow'
  /** By how much the limit is passed. Unit: that of `unit`. */
  readonly value: number
  readonly unit: 's' | 'm³/m³' | 'L/h'
}

/** A shot with what is to be expected of it. Volumes are for one container; what is applied is kept or drains. */
export interface SizedShot extends WaterPerEmitter, Advice {
  /** Water of the shot. Unit: L. */
  readonly volume: Volume
  /** Time that the valve is open, with the time to fill the line. Unit: s. */
  readonly runTime: Duration
  /** Water that should stay. Unit: L. */
  readonly retained: Volume
  /** Water that should drain. Unit: L. */
  readonly expectedDrain: Volume
  /** Which limit of the valve decided instead of the wish, if one did. */
  readonly boundBy: 'min-run-time' | 'max-run-time' | undefined
  /** What a person should know before the valve opens. */
  readonly findings: readonly ShotFinding[]
}

/**
 * Sizes a shot in one call: volume, what each emitter gives, how long the valve is open, what drains, which limit decides, and what
 * to beware of.
 *
 * A limit that decides is named in `boundBy` and in the findings, and the volume is what the emitters give in that time. Of a
 * longer opening than is needed all that is too much is expected to drain. No rise needs no opening. Findings are codes and numbers,
 * so that this one call stays small in an app; `explainIrrigationFinding` puts them into words.
 *
 * The result is advice, not an order: a valve that opens by it needs a maximum run time, a daily maximum and a leak check of its own.
 *
 * @equation `V = \frac{\Delta\theta \, V_s}{1 - f}, \quad t = \min\left(t_{max}, \max\left(t_{min}, \frac{V}{q \, n} + t_{fill}\right)\right)`
 * @returns The shot, what is expected of it, and findings.
 * @throws `DomainError` outside the ranges, `InputError` when the shortest run time is longer than the longest.
 * @source definition: water balance of the container and of the valve
 * @example
 * const shot = sizeShot({
 *   substrateVolume: litres(11.25),
 *   rise: waterContentChange(0.03),
 *   drainFraction: percent(15),
 *   emitterFlow: litresPerHour(2.1),
 *   emitters: 3,
 *   lineFill: seconds(12),
 *   minRunTime: seconds(60),
 *   maxRunTime: minutes(20),
 *   emittersOnValve: 600,
 *   pumpFlow: cubicMetresPerHour(2),
 * })
 * shot // => { volume: 0.39706, perEmitter: 0.13235, runTime: 238.9, expectedDrain: 0.05956, boundBy: undefined, findings: [] }
 */
export function sizeShot(input: SizeShotInput): SizedShot {
  const substrate = look(input?.substrateVolume, SUBSTRATE, 'substrateVolume')
  const rise = look(input.rise, WATER_CONTENT_CHANGE, 'rise')
  const stays = 1 - look(input.drainFraction, DRAIN_FRACTION, 'drainFraction')
  const wanted = (rise * substrate) / stays
  const maxRise = look(input.maxRise ?? 0.1, WATER_CONTENT_CHANGE, 'maxRise')
  const emitters = look(input.emitters, EMITTERS, 'emitters')
  const emitterFlow = look(input.emitterFlow, EMITTER_FLOW, 'emitterFlow')
  const fill = look(input.lineFill ?? 0, VALVE_TIME, 'lineFill')
  const min = look(input.minRunTime ?? 0, VALVE_TIME, 'minRunTime')
  const max = look(input.maxRunTime ?? 3600, MAX_RUN_TIME, 'maxRunTime')
  if (min > max) throw new InputError('minRunTime', 'exceeds maxRunTime', 'give less')
  const zone = emitterFlow * look(input.emittersOnValve ?? emitters, EMITTERS, 'emittersOnValve')
  const flow = (emitterFlow * emitters) / 3600
  const needed = wanted && wanted / flow + fill
  const time = wanted && Math.min(max, Math.max(min, needed))
  const volume = Math.max(0, time - fill) * flow
  const kept = Math.min(wanted, volume) * stays
  // Near the ends of what numbers can be, time or volume has no end: refused as a flow that is none.
  look(zone + needed + volume, EMITTER_FLOW, 'emitterFlow')
  const findings: ShotFinding[] = []
  tell(findings, needed - time, 'max-run-time', 'caution', VALVE_TIME)
  tell(findings, time - needed, 'min-run-time', 'caution', VALVE_TIME)
  const bound = findings[0]
  tell(findings, rise - maxRise, 'max-rise', 'danger', WATER_CONTENT_CHANGE)
  tell(findings, time && fill - time / 10, 'line-fill', 'note', VALVE_TIME)
  tell(findings, zone - look(input.pumpFlow ?? zone, EMITTER_FLOW, 'pumpFlow'), 'pump-flow', 'danger', EMITTER_FLOW)
  return {
    volume: volume as Volume,
    perEmitter: (volume / emitters) as Volume,
    runTime: time as Duration,
    retained: kept as Volume,
    expectedDrain: (volume - kept) as Volume,
    boundBy: bound?.code as SizedShot['boundBy'],
    findings,
    caution: ADVICE,
  }
}

/**
 * The guard of all, once more: engines compile a guard for what all its callers met, and behind one refusal anywhere in a process this
 * call took 3.7 times the bare formula; with a guard of its own 2.6.
 */
function look(value: number | undefined, domain: Domain, argument: string): number {
  if (!(typeof value === 'number' && value > domain.min && value < domain.max))
    requireEnd(value as number, domain, argument)
  return value as number
}

function tell(
  findings: ShotFinding[],
  value: number,
  code: ShotFinding['code'],
  level: Finding['level'],
  { unit }: Domain,
): void {
  if (value > 0) findings.push({ code, level, value, unit: unit as ShotFinding['unit'] })
}
