import { DomainError, InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { InverseSuction, WaterCapacity } from '../quantity/inverse-suction.js'
import type { Share } from '../quantity/share.js'
import type { Span } from '../quantity/span.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { WaterContent } from '../quantity/water-content.js'

/**
 * How a medium holds water: one curve, whatever its equation. Containers, flow and plots take any object of this shape, so
 * that a bundle holds only the models it uses. Suctions of zero or less (a water pressure) are saturated.
 */
export interface RetentionModel {
  /** Short name of the equation. */
  readonly kind: string
  /** The numbers of the equation, for printing and storing. */
  readonly parameters: Readonly<Record<string, number>>
  /** Water content at zero suction. Unit: m³/m³. Range: any. */
  readonly saturated: WaterContent
  /** Water content that no suction of the equation removes. Unit: m³/m³. Range: any. */
  readonly residual: WaterContent
  /** Suctions at which the curve has a kink, such as an air entry; integrals are split there. Unit: cm. Range: any. */
  readonly breakpoints: readonly SuctionHead[]
  /** Water content at a suction. */
  readonly waterContent: (suction: SuctionHead) => WaterContent
  /** Specific water capacity at a suction: the slope of the curve without its minus sign. */
  readonly capacity: (suction: SuctionHead) => WaterCapacity
  /** The largest suction that still holds a water content: the inverse of the curve. */
  readonly suction: (content: WaterContent) => SuctionHead
  /** Conductivity at a suction as a share of that at saturation, where the equation has one. */
  readonly relativeConductivity?: (suction: SuctionHead) => Share
}

/** A retention model that also says how the medium conducts water. */
export interface ConductiveModel extends RetentionModel {
  /** Conductivity at a suction as a share of that at saturation. */
  readonly relativeConductivity: (suction: SuctionHead) => Share
}

const ANY_SUCTION: Span = {
  quantity: 'suction',
  unit: 'cm',
  min: -Infinity,
  max: Infinity,
  hint: 'give a finite suction; zero or less means saturated',
}
const SATURATED: Span = {
  quantity: 'saturated water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  open: 'min',
  hint: 'give the water content at zero suction, at most the porosity',
}
const RESIDUAL: Span = {
  quantity: 'residual water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  open: 'max',
  hint: 'give zero or the water content that very high suction leaves',
}
const ALPHA: Span = {
  quantity: 'alpha',
  unit: '1/cm',
  min: 0,
  max: Infinity,
  open: 'both',
  hint: 'about one over the suction at which the largest pores drain; mind 1/m and 1/kPa in tables',
}

/** A finite suction. */
export function finiteSuction(suction: number): number {
  return within(suction, ANY_SUCTION)
}

/** Refuses limits of a curve that are impossible one by one or together. */
export function checkLimits(residual: number, saturated: number): void {
  within(saturated, SATURATED)
  within(residual, RESIDUAL)
  if (residual >= saturated)
    throw new InputError(
      'residual',
      `a residual water content of ${residual} is not below the saturated one of ${saturated}`,
      'the curve must fall from saturated to residual',
    )
}

/** A positive scale of a curve. */
export function checkAlpha(alpha: InverseSuction): number {
  return within(alpha, ALPHA)
}

/** The water contents that a curve can hold at a finite suction. */
export function heldContents(residual: number, saturated: number): Span {
  return {
    quantity: 'water content',
    unit: 'm³/m³',
    min: residual,
    max: saturated,
    open: 'min',
    hint: 'the curve holds only contents above its residual and up to its saturated water content',
  }
}

/** A suction that an inverse found, unless it is beyond all numbers. */
export function reachable(suction: number, content: number, held: Span): SuctionHead {
  if (suction < Infinity) return suction as SuctionHead
  throw new DomainError(content, { ...held, hint: 'so close to the residual water content no finite suction is left' })
}
