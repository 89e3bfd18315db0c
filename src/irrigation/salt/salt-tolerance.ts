import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { SaturatedExtractEC } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import { EC_THRESHOLD, YIELD_SLOPE } from '../domains.js'
import { SALT_TOLERANCE } from './salt-tolerance-table.js'

/** How a crop answers to salinity. */
export interface SaltTolerance {
  /** EC of the saturated soil extract above which the yield falls. Unit: dS/m. Range: [0, 200]. */
  readonly thresholdEC: SaturatedExtractEC
  /** Loss of yield for each dS/m above the threshold. Unit: %/(dS/m). Range: (0, 100]. */
  readonly lossPerDecisiemens: number
}

/**
 * Salt tolerance of a vegetable or fruit crop: threshold and slope of the response of Maas and Hoffman.
 *
 * @param crop - Name of the crop, as the table lists it: `tomato`, `cucumber`, `lettuce`, `strawberry`, ...
 * @procedure Looks the crop up; the refusal of an unknown one lists all.
 * @returns Threshold and loss, as `yieldUnderSalt` takes them.
 * @throws `InputError` when the table has no such crop.
 * @validity Field soils rich in chloride, emergence and seedlings apart; a guide for containers at most.
 * @source maas-1990, table of herbaceous crops
 * @example
 * saltTolerance('tomato') // => { thresholdEC: 2.5, lossPerDecisiemens: 9.9 }
 * yieldUnderSalt({ ...saltTolerance('tomato'), extractEC: decisiemensPerMetre(4) }) // => 0.8515
 */
export function saltTolerance(crop: string): SaltTolerance {
  const row = hasRow(SALT_TOLERANCE, crop) ? SALT_TOLERANCE[crop] : undefined
  if (row === undefined)
    throw new InputError(
      'crop',
      `the table has no ${asName(crop)}`,
      `choose one of: ${Object.keys(SALT_TOLERANCE).join('; ')}`,
    )
  return { thresholdEC: row[0] as SaturatedExtractEC, lossPerDecisiemens: row[1] }
}

/**
 * Salinity at which a crop yields nothing.
 *
 * @equation `EC_{e,0} = a + \frac{100}{b}`
 * @returns EC of the saturated soil extract. Unit: dS/m.
 * @validity Field soils.
 * @source tanji-2002, Annex 1, Eq. 1 at zero yield
 * @example
 * zeroYieldEC(saltTolerance('tomato')) // => 12.601
 */
export function zeroYieldEC(tolerance: SaltTolerance): SaturatedExtractEC {
  requireObject(tolerance, 'tolerance')
  return answerOf(
    numberIn(tolerance.thresholdEC, EC_THRESHOLD, 'thresholdEC') +
      100 / numberIn(tolerance.lossPerDecisiemens, YIELD_SLOPE, 'lossPerDecisiemens'),
    'lossPerDecisiemens',
  ) as SaturatedExtractEC
}
