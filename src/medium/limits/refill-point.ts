import { SUCTION, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { DepletionFraction, Length, SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../../quantity/guard.js'
import { meanWaterContentAtRest, requireMediumInContainer } from '../container/container-water.js'
import { HEIGHT, REFILL_DEPLETION } from '../domains.js'
import type { MediumInContainer } from '../terms.js'

/** The water that plants may use and how much of it. */
export interface AllowedDepletion {
  /** Upper limit of the available water: container capacity, or field capacity in a field. Unit: m³/m³. Range: [0, 1]. */
  readonly fullPoint: WaterContent
  /** Water content at which the available water ends. Unit: m³/m³. Range: [0, 1]. */
  readonly lowerLimit: WaterContent
  /** Management allowed depletion: share of the available water to use before watering. Unit: 1. Range: [0, 1]. */
  readonly depletion: DepletionFraction
}

/**
 * Refill point by management allowed depletion.
 *
 * Tables of the depletion fraction come from field soils with deep roots. In a container they are guides: begin with less and watch
 * the crop.
 *
 * @equation `\theta_r = \theta_f - p \, (\theta_f - \theta_l)`
 * @returns Water content at which to water. Unit: m³/m³.
 * @throws `DomainError` outside the ranges; `InputError` when the lower limit is not below the full point.
 * @source allen-1998, Eqs. 82 and 83
 * @example
 * refillPointByDepletion({ fullPoint: waterContent(0.6), lowerLimit: waterContent(0.1), depletion: percent(20) }) // => 0.5
 */
export function refillPointByDepletion(limits: AllowedDepletion): WaterContent {
  const { fullPoint, lowerLimit, depletion } = optionsOf(limits)
  numberIn(fullPoint, WATER_CONTENT, 'fullPoint')
  numberIn(lowerLimit, WATER_CONTENT, 'lowerLimit')
  numberIn(depletion, REFILL_DEPLETION, 'depletion')
  if (lowerLimit >= fullPoint)
    throw new InputError(
      'lowerLimit',
      `a lower limit of ${lowerLimit} m³/m³ is not below the full point of ${fullPoint} m³/m³`,
      'no water is available between them',
    )
  return (fullPoint - depletion * (fullPoint - lowerLimit)) as WaterContent
}

/** A container and the suction that its plants may feel. */
export interface AllowedSuction extends MediumInContainer {
  /** Largest suction before watering. Unit: cm. Range: [0, ∞). */
  readonly maxSuction: SuctionHead
  /** Height above the bottom where it is meant; left out, half of the medium. Unit: cm. Range: [0, ∞). */
  readonly suctionHeight?: Length
}

/**
 * Refill point by suction: the mean water content of a container when the suction at one height has risen to a limit.
 *
 * @equation `\theta_r = \frac{1}{V} \int_0^H \theta(s_m - z_m + z)\,A(z)\,dz`
 * @returns Mean water content at which to water. Unit: m³/m³.
 * @throws `DomainError` outside the ranges; `InputError` when the height is above the medium, or when a container that has just
 * drained already has more suction there.
 * @validity Water at rest; while roots drink, the suction near them is larger. As for container capacity.
 * @source definition: hydrostatics
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = cylinderContainer({ diameter: centimetres(10), height: centimetres(12) })
 * refillPointBySuction({ container, medium, maxSuction: centimetresOfSuction(16) }) // => 0.65310043
 */
export function refillPointBySuction(limits: AllowedSuction): WaterContent {
  requireObject(limits, 'limits')
  requireMediumInContainer(limits)
  const { container, medium, suctionHeight = (container.height / 2) as Length } = limits
  const suction = numberIn(limits.maxSuction, SUCTION, 'maxSuction')
  const height = numberIn(suctionHeight, HEIGHT, 'suctionHeight')
  if (height > container.height)
    throw new InputError(
      'suctionHeight',
      `${height} cm is above the medium of ${container.height} cm`,
      'measure inside it',
    )
  if (suction < height)
    throw new InputError(
      'maxSuction',
      `${suction} cm at a height of ${height} cm is less than when the container has just drained`,
      'give more suction, or a lower place',
    )
  return meanWaterContentAtRest({ container, medium, bottomSuction: (suction - height) as SuctionHead }) as WaterContent
}
