import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { APPARENT, ROOT_LINE_INTERCEPT, ROOT_LINE_SLOPE } from '../domains.js'
import type { ApparentPermittivity, WaterHeld } from '../terms.js'
import { waterContentBetween } from '../water-content-between.js'
import { reachedPermittivity } from './reached-permittivity.js'

/** The two coefficients of a line in the square root of permittivity, from an own fit. */
export interface SquareRootLine {
  /** Water content per unit of the square root of permittivity. Unit: m³/m³. Range: (0, 1]. */
  readonly slope: number
  /** Water content where the line meets zero. Unit: m³/m³. Range: [-1, 1]. */
  readonly intercept: number
}

/** A permittivity and the line that converts it. */
export interface SquareRootReading extends SquareRootLine, ApparentPermittivity {}

/** A water content and the line that gave it. */
export interface SquareRootWaterContent extends SquareRootLine, WaterHeld {}

/**
 * Volumetric water content from a straight line in the square root of permittivity with own coefficients.
 *
 * The best form for an own calibration of two or more points. Published pairs are mineral soils: 0.115 and -0.176 (Topp and
 * Reynolds 1998), 0.1181 and -0.1841 (Ferré and others 1996) [not confirmed, source not seen]. None is given here for stone wool, coir, perlite or
 * peat mixes: no openly citable coefficients were found, and those that exist differ from mix to mix. Calibrate your own.
 *
 * @equation `\theta = a\sqrt{\varepsilon} + b`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the line gives less than no water or more water than volume.
 * @validity The medium, packing and probe for which the two coefficients were fitted.
 * @source herkelrath-1991 (form)
 * @example
 * waterContentHerkelrath1991({ apparent: permittivity(25), slope: 0.115, intercept: -0.176 }) // => 0.399
 */
export function waterContentHerkelrath1991(reading: SquareRootReading): WaterContent {
  const root = Math.sqrt(numberIn(optionsOf(reading).apparent, APPARENT, 'apparent'))
  const slope = numberIn(reading.slope, ROOT_LINE_SLOPE, 'slope')
  const intercept = numberIn(reading.intercept, ROOT_LINE_INTERCEPT, 'intercept')
  return waterContentBetween(
    slope * root + intercept,
    1,
    reading.apparent,
    (theta) => ((theta - intercept) / slope) ** 2,
  )
}

/**
 * Apparent permittivity at which a straight line in the square root of permittivity gives a water content.
 *
 * @equation `\varepsilon = \left(\frac{\theta - b}{a}\right)^2`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and where the line reaches the water content at no permittivity from 1 to 90.
 * @validity The medium, packing and probe for which the two coefficients were fitted.
 * @source herkelrath-1991, solved for the permittivity
 * @example
 * permittivityHerkelrath1991({ waterContent: waterContent(0.399), slope: 0.115, intercept: -0.176 }) // => 25
 */
export function permittivityHerkelrath1991(reading: SquareRootWaterContent): Permittivity {
  const waterContent = numberIn(optionsOf(reading).waterContent, WATER_CONTENT, 'waterContent')
  const slope = numberIn(reading.slope, ROOT_LINE_SLOPE, 'slope')
  const intercept = numberIn(reading.intercept, ROOT_LINE_INTERCEPT, 'intercept')
  const root = (waterContent - intercept) / slope
  return reachedPermittivity(root, waterContent, slope + intercept, slope * Math.sqrt(APPARENT.max) + intercept)
}
