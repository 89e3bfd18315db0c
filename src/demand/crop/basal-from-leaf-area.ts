import type { CropCoefficient, LeafAreaIndex } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import { CROP_COEFFICIENT, LEAF_AREA } from '../domains.js'
import type { BareSoil } from '../terms.js'

/** A stand with fewer leaves than a full cover has. */
export interface BasalFromLeafAreaInput extends BareSoil {
  /** Basal coefficient at full cover, moved to the climate: `fullCover` of `sparseBasalCoefficient()`. Unit: 1. Range: [0, 3]. */
  readonly fullCoverCoefficient: CropCoefficient
  /** Leaf area index of green, healthy leaves, one side counted. Unit: 1. Range: (0, 20]. */
  readonly leafArea: LeafAreaIndex
}

/**
 * Basal coefficient of a thin annual stand from its leaf area.
 *
 * @equation `K_{cb} = K_{c,min} + (K_{cb,full} - K_{c,min})\,\left(1 - e^{-0.7\,LAI}\right)`
 * @returns Coefficient. Unit: 1.
 * @validity Mid-season of annual plants, natural or poor stands; from a leaf area index of 3 on it is nearly that of full cover.
 * @source allen-1998, Eq. 97
 * @example
 * basalCoefficientFromLeafArea({ fullCoverCoefficient: cropCoefficient(1.15), leafArea: leafAreaIndex(1.5) }) // => 0.80
 */
export function basalCoefficientFromLeafArea(input: BasalFromLeafAreaInput): CropCoefficient {
  const min = numberIn(optionOr(optionsOf(input).minCoefficient, 0.15), CROP_COEFFICIENT, 'minCoefficient')
  const full = numberIn(optionsOf(input).fullCoverCoefficient, CROP_COEFFICIENT, 'fullCoverCoefficient')
  return (min - (full - min) * Math.expm1(-0.7 * numberIn(input.leafArea, LEAF_AREA, 'leafArea'))) as CropCoefficient
}
