import { InputError } from './errors.js'
import type { CodedFinding } from './finding.js'
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
