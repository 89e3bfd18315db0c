import { SOME_WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { APPARENT, ROOT_LAW_EXPONENT, ROOT_LAW_OFFSET, ROOT_LAW_SLOPE } from '../domains.js'
import type { ApparentPermittivity, WetMedium } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'
import { reachedPermittivity } from './reached-permittivity.js'

/** The three coefficients of the power law in the square root of permittivity, from an own fit. */
export interface SquareRootPower {
  /** Factor of the square root of permittivity. Unit: 1. Range: (0, 1]. */
  readonly slope: number
  /** What is subtracted from it. Unit: 1. Range: [0, 1]. */
  readonly offset: number
  /** Power to which the difference is raised. Unit: 1. Range: [0.2, 5]. */
  readonly exponent: number
}

/** A permittivity and the power law that converts it. */
export interface SquareRootPowerReading extends SquareRootPower, ApparentPermittivity {}

/** A water content and the power law that gave it. */
export interface SquareRootPowerWaterContent extends SquareRootPower, WetMedium {}

/**
 * Volumetric water content of forest floor from a power of a line in the square root of permittivity, with own coefficients.
 *
 * Where the line falls below zero the medium is dry and the law gives 0. The coefficients are arguments on purpose: two sets are
 * in circulation under this name (0.133, 0.146, 0.885 and 0.136, 0.119, 1.345) and the paper was not seen.
 *
 * @equation `\theta = \max(0,\; a\sqrt{\varepsilon} - b)^c`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the law gives more water than volume.
 * @validity The medium, packing and probe for which the coefficients were fitted.
 * @source schaap-1997 (form)
 * @example
 * waterContentSchaap1997({ apparent: permittivity(30), slope: 0.133, offset: 0.146, exponent: 0.885 }) // => 0.61982
 */
export function waterContentSchaap1997(reading: SquareRootPowerReading): WaterContent {
  const root = Math.sqrt(numberIn(optionsOf(reading).apparent, APPARENT, 'apparent'))
  const line =
    numberIn(reading.slope, ROOT_LAW_SLOPE, 'slope') * root - numberIn(reading.offset, ROOT_LAW_OFFSET, 'offset')
  const exponent = numberIn(reading.exponent, ROOT_LAW_EXPONENT, 'exponent')
  const inverse = (theta: number) => ((theta ** (1 / exponent) + reading.offset) / reading.slope) ** 2
  return waterContentBetween(line > 0 ? line ** exponent : 0, 1, reading.apparent, inverse)
}

/**
 * Apparent permittivity at which the power law of Schaap and others (1997) gives a water content above zero.
 *
 * @equation `\varepsilon = \left(\frac{\theta^{1/c} + b}{a}\right)^2`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and where no permittivity from 1 to 90 gives the water content.
 * @validity The medium, packing and probe for which the coefficients were fitted.
 * @source schaap-1997, solved for the permittivity
 * @example
 * permittivitySchaap1997({ waterContent: waterContent(0.61982), slope: 0.133, offset: 0.146, exponent: 0.885 }) // => 30.000
 */
export function permittivitySchaap1997(reading: SquareRootPowerWaterContent): Permittivity {
  const waterContent = numberIn(optionsOf(reading).waterContent, SOME_WATER_CONTENT, 'waterContent')
  const slope = numberIn(reading.slope, ROOT_LAW_SLOPE, 'slope')
  const offset = numberIn(reading.offset, ROOT_LAW_OFFSET, 'offset')
  const exponent = numberIn(reading.exponent, ROOT_LAW_EXPONENT, 'exponent')
  const at = (root: number) => Math.max(0, slope * root - offset) ** exponent
  return reachedPermittivity(
    (waterContent ** (1 / exponent) + offset) / slope,
    waterContent,
    at(1),
    at(Math.sqrt(APPARENT.max)),
  )
}
