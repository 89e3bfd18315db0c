import { readOrRefuse } from '../../../quantity/attempt.js'
import { BELIEVABLE, DRAIN_FRACTION, MAX_RUN_TIME, SUBSTRATE_VOLUME } from '../../../quantity/domains.js'
import { InputError } from '../../../quantity/errors.js'
import { isList, numberIn, optionOr, requireRows, wholeNumberIn } from '../../../quantity/guard.js'
import { asName, oneOf, onlyNames } from '../../../quantity/one-of.js'
import { LOCAL_ADVANCE } from '../../../record/domains.js'
import { checkedBand } from '../../dead-band.js'
import {
  DECISION_INTERVAL,
  DISAGREEMENT,
  PAUSE,
  PROBE_OFFSET,
  READING_AGE,
  REFILL_INTERVAL,
  SHOTS_WITHOUT_RISE,
  UNCHANGED_TIME,
  VALVE_FLOW,
  WATER,
} from '../../domains.js'
import { fingerprintOf } from './fingerprint.js'
import { allowedSeconds, checkedHours, type Hours } from './hours.js'
import type { WateringSettings } from './settings.js'
import { PROBE_SETTINGS, WATERING_SETTINGS } from './settings-names.js'

/** The settings as plain numbers, once they were found to make sense. */
export interface Limits {
  readonly lower: number
  readonly upper: number
  readonly min: number
  readonly max: number
  readonly substrate: number
  readonly litresPerSecond: number
  readonly shot: number
  readonly run: number
  readonly maxRun: number
  readonly perDay: number
  readonly usual: number
  readonly backUp: number
  /** Usual use while water may flow. Unit: L/s. */
  readonly use: number
  readonly rest: number
  readonly lag: number
  readonly maxAge: number
  readonly maxUnchanged: number
  readonly maxMisses: number
  readonly hours: readonly Hours[]
  readonly allowed: number
  readonly ahead: number
  readonly closesByItself: boolean
  readonly timed: boolean
  readonly probes: readonly { readonly name: string; readonly offset: number }[]
  readonly disagreement: number
  /** Longest time between two refills, or null for none. Unit: s. */
  readonly refillEvery: number | null
  /** Share of the water given that a refill should have drained. Unit: 1. */
  readonly drain: number
  /** How far decisions are apart by another clock, or null where nobody says. Unit: s. */
  readonly decideEvery: number | null
  /** Name of the zone, and a number that changes with any of the settings. */
  readonly name: string
  readonly fingerprint: number
}

/** The settings, read once: nothing that throws later is asked by a decision. */
export function checkedSettings(settings: WateringSettings): Limits {
  return readOrRefuse('settings', () => limitsOf(settings))
}

function limitsOf(settings: WateringSettings): Limits {
  onlyNames(settings, WATERING_SETTINGS, 'settings')
  const { lower, upper } = checkedBand(settings)
  const min = numberIn(settings.minBelievable, BELIEVABLE, 'minBelievable')
  const max = numberIn(settings.maxBelievable, BELIEVABLE, 'maxBelievable')
  if (!(min < lower))
    throw new InputError('minBelievable', `${min} is not below the lower limit ${lower}`, 'give a lower one')
  if (!(max > upper))
    throw new InputError('maxBelievable', `${max} is not above the upper limit ${upper}`, 'give a higher one')
  const hours = checkedHours(settings.allowedHours)
  const allowed = allowedSeconds(hours)
  const volumes = checkedVolumes(settings, hours)
  const limits = {
    lower,
    upper,
    min,
    max,
    ...volumes,
    use: volumes.usual / allowed,
    rest: numberIn(settings.minRest, PAUSE, 'minRest'),
    lag: numberIn(settings.probeLag, PAUSE, 'probeLag'),
    maxAge: numberIn(settings.maxReadingAge, READING_AGE, 'maxReadingAge'),
    maxUnchanged: numberIn(settings.maxUnchanged, UNCHANGED_TIME, 'maxUnchanged'),
    maxMisses: wholeNumberIn(settings.maxShotsWithoutRise, SHOTS_WITHOUT_RISE, 'maxShotsWithoutRise'),
    hours,
    allowed,
    ahead: numberIn(optionOr(settings.ahead, 0), LOCAL_ADVANCE, 'ahead'),
    closesByItself: settings.valveClosesByItself === true,
    timed: oneOf(settings.inDoubt, ['timed-shots', 'staying-closed'], 'inDoubt') === 'timed-shots',
    probes: checkedProbes(settings.probes),
    disagreement: numberIn(optionOr(settings.maxDisagreement, 0.08), DISAGREEMENT, 'maxDisagreement'),
    ...checkedIntervals(settings),
    name: checkedName(settings.zone),
  }
  return { ...limits, fingerprint: fingerprintOf(limits) }
}

