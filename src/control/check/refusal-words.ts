import { sentenceWithNumbers } from '../sentence-with-numbers.js'
import type { RefusalCode, WateringRefusal } from './refusal.js'

/** Why a shot is refused. */
export const REFUSAL_WORDS: { readonly [Code in RefusalCode]: string } = {
  'input-unreadable': 'the input cannot be read: a part of it throws; give plain objects',
  'limit-unknown': 'there is no such limit, so it limits nothing: check its spelling',
  'request-unclear': 'the request needs a number of zero or more here',
  'limit-missing': 'this limit is missing or impossible: without it no shot is safe',
  'limits-contradict':
    'it contradicts the others: the full point must be within the believable water contents, a shot smaller than the medium, and the daily limit below what an open valve brings',
  'volume-not-run-time': 'the flow does not give the requested volume in the run time: check the units, and lineFill',
  'shot-too-large': 'the shot is above the limit',
  'run-too-long': 'the run time is above the limit',
  'given-unknown': 'it is not known how much was given in the last 24 hours',
  'beyond-limit-of-day': 'the water of 24 hours would be above the limit',
  'last-shot-unknown': 'it is not known when the last shot ended',
  'too-soon': 'the last shot ended too recently',
  'reading-unknown': 'there is no reading',
  'unbelievable-reading': 'the reading is outside what the medium can hold',
  'old-reading': 'the newest reading is too old, or of unknown age',
  'doubtful-reading': 'the reading did not pass its tests',
  full: 'the reading is at the full point or above it',
  'too-soon-for-back-up': 'the last shot or the last good reading is too recent for a shot by time',
  'clock-unknown':
    'it is not known whether the clock ran without a break since the last shot; a catch-up could water twice',
  'leak-unknown': 'it is not known whether water flows while the valve is closed',
  'leaks-while-closed': 'water flows although every valve should be closed: shut the main valve',
  'lock-unknown': 'it is not known whether somebody works on the zone',
  'zone-locked': 'the zone is locked: somebody may be working on it',
  'alarms-unknown': 'it is not known which alarms are active',
  alarm: 'this alarm forbids watering',
}

/** The sentence with what it is about, the number that is refused and its limit. */
export function refusalInWords(refusal: WateringRefusal, sentence: string): string {
  return sentenceWithNumbers(refusal, sentence, 'limit')
}
