import type { HourlyCropET, Irradiance, VapourPressureDeficit } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import {
  CROP_DEFICIT,
  CROP_RADIATION,
  DRYNESS_COEFFICIENT,
  EXTINCTION,
  LEAF_AREA,
  RADIATION_COEFFICIENT,
} from '../domains.js'
import type { LeafArea } from '../terms.js'

/** Climate, leaves and the two coefficients of a crop. */
export interface BailleInput extends LeafArea {
  /** Radiation above the crop, inside. Unit: W/m². Range: [0, 1500]. */
  readonly radiation: Irradiance
  /** Vapour pressure deficit of the air inside. Unit: kPa. Range: [0, 10]. */
  readonly deficit: VapourPressureDeficit
  /** Coefficient A of radiation. Unit: 1. Range: [0, 2]. */
  readonly radiationCoefficient: number
  /** Coefficient B of dryness; the night has its own. Unit: W/m²/kPa. Range: [0, 200]. */
  readonly deficitCoefficient: number
  /** Extinction coefficient; 0.64 by default. Unit: 1. Range: (0, 2]. */
  readonly extinction?: number
}

/** The coefficients that Baille and others found for nine ornamental species. */
export const validityBaille1994: Validity = {
  of: 'transpirationBaille1994',
  note: 'nine ornamental species in pots under glass',
  inputs: {
    radiationCoefficient: { min: 0.12, max: 0.67, unit: '1' },
    deficitCoefficient: { min: 14, max: 37, unit: 'W/m²/kPa' },
  },
}

/**
 * Transpiration of a greenhouse crop from radiation and dryness, by the simplified form of Penman and Monteith.
 *
 * The coefficients belong to the crop: fit them to your own record with `fitDailyUse()` where you can.
 *
 * @equation `\lambda E = A\,(1 - e^{-k\,LAI})\,G + B\,LAI\,D`
 * @returns Transpiration. Unit: mm/h.
 * @validity A 0.12 to 0.67 and B 14 to 37 W/m²/kPa, nine ornamental species.
 * @source baille-1994; the extinction coefficient is that of tomato [confirmed by public code or text, source not seen]
 * @example
 * transpirationBaille1994({
 *   radiation: wattsPerSquareMetre(400), deficit: kilopascals(1.2), leafArea: leafAreaIndex(2.5),
 *   radiationCoefficient: 0.5, deficitCoefficient: 20,
 * }) // => 0.323
 */
export function transpirationBaille1994(input: BailleInput): HourlyCropET {
  const leaves = numberIn(optionsOf(input).leafArea, LEAF_AREA, 'leafArea')
  const caught = -Math.expm1(-numberIn(optionOr(input.extinction, 0.64), EXTINCTION, 'extinction') * leaves)
  const light =
    numberIn(input.radiationCoefficient, RADIATION_COEFFICIENT, 'radiationCoefficient') *
    caught *
    numberIn(input.radiation, CROP_RADIATION, 'radiation')
  const dry =
    numberIn(input.deficitCoefficient, DRYNESS_COEFFICIENT, 'deficitCoefficient') *
    leaves *
    numberIn(input.deficit, CROP_DEFICIT, 'deficit')
  return (((light + dry) * 3600) / 2.45e6) as HourlyCropET
}
