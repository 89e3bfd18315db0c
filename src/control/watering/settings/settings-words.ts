import { sentenceWithNumbers } from '../../sentence-with-numbers.js'
import type { SettingsDoubt, WateringSettingsFinding } from './settings-finding.js'

/** What settings leave unguarded, and what to do. */
export const SETTINGS_WORDS: { readonly [Code in SettingsDoubt]: string } = {
  'no-drain-fraction':
    'no drain is asked for: salts build up, and containers without a probe may dry out unseen for weeks; give the share that should drain',
  'drain-fraction-unusual':
    'hardly anybody drains so little or so much: give the share of the water that should drain, 0.2 for 20 %',
  'never-filled':
    'the zone is never filled until it drains: nothing shows whether probes drift or containers dry unevenly',
  'one-probe': 'one probe decides alone, and nothing checks it: put a second one into another container',
  'offset-large': 'a probe that needs so large an offset is in air or in another medium: reseat it, and check the unit',
  'probes-disagree-at-once':
    'healthy probes differ by more than this, so they would always be in dispute: give a few hundredths more',
  'probes-never-disagree':
    'a probe in air differs by less than this from one in the medium, so it would go unnoticed: give a smaller number',
  'believes-nearly-everything':
    'a probe in air, or a broken one, gives such numbers too: give what the medium holds at its driest and wettest',
  'disbelieves-near-band':
    'a zone only a little drier or wetter than its limits would no longer be believed: give what the medium holds at its driest and wettest',
  'band-within-noise': 'the limits are so close that the noise of a probe crosses both: set them further apart',
  'shot-beyond-band':
    'one shot raises the zone by more than the distance between the limits, so each shot ends above the upper one: give smaller shots, and check their unit',
  'shot-too-small-to-show':
    'a probe cannot tell the rise of such a shot from noise: give larger ones, and check their unit',
  'opening-very-short':
    'the valve would be open so briefly that the line hardly fills: give the flow in litres per hour, for the same containers as the volumes',
  'opening-beyond-day':
    'one opening of this length brings more than the daily limit, so it guards nothing: give little more than a shot takes, and check the unit of the flow',
  'use-unlike-medium':
    'plants hardly use so much or so little a day in this volume of medium: give both for the same containers, in litres',
  'limit-far-above-use': 'a daily limit so far above the use stops a flood late: set it to what the hottest day takes',
  'back-up-below-use':
    'while no reading can be believed, plants would get less than half of what they use: give about what they use, or leave it out',
  'unseen-shots-beyond-day': 'the daily limit is reached before a probe that sees no shot is doubted: give fewer shots',
  'day-and-night':
    'water may flow at any hour: in the dark plants use little and nobody sees a leak; leave out the night',
  'hours-at-midnight':
    'the hours begin or end within seconds of midnight, as if given in minutes or hours: give seconds since midnight',
  'too-few-shots-for-use':
    'rests, the lag of the probe and hours leave room for fewer shots than plants need: check their units, or give larger shots',
  'valve-needs-decisions':
    'the valve stays open if the next decision does not come: use one that closes by itself, or give it its own timer',
  'pace-unknown':
    'a clock that runs too fast from the start goes unnoticed: if a timer triggers the decisions, give its interval',
  'pace-too-fast': 'no timer triggers decisions so often: give seconds, 60 for a decision a minute',
  'shows-at-once': 'no probe shows a shot so soon: the next one would follow before the last is seen',
  'shows-too-late':
    'water reaches a probe sooner than this, and until then no shot follows: give some minutes, or move the probe',
  'readings-too-old-at-once':
    'few probes send so often, so no reading would count: give a few times the interval of the readings',
  'old-readings-decide':
    'in bright sun a zone may change by several shots after such a reading: send readings more often',
  'frozen-told-at-once':
    'on a quiet night a healthy probe shows the same number for longer than this, and would be called frozen: give hours',
  'frozen-told-late': 'a frozen probe would decide for as long as this: give hours',
  'ahead-by-no-quarter':
    'no local clock is ahead of universal time by such an odd amount: give seconds, 7200 for two hours',
}

/** The sentence with the setting, its number and with what it was compared. */
export function settingInWords(finding: WateringSettingsFinding, sentence: string): string {
  return sentenceWithNumbers(finding, sentence, 'compared with')
}
