import type { Domain } from '../../quantity/domain.js'
import { DomainError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import type { Duration } from '../../quantity/generated/duration.js'
import type { Flow } from '../../quantity/generated/flow.js'
import type { DrainFraction } from '../../quantity/generated/share.js'
import type { Volume } from '../../quantity/generated/volume.js'
import type { WaterContentChange } from '../../quantity/generated/water-content.js'
import { numberIn, wholeNumberIn } from '../../quantity/guard.js'
import { EMITTERS, FILL, FLOW } from './run-time.js'
import { shotVolume } from './shot-volume.js'

const LIMIT: Domain = {
  quantity: 'run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give the least below the most',
}

/** What a shot is sized from: a container, what is wanted in it, its emitters, and what valve and pump can do. */
export interface SizeShotInput {
  /** Volume of medium that the shot waters. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** By how much its water content should rise. Unit: m³/m³. Range: [0, 1]. */
  readonly rise: WaterContentChange
  /** Share of the shot that should drain. Unit: 1. Range: [0, 1). */
  readonly drainFraction: DrainFraction
  /** Flow of one emitter. Unit: L/h. Range: (0, ∞). */
  readonly emitterFlow: Flow
  /** Emitters in the container. Unit: 1. Range: integers [1, 100000]. */
  readonly emitters: number
  /** Time from opening the valve until all emitters run; none by default. Unit: s. Range: [0, 3600]. */
  readonly lineFill?: Duration
  /** Shortest time for which the valve may open; zero by default. Unit: s. Range: [0, 86400]. */
  readonly minRunTime?: Duration
  /** Longest time for which the valve may open; a day by default. Unit: s. Range: [0, 86400]. */
  readonly maxRunTime?: Duration
  /** Emitters of all containers on the valve; those of one container by default. Unit: 1. Range: integers [1, 100000]. */
  readonly emittersOnValve?: number
  /** Flow that the pump holds at working pressure; without it the pump is not checked. Unit: L/h. Range: (0, ∞). */
  readonly pumpFlow?: Flow
}

/** What a person should know before the valve opens, without words; `explainShotWarning` has them. */
export interface ShotWarning {
  /** Which limit is passed. */
  readonly code: 'max-run-time' | 'min-run-time' | 'line-fill' | 'pump-flow'
  /** How much it matters: a `danger` must not be acted on unseen. */
  readonly level: Finding['level']
  /** By how much the limit is passed. Unit: that of `unit`. */
  readonly value: number
  readonly unit: 's' | 'L/h'
}

/** A shot with what is to be expected of it. Volumes are for one container; what is applied is kept or drains. */
export interface SizedShot {
  /** Water of the shot. Unit: L. */
  readonly volume: Volume
  /** Water from each emitter. Unit: L. */
  readonly perEmitter: Volume
  /** Time that the valve is open, with the time to fill the line. Unit: s. */
  readonly runTime: Duration
  /** Water that should stay. Unit: L. */
  readonly kept: Volume
  /** Water that should drain. Unit: L. */
  readonly expectedDrain: Volume
  /** Which limit of the valve decided instead of the wish, if one did. */
  readonly boundBy: 'min-run-time' | 'max-run-time' | undefined
  /** What a person should know before the valve opens. */
  readonly warnings: readonly ShotWarning[]
}

/**
 * Sizes a shot in one call: volume, what each emitter gives, how long the valve is open, what drains, which limit decides, and what
 * to beware of.
 *
 * ```math
 * V = \frac{\Delta\theta \, V_s}{1 - f}, \quad t = \min\left(t_{max}, \max\left(t_{min}, \frac{V}{q \, n} + t_{fill}\right)\right)
 * ```
 *
 * A limit that decides is named in `boundBy` and in the warnings, and the volume is what the emitters give in that time. Of a
 * longer opening than is needed all that is too much is expected to drain. No rise needs no opening. Warnings are codes and numbers,
 * so that this one call stays small in an app; `explainShotWarning` puts them into words.
 *
 * The result is advice, not an order: a valve that opens by it needs a longest opening, a limit for the day and a leak check of its own.
 *
 * @param input - Container, wish, emitters, valve and pump.
 * @returns The shot, what is expected of it, and warnings.
 * @throws `DomainError` outside the ranges, or when the least run time is longer than the most.
 * @source Water balance of the container and of the valve
 * @example
 * ```ts
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
 * shot // => { volume: 0.39706, perEmitter: 0.13235, runTime: 238.9, expectedDrain: 0.05956, boundBy: undefined, warnings: [] }
 * ```
 */
export function sizeShot(input: SizeShotInput): SizedShot {
  const wanted = shotVolume(input)
  const emitters = wholeNumberIn(input.emitters, EMITTERS, 'emitters')
  const emitterFlow = numberIn(input.emitterFlow, FLOW, 'emitterFlow')
  const fill = numberIn(input.lineFill ?? 0, FILL, 'lineFill')
  const most = numberIn(input.maxRunTime ?? 86400, LIMIT, 'maxRunTime')
  const least = numberIn(input.minRunTime ?? 0, LIMIT, 'minRunTime')
  if (least > most) throw new DomainError(least, { ...LIMIT, max: most })
  const zone = emitterFlow * wholeNumberIn(input.emittersOnValve ?? emitters, EMITTERS, 'emittersOnValve')
  const flow = (emitterFlow * emitters) / 3600
  const needed = wanted && wanted / flow + fill
  const time = wanted && Math.min(most, Math.max(least, needed))
  const volume = time === needed ? wanted : Math.max(0, time - fill) * flow
  const kept = Math.min(wanted, volume) * (1 - input.drainFraction)
  const warnings: ShotWarning[] = []
  warn(warnings, needed - time, 'max-run-time')
  warn(warnings, time - needed, 'min-run-time')
  const [bound] = warnings
  warn(warnings, time && fill - time / 10, 'line-fill', 'note')
  warn(warnings, zone - numberIn(input.pumpFlow ?? zone, FLOW, 'pumpFlow'), 'pump-flow', 'danger', 'L/h')
  return {
    volume: volume as Volume,
    perEmitter: (volume / emitters) as Volume,
    runTime: time as Duration,
    kept: kept as Volume,
    expectedDrain: (volume - kept) as Volume,
    boundBy: bound?.code as SizedShot['boundBy'],
    warnings,
  }
}

function warn(
  warnings: ShotWarning[],
  value: number,
  code: ShotWarning['code'],
  level: Finding['level'] = 'caution',
  unit: ShotWarning['unit'] = 's',
): void {
  if (value > 0) warnings.push({ code, level, value, unit })
}
