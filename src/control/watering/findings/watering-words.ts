import { inWords } from '../../../quantity/in-words.js'
import type { WateringDoubt, WateringFinding, WateringReason } from './finding.js'

/** Why the valve is open or closed. */
export const REASON_WORDS: { readonly [Code in WateringReason]: string } = {
  dry: 'the zone is at the lower limit or has not reached the upper one since: a shot runs',
  refill: 'the zone is filled until it drains, which makes its containers alike and shows what its probes are worth',
  'back-up-shot': 'no reading can be believed: a shot of the usual use runs by time',
  'override-water': 'somebody ordered water: a shot runs inside every limit',
  'wet-enough': 'the zone is wet enough',
  'shot-given': 'the shot has been given',
  resting: 'the last shot ended too recently',
  'waiting-for-probe': 'no reading has come yet that can show the last shot',
  'day-used-up': 'the water of 24 hours is used up',
  'pace-limit': 'water would come faster than the limit of a day allows over the allowed hours',
  'outside-hours': 'an opening would not lie inside the allowed hours by every clock that may be right',
  'no-reading': 'no reading can be believed, and no shots by time are allowed',
  'back-up-not-due': 'no reading can be believed, and the next shot by time is not due yet',
  'back-up-used-up': 'no reading can be believed, and the usual use of 24 hours is given',
  starting: 'the controller has just begun and waits, because water may have been given before',
  'state-lost': 'the stored state is missing or damaged: everything begins again, closed',
  'message-unreadable': 'the message cannot be read: a part of it throws; give plain objects, as JSON makes them',
  locked: 'the zone is locked, or nobody said that it is not: people may be working on it',
  'override-closed': 'somebody ordered the valve closed',
  'clock-unreadable': 'the clock gives no time in seconds; milliseconds are refused',
  'clock-leapt': 'the clock went back or leapt ahead',
  'clock-stands-still': 'the clock stands still',
  'clock-settling': 'the clock has not run long enough to be trusted',
  'decisions-too-seldom': 'the valve does not close by itself, and decisions come too seldom to close it in time',
  'decisions-missing':
    'decisions may be missing before this one, which might have opened the valve: the next one decides',
  'valve-reported-open': 'the valve says that it is open though it should be closed',
}

/** What makes a decision doubtful, or what somebody must look at. */
export const DOUBT_WORDS: { readonly [Code in WateringDoubt]: string } = {
  'reading-missing': 'no reading has come: look at probe, cable and gateway',
  'reading-old': 'the newest reading is too old: look at the way from the probe',
  'reading-from-the-future': 'a reading has a time in the future: check the clocks',
  'reading-unbelievable': 'the reading is no number or lies outside what the medium can hold: look at the probe',
  'reading-frozen': 'the reading has not changed for too long: restart the probe',
  'reading-fell-too-fast': 'the reading fell faster than plants drink: see whether the probe still sits in the medium',
  'shots-without-rise':
    'shots did not show in the reading: look at valve, filter, emitters and probe, do a catch test, then acknowledge',
  'reads-too-high':
    'when the zone was full last, the probe said more than when it was full first: it drifts, or answers to salt; wash, check or replace it',
  'probes-disagree': 'the probes differ too much: weigh a container or use a hand meter to find the one that lies',
  'use-too-small': 'the reading does not fall while plants must have drunk: check the probe against a scale',
  'use-too-large':
    'far more water went than plants can drink: look for a leak, a full container and a probe that drifts',
  'shots-fall-behind':
    'the zone stays dry though shots follow each other as soon as they can: look for weak flow and clogged emitters, then give larger shots, a shorter rest, or the shorter lag that the probes really have',
  'unknown-probe': 'a reading names a probe that the settings do not know: check the names',
  'clock-doubtful':
    'time was counted by decisions, or the clock gains on them: set the clock, then acknowledge, also where decisions are meant to come less often now',
  'flow-while-closed': 'water flows though the valve is closed: shut the main valve, then look at valve and line',
  'no-flow': 'the meter saw no water in an opening: look at supply, filter, valve and meter',
  'flow-too-large': 'the meter saw far more water than the emitters give: a leak or a burst; walk the line',
  'flow-too-small':
    'the meter keeps seeing less than was ordered: look at supply, filter, pressure and emitters; shots last longer meanwhile',
  'drain-while-dry': 'shots run off though the reading says dry: the medium repels water, or the probe lies',
  'no-drain':
    'probes say that the zone is full, and no drain is counted: look at the gauge and its outlet, then acknowledge; nothing is filled to drain until it counts',
  'drain-too-large':
    'more drain is counted than came: a wrong unit, rain, or water that nobody reported; the gauge is not read until somebody acknowledges',
  'valve-does-not-close': 'the valve says that it is open though it should be closed: shut the main valve',
  'by-hand-refused':
    'water given by hand was not counted: give litres from zero up to the limit of a day, those since the last decision',
  'override-refused':
    'an order was not taken, and unless it asks for water it keeps the valve closed while it is sent: give close or water, and an end in seconds at most a day ahead',
  'acknowledge-refused': 'an acknowledgement was not taken: give a list of the codes of findings',
}

/** The sentence with its probe, and its number where there is one. */
export function wateringInWords({ about, value, unit }: Partial<WateringFinding>, sentence: string): string {
  const number = value === undefined ? '' : ` (${inWords(value, unit ?? '1')})`
  return `${about === undefined ? '' : `probe ${about}: `}${sentence}${number}`
}
