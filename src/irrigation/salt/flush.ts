import { answerOf } from '../../quantity/answer.js'
import { WATER_GIVEN } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { PoreWaterEC, SolutionEC, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { FEED_EC, STORE_EC, STORE_WATER } from '../domains.js'
import type { GivenWater } from '../terms.js'

/** A full root zone and the water that flushes it. */
export interface Flushing {
  /** EC before. Unit: dS/m. Range: [0, 200]. */
  readonly start: PoreWaterEC
  /** EC of the water that is given. Unit: dS/m. Range: [0, 200]. */
  readonly feedEC: SolutionEC
  /** Water in the root zone, which is full. Unit: L. Range: (0, ∞). */
  readonly rootZoneWater: Volume
}

/** A root zone and the water with which it is flushed. */
export interface FlushedECInput extends Flushing, GivenWater {}

/**
 * EC of a full, well-mixed root zone after a volume of other water has gone through.
 *
 * One volume of its own water leaves 37 % of the surplus. Water that pushes the old water out needs less; water that finds its way past
 * the roots needs more. Let the drain tell.
 *
 * @equation `C = C_{in} + (C_0 - C_{in}) \, e^{-V/W}`
 * @returns EC afterwards. Unit: dS/m.
 * @source definition: salt balance of a well-mixed reservoir (first-order mixing)
 * @example
 * flushedEC({
 *   start: decisiemensPerMetre(6),
 *   feedEC: decisiemensPerMetre(2),
 *   rootZoneWater: litres(6),
 *   volume: litres(6),
 * }) // => 3.47152
 */
export function flushedEC(input: FlushedECInput): PoreWaterEC {
  requireObject(input, 'input')
  const start = numberIn(input.start, STORE_EC, 'start')
  const feed = numberIn(input.feedEC, FEED_EC, 'feedEC')
  const waters =
    numberIn(input.volume, WATER_GIVEN, 'volume') / numberIn(input.rootZoneWater, STORE_WATER, 'rootZoneWater')
  return (feed + (start - feed) * Math.exp(-waters)) as PoreWaterEC
}

/** A root zone and the EC to which it is to be flushed. */
export interface FlushVolumeInput extends Flushing {
  /** EC that is wanted. Unit: dS/m. Range: [0, 200]. */
  readonly target: PoreWaterEC
}

/**
 * Water that brings a full, well-mixed root zone to a wanted EC. All of it drains.
 *
 * Flush in steps and with a feed rather than with plain water: a sudden fall of EC can split fruit and shock roots. The drain carries
 * nitrate and phosphate; collect, use or discharge it as the local rules for waste water say.
 *
 * @equation `V = W \ln\frac{C_0 - C_{in}}{C_t - C_{in}}`
 * @returns Volume to give. Unit: L.
 * @throws `DomainError` outside the ranges, `InputError` when the target does not lie between the root zone and the water.
 * @source definition: salt balance of a well-mixed reservoir (first-order mixing)
 * @example
 * flushVolume({
 *   start: decisiemensPerMetre(6),
 *   feedEC: decisiemensPerMetre(2),
 *   target: decisiemensPerMetre(3),
 *   rootZoneWater: litres(6),
 * }) // => 8.31777
 */
export function flushVolume(input: FlushVolumeInput): Volume {
  requireObject(input, 'input')
  const start = numberIn(input.start, STORE_EC, 'start')
  const feed = numberIn(input.feedEC, FEED_EC, 'feedEC')
  const target = numberIn(input.target, STORE_EC, 'target')
  const water = numberIn(input.rootZoneWater, STORE_WATER, 'rootZoneWater')
  if (target === start) return 0 as Volume
  const left = (target - feed) / (start - feed)
  if (!(left > 0 && left <= 1))
    throw new InputError(
      'target',
      `water of ${feed} dS/m never brings ${start} to ${target} dS/m`,
      'the target must lie between the root zone and the water that is given',
    )
  return answerOf(-water * Math.log(left), 'rootZoneWater') as Volume
}
