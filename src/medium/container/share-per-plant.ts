import { PLANTS } from '../../quantity/domains.js'
import type { Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, wholeNumberIn } from '../../quantity/guard.js'
import { UNIT_VOLUME } from '../domains.js'

/** A volume that plants share. */
export interface SharedVolume {
  /** Volume of medium or of water in one unit. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
  /** Plants in that unit. Unit: 1. Range: integers [1, ∞). */
  readonly plants: number
}

/**
 * Share of each plant in the medium or in the water of a slab, a trough or a pot.
 *
 * @equation `V_p = V / n`
 * @returns Volume for each plant. Unit: L.
 * @source definition
 * @example
 * sharePerPlant({ volume: litres(11.25), plants: 3 }) // => 3.75
 */
export function sharePerPlant(shared: SharedVolume): Volume {
  const { volume, plants } = optionsOf(shared)
  return (numberIn(volume, UNIT_VOLUME, 'volume') / wholeNumberIn(plants, PLANTS, 'plants')) as Volume
}
