/** Spaces that people and browsers put between groups of digits: plain, no-break, figure, thin and narrow no-break. */
const SPACE = '[ \\u00a0\\u2007\\u2009\\u202f]'
const NUMBER = `[+-]?(?:\\d{1,3}(?:${SPACE}\\d{3})+(?!\\d)|\\d+)?(?:\\.\\d*)?(?:[eE][+-]?\\d+)?`

/** A number and what follows it. */
export interface NumberAndRest {
  readonly number: number
  readonly rest: string
}

/**
 * The number at the start of a text, with a decimal point and, if wanted, digits in groups of three that a space divides; what is no such
 * number has a problem in words.
 */
export function leadingNumber(text: string): NumberAndRest | string {
  const [digits = ''] = new RegExp(`^${NUMBER}`).exec(text) ?? []
  const rest = text.slice(digits.length).trim()
  if (!/\d/.test(digits)) return 'is not a number with a unit'
  if (rest.startsWith(',')) return 'has a comma, which is a decimal point to some and divides thousands for others'
  // `1/cm` is a unit that starts with a digit; any other digit belongs to the number, and would be lost.
  if (/^(?:[\d.·⋅×*]|['’_]\d)/.test(rest) && !/^1 ?\//.test(rest))
    return 'has digits that are not in groups of three, or two numbers'
  return { number: Number(digits.replace(new RegExp(SPACE, 'g'), '')), rest }
}
