/** The domain of one argument: outside it there is no answer. NaN and the infinities are always outside. */
export interface Domain {
  /** What the number is, in the words of the error message. */
  readonly quantity: string
  readonly unit: string
  readonly min: number
  readonly max: number
  /** Which ends belong to the domain, in interval notation. An infinite end never does. */
  readonly ends: '[]' | '[)' | '(]' | '()'
  /** What the caller should do about it. */
  readonly hint: string
}

/** Whether a number is an end of the span that belongs to it. */
export function isClosedEnd(value: number, { min, max, ends }: Pick<Domain, 'min' | 'max' | 'ends'>): boolean {
  return (value === min && ends[0] === '[') || (value === max && ends[1] === ']')
}

/** Whether a number lies in a domain, its closed ends included. */
export function isWithin(value: number, domain: Pick<Domain, 'min' | 'max' | 'ends'>): boolean {
  return (value > domain.min && value < domain.max) || isClosedEnd(value, domain)
}

/** The span in interval notation: `[0, 1)`. */
export function rangeText({ min, max, ends }: Pick<Domain, 'min' | 'max' | 'ends'>): string {
  return `${ends[0]}${min}, ${max}${ends[1]}`
}

/**
 * The domain with some of its properties put otherwise. A spread at its place would give each object a layout of its own, and the
 * guards, which all callers share, are slow in a program in which they meet many layouts.
 */
export function domainWith(domain: Domain, changes: Partial<Domain>): Domain {
  const { quantity, unit, min, max, ends, hint } = { ...domain, ...changes }
  return { quantity, unit, min, max, ends, hint }
}
