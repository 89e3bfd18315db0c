import type { CropCoefficient, Length, RelativeHumidity, WindSpeed } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { CROP_COEFFICIENT, CROP_HEIGHT, MIN_HUMIDITY, WIND_AT_2_M } from '../domains.js'
import type { BasalCoefficient } from '../terms.js'

/** The climate of a growth stage and the height of the crop in it. */
export interface CropClimate {
  /** Mean wind speed at 2 m over the stage. Unit: m/s. Range: [0, 120]. */
  readonly windSpeed: WindSpeed
  /** Mean over the stage of the lowest relative humidity of each day. Unit: 1. Range: [0, 1]. */
  readonly minHumidity: RelativeHumidity
  /** Mean height of the plants in the stage. Unit: cm. Range: [0, 10000]. */
  readonly height: Length
}

/** A coefficient from a table and the climate to which it is to be moved. */
export interface ClimateAdjustmentInput extends CropClimate {
  /** Tabled mid-season or end coefficient, single or basal. Unit: 1. Range: [0, 3]. */
  readonly coefficient: CropCoefficient
}

/** For which climates FAO-56 gives the adjustment of a crop coefficient. */
export const validityCropClimateFao56: Validity = {
  of: 'adjustedCropCoefficientFao56',
  note: 'the adjustment of tabled coefficients; those below 0.45 stay as they are',
  inputs: {
    windSpeed: { min: 1, max: 6, unit: 'm/s' },
    minHumidity: { min: 0.2, max: 0.8, unit: '1' },
    height: { min: 10, max: 1000, unit: 'cm' },
  },
}

/** Coefficients below this belong to bare or dry ground, which wind and dry air do not move (Eq. 65 and 70). */
const MIN_MOVED = 0.45

/**
 * A tabled crop coefficient of the mid-season or the end, moved from the standard climate (45 % lowest humidity, 2 m/s) to another.
 *
 * RHmin is in percent and h in metres here. A coefficient below 0.45 is given back as it is: Eq. 65 and 70 say so for end and basal
 * coefficients; Eq. 62 names no limit for the single coefficient of the mid-season, of which only that of pineapple is lower.
 *
 * @equation `K_c = \begin{cases} K_{c,tab} & K_{c,tab} < 0.45 \\ K_{c,tab} + \left[0.04\,(u_2 - 2) - 0.004\,(RH_{min} - 45)\right]\left(\frac{h}{3}\right)^{0.3} & K_{c,tab} \ge 0.45 \end{cases}`
 * @returns Coefficient for the climate. Unit: 1.
 * @validity Wind 1 to 6 m/s, lowest humidity 20 to 80 %, height 0.1 to 10 m.
 * @source allen-1998, Eq. 62, 65 and 70
 * @example
 * adjustedCropCoefficientFao56({
 *   coefficient: cropCoefficient(1.2), windSpeed: metresPerSecond(4.6), minHumidity: percent(44), height: metres(2),
 * }) // => 1.30
 */
export function adjustedCropCoefficientFao56(input: ClimateAdjustmentInput): CropCoefficient {
  const tabled = numberIn(optionsOf(input).coefficient, CROP_COEFFICIENT, 'coefficient')
  const term = climateTerm(input)
  return (tabled < MIN_MOVED ? tabled : tabled + term) as CropCoefficient
}

/** The climate in which the highest coefficient is wanted, with the basal coefficient of the crop. */
export interface MaxCoefficientInput extends BasalCoefficient, CropClimate {}

/**
 * The highest crop coefficient after rain or irrigation that the energy at hand allows.
 *
 * @equation `K_{c,max} = \max\left(1.2 + \left[0.04\,(u_2 - 2) - 0.004\,(RH_{min} - 45)\right]\left(\frac{h}{3}\right)^{0.3},\; K_{cb} + 0.05\right)`
 * @returns Upper limit of the crop coefficient. Unit: 1.
 * @validity As for the adjustment of coefficients to climate.
 * @source allen-1998, Eq. 72
 * @example
 * maxCropCoefficientFao56({
 *   basalCoefficient: cropCoefficient(1.14), windSpeed: metresPerSecond(2.2), minHumidity: percent(30), height: centimetres(40),
 * }) // => 1.24
 */
export function maxCropCoefficientFao56(input: MaxCoefficientInput): CropCoefficient {
  const basal = numberIn(optionsOf(input).basalCoefficient, CROP_COEFFICIENT, 'basalCoefficient')
  return Math.max(1.2 + climateTerm(input), basal + 0.05) as CropCoefficient
}

/** The part of Eq. 62 and 72 that the climate adds. */
export function climateTerm({ windSpeed, minHumidity, height }: CropClimate): number {
  const wind = 0.04 * (numberIn(windSpeed, WIND_AT_2_M, 'windSpeed') - 2)
  const humidity = 0.004 * (100 * numberIn(minHumidity, MIN_HUMIDITY, 'minHumidity') - 45)
  return (wind - humidity) * (numberIn(height, CROP_HEIGHT, 'height') / 300) ** 0.3
}
