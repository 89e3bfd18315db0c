import { CAPACITY, SUBSTRATE, WATER_CONTENT, WATER_GIVEN } from '../../quantity/domains.js'
import type { DrainFraction, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import type { GivenWater, Substrate } from '../terms.js'

/** A container and the water that is poured into it. */
export interface BucketShotInput extends GivenWater, Substrate {
  /** Water content before the shot. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
  /** Water content that the container holds against gravity. Unit: m³/m³. Range: (0, 1]. */
  readonly containerCapacity: WaterContent
}

/** Where the water of a shot went. */
export interface BucketShot {
  /** Water content afterwards. Unit: m³/m³. */
  readonly waterContent: WaterContent
  /** Water that stays. Unit: L. */
  readonly retained: Volume
  /** Water that drains. Unit: L. */
  readonly drained: Volume
  /** Share of the shot that drains; zero for no water. Unit: 1. */
  readonly drainFraction: DrainFraction
}

/**
 * What stays of a shot and what drains when a container fills like a bucket and only then runs over.
 *
 * Real media drain before they are full, because water finds its way past dry medium: a measured drain above this one is no fault
 * of the measurement. A container that is already above capacity has no room; the surplus in it is left where it is.
 *
 * @equation `V_{kept} = \min(V, \; \max(0, \theta_{cc} - \theta) \, V_s), \quad V_{drain} = V - V_{kept}`
 * @returns Water content, kept and drained water.
 * @source definition: water balance of the container
 * @example
 * bucketShot({
 *   waterContent: waterContent(0.55),
 *   containerCapacity: waterContent(0.6),
 *   substrateVolume: litres(10),
 *   volume: litres(0.8),
 * }) // => { waterContent: 0.6, retained: 0.5, drained: 0.3, drainFraction: 0.375 }
 */
export function bucketShot(input: BucketShotInput): BucketShot {
  requireObject(input, 'input')
  const waterContent = numberIn(input.waterContent, WATER_CONTENT, 'waterContent')
  const substrate = numberIn(input.substrateVolume, SUBSTRATE, 'substrateVolume')
  const volume = numberIn(input.volume, WATER_GIVEN, 'volume')
  const room = Math.max(0, numberIn(input.containerCapacity, CAPACITY, 'containerCapacity') - waterContent) * substrate
  const kept = Math.min(volume, room)
  const drained = volume - kept
  return {
    waterContent: (waterContent + kept / substrate) as WaterContent,
    retained: kept as Volume,
    drained: drained as Volume,
    drainFraction: (volume === 0 ? 0 : drained / volume) as DrainFraction,
  }
}
