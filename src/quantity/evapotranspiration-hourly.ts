import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Evapotranspiration of the reference surface in one hour. Unit: mm/h. */
export type HourlyReferenceET = number &
  Kind<'hourly reference evapotranspiration in mm/h, from millimetresPerHour() or inchesPerHour()'>

/** Evapotranspiration of the crop in one hour. Unit: mm/h. */
export type HourlyCropET = number &
  Kind<'hourly crop evapotranspiration in mm/h, from millimetresPerHour() or inchesPerHour()'>

/** Depth of water that emitters or rain bring in one hour. Unit: mm/h. */
export type ApplicationRate = number & Kind<'application rate in mm/h, from millimetresPerHour() or inchesPerHour()'>

/** Depth of water that passes a level in a medium in one hour, in the direction that the name says. Unit: mm/h. */
export type WaterFlux = number & Kind<'flux of water in mm/h, from millimetresPerHour() or inchesPerHour()'>

/** What a unit constructor gives when nothing says which kind is meant; no function takes it. */
export type UnnamedHourlyDepth = number &
  Kind<'depth per hour of something unnamed: annotate it as HourlyReferenceET, HourlyCropET, ApplicationRate or WaterFlux'>

/** Any kind that is given in mm/h. The place where a value is used says which one it is. */
export type AnyHourlyDepth = HourlyReferenceET | HourlyCropET | ApplicationRate | WaterFlux

const EVAPOTRANSPIRATION_HOURLY: Domain = {
  quantity: 'evapotranspiration hourly',
  unit: 'mm/h',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite depth of water per hour',
}

/**
 * Evapotranspiration hourly from a number in mm/h; its kind is that of the place where it is used.
 *
 * ```math
 * ET = v
 * ```
 *
 * @param value - Number in mm/h. Unit: mm/h. Range: (-∞, ∞).
 * @returns Evapotranspiration hourly. Unit: mm/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimetresPerHour(2) // => 2
 * ```
 */
export function millimetresPerHour<Q extends AnyHourlyDepth | UnnamedHourlyDepth = UnnamedHourlyDepth>(
  value: number,
): Q {
  return numberIn(value, EVAPOTRANSPIRATION_HOURLY) as Q
}

/**
 * The number of mm/h in a quantity that millimetresPerHour() makes.
 *
 * ```math
 * v = ET
 * ```
 *
 * @param quantity - Evapotranspiration hourly. Unit: mm/h. Range: any.
 * @returns Plain number. Unit: mm/h.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimetresPerHour(millimetresPerHour(2)) // => 2
 * ```
 */
export function inMillimetresPerHour(quantity: AnyHourlyDepth | UnnamedHourlyDepth): number {
  return quantity
}

/**
 * Evapotranspiration hourly from a number in in/h; its kind is that of the place where it is used.
 *
 * ```math
 * ET = v \times 25.4
 * ```
 *
 * @param value - Number in in/h. Unit: in/h. Range: (-∞, ∞).
 * @returns Evapotranspiration hourly. Unit: mm/h.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inchesPerHour(2) // => 50.8
 * ```
 */
export function inchesPerHour<Q extends AnyHourlyDepth | UnnamedHourlyDepth = UnnamedHourlyDepth>(value: number): Q {
  return convertedIn(value, value * 25.4, 'in/h', EVAPOTRANSPIRATION_HOURLY) as Q
}

/**
 * The number of in/h in a quantity that inchesPerHour() makes.
 *
 * ```math
 * v = ET / 25.4
 * ```
 *
 * @param quantity - Evapotranspiration hourly. Unit: mm/h. Range: any.
 * @returns Plain number. Unit: in/h.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inInchesPerHour(inchesPerHour(2)) // => 2
 * ```
 */
export function inInchesPerHour(quantity: AnyHourlyDepth | UnnamedHourlyDepth): number {
  return quantity / 25.4
}
