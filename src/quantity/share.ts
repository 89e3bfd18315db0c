import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'
import type { WaterContent } from './water-content.js'

/** Volume of pores per volume of medium. Unit: 1. */
export type Porosity = number & Kind<'porosity as a share, from fraction() or percent()'>

/** Volume of air per volume of medium. Unit: 1. */
export type AirFilledPorosity = number & Kind<'air-filled porosity as a share, from fraction() or percent()'>

/** Volume of water per volume of pores. Unit: 1. */
export type DegreeOfSaturation = number & Kind<'degree of saturation as a share, from fraction() or percent()'>

/** Volume of drain per volume of water applied. Unit: 1. */
export type DrainFraction = number & Kind<'drain fraction as a share, from fraction() or percent()'>

/** Share of the available water that may be used before the next irrigation. Unit: 1. */
export type DepletionFraction = number & Kind<'depletion fraction as a share, from fraction() or percent()'>

/** Vapour pressure per saturation vapour pressure. Unit: 1. */
export type RelativeHumidity = number & Kind<'relative humidity as a share, from fraction() or percent()'>

/** Share of a mass: sand, clay or organic matter in the dry mass. Unit: 1. */
export type MassFraction = number & Kind<'mass fraction as a share, from fraction() or percent()'>

/** Share of the ground: covered by leaves, wetted, exposed. Unit: 1. */
export type GroundFraction = number & Kind<'share of the ground, from fraction() or percent()'>

/** Any other share from 0 to 1: an efficiency, a transmission, a reflection. Unit: 1. */
export type Share = number & Kind<'share from 0 to 1, from fraction() or percent()'>

/** Any kind that `fraction()` and `percent()` can make. The place where a value is used says which one it is. */
export type AnyShare =
  | Porosity
  | AirFilledPorosity
  | DegreeOfSaturation
  | DrainFraction
  | DepletionFraction
  | RelativeHumidity
  | MassFraction
  | GroundFraction
  | Share
  | WaterContent

/** What `fraction()` and `percent()` give when nothing says of what it is a share; no function takes it. */
export type UnnamedShare = number &
  Kind<'share of something unnamed: annotate it as DrainFraction, Porosity, RelativeHumidity, ...'>

const PERCENT: Domain = {
  quantity: 'share',
  unit: '%',
  min: 0,
  max: 100,
  ends: '[]',
  hint: 'give a share from 0 to 100 with percent(), or from 0 to 1 with fraction()',
}
const SHARE: Domain = {
  quantity: 'share',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share from 0 to 1 with fraction(), or from 0 to 100 with percent()',
}

/**
 * A share from a number between 0 and 1; its kind is that of the place where it is used.
 *
 * ```math
 * f = v
 * ```
 *
 * @param value - Number. Unit: 1. Range: [0, 1].
 * @returns Share. Unit: 1.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * fraction(0.15) // => 0.15
 * ```
 */
export function fraction<Q extends AnyShare | UnnamedShare = UnnamedShare>(value: number): Q {
  return numberIn(value, SHARE) as Q
}

/**
 * A share as a plain number between 0 and 1.
 *
 * ```math
 * v = f
 * ```
 *
 * @param quantity - Share. Unit: 1. Range: any.
 * @returns Plain number. Unit: 1.
 * @source definition
 * @example
 * ```ts
 * inFraction(fraction(0.15)) // => 0.15
 * ```
 */
export function inFraction(quantity: AnyShare | UnnamedShare): number {
  return quantity
}

/**
 * A share from a number between 0 and 100; its kind is that of the place where it is used.
 *
 * ```math
 * f = v / 100
 * ```
 *
 * @param value - Number. Unit: %. Range: [0, 100].
 * @returns Share. Unit: 1.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * percent(15) // => 0.15
 * ```
 */
export function percent<Q extends AnyShare | UnnamedShare = UnnamedShare>(value: number): Q {
  return (numberIn(value, PERCENT) / 100) as Q
}

/**
 * A share in percent.
 *
 * ```math
 * v = 100 f
 * ```
 *
 * @param quantity - Share. Unit: 1. Range: any.
 * @returns Plain number. Unit: %.
 * @source definition
 * @example
 * ```ts
 * inPercent(percent(15)) // => 15
 * ```
 */
export function inPercent(quantity: AnyShare | UnnamedShare): number {
  return quantity * 100
}
