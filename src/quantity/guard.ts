import { DomainError } from './errors.js'
import type { Span } from './span.js'

/** The value, if it lies in the span. The two strict comparisons are the whole cost of the normal case. */
export function within(value: number, span: Span): number {
  if (value > span.min && value < span.max) return value
  return atEdge(value, span, '')
}

/** As `within`, for a number that was entered in another unit: a refusal shows both. */
export function entered(value: number, canonical: number, unit: string, span: Span): number {
  if (canonical > span.min && canonical < span.max) return canonical
  return atEdge(canonical, span, ` (entered as ${value} ${unit})`)
}

function atEdge(value: number, span: Span, enteredAs: string): number {
  const { min, max, open } = span
  if (Number.isFinite(value)) {
    if (value === min && open !== 'min' && open !== 'both') return value
    if (value === max && open !== 'max' && open !== 'both') return value
  }
  throw new DomainError(value, span, enteredAs)
}

/** A whole number in the span. */
export function wholeWithin(value: number, span: Span): number {
  if (Number.isInteger(value)) return within(value, span)
  throw new DomainError(value, { ...span, quantity: `${span.quantity} (a whole number)` })
}
