import { explained, type OneCodeEach, type ReasonCode } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { WateringRefusal } from './check/refusal.js'
import { REFUSAL_WORDS, refusalInWords } from './check/refusal-words.js'
import type { Cause, UnknownReason } from './diagnosis/cause/cause.js'
import { CAUSE_WORDS, causeInWords, UNKNOWN_WORDS } from './diagnosis/cause/cause-words.js'
import type { RecoveryFinding } from './plan-recovery.js'
import { RECOVERY_WORDS, recoveryInWords } from './recovery-words.js'
import type { WateringDoubt, WateringFinding, WateringReason } from './watering/findings/finding.js'
import { DOUBT_WORDS, REASON_WORDS, wateringInWords } from './watering/findings/watering-words.js'
import type { WateringSettingsFinding } from './watering/settings/settings-finding.js'
import { SETTINGS_WORDS, settingInWords } from './watering/settings/settings-words.js'

/** Everything that is told of a decision, its settings, a check, a diagnosis or a recovery. */
export type ControlFinding = OneCodeEach<
  [
    WateringFinding | ReasonCode<WateringDoubt>,
    ReasonCode<WateringReason>,
    WateringRefusal,
    WateringSettingsFinding,
    RecoveryFinding,
    Cause,
    ReasonCode<UnknownReason>,
  ]
>

/**
 * Puts into words what is told of a decision, of a shot that is refused, of what may be wrong in a zone, or of watering after an outage:
 * what it is, on which numbers it rests, and what to do by hand.
 *
 * @procedure Looks up the sentence of the code and writes what it is about and its numbers with their units into it.
 * @param finding - A finding, a refusal or a cause, or `{ code: decision.reason }` of a decision or of what cannot be told. Range: any.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that this topic does not give.
 * @source common practice, no source
 * @example
 * const cause = {
 *   code: 'flow-meter-wrong' as const, level: 'caution' as const, weight: 0.9, since: 0, check: 'fill-a-bucket' as const,
 *   evidence: [{ code: 'metered-share', value: 0, unit: '1', usual: 1 }],
 * }
 * explainControlFinding(cause).message // => 'The flow meter does not count what flows (metered share 0 %, usually 100 %). Fill a measured bucket through the meter, and see whether it counts it.'
 * explainControlFinding({ code: 'resting' }).message // => 'the last shot ended too recently'
 * const refusal = { code: 'too-soon' as const, level: 'caution' as const, value: 840, limit: 900, unit: 's' }
 * explainControlFinding(refusal).message // => 'the last shot ended too recently (14 min, limit 15 min)'
 */
export function explainControlFinding(finding: ControlFinding): Finding {
  const found = explained<ControlFinding>(finding, {
    ...inWords(REASON_WORDS, (_, sentence) => sentence),
    ...inWords(DOUBT_WORDS, wateringInWords),
    ...inWords(REFUSAL_WORDS, refusalInWords),
    ...inWords(SETTINGS_WORDS, settingInWords),
    ...inWords(RECOVERY_WORDS, recoveryInWords),
    ...inWords(CAUSE_WORDS, causeInWords),
    ...inWords(UNKNOWN_WORDS, (_, sentence) => sentence),
  })
  return Array.isArray(found.about) ? { ...found, about: found.about.join(', ') } : found
}

/** A family of sentences, each with what its finding adds to it. */
function inWords<Code extends string, F>(
  sentences: Readonly<Record<Code, string>>,
  say: (finding: F, sentence: string) => string,
) {
  const rows = (Object.keys(sentences) as Code[]).map((code) => [
    code,
    [(finding: F) => say(finding, sentences[code]), 'common practice, no source'],
  ])
  return Object.fromEntries(rows) as {
    readonly [Each in Code]: readonly [words: (finding: F) => string, source: string]
  }
}
