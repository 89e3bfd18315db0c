import { BOTTOM_SUCTION } from '../medium/domains.js'
import { InputError } from '../quantity/errors.js'
import type { SuctionHead, WaterFlux } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../quantity/guard.js'
import { ALPHA, DOWNWARD_FLUX, HEIGHT, SATURATED_CONDUCTIVITY } from './domains.js'
import { steadyConductivity } from './exponential-profile.js'
import type { ExponentialMedium, PlaceOverWaterTable } from './terms.js'

/** An exponential medium over a water table with a steady flux through it. */
export interface SteadyFluxOverWaterTable extends ExponentialMedium, PlaceOverWaterTable {
  /** Steady flux, downward positive; negative when water rises. Unit: mm/h. Range: (-∞, ∞). */
  readonly downwardFlux: WaterFlux
  /** Suction that is kept at height zero; left out, a water table. Unit: cm. Range: [0, ∞). */
  readonly bottomSuction?: SuctionHead
}

/**
 * Suction at a height over a water table under a steady flux, for a medium whose conductivity falls exponentially.
 *
 * Downward flux keeps the medium wetter than rest, so that the suction levels off at ln(K_s/q)/α; upward flux dries it, the faster
 * the higher, and ends at a height that no such flux can reach.
 *
 * @equation `e^{-\alpha s} = \frac{q}{K_s} + \left(e^{-\alpha s_0} - \frac{q}{K_s}\right) e^{-\alpha z}`
 * @returns Suction there. Unit: cm.
 * @throws `DomainError` outside the ranges; `InputError` when the flux is above the saturated conductivity, or cannot rise so high.
 * @validity Gardner's exponential conductivity was proposed for field soils; over a wide range of suction few media follow it.
 * @source gardner-1958, exponential conductivity
 * @example
 * steadySuctionGardner1958({
 *   saturatedConductivity: centimetresPerHour(1), alpha: perCentimetre(0.1),
 *   downwardFlux: millimetresPerHour(5), height: centimetres(10),
 * }) // => 3.798854930
 */
export function steadySuctionGardner1958(column: SteadyFluxOverWaterTable): SuctionHead {
  requireObject(column, 'column')
  const conductivity = numberIn(column.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity')
  const alpha = numberIn(column.alpha, ALPHA, 'alpha')
  const flux = numberIn(column.downwardFlux, DOWNWARD_FLUX, 'downwardFlux') / 10 / conductivity
  const height = alpha * numberIn(column.height, HEIGHT, 'height')
  const atBottom = alpha * numberIn(optionOr(column.bottomSuction, 0), BOTTOM_SUCTION, 'bottomSuction')
  if (flux > 1)
    throw new InputError('downwardFlux', 'it is above the saturated conductivity', 'the medium would run full')
  // At rest the suction is the height; the logarithm of an exponential that underflows would lose it.
  if (flux === 0) return ((height + atBottom) / alpha) as SuctionHead
  const share = steadyConductivity(flux, Math.exp(-atBottom), height)
  if (!(share > 0))
    throw new InputError('height', 'so much water cannot rise so high', 'look lower, or see maxEvaporationGardner1958')
  return (Math.max(0, -Math.log(share)) / alpha) as SuctionHead
}
