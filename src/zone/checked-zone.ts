import { CROP_COEFFICIENT } from '../demand/domains.js'
import { PROBE_WEIGHT } from '../probe/domains.js'
import {
  BELIEVABLE,
  DRAIN_FRACTION,
  EMITTERS,
  MAX_RUN_TIME,
  PLANT_DENSITY,
  READING_STEP,
  SITE_ELEVATION,
  SITE_LATITUDE,
  SUBSTRATE_VOLUME,
  VALVE_TIME,
} from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { numberIn, requireList, requireObject } from '../quantity/guard.js'
import { oneOf, onlyNames } from '../quantity/one-of.js'
import { MIN_RISE } from '../record/domains.js'
import { checkOffsets } from '../record/local-time.js'
import {
  ALLOWED_FALL,
  CONTAINER_PLANTS,
  DEPLETION,
  EMITTER_FLOW,
  FROM_LIGHT,
  LAMP_HOUR,
  LAMP_LIGHT,
  LOWER_LIMIT,
  MAX_PER_DAY,
  MAX_PER_SHOT,
  MEDIUM_HEIGHT,
  MIN_BELIEVED,
} from './domains.js'
import { DESCRIBED_PROBE, ZONE_LAMPS, ZONE_LIMITS } from './names.js'
import type { Zone } from './zone.js'

/** Refuses a zone that cannot be: every number has its range, and they agree with each other. */
export function checkZone(zone: Zone): Zone {
  // A zone document carries its version, and whatever else somebody keeps with it.
  requireObject(zone, 'zone')
  const { container, emitters, probes, lamps, place } = zone
  for (const part of ['container', 'emitters', 'place', 'probes'] as const) requireObject(zone[part], part)
  onlyNames(zone.limits, ZONE_LIMITS, 'limits')
  numberIn(container.substrateVolume, SUBSTRATE_VOLUME, 'substrateVolume')
  numberIn(container.height, MEDIUM_HEIGHT, 'height')
  numberIn(container.plants, CONTAINER_PLANTS, 'plants')
  numberIn(emitters.count, EMITTERS, 'count')
  numberIn(emitters.flow, EMITTER_FLOW, 'flow')
  numberIn(emitters.lineFill, VALVE_TIME, 'lineFill')
  numberIn(place.latitude, SITE_LATITUDE, 'latitude')
  numberIn(place.elevation, SITE_ELEVATION, 'elevation')
  numberIn(zone.readingStep, READING_STEP, 'readingStep')
  numberIn(zone.plantDensity, PLANT_DENSITY, 'plantDensity')
  numberIn(zone.cropCoefficient, CROP_COEFFICIENT, 'cropCoefficient')
  if (zone.wateringLog !== undefined) oneOf(zone.wateringLog, ['openings', 'days'], 'wateringLog')
  if (lamps !== undefined) checkLamps(lamps)
  // Offsets in milliseconds would move the days by weeks.
  checkOffsets(place.clock, 'place.clock')
  requireList(probes, 'probes')
  probes.forEach((probe, i) => {
    onlyNames(probe, DESCRIBED_PROBE, `probes[${i}]`)
    if (typeof probe.name !== 'string' || probe.name === '')
      throw new InputError(`probes[${i}].name`, `a ${typeof probe.name} is no name`, 'give each probe a name')
  })
  if (zone.medium !== undefined) requireObject(zone.medium, 'medium')
  if (probes.length === 0) throw new InputError('probes', 'there is none', 'describe at least one probe')
  if (new Set(probes.map((probe) => probe.name)).size !== probes.length)
    throw new InputError('probes', 'two have the same name', 'give each a name of its own')
  for (const probe of probes) if (probe.weight !== undefined) numberIn(probe.weight, PROBE_WEIGHT, 'weight')
  checkLimits(zone)
  return zone
}

function checkLamps(lamps: NonNullable<Zone['lamps']>): void {
  onlyNames(lamps, ZONE_LAMPS, 'lamps')
  numberIn(lamps.on, LAMP_HOUR, 'on')
  numberIn(lamps.off, LAMP_HOUR, 'off')
  numberIn(lamps.irradiance, LAMP_LIGHT, 'irradiance')
  if (lamps.on === lamps.off) throw new InputError('lamps', 'go on and off at once', 'leave them out, or give both')
}

/** One of two numbers says when to water again: of two different ones nobody could say which counts. */
function checkFall({ medium, limits: { allowedFall, depletion } }: Zone): void {
  if (depletion !== undefined) numberIn(depletion, DEPLETION, 'depletion')
  if (allowedFall !== undefined) numberIn(allowedFall, ALLOWED_FALL, 'allowedFall')
  if ((depletion === undefined) === (allowedFall === undefined))
    throw new InputError(
      'limits',
      depletion === undefined ? 'say not when to water again' : 'give both "depletion" and "allowedFall"',
      'give "depletion", a share of the available water, or "allowedFall", a fall of the water content',
    )
  // A share of what uncalibrated probes report would move with their offset, and with it every shot.
  if (depletion !== undefined && medium === undefined)
    throw new InputError(
      'limits.depletion',
      'is a share of the water that the medium holds, which only a bench test tells',
      'give "allowedFall" in its place, 0.03 for three points below the full point, or describe the "medium"',
    )
}

function checkLimits(zone: Zone): void {
  const { limits } = zone
  if (limits.maxPerShot !== undefined) numberIn(limits.maxPerShot, MAX_PER_SHOT, 'maxPerShot')
  numberIn(limits.maxPerDay, MAX_PER_DAY, 'maxPerDay')
  numberIn(limits.minRunTime, VALVE_TIME, 'minRunTime')
  numberIn(limits.maxRunTime, MAX_RUN_TIME, 'maxRunTime')
  numberIn(limits.minRest, VALVE_TIME, 'minRest')
  numberIn(limits.drainFraction, DRAIN_FRACTION, 'drainFraction')
  checkFall(zone)
  numberIn(limits.lowerLimit, LOWER_LIMIT, 'lowerLimit')
  numberIn(limits.minBelievable, MIN_BELIEVED, 'minBelievable')
  numberIn(limits.maxBelievable, BELIEVABLE, 'maxBelievable')
  numberIn(limits.minRise, MIN_RISE, 'minRise')
  numberIn(limits.firstShotAfterLight, FROM_LIGHT, 'firstShotAfterLight')
  numberIn(limits.lastShotBeforeDark, FROM_LIGHT, 'lastShotBeforeDark')
  if (limits.minRunTime > limits.maxRunTime)
    throw new InputError('minRunTime', 'is longer than the longest run time', 'give a shorter one')
  if (limits.minBelievable >= limits.maxBelievable)
    throw new InputError('minBelievable', 'is not below the highest that is believed', 'swap them')
}
