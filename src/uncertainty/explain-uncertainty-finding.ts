import { explained, type WordsOf } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { UncertaintyFinding } from './uncertainty-finding.js'

const STRAIGHT = 'jcgm-100-2008, 5.1.2 note; the limit is common practice, no source'
const WORDS: WordsOf<UncertaintyFinding> = {
  'input-near-its-end': [
    ({ about }) =>
      `one standard uncertainty of ${about} reaches beyond what the function takes, so its straight line may mislead: use the Monte Carlo method`,
    STRAIGHT,
  ],
  'not-straight': [
    ({ about }) =>
      `the function bends over the standard uncertainty of ${about}, so its straight line may mislead: use the Monte Carlo method`,
    STRAIGHT,
  ],
  'correlated-degrees-of-freedom': [
    'the effective degrees of freedom hold for independent inputs; with correlated ones they are only a guide',
    'jcgm-100-2008, G.4.1',
  ],
  'draws-refused': [
    ({ value, limit }) =>
      `the function refused ${value} of ${limit} draws, which are left out, so the spread is too small on that side`,
  ],
}

/**
 * Puts a finding about a propagated uncertainty into words.
 *
 * @param finding - One of the findings of `propagateFirstOrder` or `propagateMonteCarlo`.
 * @procedure Looks up the sentence of the code and writes the numbers of the finding into it.
 * @returns A finding with the sentence for people and the source of the rule.
 * @throws `InputError` for a code that this topic does not give.
 * @source definition
 * @example
 * explainUncertaintyFinding({ code: 'draws-refused', level: 'caution', value: 20, limit: 1000, unit: '1' }).message.slice(0, 37) // => 'the function refused 20 of 1000 draws'
 */
export function explainUncertaintyFinding(finding: UncertaintyFinding): Finding {
  return explained(finding, WORDS)
}
