import { explained, type OneCodeEach, type ReasonCode } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { LocalOffset } from '../record/local-time.js'
import { RECORD_REASON_WORDS } from '../record/record-words.js'
import type { DayDifference } from './day/day-differences.js'
import type { ZoneFinding } from './findings/zone-finding.js'
import type { ZoneReason } from './findings/zone-reason.js'
import { wallClock } from './record/local-day.js'
import { ZONE_REASON_WORDS } from './words/zone-reason-words.js'
import { type ClockTime, DIFFERENCE_WORDS, ZONE_WORDS } from './words/zone-words.js'

/** What a review finds, what a proposal changes, or why a result of a zone is not known. */
export type ExplainedZone = OneCodeEach<[ZoneFinding, DayDifference, ReasonCode<ZoneReason>]>

/**
 * Puts what a review of a zone finds into words, what a proposal changes, or why a result of a zone is not known.
 *
 * @procedure Looks the code up and fills in the numbers.
 * @param finding - A finding of a review, a difference of a proposal, or `{ code: result.reason }` of a result that is not known.
 * @param clock - What local clocks do, as in the zone; without it times are told in universal time.
 * @returns A finding with one sentence for people, without a full stop.
 * @throws `InputError` for a code that this topic does not give.
 * @source definition
 * @example
 * explainZoneFinding({ code: 'given', level: 'note', today: 4, tomorrow: 5 }).message // => '5.00 L instead of 4.00 L (+25 %)'
 * explainZoneFinding({ code: 'no-watering-log' }).message // => 'there is no log of water given and drained'
 */
export function explainZoneFinding(finding: ExplainedZone, clock: readonly LocalOffset[] = []): Finding {
  return explained<ExplainedZone, [at: ClockTime]>(
    finding,
    { ...ZONE_WORDS, ...DIFFERENCE_WORDS, ...ZONE_REASON_WORDS, ...RECORD_REASON_WORDS },
    (time) => wallClock(clock, time),
  )
}
