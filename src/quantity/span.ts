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

/** The span in interval notation: `[0, 1)`. */
export function rangeText({ min, max, open }: Pick<Span, 'min' | 'max' | 'open'>): string {
  const left = min === -Infinity || open === 'min' || open === 'both' ? '(' : '['
  const right = max === Infinity || open === 'max' || open === 'both' ? ')' : ']'
  const text = (x: number) => String(x).replace('Infinity', '∞')
  return `${left}${text(min)}, ${text(max)}${right}`
}
