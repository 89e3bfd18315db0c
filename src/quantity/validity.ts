import { rangeText } from './domain.js'
import { InputError } from './errors.js'
import { explained, type WordsOf } from './explained.js'
import type { CodedFinding, Finding } from './finding.js'
import { requireObject } from './guard.js'

/** Where the authors of a formula measured. Outside it the formula is still computed, but nobody has checked it there. */
export interface Validity {
  /** The public function it belongs to. */
  readonly of: string
  /** For which media, climates or instruments, in words. */
  readonly note: string
  /** The measured span of each input, in the unit that the function takes. */
  readonly inputs: Readonly<Record<string, { readonly min: number; readonly max: number; readonly unit: string }>>
}

/** An input outside the span where a formula was measured. */
export type ValidityFinding = CodedFinding<'outside-validity'> & {
  /** The formula, by the name of its function. */
  readonly of: string
  /** For which media, climates or instruments it was measured, in the words of its record. */
  readonly note: string
}

/**
 * Says which inputs lie outside the span for which a formula was published.
 *
 * @param validity - The formula's own record, exported beside it (`validityTopp1980` for `waterContentTopp1980`).
 * @param values - Values of some or all of its inputs, by name, in the units of the record.
 * @procedure Compares each value with the published span of its input.
 * @returns One finding for each value outside; an empty list when all lie inside.
 * @throws `InputError` for a name that the record does not list.
 * @source definition
 * @example
 * validityOf(validityTopp1980, { apparent: 55 }).length // => 1
 */
export function validityOf(validity: Validity, values: Readonly<Record<string, number>>): ValidityFinding[] {
  requireObject(values, 'values')
  requireObject(validity, 'validity')
  requireObject(validity.inputs, 'validity.inputs')
  const findings: ValidityFinding[] = []
  for (const [name, value] of Object.entries(values)) {
    const span = Object.hasOwn(validity.inputs, name) ? validity.inputs[name] : undefined
    if (span === undefined) {
      throw new InputError(
        name,
        `${validity.of} has no published span for it`,
        `ask for one of ${Object.keys(validity.inputs).join(', ')}`,
      )
    }
    if (value >= span.min && value <= span.max) continue
    const { of, note } = validity
    findings.push({ code: 'outside-validity', level: 'caution', of, note, about: name, value, ...span })
  }
  return findings
}

const WORDS: WordsOf<ValidityFinding> = {
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
 * outside && explainValidity(outside).message.split(',')[0] // => 'waterContentTopp1980: apparent 55 is outside [3'
 */
export function explainValidity(finding: ValidityFinding): Finding {
  return explained(finding, WORDS)
}
