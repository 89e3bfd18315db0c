/** Spaces that people and browsers put between groups of digits: plain, no-break, figure, thin and narrow no-break. */
const SPACES = /[ \u00a0\u2007\u2009\u202f]/g
/** A number at the start: digits at a stretch or in groups of three, with a decimal point and an exponent if wanted. */
const NUMBER = /^[+-]?(?:\d{1,3}(?:[ \u00a0\u2007\u2009\u202f]\d{3})+(?!\d)|\d+)?(?:\.\d*)?(?:[eE][+-]?\d+)?/

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
  const [digits = ''] = NUMBER.exec(text) ?? []
  const rest = text.slice(digits.length).trim()
  if (!/\d/.test(digits)) return 'is not a number with a unit'
  if (rest.startsWith(',')) return 'has a comma, which means two things'
  // `1/cm` is a unit that starts with a digit; any other digit belongs to the number, and would be lost.
  if (/^(?:[\d.·⋅×*]|['’_]\d)/.test(rest) && !/^1 ?\//.test(rest))
    return 'has digits that are not in groups of three, or two numbers'
  return { number: Number(digits.replace(SPACES, '')), rest }
}
