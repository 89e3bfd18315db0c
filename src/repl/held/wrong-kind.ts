import { InputError } from '../../quantity/errors.js'
import { wordsOf } from '../../text/text-kind.js'
import type { Measured } from './measured.js'
import { unitsOf } from './signatures.js'

/** A quantity of a kind that does not belong where it was put: what it is, what is wanted, and how that is written. */
export function wrongKind(where: string, value: Measured, wanted: readonly string[]): InputError {
  const [first] = wanted
  if (first === undefined)
    return new InputError(where, `${value} is ${aKind(value)}`, 'give a plain number, without a unit')
  const names = wanted.length > 3 ? `${first} or another of its family` : wanted.join(' or ')
  const units = unitsOf(first).map((unit) => (unit === '1' ? 'no unit' : unit))
  return new InputError(
    `${where} (${names})`,
    `${value} is ${aKind(value)}`,
    `give ${withArticle(wordsOf(first))} in ${units.join(', ')}`,
  )
}

/** What a quantity is, in words: `a length`, `a share`. */
export function aKind(value: Measured): string {
  const [first] = value.kinds
  if (first === undefined) return `a number in ${value.unit}`
  return value.kinds.length > 1 ? `one of ${value.kinds.join(', ')}` : withArticle(wordsOf(first))
}

function withArticle(words: string): string {
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`
}
