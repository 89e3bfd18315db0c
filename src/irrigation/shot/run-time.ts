import type { Domain } from '../../quantity/domain.js'
import type { Duration } from '../../quantity/generated/duration.js'
import type { Flow } from '../../quantity/generated/flow.js'
import type { Volume } from '../../quantity/generated/volume.js'
import { numberIn, wholeNumberIn } from '../../quantity/guard.js'

const VOLUME: Domain = {
  quantity: 'volume of the shot',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the volume for all emitters together, zero or more',
}
export const FLOW: Domain = {
  quantity: 'flow',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the measured flow',
}
export const EMITTERS: Domain = {
  quantity: 'emitters',
  unit: '1',
  min: 1,
  max: 100000,
  ends: '[]',
  hint: 'give a whole number',
}
export const FILL: Domain = {
  quantity: 'line fill',
  unit: 's',
  min: 0,
  max: 3600,
  ends: '[]',
  hint: 'time it until all emitters run',
}

/** What a run time is found from. */
export interface RunTimeInput {
  /** Water for all emitters together. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
  /** Flow of one emitter. Unit: L/h. Range: (0, ∞). */
  readonly emitterFlow: Flow
  /** Emitters that share the volume. Unit: 1. Range: integers [1, 100000]. */
  readonly emitters: number
  /** Time from opening the valve until all emitters run; none by default. Unit: s. Range: [0, 3600]. */
  readonly lineFill?: Duration
}

/**
 * How long a valve must be open for its emitters to give a volume.
 *
 * ```math
 * t = \frac{V}{q\,n} + t_{fill}
 * ```
 *
 * A volume of zero needs no opening, so that its run time is zero whatever the line fill.
 *
 * @param input - Volume, emitters and line fill.
 * @returns Time that the valve is open. Unit: s.
 * @throws `DomainError` outside the ranges.
 * @source definition
 * @example
 * ```ts
 * inSeconds(runTime({ volume: millilitres(397.06), emitterFlow: litresPerHour(2.1), emitters: 3 })) // => 226.9
 * ```
 */
export function runTime(input: RunTimeInput): Duration {
  const volume = numberIn(input.volume, VOLUME, 'volume')
  const flow = numberIn(input.emitterFlow, FLOW, 'emitterFlow') * wholeNumberIn(input.emitters, EMITTERS, 'emitters')
  const fill = numberIn(input.lineFill ?? 0, FILL, 'lineFill')
  return (volume === 0 ? 0 : (volume / flow) * 3600 + fill) as Duration
}
