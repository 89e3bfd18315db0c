import { explained, type OneCodeEach, type ReasonCode, type ReasonWords, type WordsOf } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import { asLitres } from '../quantity/in-words.js'
import type { RehearsalFinding } from './outcome/rehearsal-finding.js'
import type { RehearsalReason } from './outcome/rehearsal-reason.js'

/** What a rehearsal found, or why it has no such number. */
export type ExplainedRehearsal = OneCodeEach<[RehearsalFinding, ReasonCode<RehearsalReason>]>

const WORDS: WordsOf<RehearsalFinding> = {
  'beyond-limit-of-day': [
    ({ volume, limit }) =>
      `The controller gave ${asLitres(volume)} in the worst 24 h, more than the limit of ${asLitres(limit)}.`,
  ],
  'beyond-limit-of-day-against-will': [
    ({ volume, limit }) =>
      `${asLitres(volume)} passed in the worst 24 h, more than the limit of ${asLitres(limit)}, part of it while the controller wanted the valve closed: only a main valve, or a person, can stop that.`,
  ],
  'opening-too-long': [
    ({ duration, limit }) =>
      `The valve was open for ${Math.round(duration)} s at a time, longer than the limit of ${limit} s.`,
  ],
  'opened-outside-hours': [
    ({ openings }) => `The valve was opened outside the allowed hours: ${count(openings, 'opening')}.`,
  ],
  'opened-while-locked': [
    ({ openings }) =>
      `Water was given while the zone was locked and somebody was at work there: ${count(openings, 'opening')}.`,
  ],
  'opened-blind': [
    ({ openings }) => `The valve was opened without any believable reading: ${count(openings, 'opening')}.`,
  ],
  stress: [({ hours }) => `The zone was drier than the stress level for ${hours.toFixed(1)} h.`],
  'over-wet': [({ hours }) => `The zone was wetter than the full level for ${hours.toFixed(1)} h.`],
  'fault-without-alarm': [({ fault }) => `No alarm named the fault ${fault}.`],
  'false-alarms': [
    ({ alarms }) =>
      alarms === 1 ? 'One alarm named no fault that was there.' : `${alarms} alarms named no fault that was there.`,
  ],
  'controller-threw': [
    ({ calls }) => `The controller threw an error in ${count(calls, 'call')}; the valve was closed each time.`,
  ],
  'water-not-conserved': [
    ({ volume }) => `The simulation lost or made ${volume} L of water: its medium is at fault, not the controller.`,
  ],
}

const REASONS: ReasonWords<RehearsalReason> = {
  'never-named': ['no alarm named the fault'],
  'nothing-to-name': ['there was no fault for an alarm to name'],
  'fewer-than-two-openings': ['the valve was opened fewer than two times'],
}

/**
 * Puts a finding of a rehearsal into words, or why it has no such number.
 *
 * @procedure Puts the numbers of the finding into the sentence of its code.
 * @param finding - The finding, made by `rehearse`, or `{ code: result.reason }` of a number that there is not.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `rehearse` does not give.
 * @source definition
 * @example
 * explainRehearsalFinding({ code: 'stress', level: 'caution', hours: 3.25 }).message // => 'The zone was drier than the stress level for 3.3 h.'
 */
export function explainRehearsalFinding(finding: ExplainedRehearsal): Finding {
  return explained<ExplainedRehearsal>(finding, { ...WORDS, ...REASONS })
}

function count(number: number, thing: string): string {
  return `${number} ${thing}${number === 1 ? '' : 's'}`
}
