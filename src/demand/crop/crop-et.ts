import { answerOf } from '../../quantity/answer.js'
import { PLANT_DENSITY } from '../../quantity/domains.js'
import type {
  CropCoefficient,
  CropET,
  PlantDensity,
  PlantWaterUse,
  ReferenceET,
} from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { ANY_REFERENCE_ET, CROP_COEFFICIENT, CROP_ET } from '../domains.js'
import type { CropUse } from '../terms.js'

/** Reference evapotranspiration and the coefficient of a crop. */
export interface CropETInput {
  /** Reference evapotranspiration. Unit: mm/d. Range: [-5, 30]. */
  readonly referenceET: ReferenceET
  /** Crop coefficient. Unit: 1. Range: [0, 3]. */
  readonly cropCoefficient: CropCoefficient
}

/**
 * Evapotranspiration of a crop with all the water it wants, by the single crop coefficient.
 *
 * @equation `ET_c = K_c\,ET_o`
 * @returns Crop evapotranspiration. Unit: mm/d.
 * @validity Crops without stress, of the height and cover for which the coefficient was found.
 * @source allen-1998, Eq. 58
 * @example
 * cropET({ referenceET: millimetresPerDay(5), cropCoefficient: cropCoefficient(1.2) }) // => 6.0
 */
export function cropET(input: CropETInput): CropET {
  const { referenceET, cropCoefficient } = optionsOf(input)
  return (numberIn(cropCoefficient, CROP_COEFFICIENT, 'cropCoefficient') *
    numberIn(referenceET, ANY_REFERENCE_ET, 'referenceET')) as CropET
}

/** Crop evapotranspiration and how densely plants stand. */
export interface PlantUseInput extends CropUse {
  /** Plants on a square metre of the area that the evapotranspiration belongs to, with its paths. Unit: 1/m². Range: (0, ∞). */
  readonly plantDensity: PlantDensity
}

/**
 * Water that one plant uses in a day: a millimetre on a square metre is a litre.
 *
 * @equation `W = \frac{ET_c}{N}`
 * @returns Water use of one plant. Unit: L/d.
 * @source definition
 * @example
 * waterUsePerPlant({ cropET: millimetresPerDay(4.5), plantDensity: plantsPerSquareMetre(2.5) }) // => 1.8
 */
export function waterUsePerPlant(input: PlantUseInput): PlantWaterUse {
  const { cropET, plantDensity } = optionsOf(input)
  const density = numberIn(plantDensity, PLANT_DENSITY, 'plantDensity')
  return answerOf(numberIn(cropET, CROP_ET, 'cropET') / density, 'plantDensity') as PlantWaterUse
}
