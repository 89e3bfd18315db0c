import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Suction with which a medium holds its water, as a head of water; zero at saturation, larger when drier. Unit: cm. */
export type SuctionHead = number &
  Kind<'suction head in centimetres of water, from centimetresOfSuction() or kilopascalsOfSuction()'>

const SUCTION: Domain = {
  quantity: 'suction',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'suction is counted positive: give zero or more, without the minus sign of a matric potential',
}

/**
 * Suction with which a medium holds its water, as a head of water, from a number in cm of water.
 *
 * ```math
 * s = v
 * ```
 *
 * @param value - Number in cm of water. Unit: cm of water. Range: [0, ∞).
 * @returns Suction with which a medium holds its water. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source definition: the head of a column of water of density 1000 kg/m³ under standard gravity
 * @example
 * ```ts
 * centimetresOfSuction(2) // => 2
 * ```
 */
export function centimetresOfSuction(value: number): SuctionHead {
  return numberIn(value, SUCTION) as SuctionHead
}

/**
 * The number of cm of water in a quantity that centimetresOfSuction() makes.
 *
 * ```math
 * v = s
 * ```
 *
 * @param quantity - Suction with which a medium holds its water. Unit: cm. Range: any.
 * @returns Plain number. Unit: cm of water.
 * @source definition: the head of a column of water of density 1000 kg/m³ under standard gravity
 * @example
 * ```ts
 * inCentimetresOfSuction(centimetresOfSuction(2)) // => 2
 * ```
 */
export function inCentimetresOfSuction(quantity: SuctionHead): number {
  return quantity
}

/**
 * Suction with which a medium holds its water, as a head of water, from a number in kPa.
 *
 * ```math
 * s = v / 0.0980665
 * ```
 *
 * @param value - Number in kPa. Unit: kPa. Range: [0, ∞).
 * @returns Suction with which a medium holds its water. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure (2019) and CGPM 1901: 9.80665 m/s² times 1000 kg/m³
 * @example
 * ```ts
 * kilopascalsOfSuction(2) // => 20.3943242596
 * ```
 */
export function kilopascalsOfSuction(value: number): SuctionHead {
  return convertedIn(value, value / 0.0980665, 'kPa', SUCTION) as SuctionHead
}

/**
 * The number of kPa in a quantity that kilopascalsOfSuction() makes.
 *
 * ```math
 * v = s \times 0.0980665
 * ```
 *
 * @param quantity - Suction with which a medium holds its water. Unit: cm. Range: any.
 * @returns Plain number. Unit: kPa.
 * @source BIPM SI Brochure (2019) and CGPM 1901: 9.80665 m/s² times 1000 kg/m³
 * @example
 * ```ts
 * inKilopascalsOfSuction(kilopascalsOfSuction(2)) // => 2
 * ```
 */
export function inKilopascalsOfSuction(quantity: SuctionHead): number {
  return quantity * 0.0980665
}

/**
 * Suction with which a medium holds its water, as a head of water, from a number in hPa.
 *
 * ```math
 * s = v / 0.980665
 * ```
 *
 * @param value - Number in hPa. Unit: hPa. Range: [0, ∞).
 * @returns Suction with which a medium holds its water. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure (2019) and CGPM 1901: 9.80665 m/s² times 1000 kg/m³
 * @example
 * ```ts
 * hectopascalsOfSuction(2) // => 2.03943242596
 * ```
 */
export function hectopascalsOfSuction(value: number): SuctionHead {
  return convertedIn(value, value / 0.980665, 'hPa', SUCTION) as SuctionHead
}

/**
 * The number of hPa in a quantity that hectopascalsOfSuction() makes.
 *
 * ```math
 * v = s \times 0.980665
 * ```
 *
 * @param quantity - Suction with which a medium holds its water. Unit: cm. Range: any.
 * @returns Plain number. Unit: hPa.
 * @source BIPM SI Brochure (2019) and CGPM 1901: 9.80665 m/s² times 1000 kg/m³
 * @example
 * ```ts
 * inHectopascalsOfSuction(hectopascalsOfSuction(2)) // => 2
 * ```
 */
export function inHectopascalsOfSuction(quantity: SuctionHead): number {
  return quantity * 0.980665
}

/**
 * Suction from its pF, the decimal logarithm of the suction head in centimetres of water.
 *
 * ```math
 * s = 10^{pF}
 * ```
 *
 * @param value - pF. Unit: 1. Range: (-∞, 9].
 * @returns Suction head. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source Schofield, R. K. (1935), Transactions of the Third International Congress of Soil Science 2:37-48 (memory)
 * @example
 * ```ts
 * pF(2) // => 100
 * ```
 */
export function pF(value: number): SuctionHead {
  numberIn(value, PF)
  return (10 ** value) as SuctionHead
}

/**
 * The pF of a suction: the decimal logarithm of the suction head in centimetres of water.
 *
 * ```math
 * pF = \log_{10} s
 * ```
 *
 * @param quantity - Suction head. Unit: cm. Range: (0, ∞).
 * @returns pF. Unit: 1.
 * @throws `DomainError` at zero suction, which has no pF.
 * @source Schofield, R. K. (1935), Transactions of the Third International Congress of Soil Science 2:37-48 (memory)
 * @example
 * ```ts
 * inPF(centimetresOfSuction(100)) // => 2
 * ```
 */
export function inPF(quantity: SuctionHead): number {
  return Math.log10(numberIn(quantity, UNSATURATED))
}

const PF: Domain = {
  quantity: 'pF',
  unit: '1',
  min: -Infinity,
  max: 9,
  ends: '(]',
  hint: 'pF runs to about 7 in oven-dry medium',
}
const UNSATURATED: Domain = {
  quantity: 'suction head',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'a saturated medium has no pF; give a suction above zero',
}
