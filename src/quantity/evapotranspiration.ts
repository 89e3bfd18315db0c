import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Evapotranspiration of the reference surface. Unit: mm/d. */
export type ReferenceET = number &
  Kind<'reference evapotranspiration in mm/d, from millimetresPerDay() or inchesPerDay()'>

/** Evapotranspiration of the crop. Unit: mm/d. */
export type CropET = number & Kind<'crop evapotranspiration in mm/d, from millimetresPerDay() or inchesPerDay()'>

/** Water that an open pan loses. Unit: mm/d. */
export type PanEvaporation = number & Kind<'pan evaporation in mm/d, from millimetresPerDay() or inchesPerDay()'>

/** What a unit constructor gives when nothing says which kind is meant; no function takes it. */
export type UnnamedET = number &
  Kind<'evapotranspiration of an unnamed surface: annotate it as ReferenceET, CropET or PanEvaporation'>

/** Any kind that is given in mm/d. The place where a value is used says which one it is. */
export type AnyDailyDepth = ReferenceET | CropET | PanEvaporation

const EVAPOTRANSPIRATION: Domain = {
  quantity: 'evapotranspiration',
  unit: 'mm/d',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite depth of water per day',
}

/**
 * Evapotranspiration from a number in mm/d; its kind is that of the place where it is used.
 *
 * ```math
 * ET = v
 * ```
 *
 * @param value - Number in mm/d. Unit: mm/d. Range: (-∞, ∞).
 * @returns Evapotranspiration. Unit: mm/d.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimetresPerDay(2) // => 2
 * ```
 */
export function millimetresPerDay<Q extends AnyDailyDepth | UnnamedET = UnnamedET>(value: number): Q {
  return numberIn(value, EVAPOTRANSPIRATION) as Q
}

/**
 * The number of mm/d in a quantity that millimetresPerDay() makes.
 *
 * ```math
 * v = ET
 * ```
 *
 * @param quantity - Evapotranspiration. Unit: mm/d. Range: any.
 * @returns Plain number. Unit: mm/d.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimetresPerDay(millimetresPerDay(2)) // => 2
 * ```
 */
export function inMillimetresPerDay(quantity: AnyDailyDepth | UnnamedET): number {
  return quantity
}

/**
 * Evapotranspiration from a number in in/d; its kind is that of the place where it is used.
 *
 * ```math
 * ET = v \times 25.4
 * ```
 *
 * @param value - Number in in/d. Unit: in/d. Range: (-∞, ∞).
 * @returns Evapotranspiration. Unit: mm/d.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inchesPerDay(2) // => 50.8
 * ```
 */
export function inchesPerDay<Q extends AnyDailyDepth | UnnamedET = UnnamedET>(value: number): Q {
  return convertedIn(value, value * 25.4, 'in/d', EVAPOTRANSPIRATION) as Q
}

/**
 * The number of in/d in a quantity that inchesPerDay() makes.
 *
 * ```math
 * v = ET / 25.4
 * ```
 *
 * @param quantity - Evapotranspiration. Unit: mm/d. Range: any.
 * @returns Plain number. Unit: in/d.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inInchesPerDay(inchesPerDay(2)) // => 2
 * ```
 */
export function inInchesPerDay(quantity: AnyDailyDepth | UnnamedET): number {
  return quantity / 25.4
}
