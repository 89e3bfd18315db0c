import { rangeText } from './domain.js'
import { InputError } from './errors.js'
import type { Finding } from './finding.js'
import { requireObject } from './require-object.js'

/** Where the authors of a formula measured. Outside it the formula is still computed, but nobody has checked it there. */
export interface Validity {
  /** The public function it belongs to. */
  readonly of: string
  /** For which media, climates or instruments, in words. */
  readonly note: string
  /** The measured span of each input, in the unit that the function takes. */
  readonly inputs: Readonly<Record<string, { readonly min: number; readonly max: number; readonly unit: string }>>
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
 * ```ts
 * validityOf(validityTopp1980, { apparent: 55 }).length // => 1
 * ```
 */
export function validityOf(validity: Validity, values: Readonly<Record<string, number>>): Finding[] {
  requireObject(values, 'values')
  requireObject(validity, 'validity')
  const findings: Finding[] = []
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
    const unit = span.unit === '1' ? '' : ` ${span.unit}`
    findings.push({
      code: 'outside-validity',
      level: 'caution',
      message: `${validity.of}: ${name} ${value}${unit} is outside ${rangeText({ ...span, ends: '[]' })}${unit}, where the equation was measured (${validity.note})`,
      about: name,
      value,
      unit: span.unit,
    })
  }
  return findings
}
