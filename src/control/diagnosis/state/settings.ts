import { readOrRefuse } from '../../../quantity/attempt.js'
import { SUBSTRATE_VOLUME, WATER_CONTENT } from '../../../quantity/domains.js'
import { InputError } from '../../../quantity/errors.js'
import type { Duration, Flow, Volume, WaterContent } from '../../../quantity/generated/kinds.js'
import { isList, numberIn, optionOr } from '../../../quantity/guard.js'
import { type NamesOf, onlyNames } from '../../../quantity/one-of.js'
import { HOUR_OF_DAY, RESPONSE_TIME, VALVE_FLOW, WATCHED_READING_AGE } from '../../domains.js'
import type { DarkHours, Watched } from '../watch/watched.js'
import { type Memo, newMemo } from './memo.js'

/** A zone to be watched. Flow, volume, meter and drain are those of one container, or all of them those of the zone. */
export interface WatchZoneSettings {
  /** Names of the probes, one to eight. */
  readonly probes: readonly string[]
  /** Medium that the flow goes to. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Flow while the valve is open. Unit: L/h. Range: (0, ∞). */
  readonly flow: Flow
  /** Lower end of what the medium can hold. Unit: m³/m³. Range: [0, 1]. */
  readonly minBelievable: WaterContent
  /** Upper end of it. Unit: m³/m³. Range: [0, 1]. */
  readonly maxBelievable: WaterContent
  /** From here on the zone counts as full: a little below container capacity. Unit: m³/m³. Range: [0, 1]. */
  readonly fullPoint: WaterContent
  /** Time after a shot in which the probes show it; ten minutes by default. Unit: s. Range: [60, 7200]. */
  readonly responseTime?: Duration
  /** A reading that is older tells nothing of now; twenty minutes by default. Unit: s. Range: [60, 86400]. */
  readonly maxReadingAge?: Duration
  /** Hours without light, by the clock of `now`; not needed where light is measured. */
  readonly darkHours?: DarkHours
}

const NAMES: NamesOf<WatchZoneSettings> = {
  probes: 1,
  substrateVolume: 1,
  flow: 1,
  minBelievable: 1,
  maxBelievable: 1,
  fullPoint: 1,
  responseTime: 1,
  maxReadingAge: 1,
  darkHours: 1,
}

/** Settings that make sense, with what was worked out of them so far. */
export interface RememberedZone extends Watched {
  readonly memo: Memo
}

export function checkedWatch(settings: WatchZoneSettings): RememberedZone {
  return readOrRefuse('settings', () => zoneOf(settings))
}

function zoneOf(settings: WatchZoneSettings): RememberedZone {
  onlyNames(settings, NAMES, 'settings')
  const content = (name: 'minBelievable' | 'maxBelievable' | 'fullPoint') =>
    numberIn(settings[name], WATER_CONTENT, name)
  const names = checkedNames(settings.probes)
  const [min, max, full] = [content('minBelievable'), content('maxBelievable'), content('fullPoint')]
  if (!(min < full && full < max))
    throw new InputError('fullPoint', 'is not between minBelievable and maxBelievable', 'give a level that can be read')
  return {
    names,
    ...checkedWater(settings),
    min,
    max,
    full,
    responseTime: numberIn(optionOr(settings.responseTime, 600), RESPONSE_TIME, 'responseTime'),
    maxAge: numberIn(optionOr(settings.maxReadingAge, 1200), WATCHED_READING_AGE, 'maxReadingAge'),
    memo: newMemo(),
    dark: settings.darkHours === undefined ? null : darkHours(settings.darkHours),
  }
}

/** No container holds, and no valve passes, less or more in litres and hours. */
const MIN = 1e-6
const MAX = 1e12

function checkedNames(probes: readonly string[]): readonly string[] {
  if (!isList(probes) || probes.length < 1 || probes.length > 8 || !probes.every((one) => typeof one === 'string'))
    throw new InputError('probes', 'are no list of one to eight names', 'give a name for each')
  if (new Set(probes).size < probes.length) throw new InputError('probes', 'a name stands twice', 'give each its own')
  // The caller's list may grow.
  return [...probes]
}

function checkedWater({ substrateVolume, flow: given }: WatchZoneSettings): Pick<Watched, 'volume' | 'flow'> {
  const volume = numberIn(substrateVolume, SUBSTRATE_VOLUME, 'substrateVolume')
  const flow = numberIn(given, VALVE_FLOW, 'flow')
  // What came and what rose are told as shares of them.
  for (const [name, value] of [
    ['flow', flow],
    ['substrateVolume', volume],
  ] as const)
    if (value < MIN || value > MAX)
      throw new InputError(name, `is ${value}: its shares would have no end`, 'check the unit')
  return { volume, flow }
}

function darkHours(hours: DarkHours): DarkHours {
  onlyNames(hours, { from: 1, until: 1 }, 'darkHours')
  const { from, until } = hours
  const hour = HOUR_OF_DAY
  return { from: numberIn(from, hour, 'darkHours.from'), until: numberIn(until, hour, 'darkHours.until') }
}
