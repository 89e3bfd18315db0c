import { PROBE_WEIGHT } from '../probe/domains.js'
import type { Domain } from '../quantity/domain.js'
import { EMITTERS, MAX_RUN_TIME, VALVE_TIME } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { numberIn, requireList, requireObject } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import { MIN_RISE } from '../record/domains.js'
import { checkOffsets } from '../record/local-time.js'
import type { Zone, ZoneLimits } from './zone.js'

const VOLUME: Domain = {
  quantity: 'substrate volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the volume of medium in one container',
}
const HEIGHT: Domain = {
  quantity: 'height of the medium',
  unit: 'cm',
  min: 0,
  max: 1000,
  ends: '(]',
  hint: 'measure the filled height',
}
const PLANTS: Domain = {
  quantity: 'plants in a container',
  unit: '1',
  min: 0,
  max: 10000,
  ends: '(]',
  hint: 'give the plants that share one container',
}
const FLOW: Domain = {
  quantity: 'flow of one emitter',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'measure it with a cup and a watch',
}
const LAMP_HOUR: Domain = {
  quantity: 'hour of the lamps',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[)',
  hint: 'give seconds after local midnight',
}
const LAMP_LIGHT: Domain = {
  quantity: 'light of the lamps',
  unit: 'W/m²',
  min: 0,
  max: 1000,
  ends: '(]',
  hint: 'give it on the scale of the measured radiation',
}
const LATITUDE: Domain = {
  quantity: 'latitude',
  unit: '°',
  min: -90,
  max: 90,
  ends: '[]',
  hint: 'give degrees, north positive',
}
const ELEVATION: Domain = {
  quantity: 'elevation',
  unit: 'm',
  min: -500,
  max: 9000,
  ends: '[]',
  hint: 'give metres above sea level',
}
const STEP: Domain = {
  quantity: 'time between two readings',
  unit: 's',
  min: 1,
  max: 86400,
  ends: '[]',
  hint: 'give the step of the record, from a second to a day',
}
const PER_SHOT: Domain = {
  quantity: 'most water in a shot',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give what a container takes at once, or leave it out',
}
const PER_DAY: Domain = {
  quantity: 'most water in a day',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'every zone needs a finite limit that no plan may pass',
}
const MIN_RUN: Domain = {
  quantity: 'shortest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const REST: Domain = {
  quantity: 'shortest time between two openings',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const DRAIN: Domain = {
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give the share of the water that should drain; all of it cannot',
}
const DEPLETION: Domain = {
  quantity: 'depletion',
  unit: '1',
  min: 0,
  max: 1,
  ends: '()',
  hint: 'give the share of the available water that may be used before the next shot',
}
const LOWER: Domain = {
  quantity: 'lower limit of the water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give the water content at which plants get nothing any more',
}
const MIN_BELIEVED: Domain = {
  quantity: 'lowest water content that is believed',
  unit: 'm³/m³',
  min: -0.1,
  max: 1,
  ends: '[)',
  hint: 'give it as a fraction, 0.05 for five per cent',
}
const MAX_BELIEVED: Domain = {
  quantity: 'highest water content that is believed',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give it as a fraction, 0.9 for ninety per cent',
}
const AFTER_LIGHT: Domain = {
  quantity: 'time between light and shots',
  unit: 's',
  min: -86400,
  max: 86400,
  ends: '[]',
  hint: 'give at most a day',
}

/** Refuses a zone that cannot be: every number has its range, and they agree with each other. */
export function checkZone(zone: Zone): Zone {
  requireObject(zone, 'zone')
  for (const part of ['container', 'emitters', 'place', 'limits', 'probes'] as const) requireObject(zone[part], part)
  const { container, emitters, probes, lamps, place } = zone
  numberIn(container.substrateVolume, VOLUME, 'substrateVolume')
  numberIn(container.height, HEIGHT, 'height')
  numberIn(container.plants, PLANTS, 'plants')
  numberIn(emitters.count, EMITTERS, 'count')
  numberIn(emitters.flow, FLOW, 'flow')
  numberIn(emitters.lineFill, VALVE_TIME, 'lineFill')
  numberIn(place.latitude, LATITUDE, 'latitude')
  numberIn(place.elevation, ELEVATION, 'elevation')
  numberIn(zone.readingStep, STEP, 'readingStep')
  if (zone.wateringLog !== undefined) oneOf(zone.wateringLog, ['openings', 'days'], 'wateringLog')
  if (lamps !== undefined) {
    requireObject(lamps, 'lamps')
    numberIn(lamps.on, LAMP_HOUR, 'on')
    numberIn(lamps.off, LAMP_HOUR, 'off')
    numberIn(lamps.irradiance, LAMP_LIGHT, 'irradiance')
    if (lamps.on === lamps.off) throw new InputError('lamps', 'go on and off at once', 'leave them out, or give both')
  }
  // Offsets in milliseconds would move the days by weeks.
  checkOffsets(place.clock, 'place.clock')
  requireList(probes, 'probes')
  for (const probe of probes) {
    requireObject(probe, 'probe')
    if (typeof probe.name !== 'string' || probe.name === '')
      throw new InputError('probe.name', `a ${typeof probe.name} is no name`, 'give each probe a name')
  }
  if (probes.length === 0) throw new InputError('probes', 'there is none', 'describe at least one probe')
  if (new Set(probes.map((probe) => probe.name)).size !== probes.length)
    throw new InputError('probes', 'two have the same name', 'give each a name of its own')
  for (const probe of probes) if (probe.weight !== undefined) numberIn(probe.weight, PROBE_WEIGHT, 'weight')
  checkLimits(zone.limits)
  return zone
}

function checkLimits(limits: ZoneLimits): void {
  if (limits.maxPerShot !== undefined) numberIn(limits.maxPerShot, PER_SHOT, 'maxPerShot')
  numberIn(limits.maxPerDay, PER_DAY, 'maxPerDay')
  numberIn(limits.minRunTime, MIN_RUN, 'minRunTime')
  numberIn(limits.maxRunTime, MAX_RUN_TIME, 'maxRunTime')
  numberIn(limits.minRest, REST, 'minRest')
  numberIn(limits.drainFraction, DRAIN, 'drainFraction')
  numberIn(limits.depletion, DEPLETION, 'depletion')
  numberIn(limits.lowerLimit, LOWER, 'lowerLimit')
  numberIn(limits.minBelieved, MIN_BELIEVED, 'minBelieved')
  numberIn(limits.maxBelieved, MAX_BELIEVED, 'maxBelieved')
  numberIn(limits.minRise, MIN_RISE, 'minRise')
  numberIn(limits.firstShotAfterLight, AFTER_LIGHT, 'firstShotAfterLight')
  numberIn(limits.lastShotBeforeDark, AFTER_LIGHT, 'lastShotBeforeDark')
  if (limits.minRunTime > limits.maxRunTime)
    throw new InputError('minRunTime', 'is longer than the longest run time', 'give a shorter one')
  if (limits.minBelieved >= limits.maxBelieved)
    throw new InputError('minBelieved', 'is not below the highest that is believed', 'swap them')
}
