import { DRAIN_FRACTION, SUBSTRATE } from '../../quantity/domains.js'
import type { Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { WATER_CONTENT_CHANGE } from '../domains.js'
import type { ShotWish } from '../terms.js'

/**
 * Volume of a shot that lifts the water content by a wanted rise and lets a wanted share of itself drain.
 *
 * @equation `V = \frac{\Delta\theta \, V_s}{1 - f}`
 * @returns Volume of the shot. Unit: L.
 * @source definition: water balance of the container: what is applied is kept or drains
 * @example
 * const shot = shotVolume({ substrateVolume: litres(11.25), rise: waterContentChange(0.03), drainFraction: percent(15) })
 * inMillilitres(shot) // => 397.06
 */
export function shotVolume(input: ShotWish): Volume {
  const substrate = numberIn(optionsOf(input).substrateVolume, SUBSTRATE, 'substrateVolume')
  const rise = numberIn(input.rise, WATER_CONTENT_CHANGE, 'rise')
  return ((rise * substrate) / (1 - numberIn(input.drainFraction, DRAIN_FRACTION, 'drainFraction'))) as Volume
}
