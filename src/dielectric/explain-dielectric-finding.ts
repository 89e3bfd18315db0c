import { digits, explained, type WordsOf } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { PermittivityFinding } from './relations/dobson-1985.js'

const WORDS: WordsOf<PermittivityFinding> = {
  'between-fits': [
    ({ value }) =>
      `between 1.3 and 1.4 GHz two fits meet, which differ by ${digits(value)} in permittivity here: the truth may be anywhere between them`,
  ],
}

/**
 * Puts what to mind about a computed permittivity into words.
 *
 * @param finding - One of the findings of `permittivityDobson1985`.
 * @procedure Writes the step between the two fits into a sentence.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for another code.
 * @source definition
 * @example
 * explainDielectricFinding({ code: 'between-fits', level: 'caution', about: 'frequency', value: 0.8, unit: '1' }).about // => 'frequency'
 */
export function explainDielectricFinding(finding: PermittivityFinding): Finding {
  return explained(finding, WORDS)
}
