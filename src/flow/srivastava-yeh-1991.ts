import { waterContentOf } from '../medium/curves/curve-limits.js'
import { type GardnerParameters, gardner1958 } from '../medium/curves/gardner-1958.js'
import { BOTTOM_SUCTION } from '../medium/domains.js'
import { domainWith } from '../quantity/domain.js'
import { ELAPSED } from '../quantity/domains.js'
import { ConvergenceError, InputError } from '../quantity/errors.js'
import type { Duration, Length, SuctionHead, WaterContent, WaterFlux } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../quantity/guard.js'
import { COLUMN_HEIGHT, DOWNWARD_FLUX, HEIGHT, SATURATED_CONDUCTIVITY } from './domains.js'
import { type Bounded, type ExponentialColumn, steadyConductivity, steadyRounding } from './exponential-profile.js'
import { conductivityByImages } from './srivastava-yeh-early.js'
import { conductivityBySeries, MAX_ROOTS } from './srivastava-yeh-series.js'
import type { PlaceOverWaterTable, SaturatedMedium } from './terms.js'

/** A column of exponential medium over a water table, the flux through its surface, and where and when to look. */
export interface InfiltrationToWaterTable extends GardnerParameters, SaturatedMedium, PlaceOverWaterTable {
  /** Height of the surface over the water table. Unit: cm. Range: (0, ∞). */
  readonly columnHeight: Length
  /** Steady downward flux through the surface before; negative when water evaporates. Unit: mm/h. Range: (-∞, ∞). */
  readonly fluxBefore: WaterFlux
  /** Downward flux through the surface from time zero. Unit: mm/h. Range: (-∞, ∞). */
  readonly fluxSince: WaterFlux
  /** Suction that is kept at the bottom; left out, a water table. Unit: cm. Range: [0, ∞). */
  readonly bottomSuction?: SuctionHead
  /** Time since the flux changed. Unit: s. Range: [0, ∞). */
  readonly time: Duration
}

/** The state of the medium at one place and time. */
export interface WaterAtHeight {
  /** Unit: cm. */
  readonly suction: SuctionHead
  /** Unit: m³/m³. */
  readonly waterContent: WaterContent
}

/**
 * Suction and water content in a column over a water table after the flux through its surface has changed, wetting or draining:
 * the exact solution of Srivastava and Yeh (1991) for one layer of exponential medium.
 *
 * Z and L are heights times α, t is α K_s times the time over the range of water contents, A and B are the fluxes before and since
 * over K_s, and E is the relative conductivity at the bottom. Early times, for which the series would need very many terms, are
 * computed from the first two images of the same problem. Both ways carry a bound of their error, and the better one is taken.
 *
 * @equation `k = B - (B - E)e^{-Z} - 4(B - A)\,e^{(L - Z)/2 - t/4} \sum_n \frac{\sin(x_n Z) \sin(x_n L)\, e^{-x_n^2 t}}{1 + L/2 + 2 x_n^2 L},
 * \quad \tan(x_n L) + 2 x_n = 0, \quad s = -\ln(k)/\alpha`
 * @param column - Medium, column, fluxes, place and time.
 * @returns Suction and water content there and then.
 * @throws `DomainError` outside the ranges; `InputError` when the height is above the surface, when the medium would run full (a flux
 * above the saturated conductivity), or when more evaporates than the column can lift; `ConvergenceError` when neither way is
 * certain to nine digits.
 * @validity An exponential medium (`gardner1958`) without roots, hysteresis or ponding. Its use is to test simulations.
 * @source srivastava-1991, one layer (its abstract was read; the series [not confirmed, source not seen] agrees with our solution by images)
 * @example
 * infiltrationSrivastavaYeh1991({
 *   residual: waterContent(0.06), saturated: waterContent(0.4), alpha: perCentimetre(0.1),
 *   saturatedConductivity: centimetresPerHour(1), columnHeight: centimetres(100),
 *   fluxBefore: millimetresPerHour(1), fluxSince: millimetresPerHour(9),
 *   height: centimetres(80), time: hours(5),
 * }) // => { suction: 10.3005357, waterContent: 0.18137586 }
 */
export function infiltrationSrivastavaYeh1991(column: InfiltrationToWaterTable): WaterAtHeight {
  requireObject(column, 'column')
  const { alpha, residual, saturated } = column
  gardner1958(column)
  const conductivity = numberIn(column.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity')
  const top = numberIn(column.columnHeight, COLUMN_HEIGHT, 'columnHeight')
  const height = numberIn(column.height, HEIGHT, 'height')
  if (height > top)
    throw new InputError('height', `${height} cm is above the surface at ${top} cm`, 'look inside the column')
  const time = numberIn(column.time, ELAPSED, 'time') / 3600
  const bottom = Math.exp(-alpha * numberIn(optionOr(column.bottomSuction, 0), BOTTOM_SUCTION, 'bottomSuction'))
  const scaled: ExponentialColumn = {
    height: alpha * top,
    bottom,
    before: checkFlux('fluxBefore', column.fluxBefore, conductivity, bottom, alpha * top),
    since: checkFlux('fluxSince', column.fluxSince, conductivity, bottom, alpha * top),
  }
  const logK = Math.log(conductivityAt(scaled, alpha * height, (alpha * conductivity * time) / (saturated - residual)))
  // At saturation rounding could leave a suction of -1e-16 cm.
  const logShare = Math.min(0, logK)
  return { suction: (-logShare / alpha) as SuctionHead, waterContent: waterContentOf(logShare, residual, saturated) }
}

function conductivityAt(column: ExponentialColumn, height: number, time: number): number {
  const { value, error } = boundedConductivity(column, height, time)
  if (value > 0 && error <= 1e-9 * value) return value
  throw new ConvergenceError(
    'series of Srivastava and Yeh',
    MAX_ROOTS,
    error,
    'the medium is all but dry there; look lower, earlier or later',
  )
}

function boundedConductivity(column: ExponentialColumn, height: number, time: number): Bounded {
  const { before, bottom } = column
  if (time === 0)
    return { value: steadyConductivity(before, bottom, height), error: steadyRounding(before, bottom, height) }
  const late = conductivityBySeries(column, height, time)
  if (late.error <= 1e-12 * late.value) return late
  const early = conductivityByImages(column, height, time)
  return early.error < late.error || Number.isNaN(late.error) ? early : late
}

/** A flux over the saturated conductivity, if the column neither runs full nor is asked for more than it can lift. */
function checkFlux(name: string, flux: WaterFlux, conductivity: number, bottom: number, top: number): number {
  const share = numberIn(flux, domainWith(DOWNWARD_FLUX, { quantity: name }), name) / 10 / conductivity
  if (share > 1) throw new InputError(name, 'it is above the saturated conductivity', 'the medium would run full')
  if (share < 0 && !(steadyConductivity(share, bottom, top) > 0))
    throw new InputError(
      name,
      'more would evaporate than the column can lift',
      'give less, or see maxEvaporationGardner1958',
    )
  return share
}
