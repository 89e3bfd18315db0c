import type { Domain } from '../../quantity/domain.js'
import { SATURATED_CONTENT } from '../../quantity/domains.js'
import { DomainError, InputError } from '../../quantity/errors.js'
import type { InverseSuction, SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { ALPHA, ANY_SUCTION, PORE_CONNECTION, RESIDUAL_CONTENT } from '../domains.js'

/** A finite suction. */
export function finiteSuction(suction: number): number {
  return numberIn(suction, ANY_SUCTION)
}

/** Refuses limits of a curve that are impossible one by one or together. */
export function checkLimits(residual: number, saturated: number): void {
  numberIn(saturated, SATURATED_CONTENT, 'saturated')
  numberIn(residual, RESIDUAL_CONTENT, 'residual')
  if (residual >= saturated)
    throw new InputError(
      'residual',
      `a residual water content of ${residual} is not below the saturated one of ${saturated}`,
      'the curve must fall from saturated to residual',
    )
}

/** A positive scale of a curve. */
export function checkAlpha(alpha: InverseSuction): number {
  return numberIn(alpha, ALPHA, 'alpha')
}

/** The domain of an exponent of a curve: positive, and above `min` where the equation needs that. */
export function exponentDomain(name: string, min = 0): Domain {
  return { quantity: name, unit: '1', min, max: Infinity, ends: '()', hint: EXPONENT_HINT }
}

/** An exponent in its domain. */
export function checkExponent(name: string, value: number, min = 0): number {
  return numberIn(value, exponentDomain(name, min), name)
}

/** An exponent of pore connection above the value at which the conductivity would rise as the medium dries. */
export function checkConnection(l: number, min: number): number {
  if (numberIn(l, PORE_CONNECTION, 'poreConnection') > min) return l
  throw new InputError(
    'poreConnection',
    `with ${l} the conductivity would rise as the medium dries`,
    `give more than ${min} for this curve`,
  )
}

/** The water contents that a curve can hold at a finite suction. */
export function heldWaterContents(residual: number, saturated: number): Domain {
  return {
    quantity: 'water content',
    unit: 'm³/m³',
    min: residual,
    max: saturated,
    ends: '(]',
    hint: 'the curve holds only contents above its residual and up to its saturated water content',
  }
}

/** Logarithm of the effective saturation of a water content, with all digits near saturation too. */
export function logSaturation(waterContent: number, residual: number, saturated: number): number {
  const lack = (saturated - waterContent) / (saturated - residual)
  return lack < 0.5 ? Math.log1p(-lack) : Math.log((waterContent - residual) / (saturated - residual))
}

/**
 * Water content from the logarithm of an effective saturation: counted from the nearer limit, so that it never leaves them by rounding
 * and what is lacking keeps its digits.
 */
export function waterContentOf(logSaturation: number, residual: number, saturated: number): WaterContent {
  const range = saturated - residual
  return (
    logSaturation > -Math.LN2
      ? saturated + range * Math.expm1(logSaturation)
      : residual + range * Math.exp(logSaturation)
  ) as WaterContent
}

/** A suction that an inverse found, unless it is beyond all numbers. */
export function reachable(suction: number, waterContent: number, held: Domain): SuctionHead {
  if (suction < Infinity) return suction as SuctionHead
  throw new DomainError(waterContent, {
    ...held,
    hint: 'so close to the residual water content no finite suction is left',
  })
}

const EXPONENT_HINT = 'exponents of retention curves are positive, and some equations need more than 1 or 2'
