import { maxOf } from '../../../quantity/extremes.js'
import { above, below, type Found } from './beyond.js'
import type { Limits } from './checked-settings.js'
import { doubtsOfTimes } from './doubt-times.js'
import type { WateringSettingsFinding } from './settings-finding.js'

/** A probe in air tells up to this, and no medium holds more than that: limits outside them refuse no reading of a lifted or dead probe. Own judgement, no source. Unit: m³/m³. */
const AIR = 0.03
const WATER = 0.97
/** Good probes scatter by 0.002; a rise of twice that is seen, and a band has room for five. Own judgement, no source. Unit: m³/m³. */
const SEEN = 0.004
const NARROW = 0.01
/** A shorter opening is over before a line has filled: common practice, no source. Unit: s. */
const SHORT = 10
/** Plants and drain take no more in a day than twice their medium's volume, as of small blocks in summer, and no less than a five-hundredth of it, as of seedlings. Own judgement, no source. */
const THIRSTY = 2
const SEEDLING = 0.002
/** A heat wave doubles what plants use; more than this many usual days only floods. Own judgement, no source. */
const FLOODS = 3
/** Good probes of a zone differ by a few hundredths, and one in air by more than this from one in a medium. Own judgement, no source. Unit: m³/m³. */
const ALIKE = 0.02
const APART = 0.15
/** Readings so near beyond the limits are those of a dry morning or of a zone that has just drained, and have to be believed. Own judgement, no source. Unit: m³/m³. */
const BESIDE = 0.05
/** Plants get less than half of what they use. Own judgement, no source. */
const HALF = 0.5
/** Salts ask for a tenth to a half of the water to drain: common practice, no source. Less than one in fifty, or most of it, is a slip. Own judgement, no source. */
const MIN_DRAIN = 0.02
const MAX_DRAIN = 0.6

/** What the limits of a zone leave unguarded, or have most likely wrong. */
export function settingsDoubts(limits: Limits): WateringSettingsFinding[] {
  return [...ofProbesAndDrain(limits), ...ofBand(limits), ...ofVolumes(limits), ...doubtsOfTimes(limits)].filter(
    (found) => found !== null,
  )
}

function ofProbesAndDrain({ drain, refillEvery, probes, disagreement }: Limits): Found[] {
  const alone = probes.length === 1
  return [
    drain > 0
      ? below('drain-fraction-unusual', 'drainFraction', drain, MIN_DRAIN, '1')
      : { code: 'no-drain-fraction', level: 'note', about: 'drainFraction' },
    above('drain-fraction-unusual', 'drainFraction', drain, MAX_DRAIN, '1'),
    refillEvery === null ? { code: 'never-filled', level: 'caution', about: 'refillEvery' } : null,
    alone ? { code: 'one-probe', level: 'note', about: 'probes' } : null,
    above('offset-large', 'probes', maxOf(probes.map(({ offset }) => Math.abs(offset))), APART, 'm³/m³'),
    alone ? null : below('probes-disagree-at-once', 'maxDisagreement', disagreement, ALIKE, 'm³/m³'),
    alone ? null : above('probes-never-disagree', 'maxDisagreement', disagreement, APART, 'm³/m³'),
  ]
}

function ofBand({ min, max, upper, lower, shot, substrate }: Limits): Found[] {
  const [band, rise] = [upper - lower, shot / substrate]
  return [
    below('believes-nearly-everything', 'minBelievable', min, AIR, 'm³/m³'),
    above('believes-nearly-everything', 'maxBelievable', max, WATER, 'm³/m³'),
    below('disbelieves-near-band', 'minBelievable', lower - min, BESIDE, 'm³/m³'),
    below('disbelieves-near-band', 'maxBelievable', max - upper, BESIDE, 'm³/m³'),
    below('band-within-noise', 'upper', band, NARROW, 'm³/m³'),
    above('shot-beyond-band', 'shot', rise, band, 'm³/m³'),
    below('shot-too-small-to-show', 'shot', rise, SEEN, 'm³/m³'),
  ]
}

function ofVolumes({
  run,
  usual,
  substrate,
  perDay,
  backUp,
  timed,
  shot,
  maxMisses,
  maxRun,
  litresPerSecond,
}: Limits): Found[] {
  return [
    below('opening-very-short', 'flow', run, SHORT, 's'),
    above('opening-beyond-day', 'maxRunTime', maxRun * litresPerSecond, perDay, 'L'),
    above('use-unlike-medium', 'usualPerDay', usual, THIRSTY * substrate, 'L'),
    below('use-unlike-medium', 'usualPerDay', usual, SEEDLING * substrate, 'L'),
    above('limit-far-above-use', 'maxPerDay', perDay, FLOODS * usual, 'L'),
    timed ? below('back-up-below-use', 'backUpPerDay', backUp, HALF * usual, 'L') : null,
    above('unseen-shots-beyond-day', 'maxShotsWithoutRise', maxMisses * shot, perDay, 'L'),
  ]
}
