import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'
import { requireObject } from '../quantity/guard.js'
import type { RefusalCode, WateringRefusal } from './check/refusal.js'

const WORDS: { readonly [Code in RefusalCode]: string } = {
  'request-unclear': 'the request gives no number of zero or more',
  'limit-missing': 'this limit is missing, or no number that it can be: without it no shot is safe',
  'limits-contradict': 'the full point does not lie inside the believable water contents',
  'volume-not-run-time':
    'the flow gives another volume in the run time than the one that is asked for: check the units',
  'shot-too-large': 'the shot is above the limit',
  'run-too-long': 'the run time is above the limit',
  'given-unknown': 'it is not known how much was given in the last 24 hours',
  'day-used-up': 'the sum of 24 hours is above the limit',
  'last-shot-unknown': 'it is not known when the last shot ended',
  'too-soon': 'the last shot ended too short a time ago',
  'no-reading': 'there is no reading',
  'unbelievable-reading': 'the reading lies outside what the medium can hold',
  'old-reading': 'the newest reading is too old, or of unknown age',
  'doubtful-reading': 'the reading did not pass its tests',
  full: 'the reading is at the full point or above it',
  'too-soon-for-back-up': 'the last shot or the last good reading is too short a time ago for a shot by time',
  'clock-doubtful': 'it is not known that the clock ran on since the last shot; a catch-up could water twice',
  'leak-unknown': 'it is not known whether water flows while closed',
  'flow-while-closed': 'water flows though every valve should be closed: shut the main valve',
  'lock-unknown': 'it is not known whether somebody works on the zone',
  locked: 'the zone is locked: somebody may be working on it',
  'alarms-unknown': 'it is not known which alarms stand',
  alarm: 'this alarm forbids watering',
}

/**
 * Puts a refusal of `checkWatering` into words.
 *
 * @procedure Looks up the sentence of the code and adds what it is about, the number, the limit and the unit where there are some.
 * @param refusal - One of the refusals of a check, made by `checkWatering`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `checkWatering` does not give.
 * @source common practice, no source
 * @example
 * const refusal = { code: 'too-soon' as const, level: 'caution' as const, value: 840, limit: 900, unit: 's' }
 * explainRefusal(refusal).message // => 'the last shot ended too short a time ago (840 s, limit 900 s)'
 */
export function explainRefusal(refusal: WateringRefusal): Finding {
  requireObject(refusal, 'refusal')
  const { code, about, value, limit, unit } = refusal
  if (!Object.hasOwn(WORDS, code))
    throw new InputError('refusal', `"${code}" is no code of a check`, `give one of ${Object.keys(WORDS).join(', ')}`)
  const number = (n: number) => `${Number(n.toPrecision(4))}${unit === '1' || unit === undefined ? '' : ` ${unit}`}`
  const limits = limit === undefined ? '' : `, limit ${number(limit)}`
  const numbers = value === undefined ? '' : ` (${number(value)}${limits})`
  const message = `${about === undefined ? '' : `${about}: `}${WORDS[code]}${numbers}`
  return { ...refusal, message, source: 'common practice, no source' }
}
