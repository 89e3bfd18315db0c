import { HOUR_OF_DAY, WATER } from '../../control/domains.js'
import { READING_STEP, SUBSTRATE_VOLUME, VALVE_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type {
  Duration,
  Flow,
  Share,
  SolutionEC,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../../quantity/generated/kinds.js'
import { booleanOf, numberIn, wholeNumberIn } from '../../quantity/guard.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'

import {
  CONTAINER_FLOW,
  CONTAINERS,
  DRIPPER_SPREAD,
  EVEN_SHARE,
  FEED_EC,
  LEVEL,
  MEDIUM_STEP,
  PLACE_SPREAD,
  PROBE_LAG,
  PROBE_NOISE,
  PROBE_OFFSET,
  PROBES,
  WEATHER_SPREAD,
} from '../domains.js'

import type { RehearsalMedium } from './rehearsal-medium.js'

/**
 * A zone that a rehearsal simulates. All volumes and flows are those of one container, the mean of the zone.
 */
export interface RehearsalZone {
  /** One container, made by `storedMedium` or `richardsMedium`. */
  readonly medium: RehearsalMedium
  /** Containers at the valve; the first ones carry a probe each. Unit: 1. Range: integers [1, 100000]. */
  readonly containers: number
  /** Probes. Unit: 1. Range: integers [1, 8]. */
  readonly probes: number
  /** Water content in the beginning. Unit: m³/m³. Range: (0, 1). */
  readonly waterContent: WaterContent
  /** Flow to a container while the valve is open and all is well. Unit: L/h. Range: (0, ∞). */
  readonly flow: Flow
  /** Time in which the line fills at each opening; this water runs out beside the containers afterwards. Unit: s. Range: [0, 86400]. */
  readonly lineFill: Duration
  /** What the plants of a container use in a normal day. Unit: L. Range: (0, ∞). */
  readonly dailyUse: Volume
  /** Share of it that is used evenly over day and night. Unit: 1. Range: [0, 1]. */
  readonly evenShare: Share
  /** Hour of the first light. Unit: h. Range: [0, 24]. */
  readonly sunrise: number
  /** Hour of the last light, after the first. Unit: h. Range: [0, 24]. */
  readonly sunset: number
  /** Time in which a probe shows all but 37 % of a change. Unit: s. Range: [0, 86400]. */
  readonly probeLag: Duration
  /** Standard deviation of a reading around what it should be. Unit: m³/m³. Range: [0, 0.2]. */
  readonly probeNoise: WaterContentChange
  /** Standard deviation of the probes' own offsets. Unit: m³/m³. Range: [0, 0.2]. */
  readonly probeOffset: WaterContentChange
  /** Standard deviation by which the swings at a probe's place are larger or smaller than those of its container. Unit: 1. Range: [0, 1]. */
  readonly placeSpread: Share
  /** Standard deviation of the drippers' flows around their mean, as a share. Unit: 1. Range: [0, 1]. */
  readonly dripperSpread: Share
  /** Standard deviation of the weather's share in the use of a day. Unit: 1. Range: [0, 1]. */
  readonly weatherSpread: Share
  /** How often the probes send a reading. Unit: s. Range: [1, 86400]. */
  readonly readingStep: Duration
  /** EC of the feed. Unit: dS/m at 25 °C. Range: [0, 50]. */
  readonly feedEC: SolutionEC
  /** What it has besides probes and a valve. */
  readonly has: ZoneGauges
}

const NAMES: NamesOf<RehearsalZone> = {
  medium: 1,
  containers: 1,
  probes: 1,
  waterContent: 1,
  flow: 1,
  lineFill: 1,
  dailyUse: 1,
  evenShare: 1,
  sunrise: 1,
  sunset: 1,
  probeLag: 1,
  probeNoise: 1,
  probeOffset: 1,
  placeSpread: 1,
  dripperSpread: 1,
  weatherSpread: 1,
  readingStep: 1,
  feedEC: 1,
  has: 1,
}

/** What a zone has besides probes and a valve. */
export interface ZoneGauges {
  /** A meter that counts water and shows flow. */
  readonly flowMeter: boolean
  /** A gauge that counts drain. */
  readonly drainGauge: boolean
  /** A contact that tells whether the valve is open. */
  readonly valveContact: boolean
  /** A main valve, or a pump, that the controller can shut. */
  readonly mainValve: boolean
}

const GAUGES: NamesOf<ZoneGauges> = { flowMeter: 1, drainGauge: 1, valveContact: 1, mainValve: 1 }

/** Beside more than this a shot is within rounding. Unit: L. */
const MAX_VOLUME = 1e12

export function checkedZone(zone: RehearsalZone): RehearsalZone {
  onlyNames(zone, NAMES, 'zone')
  onlyNames(zone.has, GAUGES, 'zone.has')
  for (const gauge of Object.keys(GAUGES) as (keyof ZoneGauges)[]) booleanOf(zone.has[gauge], `zone.has.${gauge}`)
  wholeNumberIn(zone.containers, CONTAINERS, 'containers')
  wholeNumberIn(zone.probes, PROBES, 'probes')
  if (zone.probes > zone.containers)
    throw new InputError('probes', `there are ${zone.probes} for ${zone.containers} containers`, 'at most one in each')
  numberIn(zone.waterContent, LEVEL, 'waterContent')
  numberIn(zone.flow, CONTAINER_FLOW, 'flow')
  numberIn(zone.lineFill, VALVE_TIME, 'lineFill')
  numberIn(zone.dailyUse, WATER, 'dailyUse')
  numberIn(zone.evenShare, EVEN_SHARE, 'evenShare')
  if (!(numberIn(zone.sunrise, HOUR_OF_DAY, 'sunrise') < numberIn(zone.sunset, HOUR_OF_DAY, 'sunset')))
    throw new InputError('sunset', 'is not after sunrise', 'give both in hours from local midnight')
  numberIn(zone.probeLag, PROBE_LAG, 'probeLag')
  numberIn(zone.probeNoise, PROBE_NOISE, 'probeNoise')
  numberIn(zone.probeOffset, PROBE_OFFSET, 'probeOffset')
  numberIn(zone.placeSpread, PLACE_SPREAD, 'placeSpread')
  numberIn(zone.dripperSpread, DRIPPER_SPREAD, 'dripperSpread')
  numberIn(zone.weatherSpread, WEATHER_SPREAD, 'weatherSpread')
  numberIn(zone.readingStep, READING_STEP, 'readingStep')
  numberIn(zone.feedEC, FEED_EC, 'feedEC')
  const volume = numberIn(zone.medium.substrateVolume, SUBSTRATE_VOLUME, 'substrateVolume')
  if (volume > MAX_VOLUME)
    throw new InputError('substrateVolume', `is ${volume} L: shots could not be told from nothing`, 'check the unit')
  numberIn(zone.medium.step, MEDIUM_STEP, 'step')
  return zone
}
