import { rangeText } from './domain.js'
import { explained, type WordsOf } from './explained.js'
import type { Finding } from './finding.js'
import type { ValidityFinding } from './validity.js'

/** Which input lies outside the span where its formula was measured. */
export const VALIDITY_WORDS: WordsOf<ValidityFinding> = {
  'outside-validity': [
    ({ of, note, about, value, min = -Infinity, max = Infinity, unit = '1' }) => {
      const shown = unit === '1' ? '' : ` ${unit}`
      return `${of}: ${about} ${value}${shown} is outside ${rangeText({ min, max, ends: '[]' })}${shown}, where the equation was measured (${note})`
    },
  ],
}

/**
 * Puts what `validityOf` found into words: which input lies outside which span.
 *
 * @param finding - One of the findings of `validityOf`.
 * @procedure Writes the formula, the input, its value and the published span into a sentence.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for another code.
 * @source definition
 * @example
 * const [outside] = validityOf(validityTopp1980, { apparent: 55 })
 * outside && explainQuantityFinding(outside).message.split(',')[0] // => 'waterContentTopp1980: apparent 55 is outside [3'
 */
export function explainQuantityFinding(finding: ValidityFinding): Finding {
  return explained(finding, VALIDITY_WORDS)
}
