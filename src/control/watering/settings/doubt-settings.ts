import type { Limits } from './checked-settings.js'
import type { SettingsDoubt, WateringSettingsFinding } from './settings-finding.js'

/** A probe in air tells up to this, and no medium holds more than that: limits outside them refuse no reading of a lifted or dead probe. Own judgement, no source. Unit: m³/m³. */
const AIR = 0.03
const WATER = 0.97
/** Good probes scatter by 0.002; a rise of twice that is seen, and a band has room for five. Own judgement, no source. Unit: m³/m³. */
const SEEN = 0.004
const NARROW = 0.01
/** A shorter opening is over before a line has filled: common practice, no source. Unit: s. */
const SHORT = 10
/** Plants use no more in a day than their medium's volume, and no less than a five-hundredth of it, as seedlings do. Own judgement, no source. */
const THIRSTY = 1
const SEEDLING = 0.002
/** A heat wave doubles what plants use; more than this many usual days only floods. Own judgement, no source. */
const FLOODS = 3
/** No probe in a medium shows water sooner. Own judgement, no source. Unit: s. */
const SOON = 60
/** Good probes of a zone differ by a few hundredths, and one in air by more than this from one in a medium. Own judgement, no source. Unit: m³/m³. */
const ALIKE = 0.02
const APART = 0.15
/** In a reading so old a zone in bright sun may have dried by a shot or two. Own judgement, no source. Unit: s. */
const OLD = 7200
const DAY = 86400

/** What the limits of a zone leave unguarded, or have most likely wrong. */
export function settingsDoubts(limits: Limits): WateringSettingsFinding[] {
  return [...ofProbesAndDrain(limits), ...ofBand(limits), ...ofVolumes(limits), ...ofTimes(limits)].filter(
    (found) => found !== null,
  )
}

type Found = WateringSettingsFinding | null

function ofProbesAndDrain({ drain, refillEvery, probes, disagreement }: Limits): Found[] {
  const alone = probes.length === 1
  return [
    drain > 0 ? null : { code: 'no-drain-fraction', level: 'note', about: 'drainFraction' },
    refillEvery === null ? { code: 'never-filled', level: 'caution', about: 'refillEvery' } : null,
    alone ? { code: 'one-probe', level: 'note', about: 'probes' } : null,
    alone ? null : below('probes-disagree-at-once', 'maxDisagreement', disagreement, ALIKE, 'm³/m³'),
    alone ? null : above('probes-never-disagree', 'maxDisagreement', disagreement, APART, 'm³/m³'),
  ]
}

function ofBand({ min, max, upper, lower, shot, substrate }: Limits): Found[] {
  const [band, rise] = [upper - lower, shot / substrate]
  return [
    below('believes-nearly-everything', 'minBelievable', min, AIR, 'm³/m³'),
    above('believes-nearly-everything', 'maxBelievable', max, WATER, 'm³/m³'),
    below('band-within-noise', 'upper', band, NARROW, 'm³/m³'),
    above('shot-beyond-band', 'shot', rise, band, 'm³/m³'),
    below('shot-too-small-to-show', 'shot', rise, SEEN, 'm³/m³'),
  ]
}

function ofVolumes({ run, usual, substrate, perDay }: Limits): Found[] {
  return [
    below('opening-very-short', 'flow', run, SHORT, 's'),
    above('use-unlike-medium', 'usualPerDay', usual, THIRSTY * substrate, 'L'),
    below('use-unlike-medium', 'usualPerDay', usual, SEEDLING * substrate, 'L'),
    above('limit-far-above-use', 'maxPerDay', perDay, FLOODS * usual, 'L'),
  ]
}

function ofTimes({ allowed, closesByItself, decideEvery, lag, maxAge, maxUnchanged }: Limits): Found[] {
  return [
    allowed >= DAY ? { code: 'day-and-night', level: 'note', about: 'allowedHours' } : null,
    closesByItself ? null : { code: 'valve-needs-decisions', level: 'caution', about: 'valveClosesByItself' },
    decideEvery === null ? { code: 'pace-unknown', level: 'note', about: 'decideEvery' } : null,
    below('shows-at-once', 'probeLag', lag, SOON, 's'),
    above('old-readings-decide', 'maxReadingAge', maxAge, OLD, 's'),
    above('frozen-told-late', 'maxUnchanged', maxUnchanged, DAY, 's'),
  ]
}

function above(code: SettingsDoubt, about: string, value: number, limit: number, unit: string): Found {
  return value > limit * (1 + 1e-9) ? { code, level: 'caution', about, value, limit, unit } : null
}

function below(code: SettingsDoubt, about: string, value: number, limit: number, unit: string): Found {
  return value < limit * (1 - 1e-9) ? { code, level: 'caution', about, value, limit, unit } : null
}
