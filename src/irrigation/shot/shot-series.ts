import { ADVICE, type Advice } from '../../quantity/advice.js'
import { answersOf } from '../../quantity/answer.js'
import { DRAIN_FRACTION, SUBSTRATE, WATER_CONTENT } from '../../quantity/domains.js'
import type { Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { SHOT } from '../domains.js'
import type { ContainerNow, DrainWish } from '../terms.js'

/** From where to where a container should be wetted, and with what shots. */
export interface ShotSeriesInput extends DrainWish, ContainerNow {
  /** Water content that is wanted. Unit: m³/m³. Range: [0, 1]. */
  readonly target: WaterContent
  /** Largest volume of one shot. Unit: L. Range: (0, ∞). */
  readonly shot: Volume
}

/** Shots that together wet a container. */
export interface ShotSeries extends Advice {
  /** Water of all shots. Unit: L. */
  readonly total: Volume
  /** Number of shots. Unit: 1. */
  readonly shots: number
  /** Volume of the last shot, which takes the rest; zero without shots. Unit: L. */
  readonly lastShot: Volume
}

/**
 * Shots of a set size that together lift a container to a wanted water content. All are full but the last, which takes the rest.
 *
 * A container that is wet enough needs none. How far apart the shots must lie is a matter of the medium, the valve and the pump:
 * see `soakCycles` and `pumpStarts`.
 *
 * @equation `V = \frac{\max(0, \theta_t - \theta) \, V_s}{1 - f}, \quad n = \left\lceil V / V_1 \right\rceil`
 * @returns Total, number of shots and the last one.
 * @source definition: water balance of the container
 * @example
 * shotSeries({
 *   waterContent: waterContent(0.334),
 *   target: waterContent(0.6),
 *   substrateVolume: litres(3.75),
 *   shot: millilitres(120),
 *   drainFraction: percent(10),
 * }) // => { total: 1.10833, shots: 10, lastShot: 0.02833 }
 */
export function shotSeries(input: ShotSeriesInput): ShotSeries {
  requireObject(input, 'input')
  const missing = Math.max(
    0,
    numberIn(input.target, WATER_CONTENT, 'target') - numberIn(input.waterContent, WATER_CONTENT, 'waterContent'),
  )
  const kept = missing * numberIn(input.substrateVolume, SUBSTRATE, 'substrateVolume')
  const total = kept / (1 - numberIn(input.drainFraction, DRAIN_FRACTION, 'drainFraction'))
  const shot = numberIn(input.shot, SHOT, 'shot')
  // A quotient that is whole but for rounding must not cost a shot more.
  const shots = Math.max(0, Math.ceil(total / shot - 1e-9))
  return answersOf(
    {
      total: total as Volume,
      shots,
      lastShot: (shots === 0 ? 0 : total - (shots - 1) * shot) as Volume,
      caution: ADVICE,
    },
    'shot',
  )
}
