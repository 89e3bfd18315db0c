import type {
  Length,
  PanEvaporation,
  ReferenceET,
  RelativeHumidity,
  WindSpeed,
} from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { FETCH, MEAN_HUMIDITY, PAN_COEFFICIENT, PAN_EVAPORATION, PAN_WIND } from '../domains.js'

/** Where the equations of the pan coefficient were fitted. */
export const validityPanCoefficient: Validity = {
  of: 'panCoefficientInGrass',
  note: 'Class A pans, within about 0.1 of the tables',
  inputs: {
    windSpeed: { min: 1, max: 8, unit: 'm/s' },
    meanHumidity: { min: 0.3, max: 0.84, unit: '1' },
    fetch: { min: 100, max: 100000, unit: 'cm' },
  },
}

/** What a pan lost in a day, and its coefficient. */
export interface PanInput {
  /** Pan evaporation, as a mean of several days. Unit: mm/d. Range: [0, 40]. */
  readonly evaporation: PanEvaporation
  /** Pan coefficient. Unit: 1. Range: [0, 1.5]. */
  readonly coefficient: number
}

/** Weather and surroundings of a pan. */
export interface PanSurroundings {
  /** Wind speed at 2 m. Unit: m/s. Range: (0, 30]. */
  readonly windSpeed: WindSpeed
  /** Mean relative humidity. Unit: 1. Range: (0, 1]. */
  readonly meanHumidity: RelativeHumidity
  /** Distance to the edge of the surface around the pan, against the wind. Unit: cm. Range: [100, 100000]. */
  readonly fetch: Length
}

/**
 * Reference evapotranspiration from the evaporation of a pan.
 *
 * @equation `ET_o = K_p\,E_{pan}`
 * @returns Reference evapotranspiration. Unit: mm/d.
 * @validity Means of ten days or more; a pan without a screen against birds reads too high.
 * @source allen-1998, Eq. 55
 * @example
 * referenceETFromPan({ evaporation: millimetresPerDay(7.9), coefficient: 0.85 }) // => 6.7
 */
export function referenceETFromPan(input: PanInput): ReferenceET {
  const { evaporation, coefficient } = optionsOf(input)
  return (numberIn(coefficient, PAN_COEFFICIENT, 'coefficient') *
    numberIn(evaporation, PAN_EVAPORATION, 'evaporation')) as ReferenceET
}

/**
 * Coefficient of a Class A pan that stands in short green grass.
 *
 * F is the fetch in metres and RH the mean humidity in percent.
 *
 * @equation `K_p = 0.108 - 0.0286\,u_2 + 0.0422 \ln F + 0.1434 \ln RH - 0.000631 (\ln F)^2 \ln RH`
 * @returns Pan coefficient. Unit: 1.
 * @validity Wind of 1 to 8 m/s, humidity of 30 to 84 %, fetch of 1 to 1000 m of grass.
 * @source allen-1998, Table 7, Class A pan with green fetch
 * @example
 * panCoefficientInGrass({ windSpeed: metresPerSecond(1.9), meanHumidity: percent(73), fetch: metres(100) }) // => 0.81
 */
export function panCoefficientInGrass(pan: PanSurroundings): number {
  const { windSpeed, meanHumidity, fetch } = optionsOf(pan)
  const wind = numberIn(windSpeed, PAN_WIND, 'windSpeed')
  const humidity = Math.log(100 * numberIn(meanHumidity, MEAN_HUMIDITY, 'meanHumidity'))
  const far = Math.log(numberIn(fetch, FETCH, 'fetch') / 100)
  return 0.108 - 0.0286 * wind + 0.0422 * far + 0.1434 * humidity - 0.000631 * far * far * humidity
}

/**
 * Coefficient of a Class A pan that stands on dry bare ground.
 *
 * F is the fetch in metres and RH the mean humidity in percent.
 *
 * @equation `K_p = 0.61 + 0.00341\,RH - 0.000162\,u_2 RH - 0.00000959\,u_2 F + 0.00327\,u_2 \ln F - 0.00289\,u_2 \ln(86.4\,u_2) - 0.0106 \ln(86.4\,u_2) \ln F + 0.00063 (\ln F)^2 \ln(86.4\,u_2)`
 * @returns Pan coefficient. Unit: 1.
 * @validity Wind of 1 to 8 m/s, humidity of 30 to 84 %, fetch of 1 to 1000 m of dry ground.
 * @source allen-1998, Table 7, Class A pan with dry fetch
 * @example
 * panCoefficientOnBareGround({ windSpeed: metresPerSecond(1.9), meanHumidity: percent(73), fetch: metres(100) }) // => 0.65
 */
export function panCoefficientOnBareGround(pan: PanSurroundings): number {
  const { windSpeed, meanHumidity, fetch } = optionsOf(pan)
  const wind = numberIn(windSpeed, PAN_WIND, 'windSpeed')
  const humidity = 100 * numberIn(meanHumidity, MEAN_HUMIDITY, 'meanHumidity')
  const metres = numberIn(fetch, FETCH, 'fetch') / 100
  const far = Math.log(metres)
  const run = Math.log(86.4 * wind)
  return (
    0.61 +
    0.00341 * humidity -
    0.000162 * wind * humidity -
    0.00000959 * wind * metres +
    0.00327 * wind * far -
    0.00289 * wind * run -
    0.0106 * run * far +
    0.00063 * far * far * run
  )
}
