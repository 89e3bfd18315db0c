/** The domain of one argument: outside it there is no answer. NaN and the infinities are always outside. */
export interface Span {
  /** What the number is, in the words of the error message. */
  readonly quantity: string
  readonly unit: string
  readonly min: number
  readonly max: number
  /** Which ends do not belong to the domain. An infinite end never does. */
  readonly open?: 'min' | 'max' | 'both' | undefined
  /** What the caller should do about it. */
  readonly hint: string
}

/** Whether a number is an end of the span that belongs to it. */
export function isClosedEnd(value: number, { min, max, open }: Pick<Span, 'min' | 'max' | 'open'>): boolean {
  // The difference is NaN for an infinite end, which never belongs.
  return (
    (value === min || value === max) &&
    value - value === 0 &&
    open !== 'both' &&
    open !== (value === min ? 'min' : 'max')
  )
}

/** The span in interval notation: `[0, 1)`. */
export function rangeText(span: Pick<Span, 'min' | 'max' | 'open'>): string {
  const { min, max } = span
  return `${isClosedEnd(min, span) ? '[' : '('}${min}, ${max}${isClosedEnd(max, span) ? ']' : ')'}`.replaceAll(
    'Infinity',
    '∞',
  )
}
