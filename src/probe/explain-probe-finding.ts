import { digits, explained, type OneCodeEach, type WordsOf } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import { asPercent } from '../quantity/in-words.js'
import type { PlacementConflict } from './check-placement.js'
import { PLACEMENT_WORDS } from './placement-words.js'
import type { ProbeFinding } from './probe-finding.js'

/** Everything about probes that can be put into words. */
export type ExplainedProbe = OneCodeEach<[ProbeFinding, PlacementConflict]>

const PRACTICE = 'common practice, no source'
const NO_CONTACT =
  'the probe is not in contact, salt or temperature moves its reading, or the medium is not the calibrated one'

const WORDS: WordsOf<ProbeFinding> = {
  'reading-falls-with-water': [
    ({ value = 0 }) =>
      `the saturated sample reads ${digits(-value)} less than the dry one: if the readings of this probe rise with water, the samples are swapped`,
    PRACTICE,
  ],
  'little-water-between': [
    ({ value = 0, limit }) =>
      `only ${value.toFixed(4)} m³/m³ of water lies between the samples, less than ${limit}, too little to tell the slope from errors of weighing: check that both are in m³/m³ and not in per cent of per cent, dry one in the oven and saturate the other`,
    PRACTICE,
  ],
  'samples-out-of-order': [
    ({ value = 0, samples = [] }) =>
      `samples ${samples.map((i) => `[${i}]`).join(' and ')} are out of order by ${value.toFixed(3)} m³/m³; look for swapped labels, an air gap or salt`,
    PRACTICE,
  ],
  'one-sample-decides': [
    'a single sample decides the curve at its place, so nothing shows how good it is there: take another sample close to it',
  ],
  'not-dry-yet': [
    ({ value = 0 }) =>
      `the last two weighings differ by ${asPercent(value, 2)}, more than 0.1 %: the sample still held water, and its water content is too low`,
    'iso-17892-1-2014, iso-11465-1993 (constant mass) [not confirmed, source not seen]',
  ],
  'outside-calibration': [
    ({ value, min, max }) =>
      `the reading ${value} is outside ${min} to ${max}, the span in which this probe was calibrated: its water content is an extrapolation`,
  ],
  'beyond-turning-point': [
    ({ value, min, max }) =>
      `the reading ${value} is outside ${min} to ${max}, the span in which this probe was calibrated, and beyond the point where the curve turns: its water content has no meaning`,
  ],
  'below-zero': [
    ({ value = 0 }) => `a water content of ${value.toFixed(3)} m³/m³ is impossible, it is below zero: ${NO_CONTACT}`,
  ],
  'above-porosity': [
    ({ value = 0, limit }) =>
      `a water content of ${value.toFixed(3)} m³/m³ is impossible, it is more than the pores hold (${limit}): ${NO_CONTACT}`,
  ],
  'gain-changed': [
    ({ value = 1 }) =>
      `the probe now answers ${value.toFixed(2)} times as strongly as before: look for worn rods, another cable or supply, and calibrate it again`,
    PRACTICE,
  ],
  drifted: [
    ({ value = 0, limit }) =>
      `the drift makes an error of up to ${value.toFixed(3)} m³/m³, more than ${limit}: correct the readings with correctDrift() or calibrate again`,
  ],
  'slope-not-proven': [
    ({ about }) => `the slope with ${about} is not clear of zero: correcting with it may do more harm than good`,
  ],
  'outside-no-use-record': [
    ({ about, value, min, max, unit }) =>
      `${about} ${value} ${unit} is outside ${digits(min)} to ${digits(max)} ${unit}, the span in which the correction was found`,
  ],
  'few-probes': [
    ({ value }) =>
      `the spread of ${value} probes is itself very uncertain; Student's t allows for it only if the places are like normal draws`,
  ],
  'probe-apart': [
    ({ about, limit = 0 }) =>
      `${about} lies more than ${limit.toFixed(3)} m³/m³ from the median: look for an air gap, a clogged dripper, salt or a dry plant before leaving it out`,
    PRACTICE,
  ],
  'reads-nothing': [
    ({ about, value = 0, limit }) =>
      `${about} reads ${value.toFixed(3)} m³/m³, but no medium with a living plant holds less than ${limit}: the probe is left out; check its cable, and whether it is in the medium`,
    PRACTICE,
  ],
  'probes-disagree': [
    ({ value = 0, limit }) =>
      `the probes scatter by ${value.toFixed(3)} m³/m³, more than ${limit}, and nothing shows which are right: do not water by their mean; do a spot check by hand beside each of them`,
    PRACTICE,
  ],
  'probes-missing': [({ value }) => `some probes do not report; the mean stands for ${asPercent(value)} of the zone`],
  'cut-a-slit': [
    'pre-formed media such as stone wool do not close around a rod: open the way with a blade as wide as the probe, put the probe in without turning it, and take a fresh place rather than the old hole if it must come out',
    PRACTICE,
  ],
  'air-gap': [
    'an air gap at the rods reads far too dry and moves little after a shot: push straight, do not rock the probe, and leave it where it is',
    PRACTICE,
  ],
  'stone-or-lump': [
    'if the probe meets a stone or a lump, take another place rather than pressing: bent rods and an open hole both read wrong',
    PRACTICE,
  ],
  compaction: [
    'do not press the medium around the probe: it must be packed as everywhere else and as in the calibration',
    PRACTICE,
  ],
  'before-roots': [
    'insert probes before roots fill the medium; later each insertion cuts roots, and the hole follows them',
    PRACTICE,
  ],
  'same-place': [
    'use the same height, side and distance from the dripper in every container, because a container at rest is wetter below',
    PRACTICE,
  ],
  'mains-off': [
    'water and mains voltage are dangerous together: use extra-low voltage at the plants and leave fixed wiring to licensed people',
    PRACTICE,
  ],
}

/**
 * Puts a finding about probes, their samples, calibration or placement into words: what it is, by how much, and what to look at or to
 * move.
 *
 * @param finding - One of the findings of a calibration, a reading, a drift, a zone, or a conflict or caution of a placement.
 * @procedure Looks up the sentence of the code and writes the numbers of the finding into it.
 * @returns A finding with the sentence for people and the source of the rule.
 * @throws `InputError` for a code that this topic does not give.
 * @source definition
 * @example
 * const [spread] = meanWithConfidence({ waterContents: [0.5, 0.6].map(waterContent) }).findings
 * spread && explainProbeFinding(spread).message.split(';')[0] // => 'the spread of 2 probes is itself very uncertain'
 */
export function explainProbeFinding(finding: ExplainedProbe): Finding {
  return explained<ExplainedProbe>(finding, { ...WORDS, ...PLACEMENT_WORDS })
}
