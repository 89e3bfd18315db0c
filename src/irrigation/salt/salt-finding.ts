import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import type { DrainEC, DrainFraction } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import type { HowSerious } from '../terms.js'

/** What is to be known of a salt balance, without words; `explainSaltFinding` has them. */
export interface SaltFinding extends HowSerious {
  /** Salts pile up, or leave. */
  readonly code: 'not-steady'
  /** By how much the EC of the root zone rose in that time. Unit: dS/m. Range: any. */
  readonly rise: number
  /** Measured drain fraction. Unit: 1. Range: any. */
  readonly drainFraction: DrainFraction
  /** Drain fraction that the ECs would mean at a steady state. Unit: 1. Range: any. */
  readonly steadyFraction: DrainFraction | undefined
  /** EC towards which the drain tends. Unit: dS/m. Range: any. */
  readonly headingFor: DrainEC | undefined
}

/**
 * Puts a finding of a salt balance into words: where salts go, and which number not to take for the drain fraction.
 *
 * @procedure Writes the numbers of the finding into the sentence of its code.
 * @param finding - One of the findings of `checkSaltBalance`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `checkSaltBalance` does not give.
 * @source definition: salt balance of the root zone
 * @example
 * const { findings } = checkSaltBalance({
 *   applied: litres(3.2),
 *   drained: litres(0.38),
 *   feedEC: decisiemensPerMetre<SolutionEC>(2.6),
 *   drainEC: decisiemensPerMetre<DrainEC>(4.9),
 *   rootZoneWater: litres(7),
 * })
 * const [stored] = findings.map(explainSaltFinding)
 * stored?.value // => 0.92257
 */
export function explainSaltFinding(finding: SaltFinding): Finding {
  requireObject(finding, 'finding')
  const { code, level, rise, drainFraction: share, steadyFraction: implied, headingFor: heading } = finding
  if (code !== 'not-steady')
    throw new InputError('finding', `"${code}" is no code of a salt balance`, 'give not-steady')
  const ratio =
    implied === undefined ? '' : `; the ${(100 * implied).toFixed(0)} % that the ECs suggest is not the drain fraction`
  const end = heading === undefined ? '' : `, heading for ${heading.toFixed(1)} dS/m in the drain`
  return {
    code,
    level,
    message: `salts are ${rise > 0 ? 'being stored' : 'being lost'}: ${(100 * share).toFixed(1)} % drains and the root zone changes by ${rise.toFixed(2)} dS/m in this time${end}${ratio}`,
    about: 'rise',
    value: rise,
    unit: 'dS/m',
    source: 'salt balance of the root zone',
  }
}