function checkedIntervals({ decideEvery, refillEvery, drainFraction }: WateringSettings) {
  const drain = numberIn(optionOr(drainFraction, 0), DRAIN_FRACTION, 'drainFraction')
  if (refillEvery === 'never' && drain > 0)
    throw new InputError('drainFraction', 'drains in refills, and there are none', 'leave refillEvery out')
  // For drain they come as soon as one may after the other.
  const usually = drain > 0 ? 0 : 604800
  return {
    decideEvery: decideEvery === undefined ? null : numberIn(decideEvery, DECISION_INTERVAL, 'decideEvery'),
    refillEvery:
      refillEvery === 'never'
        ? null
        : refillEvery === undefined
          ? usually
          : numberIn(refillEvery, REFILL_INTERVAL, 'refillEvery'),
    drain,
  }
}

function checkedName(name: unknown): string {
  if (name === undefined) return ''
  if (typeof name !== 'string' || name === '' || name.length > 200)
    throw new InputError('zone', 'is no name of 1 to 200 letters', 'give the zone a name of its own, or leave it out')
  return name
}

function checkedVolumes(settings: WateringSettings, hours: readonly Hours[]) {
  const substrate = numberIn(settings.substrateVolume, SUBSTRATE_VOLUME, 'substrateVolume')
  const litresPerSecond = numberIn(settings.flow, VALVE_FLOW, 'flow') / 3600
  const shot = numberIn(settings.shot, WATER, 'shot')
  const run = shot / litresPerSecond
  const maxRun = numberIn(settings.maxRunTime, MAX_RUN_TIME, 'maxRunTime')
  const perDay = numberIn(settings.maxPerDay, WATER, 'maxPerDay')
  const usual = numberIn(settings.usualPerDay, WATER, 'usualPerDay')
  if (run > maxRun)
    throw new InputError(
      'shot',
      `takes ${Math.round(run)} s at this flow, longer than the longest run time of ${maxRun} s`,
      'make the shot smaller or the run time longer',
    )
  if (shot > substrate)
    throw new InputError('shot', `of ${shot} L is larger than the medium, ${substrate} L`, 'give litres')
  if (usual > perDay)
    throw new InputError('usualPerDay', 'is larger than the most for a day', 'raise the limit knowingly')
  const backUp = numberIn(optionOr(settings.backUpPerDay, Math.min(perDay, 1.35 * usual)), WATER, 'backUpPerDay')
  if (backUp > perDay) throw new InputError('backUpPerDay', 'is larger than the most for a day', 'make it smaller')
  if (shot > backUp)
    throw new InputError('backUpPerDay', 'has no room for a single shot', 'make it larger or the shot smaller')
  if (shot > usual) throw new InputError('shot', 'is larger than what is used on a usual day', 'make it smaller')
  if (!hours.some(({ from, to }) => to - from >= run))
    throw new InputError('allowedHours', `have no room for a shot of ${Math.round(run)} s`, 'give longer hours')
  return { substrate, litresPerSecond, shot, run, maxRun, perDay, usual, backUp }
}

function checkedProbes(probes: WateringSettings['probes']) {
  if (probes === undefined) return [{ name: '', offset: 0 }]
  if (!isList(probes) || probes.length === 0 || probes.length > 8)
    throw new InputError('probes', 'are none or more than eight', 'give one to eight probes with their names')
  requireRows(probes, 'probes')
  const names = new Set<string>()
  return probes.map((probe, i) => {
    onlyNames(probe, PROBE_SETTINGS, `probes[${i}]`)
    const { name, offset } = probe
    if (typeof name !== 'string' || names.has(name))
      throw new InputError(
        'probes',
        `"${asName(name)}" is no name or stands twice`,
        'give each probe a name of its own',
      )
    names.add(name)
    return { name, offset: numberIn(optionOr(offset, 0), PROBE_OFFSET) }
  })
}
