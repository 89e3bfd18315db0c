import { sentenceWithNumbers } from '../../sentence-with-numbers.js'
import type { SettingsDoubt, WateringSettingsFinding } from './settings-finding.js'

/** What settings leave unguarded, and what to do. */
export const SETTINGS_WORDS: { readonly [Code in SettingsDoubt]: string } = {
  'no-drain-fraction':
    'no share of the water is to drain: salts stay, and containers without a probe may dry out for weeks unseen; give the share that should drain',
  'drain-fraction-unusual':
    'hardly anybody drains so little, or so much: give the share of the water given that should drain, 0.2 for 20 %',
  'never-filled': 'the zone is never filled until it drains: nothing tells how probes drift and containers part',
  'one-probe': 'one probe decides, and nothing contradicts it: put a second one into another container',
  'offset-large':
    'a probe that reads so far from the zone is in air, or of another medium: put it right before it decides, and check the unit',
  'probes-disagree-at-once':
    'healthy probes differ by more than this, so that they are always in dispute: give a few hundredths more',
  'probes-never-disagree':
    'a probe in air differs by less than this from one in the medium, so that nothing tells which is right: give a smaller number',
  'believes-nearly-everything':
    'such a number comes from a probe in air or from a broken one: give what the medium holds at its driest and wettest',
  'disbelieves-near-band':
    'a zone that dries or fills so little beyond its limits would not be believed any more: give what the medium holds at its driest and wettest',
  'band-within-noise': 'the limits lie so close that the noise of a probe crosses both: set them further apart',
  'shot-beyond-band':
    'one shot raises the zone by more than the limits are apart, so that each ends beyond the upper one: give smaller shots, and check their unit',
  'shot-too-small-to-show':
    'a probe cannot tell the rise of such a shot from noise: give larger ones, and check their unit',
  'opening-very-short':
    'the valve would be open for so short a time that the line hardly fills: give the flow in litres per hour, to all that the volumes are meant for',
  'opening-beyond-day':
    'one opening of this length brings more than the limit of a day, so that it guards nothing: give little more than a shot takes, and check the unit of the flow',
  'use-unlike-medium':
    'plants in so much medium hardly use so much or so little in a day: give both for the same containers, in litres',
  'limit-far-above-use': 'the limit of a day stops a flood late: set it to what the hottest day takes',
  'back-up-below-use':
    'while no reading can be believed plants get less than half of what they use: give about that, or leave it out',
  'unseen-shots-beyond-day':
    'the limit of a day is reached before a probe that sees no shot is doubted: give fewer shots',
  'day-and-night':
    'water may flow at any hour: roots in the dark use little, and nobody sees a leak; leave out the night',
  'hours-at-midnight':
    'hours begin or end so soon after midnight as minutes or hours do that were meant: give seconds since midnight',
  'too-few-shots-for-use':
    'rests, the lag of the probe and hours leave room for fewer shots than plants need: check their units, or give larger shots',
  'valve-needs-decisions':
    'the valve stays open where the next decision does not come: use one that closes by itself, or a timer of its own',
  'pace-unknown':
    'a clock that always ran too fast is not noticed: give the time between decisions where a timer asks for them',
  'pace-too-fast': 'no timer asks for decisions so often: give seconds, 60 for a decision a minute',
  'shows-at-once': 'no probe shows a shot so soon: the next one would follow before the last is seen',
  'shows-too-late':
    'water reaches a probe sooner, and nothing is known of the zone until then: give minutes, or move the probe',
  'readings-too-old-at-once':
    'hardly a probe sends so often, so that no reading would decide: give a few times the interval of the readings',
  'old-readings-decide': 'a zone in bright sun may have changed by shots since such a reading: send them more often',
  'frozen-told-at-once':
    'a healthy probe shows the same number for longer in a quiet night, and would be called frozen: give hours',
  'frozen-told-late': 'a frozen probe decides for as long as this: give hours',
  'ahead-by-no-quarter': 'no local clock is ahead of universal time by so odd a time: give seconds, 7200 for two hours',
}

/** The sentence with the setting, its number and with what it was compared. */
export function settingInWords(finding: WateringSettingsFinding, sentence: string): string {
  return sentenceWithNumbers(finding, sentence, 'compared with')
}
