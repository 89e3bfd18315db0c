import { explained, type OneCodeEach, type ReasonCode } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { RecordFinding } from './record-finding.js'
import type { RecordReason } from './record-reason.js'
import { RECORD_REASON_WORDS, RECORD_WORDS } from './record-words.js'

/** What a record shows of its probes, or why something about it is not known. */
export type ExplainedRecord = OneCodeEach<[RecordFinding, ReasonCode<RecordReason>]>

/**
 * Puts what a record shows of its probes into words, or why something about it is not known.
 *
 * @procedure Puts the numbers of the finding into the sentence of its code.
 * @param finding - From `compareProbes`, `responseToShots`, `saltDrift` or `findClimbs`, or `{ code: result.reason }` of a result of this topic that is not known.
 * @returns A finding with the sentence for people, which has no full stop.
 * @throws `InputError` for a code that this topic does not give.
 * @source common practice, no source
 * @example
 * explainRecordFinding({ code: 'few-shots', level: 'note', shots: 2 }).message // => 'this rests on only 2 shots: use three or more'
 * explainRecordFinding({ code: 'not-falling' }).message // => 'the water content does not fall'
 */
export function explainRecordFinding(finding: ExplainedRecord): Finding {
  return explained<ExplainedRecord>(finding, { ...RECORD_WORDS, ...RECORD_REASON_WORDS })
}
