import { inverseLogExcess, logExcess } from '../numerics/log-excess.js'
import { InputError } from '../quantity/errors.js'
import type { Duration } from '../quantity/generated/duration.js'
import type { ApplicationRate } from '../quantity/generated/evapotranspiration-hourly.js'
import type { HydraulicConductivity } from '../quantity/generated/hydraulic-conductivity.js'
import type { Length } from '../quantity/generated/length.js'
import type { SuctionHead } from '../quantity/generated/suction.js'
import type { WaterContentChange } from '../quantity/generated/water-content.js'
import type { WaterDepth } from '../quantity/generated/water-depth.js'
import { numberIn } from '../quantity/guard.js'
import { requireObject } from '../quantity/require-object.js'
import {
  FRONT_CONDUCTIVITY,
  FRONT_SUCTION,
  INFILTRATED,
  PONDED_DEPTH,
  TIME_OF_FRONT,
  WATER_CONTENT_RISE,
} from './domains.js'

/** A medium in which a sharp wetting front goes down. */
export interface WettingFront {
  /** Conductivity of the wetted medium, about half of the saturated one in soils because air stays trapped. Unit: cm/h. Range: (0, ∞). */
  readonly conductivity: HydraulicConductivity
  /** Suction at the front. Unit: cm. Range: [0, ∞). */
  readonly frontSuction: SuctionHead
  /** Water content behind the front less that ahead of it. Unit: m³/m³. Range: (0, 1]. */
  readonly rise: WaterContentChange
}

/** A wetting front under standing water. */
export interface PondedFront extends WettingFront {
  /** Depth of water that is kept on the surface, none when left out. Unit: cm. Range: [0, ∞). */
  readonly pondedDepth?: Length
}

/** A wetting front and how long the surface has had all the water it takes. */
export interface WettingFrontAtTime extends PondedFront {
  /** Time since the surface was wetted. Unit: s. Range: (0, ∞). */
  readonly time: Duration
}

/** A wetting front and how much has gone in. */
export interface WettingFrontOfDepth extends PondedFront {
  /** Water that has gone in. Unit: mm. Range: [0, ∞). */
  readonly infiltrated: WaterDepth
}

/** What a medium has taken up and takes. */
export interface Infiltration {
  /** Water that has gone in. Unit: mm. */
  readonly infiltrated: WaterDepth
  /** Rate at which it goes in now. Unit: mm/h. */
  readonly rate: ApplicationRate
  /** How deep the front is. Unit: cm. */
  readonly frontDepth: Length
}

/**
 * Water that goes into a medium whose surface has all the water it takes, behind a sharp wetting front (Green and Ampt, 1911).
 *
 * ```math
 * F - P \ln\left(1 + \frac{F}{P}\right) = K t, \quad f = K \left(1 + \frac{P}{F}\right), \quad P = (s_f + h_0)\,\Delta\theta
 * ```
 *
 * It is solved for F to all digits, as by the branch W₋₁ of Lambert's function.
 *
 * @param front - Medium and time.
 * @returns Water that has gone in, its rate and the depth of the front.
 * @throws `DomainError` outside the ranges.
 * @validity Field soils with a sharp front. In coarse or water-repellent media water runs in fingers and past the medium; a container
 * whose front has reached the bottom takes no more than drains.
 * @source green-1911
 * @source rawls-1983, Eqs. 1 and 2
 * @example
 * ```ts
 * infiltrationGreenAmpt1911({
 *   conductivity: centimetresPerHour(0.65), frontSuction: centimetresOfSuction(16.7), rise: waterContentChange(0.34), time: hours(1),
 * }) // => { infiltrated: 31.664192, rate: 18.155753, frontDepth: 9.3129977 }
 * ```
 */
export function infiltrationGreenAmpt1911(front: WettingFrontAtTime): Infiltration {
  requireObject(front, 'front')
  const { conductivity, pull, rise } = checkFront(front)
  const given = conductivity * (numberIn(front.time, TIME_OF_FRONT, 'time') / 3600)
  const depth = pull === 0 ? given : pull * inverseLogExcess(given / pull)
  if (depth === 0) throw new InputError('time', 'nothing has gone in after so short a time', 'give a longer one')
  return infiltrationOf(depth, conductivity * (1 + pull / depth), rise)
}

/** What is told of a depth and a rate in cm and cm/h. */
export function infiltrationOf(depth: number, rate: number, rise: number): Infiltration {
  return {
    infiltrated: (10 * depth) as WaterDepth,
    rate: (10 * rate) as ApplicationRate,
    frontDepth: (depth / rise) as Length,
  }
}

/**
 * Time that a medium takes to draw in a depth of water when its surface has all the water it takes: `infiltrationGreenAmpt1911`
 * the other way round.
 *
 * ```math
 * t = \frac{1}{K} \left[F - P \ln\left(1 + \frac{F}{P}\right)\right]
 * ```
 *
 * @param front - Medium and depth of water.
 * @returns Time since the surface was wetted. Unit: s.
 * @throws `DomainError` outside the ranges.
 * @validity As for `infiltrationGreenAmpt1911`.
 * @source green-1911
 * @example
 * ```ts
 * timeGreenAmpt1911({
 *   conductivity: centimetresPerHour(0.65), frontSuction: centimetresOfSuction(16.7), rise: waterContentChange(0.34),
 *   infiltrated: millimetresOfDepth(31.664192),
 * }) // => 3600.000
 * ```
 */
export function timeGreenAmpt1911(front: WettingFrontOfDepth): Duration {
  requireObject(front, 'front')
  const { conductivity, pull } = checkFront(front)
  const depth = numberIn(front.infiltrated, INFILTRATED, 'infiltrated') / 10
  return ((3600 * (pull === 0 ? depth : pull * logExcess(depth / pull))) / conductivity) as Duration
}

/** The numbers of a front, checked; `pull` is the P of the equation, in cm. */
export function checkFront(front: PondedFront): { conductivity: number; pull: number; rise: number } {
  const conductivity = numberIn(front.conductivity, FRONT_CONDUCTIVITY, 'conductivity')
  const rise = numberIn(front.rise, WATER_CONTENT_RISE, 'rise')
  const head =
    numberIn(front.frontSuction, FRONT_SUCTION, 'frontSuction') +
    numberIn(front.pondedDepth ?? 0, PONDED_DEPTH, 'pondedDepth')
  return { conductivity, pull: head * rise, rise }
}
