import { inWords } from '../../../quantity/in-words.js'
import type { WateringDoubt, WateringFinding, WateringReason } from './finding.js'

/** Why the valve is open or closed. */
export const REASON_WORDS: { readonly [Code in WateringReason]: string } = {
  dry: 'the zone is at the lower limit or has not reached the upper one since: a shot runs',
  refill: 'the zone is being filled until it drains, which evens out its containers and checks its probes',
  'back-up-shot': 'no reading can be believed: a shot is given by time, at the rate of the usual use',
  'override-water': 'somebody ordered water: a shot runs, within every limit',
  'wet-enough': 'the zone is wet enough',
  'shot-given': 'the shot has been given',
  resting: 'the last shot ended too recently',
  'waiting-for-probe': 'no reading has arrived yet that could show the last shot',
  'day-used-up': 'the daily limit is used up',
  'pace-limit': 'water would run faster than the daily limit, spread over the allowed hours, permits',
  'outside-hours': 'an opening would not be within the allowed hours by every clock that may be right',
  'no-reading': 'no reading can be believed, and no shots by time are allowed',
  'back-up-not-due': 'no reading can be believed, and the next shot by time is not due yet',
  'back-up-used-up': 'no reading can be believed, and the usual use of 24 hours has been given',
  starting: 'the controller has just started and waits, because water may have been given before',
  'state-lost': 'the stored state is missing or damaged: the controller starts afresh, with the valve closed',
  'message-unreadable': 'the message cannot be read: a part of it throws; give plain objects, as JSON makes them',
  locked: 'the zone is locked, or nobody said that it is not: people may be working on it',
  'override-closed': 'somebody ordered the valve closed',
  'clock-unreadable': 'the clock gives no time in seconds; milliseconds are refused',
  'clock-leapt': 'the clock went back or jumped ahead',
  'clock-stands-still': 'the clock has stopped',
  'clock-settling': 'the clock has not run long enough to be trusted',
  'decisions-too-seldom': 'the valve does not close by itself, and decisions come too seldom to close it in time',
  'decisions-missing': 'earlier decisions that may have opened the valve are missing: the next decision may water',
  'valve-reported-open': 'the valve reports that it is open although it should be closed',
}

/** What makes a decision doubtful, or what somebody must look at. */
export const DOUBT_WORDS: { readonly [Code in WateringDoubt]: string } = {
  'reading-missing': 'no reading has arrived: check probe, cable and gateway',
  'reading-old': 'the newest reading is too old: check cable, network and gateway',
  'reading-from-the-future': 'a reading has a time in the future: check the clocks',
  'reading-unbelievable': 'the reading is not a number, or is outside what the medium can hold: check the probe',
  'reading-frozen': 'the reading has not changed for too long: restart the probe',
  'reading-fell-too-fast': 'the reading fell faster than plants drink: see whether the probe still sits in the medium',
  'shots-without-rise':
    'shots did not show in the reading: check valve, filter, emitters and probe, do a catch test, then acknowledge',
  'reads-too-high':
    'the probe read more when the zone was last full than when it was first full: it drifts, or responds to salt; wash, check or replace it',
  'probes-disagree': 'the probes differ too much: weigh a container or use a hand meter to find the wrong one',
  'use-too-small': 'the reading does not fall although plants must have drunk: weigh a container to check the probe',
  'use-too-large':
    'far more water is gone than plants can drink: look for a leak, a full container or a drifting probe',
  'shots-fall-behind':
    'the zone stays dry although shots follow each other as fast as they may: look for weak flow and clogged emitters, then set larger shots, a shorter rest, or a shorter probe lag if the probes are faster',
  'unknown-probe': 'a reading names a probe that is not in the settings: check the names',
  'clock-doubtful':
    'the clock failed, or runs fast compared with the decisions: set the clock, then acknowledge; acknowledge, too, if decisions are now meant to be less frequent',
  'flow-while-closed': 'water flows although the valve is closed: shut the main valve, then check valve and line',
  'no-flow': 'the meter counted no water during an opening: check supply, filter, valve and meter',
  'flow-too-large': 'the meter counted far more water than the emitters give: a leak or a burst; walk the line',
  'flow-too-small':
    'the meter keeps counting less than was ordered: check supply, filter, pressure and emitters; shots run longer meanwhile',
  'drain-while-dry': 'shots drain although the reading is dry: the medium repels water, or the probe is wrong',
  'no-drain':
    'the probes show a full zone, but no drain is counted: check the gauge and its outlet, then acknowledge; the zone is not filled until it drains while the gauge counts nothing',
  'drain-too-large':
    'more drain is counted than water was given: a wrong unit, rain, or water that nobody reported; the gauge is ignored until somebody acknowledges',
  'valve-does-not-close': 'the valve reports that it is open although it should be closed: shut the main valve',
  'by-hand-refused':
    'water given by hand was not counted: give the litres since the last decision, from zero to the daily limit',
  'override-refused':
    'an order was refused, and keeps the valve closed while it is sent unless it asks for water: give close or water, and an end in seconds at most a day ahead',
  'acknowledge-refused': 'an acknowledgement was refused: give a list of the codes of findings',
}

/** The sentence with its probe, and its number where there is one. */
export function wateringInWords({ about, value, unit }: Partial<WateringFinding>, sentence: string): string {
  const number = value === undefined ? '' : ` (${inWords(value, unit ?? '1')})`
  return `${about === undefined ? '' : `probe ${about}: `}${sentence}${number}`
}
