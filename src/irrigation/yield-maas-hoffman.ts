import type { SaturatedExtractEC } from '../quantity/electrical-conductivity.js'
import { InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { Share } from '../quantity/share.js'
import type { Span } from '../quantity/span.js'
import { SALT_TOLERANCE } from './salt-tolerance-table.js'

const EXTRACT: Span = {
  quantity: 'EC of the saturated extract',
  unit: 'dS/m',
  min: 0,
  max: Infinity,
  hint: 'give the EC of a saturated paste of soil, not of drain or pore water',
}
const THRESHOLD: Span = {
  quantity: 'threshold',
  unit: 'dS/m',
  min: 0,
  max: Infinity,
  hint: 'give the EC of the saturated extract above which the yield falls',
}
const SLOPE: Span = {
  quantity: 'slope',
  unit: '% per dS/m',
  min: 0,
  max: Infinity,
  open: 'min',
  hint: 'give the loss of yield for each dS/m above the threshold, above zero',
}

/** How a crop answers to salinity. */
export interface SaltTolerance {
  /** EC of the saturated soil extract above which the yield falls. Unit: dS/m. Range: [0, ∞). */
  readonly threshold: SaturatedExtractEC
  /** Loss of yield for each dS/m above the threshold. Unit: % per dS/m. Range: (0, ∞). */
  readonly slope: number
}

/**
 * Salt tolerance of a vegetable or fruit crop: threshold and slope of the response of Maas and Hoffman.
 *
 * @param crop - Name of the crop, as the table lists it: `tomato`, `cucumber`, `lettuce`, `strawberry`, ...
 * @procedure Looks the crop up; the refusal of an unknown one lists all.
 * @returns Threshold and slope.
 * @throws `InputError` when the table has no such crop.
 * @validity Field soils rich in chloride, emergence and seedlings apart; a guide for containers at most.
 * @source Maas, E. V. (1990), Crop salt tolerance, ASCE Manual 71, table of herbaceous crops
 * @example
 * ```ts
 * saltTolerance('tomato') // => { threshold: 2.5, slope: 9.9 }
 * ```
 */
export function saltTolerance(crop: string): SaltTolerance {
  const row = Object.hasOwn(SALT_TOLERANCE, crop) ? SALT_TOLERANCE[crop] : undefined
  if (row === undefined)
    throw new InputError('crop', `the table has no ${crop}`, `choose one of: ${Object.keys(SALT_TOLERANCE).join('; ')}`)
  return { threshold: row[0] as SaturatedExtractEC, slope: row[1] }
}

/** A soil and a crop. */
export interface RelativeYieldInput extends SaltTolerance {
  /** EC of the saturated soil extract, mean of the root zone. Unit: dS/m. Range: [0, ∞). */
  readonly extractEC: SaturatedExtractEC
}

/**
 * Yield of a crop on a saline soil as a share of that without salt.
 *
 * ```math
 * Y_r = 100 - b \, (EC_e - a), \quad 0 \le Y_r \le 100
 * ```
 *
 * The EC is that of a saturated paste of soil. Pore water is about twice as salty in mineral soil: fed with pore-water or drain EC
 * this says far too little yield.
 *
 * @param input - Salinity, threshold and slope.
 * @returns Relative yield. Unit: 1.
 * @throws `DomainError` outside the ranges.
 * @validity Field soils; the response of a crop fed with nutrients differs.
 * @source Tanji, K. K. and Kielen, N. C. (2002), FAO Irrigation and Drainage Paper 61, Annex 1, Eq. 1
 * @example
 * ```ts
 * relativeYieldMaasHoffman({ ...saltTolerance('tomato'), extractEC: decisiemensPerMetre(4) }) // => 0.8515
 * ```
 */
export function relativeYieldMaasHoffman(input: RelativeYieldInput): Share {
  const above = within(input.extractEC, EXTRACT) - within(input.threshold, THRESHOLD)
  return Math.min(1, Math.max(0, 1 - (within(input.slope, SLOPE) / 100) * above)) as Share
}

/**
 * Salinity at which a crop yields nothing.
 *
 * ```math
 * EC_{e,0} = a + \frac{100}{b}
 * ```
 *
 * @param tolerance - Threshold and slope.
 * @returns EC of the saturated soil extract. Unit: dS/m.
 * @throws `DomainError` outside the ranges.
 * @validity Field soils.
 * @source Tanji, K. K. and Kielen, N. C. (2002), FAO Irrigation and Drainage Paper 61, Annex 1, Eq. 1 at zero yield
 * @example
 * ```ts
 * zeroYieldEC(saltTolerance('tomato')) // => 12.601
 * ```
 */
export function zeroYieldEC(tolerance: SaltTolerance): SaturatedExtractEC {
  return (within(tolerance.threshold, THRESHOLD) + 100 / within(tolerance.slope, SLOPE)) as SaturatedExtractEC
}
