import type { Measured } from './measured.js'
import { factorBetween } from './product.js'
import { unitOfKind } from './signatures.js'

/** The number in the unit of a kind that the quantity may be; a product is in the unit of the first of its kinds. */
export function inOtherKind(value: Measured, kind: string): number {
  const unit = unitOfKind(kind)
  return unit === value.unit ? value.number : value.number * factorBetween(value.unit, unit)
}
