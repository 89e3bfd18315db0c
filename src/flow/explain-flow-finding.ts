import { explained, type OneCodeEach, type ReasonCode, type ReasonWords, type WordsOf } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { FlowReason } from './flow-reason.js'
import type { MediumFitFinding } from './inverse/medium-findings.js'

/** What is found out about a fitted medium, or why something about a flow is not known. */
export type FlowFinding = OneCodeEach<[MediumFitFinding, ReasonCode<FlowReason>]>

const FIT: WordsOf<MediumFitFinding> = {
  'numbers-move-together': [
    ({ first, second, correlation }) =>
      `${first} and ${second} move together (correlation ${correlation.toFixed(2)}): the record determines the two together better than either alone, so fix one from another measurement`,
  ],
  'differences-in-runs': [
    ({ series, autocorrelation }) =>
      `the simulation stays above or below the ${series} for several steps in a row (correlation ${autocorrelation.toFixed(2)} with the next): it leaves out something that matters, and the intervals are too narrow`,
  ],
  'weights-off': [
    ({ series, ratio }) =>
      `the ${series} is missed by ${ratio.toFixed(1)} times its uncertainty, and the other series by far less: give the uncertainties of both as they are`,
  ],
}

const REASONS: ReasonWords<FlowReason> = {
  'no-drain': ['nothing drained, so the drain has no conductivity'],
  'at-its-limit': ['the search ended at the limit of what the number may be'],
  'interval-reaches-limit': ['the interval of the number reaches the limit of what it may be'],
  'not-told-by-record': ['other values of the number would drain alike: the record does not determine it'],
  'medium-conducts-all': ['the wetted medium conducts all that falls, so no water ever stands on it'],
}

/**
 * Puts a finding of a fitted medium into words, or why something about a flow is not known.
 *
 * @procedure Writes the numbers of the finding into the sentence of its code.
 * @param finding - One of the findings of `fitMediumToRecord`, or `{ code: result.reason }` of a result that is not known.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that this topic does not give.
 * @source definition
 * @example
 * const { message } = explainFlowFinding({ code: 'weights-off', level: 'caution', series: 'drain', ratio: 4 })
 * message // => 'the drain is missed by 4.0 times its uncertainty, and the other series by far less: give the uncertainties of both as they are'
 */
export function explainFlowFinding(finding: FlowFinding): Finding {
  return explained<FlowFinding>(finding, { ...FIT, ...REASONS })
}
