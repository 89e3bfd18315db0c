import type { FoundCode, FoundNumbers } from '../quantity/finding.js'
import { inWords } from '../quantity/in-words.js'

/** The sentence with what it is about, its number and with what that was compared, which `than` leads in. */
export function sentenceWithNumbers(
  { about, value, limit, unit }: Pick<FoundCode, 'about'> & Partial<FoundNumbers>,
  sentence: string,
  than: string,
): string {
  // A number and its limit may be close.
  const number = (n: number) => inWords(n, unit ?? '1', { level: true, digits: 4 })
  const compared = limit === undefined ? '' : `, ${than} ${number(limit)}`
  const numbers = value === undefined ? '' : ` (${number(value)}${compared})`
  return `${about === undefined ? '' : `${about}: `}${sentence}${numbers}`
}
