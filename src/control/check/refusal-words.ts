import { sentenceWithNumbers } from '../sentence-with-numbers.js'
import type { RefusalCode, WateringRefusal } from './refusal.js'

/** Why a shot is refused. */
export const REFUSAL_WORDS: { readonly [Code in RefusalCode]: string } = {
  'input-unreadable': 'what was given cannot be read: a part of it throws; give plain objects',
  'limit-unknown': 'there is no such limit, so that it limits nothing: check how it is spelt',
  'request-unclear': 'the request gives no number of zero or more',
  'limit-missing': 'this limit is missing, or no number that it can be: without it no shot is safe',
  'limits-contradict':
    'it does not agree with the others: the full point lies inside the believable water contents, a shot is smaller than the medium, and a day brings less than an open valve',
  'volume-not-run-time':
    'the flow gives another volume in the run time than the one that is asked for: check the units, and lineFill',
  'shot-too-large': 'the shot is above the limit',
  'run-too-long': 'the run time is above the limit',
  'given-unknown': 'it is not known how much was given in the last 24 hours',
  'beyond-limit-of-day': 'the sum of 24 hours is above the limit',
  'last-shot-unknown': 'it is not known when the last shot ended',
  'too-soon': 'the last shot ended too recently',
  'reading-unknown': 'there is no reading',
  'unbelievable-reading': 'the reading lies outside what the medium can hold',
  'old-reading': 'the newest reading is too old, or of unknown age',
  'doubtful-reading': 'the reading did not pass its tests',
  full: 'the reading is at the full point or above it',
  'too-soon-for-back-up': 'the last shot or the last good reading is too recent for a shot by time',
  'clock-unknown': 'it is not known that the clock ran on since the last shot; a catch-up could water twice',
  'leak-unknown': 'it is not known whether water flows while closed',
  'leaks-while-closed': 'water flows though every valve should be closed: shut the main valve',
  'lock-unknown': 'it is not known whether somebody works on the zone',
  'zone-locked': 'the zone is locked: somebody may be working on it',
  'alarms-unknown': 'it is not known which alarms stand',
  alarm: 'this alarm forbids watering',
}

/** The sentence with what it is about, the number that is refused and its limit. */
export function refusalInWords(refusal: WateringRefusal, sentence: string): string {
  return sentenceWithNumbers(refusal, sentence, 'limit')
}
