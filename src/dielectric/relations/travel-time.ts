import { ROD_LENGTH } from '../../quantity/domains.js'
import type { Duration, Length, Permittivity } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { APPARENT, APPARENT_LENGTH, PERMITTIVITY_OF_TRAVEL, TRAVEL_TIME, VELOCITY } from '../domains.js'
import type { ApparentPermittivity, RodLength } from '../terms.js'

/** Speed of light in a vacuum in cm/s, by definition of the metre. */
const LIGHT = 29_979_245_800

/** A travel time along rods. */
export interface TravelTimeReading extends RodLength {
  /** Time there and back. Unit: s. Range: (0, 0.000001]. */
  readonly travelTime: Duration
}

/** A permittivity around rods. */
export interface RodsInMedium extends ApparentPermittivity, RodLength {}

/** What a cable tester shows. */
export interface ApparentLengthReading extends RodLength {
  /** Length between the two reflections as shown. Unit: cm. Range: (0, 10000]. */
  readonly apparentLength: Length
  /** Setting of the instrument, share of the speed of light. Unit: 1. Range: (0, 1]. */
  readonly propagationVelocity: number
}

/**
 * Apparent permittivity from the time that a pulse takes there and back along the rods.
 *
 * With 15 cm rods at a permittivity of 30, 0.1 ns is worth 1.1 units.
 *
 * @equation `\varepsilon = \left(\frac{c\,t}{2L}\right)^2`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and for a pulse faster than light in air.
 * @source topp-1980
 * @example
 * permittivityFromTravelTime({ travelTime: nanoseconds(5), rodLength: centimetres(15) }) // => 24.96542
 */
export function permittivityFromTravelTime(reading: TravelTimeReading): Permittivity {
  const index =
    (LIGHT * numberIn(optionsOf(reading).travelTime, TRAVEL_TIME, 'travelTime')) /
    (2 * numberIn(reading.rodLength, ROD_LENGTH, 'rodLength'))
  return notFasterThanLight(index)
}

/**
 * Time that a pulse takes there and back along the rods.
 *
 * @equation `t = \frac{2L\sqrt{\varepsilon}}{c}`
 * @returns Travel time. Unit: s.
 * @source topp-1980
 * @example
 * inNanoseconds(travelTimeFromPermittivity({ apparent: permittivity(80.2), rodLength: centimetres(20) })) // => 11.94886
 */
export function travelTimeFromPermittivity(rods: RodsInMedium): Duration {
  return ((2 *
    numberIn(optionsOf(rods).rodLength, ROD_LENGTH, 'rodLength') *
    Math.sqrt(numberIn(rods.apparent, APPARENT, 'apparent'))) /
    LIGHT) as Duration
}

/**
 * Apparent permittivity from the length that a cable tester shows between the two reflections.
 *
 * @equation `\varepsilon = \left(\frac{L_a}{L\,v_p}\right)^2`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges, and for a pulse faster than light in air.
 * @source definition
 * @example
 * permittivityFromApparentLength({ apparentLength: metres(1), rodLength: centimetres(20), propagationVelocity: 1 }) // => 25
 */
export function permittivityFromApparentLength(reading: ApparentLengthReading): Permittivity {
  const rods =
    numberIn(optionsOf(reading).rodLength, ROD_LENGTH, 'rodLength') *
    numberIn(reading.propagationVelocity, VELOCITY, 'propagationVelocity')
  return notFasterThanLight(numberIn(reading.apparentLength, APPARENT_LENGTH, 'apparentLength') / rods)
}

function notFasterThanLight(index: number): Permittivity {
  const squared = index * index
  // The rounding of a round trip at air is forgiven.
  if (squared < 1 && squared > 1 - 1e-12) return 1 as Permittivity
  return numberIn(squared, PERMITTIVITY_OF_TRAVEL) as Permittivity
}
