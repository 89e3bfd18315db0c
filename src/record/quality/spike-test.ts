import { numberIn, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { notAbove } from '../../quantity/not-above.js'
import { SPIKE_HEIGHT } from '../domains.js'
import type { Readings } from '../terms.js'
import { type Direction, directionOf } from './direction.js'
import { QUALITY } from './flags.js'

/** A series with the heights of spikes that are not believed. */
export interface SpikeInput extends Readings {
  /** A higher spike is suspect. Unit: that of the series. Range: [0, ∞). */
  readonly suspect: number
  /** A higher spike fails. Unit: that of the series. Range: [0, ∞). */
  readonly fail: number
  /** Which way a spike points; in a record of irrigation rises are real, so that only falls may be tested. */
  readonly direction?: Direction
}

/**
 * Spike test: a reading far from the mean of its two neighbours. A large spike also flags its neighbours, which are good.
 *
 * @equation `\left| x_i - \frac{x_{i-1} + x_{i+1}}{2} \right| > \text{limit}`
 * @param input - Readings and limits.
 * @returns One flag for each reading; the ends, and readings with a missing neighbour, are not evaluated.
 * @throws `DomainError` outside the ranges, `InputError` when the limits are swapped.
 * @source qartod-2016, Test 6
 * @example
 * spikeTest({ value: [10, 12, 999.99, 13, 15, 40, 9, 9], suspect: 25, fail: 50 }) // => [2, 4, 4, 4, 1, 3, 1, 2]
 */
export function spikeTest(input: SpikeInput): Uint8Array {
  requireObject(input, 'input')
  const value = seriesOf(input.value, 'value')
  const limits = checkedSpike(input)
  const flags = new Uint8Array(value.length)
  let before = Number.NaN
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    flags[i] = spikeFlag(before, x, value[i + 1] ?? Number.NaN, limits)
    before = x
  }
  return flags
}

type SpikeLimits = Required<Omit<SpikeInput, 'value'>>

export function checkedSpike(input: Omit<SpikeInput, 'value'>): SpikeLimits {
  const suspect = numberIn(input.suspect, SPIKE_HEIGHT, 'suspect')
  const fail = numberIn(input.fail, SPIKE_HEIGHT, 'fail')
  notAbove('suspect', suspect, 'fail', fail)
  return { suspect, fail, direction: directionOf(input.direction) }
}

export function spikeFlag(before: number, x: number, after: number, { suspect, fail, direction }: SpikeLimits): number {
  if (Number.isNaN(x)) return QUALITY.missing
  const above = x - (before + after) / 2
  if (Number.isNaN(above)) return QUALITY.notEvaluated
  // One-sided, the foot of a real rise is no spike: it must stand out from both neighbours on that side.
  const stands = direction === 'both' || (direction === 'rise' ? x > before && x > after : x < before && x < after)
  const height = stands ? Math.abs(above) : 0
  return height > fail ? QUALITY.fail : height > suspect ? QUALITY.suspect : QUALITY.pass
}
