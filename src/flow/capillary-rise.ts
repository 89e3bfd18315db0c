import { rootBetween } from '../numerics/root.js'
import { answerOf } from '../quantity/answer.js'
import { SUCTION } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { Length, SuctionHead, WaterFlux } from '../quantity/generated/kinds.js'
import { numberIn, requireMade, requireObject } from '../quantity/guard.js'
import { riseTo, riseWithoutEnd } from './capillary-integral.js'
import { LIFT, LIFTING_SUCTION, SATURATED_CONDUCTIVITY, UPWARD_FLUX } from './domains.js'
import type { ConductiveMedium } from './terms.js'

/** A medium over a water table or a wet mat, with water rising through it. */
export interface RisingWater extends ConductiveMedium {
  /** Water that rises, counted positive. Unit: mm/h. Range: [0, ∞). */
  readonly upwardFlux: WaterFlux
}

/** Rising water and the suction that drives it. */
export interface RisingToSuction extends RisingWater {
  /** Suction at the height that is sought. Unit: cm. Range: [0, ∞). */
  readonly suction: SuctionHead
}

/** A medium that lifts water from a water table to a height where a suction is kept. */
export interface LiftToHeight extends ConductiveMedium {
  /** Height over the water table. Unit: cm. Range: [0.001, ∞). */
  readonly height: Length
  /** Suction at that height; at most the height means that nothing rises. Unit: cm. Range: [0, 1000000000]. */
  readonly suction: SuctionHead
}

/**
 * Height over a water table at which a suction is reached while water rises steadily.
 *
 * Without a flux the height is the suction. The more water rises, the sooner the medium dries with height.
 *
 * @equation `z(s) = \int_0^s \frac{du}{1 + e / K(u)}`
 * @returns Height. Unit: cm.
 * @validity A steady state over free water. The flux leaves through what is above, be it roots or the surface.
 * @source gardner-1958, for any conductivity
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6,
 * })
 * capillaryRise({
 *   medium, saturatedConductivity: centimetresPerMinute(1), upwardFlux: millimetresPerHour(3),
 *   suction: centimetresOfSuction(10000),
 * }) // => 27.12518
 */
export function capillaryRise(column: RisingToSuction): Length {
  requireObject(column, 'column')
  const share = shareOf(column)
  return riseTo(column.medium, share, numberIn(column.suction, SUCTION, 'suction')) as Length
}

/**
 * The height over a water table to which a steady flux can rise at all, however dry it is above: a steady flux does not go further.
 *
 * @equation `z_{max} = \int_0^\infty \frac{du}{1 + e / K(u)}`
 * @param column - Medium and flux, which is above zero here.
 * @returns Height. Unit: cm.
 * @throws `DomainError` outside the ranges; `InputError` without a flux, whose rise has no limit; `ConvergenceError` when the
 * conductivity falls so slowly that there is no limit either.
 * @validity A steady state over free water. Liquid water only: vapour goes on, but does not feed a crop.
 * @source gardner-1958, for any conductivity
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6,
 * })
 * maxCapillaryRise({
 *   medium, saturatedConductivity: centimetresPerMinute(1), upwardFlux: millimetresPerHour(3),
 * }) // => 27.125184
 */
export function maxCapillaryRise(column: RisingWater): Length {
  requireObject(column, 'column')
  const share = shareOf(column)
  if (share === 0) throw new InputError('upwardFlux', 'without a flux the rise has no limit', 'give a flux above zero')
  return riseWithoutEnd(column.medium, share) as Length
}

/**
 * Steady flux that a medium lifts from a water table to a height where a suction is kept, by roots or by a dry surface.
 *
 * @equation `e : \; \int_0^s \frac{du}{1 + e / K(u)} = z`
 * @param column - Medium, height and the suction there.
 * @returns Upward flux; zero when the suction is at most the height, as then water stands still or sinks. Unit: mm/h.
 * @validity A steady state over free water, without roots below the height.
 * @source gardner-1958, for any conductivity, solved for the flux
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6,
 * })
 * capillaryFlux({
 *   medium, saturatedConductivity: centimetresPerMinute(1), height: centimetres(15), suction: centimetresOfSuction(50),
 * }) // => 14.911400
 */
export function capillaryFlux(column: LiftToHeight): WaterFlux {
  requireObject(column, 'column')
  const { medium } = column
  requireMade(medium, 'relativeConductivity', 'medium')
  const conductivity = numberIn(column.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity')
  const height = numberIn(column.height, LIFT, 'height')
  const suction = numberIn(column.suction, LIFTING_SUCTION, 'suction')
  if (suction <= height) return 0 as WaterFlux
  // With K at most K_s the integral is at most s / (1 + e / K_s), which bounds the flux from above.
  const max = suction / height - 1
  let min = max
  while (riseTo(medium, min, suction) <= height) {
    min /= 20
    // A conductivity that is beyond the range of numbers lets nothing through.
    if (min === 0) return 0 as WaterFlux
  }
  const share = rootBetween((e) => [riseTo(medium, e, suction) - height, Number.NaN], min, max * (1 + 1e-9))
  return answerOf(10 * conductivity * share, 'saturatedConductivity') as WaterFlux
}

/** The flux over the saturated conductivity. */
function shareOf(column: RisingWater): number {
  requireMade(column.medium, 'relativeConductivity', 'medium')
  const conductivity = numberIn(column.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity')
  return numberIn(column.upwardFlux, UPWARD_FLUX, 'upwardFlux') / 10 / conductivity
}
