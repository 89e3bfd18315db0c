import { type Domain, isClosedEnd } from './domain.js'
import { DomainError } from './errors.js'

/** The value, if it lies in the span. The two strict comparisons are the whole cost of the normal case. */
export function numberIn(value: number, span: Domain): number {
  if ((value > span.min && value < span.max) || isClosedEnd(value, span)) return value
  throw new DomainError(value, span)
}

/**
 * The canonical value of a number that was entered in another unit, if it lies in the span; a refusal shows what was entered.
 * For spans that end at zero or nowhere, whose ends are the same in every unit.
 */
export function convertedIn(value: number, canonical: number, unit: string, span: Domain): number {
  if ((canonical > span.min && canonical < span.max) || isClosedEnd(canonical, span)) return canonical
  throw new DomainError(value, { ...span, unit })
}

/** A whole number in the span, whose hint asks for one. */
export function wholeNumberIn(value: number, span: Domain): number {
  if (value % 1) throw new DomainError(value, span)
  return numberIn(value, span)
}
