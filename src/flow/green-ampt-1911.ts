import { inverseLogExcess, logExcess } from '../numerics/log-excess.js'
import { answerOf, answersOf } from '../quantity/answer.js'
import { InputError } from '../quantity/errors.js'
import type { Duration, WaterDepth } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { INFILTRATED, TIME_OF_FRONT } from './domains.js'
import { checkFront, type Infiltration, infiltrationOf, type PondedFront } from './wetting-front.js'

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

/**
 * Water that goes into a medium whose surface has all the water it takes, behind a sharp wetting front (Green and Ampt, 1911).
 *
 * It is solved for F to all digits, as by the branch W₋₁ of Lambert's function.
 *
 * @equation `F - P \ln\left(1 + \frac{F}{P}\right) = K t, \quad f = K \left(1 + \frac{P}{F}\right), \quad P = (s_f + h_0)\,\Delta\theta`
 * @returns Water that has gone in, its rate and the depth of the front.
 * @validity Field soils with a sharp front. In coarse or water-repellent media water runs in fingers and past the medium; a container
 * whose front has reached the bottom takes no more than drains.
 * @source green-1911
 * @source rawls-1983, Eqs. 1 and 2
 * @example
 * infiltrationGreenAmpt1911({
 *   conductivity: centimetresPerHour(0.65), frontSuction: centimetresOfSuction(16.7), rise: waterContentChange(0.34), time: hours(1),
 * }) // => { infiltrated: 31.664192, rate: 18.155753, frontDepth: 9.3129977 }
 */
export function infiltrationGreenAmpt1911(front: WettingFrontAtTime): Infiltration {
  requireObject(front, 'front')
  const { conductivity, pull, rise } = checkFront(front)
  const given = conductivity * (numberIn(front.time, TIME_OF_FRONT, 'time') / 3600)
  const depth = pull === 0 ? given : pull * inverseLogExcess(given / pull)
  if (depth === 0) throw new InputError('time', 'nothing has gone in after so short a time', 'give a longer one')
  return answersOf(infiltrationOf(depth, conductivity * (1 + pull / depth), rise), 'conductivity')
}

/**
 * Time that a medium takes to draw in a depth of water when its surface has all the water it takes: `infiltrationGreenAmpt1911`
 * the other way round.
 *
 * @equation `t = \frac{1}{K} \left[F - P \ln\left(1 + \frac{F}{P}\right)\right]`
 * @returns Time since the surface was wetted. Unit: s.
 * @validity As for `infiltrationGreenAmpt1911`.
 * @source green-1911
 * @example
 * infiltrationTimeGreenAmpt1911({
 *   conductivity: centimetresPerHour(0.65), frontSuction: centimetresOfSuction(16.7), rise: waterContentChange(0.34),
 *   infiltrated: millimetresOfDepth(31.664192),
 * }) // => 3600.000
 */
export function infiltrationTimeGreenAmpt1911(front: WettingFrontOfDepth): Duration {
  requireObject(front, 'front')
  const { conductivity, pull } = checkFront(front)
  const depth = numberIn(front.infiltrated, INFILTRATED, 'infiltrated') / 10
  return answerOf(
    (3600 * (pull === 0 ? depth : pull * logExcess(depth / pull))) / conductivity,
    'conductivity',
  ) as Duration
}
