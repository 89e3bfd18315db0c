import { InputError } from '../quantity/errors.js'
import { wholeWithin, within } from '../quantity/guard.js'
import type { Span } from '../quantity/span.js'
import type { Zone, ZoneLimits } from './zone.js'

const VOLUME: Span = {
  quantity: 'substrate volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the volume of medium in one container',
}
const HEIGHT: Span = {
  quantity: 'height of the medium',
  unit: 'cm',
  min: 0,
  max: 1000,
  ends: '(]',
  hint: 'measure the filled height',
}
const PLANTS: Span = {
  quantity: 'plants in a container',
  unit: '1',
  min: 0,
  max: 10000,
  ends: '(]',
  hint: 'give the plants that share one container',
}
const COUNT: Span = {
  quantity: 'emitters',
  unit: '1',
  min: 1,
  max: 1000,
  ends: '[]',
  hint: 'give the whole number of emitters in one container',
}
const FLOW: Span = {
  quantity: 'flow of one emitter',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'measure it with a cup and a watch',
}
const FILL: Span = {
  quantity: 'time to fill the line',
  unit: 's',
  min: 0,
  max: 3600,
  ends: '[]',
  hint: 'give zero or more seconds',
}
const WEIGHT: Span = {
  quantity: 'weight of a probe',
  unit: '1',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the plants, litres or square metres that it stands for',
}
const LAMP_HOUR: Span = {
  quantity: 'hour of the lamps',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[)',
  hint: 'give seconds after local midnight',
}
const LAMP_LIGHT: Span = {
  quantity: 'light of the lamps',
  unit: 'W/m²',
  min: 0,
  max: 1000,
  ends: '(]',
  hint: 'give it on the scale of the measured radiation',
}
const LATITUDE: Span = {
  quantity: 'latitude',
  unit: '°',
  min: -90,
  max: 90,
  ends: '[]',
  hint: 'give degrees, north positive',
}
const ELEVATION: Span = {
  quantity: 'elevation',
  unit: 'm',
  min: -500,
  max: 9000,
  ends: '[]',
  hint: 'give metres above sea level',
}
const STEP: Span = {
  quantity: 'time between two readings',
  unit: 's',
  min: 1,
  max: 86400,
  ends: '[]',
  hint: 'give the step of the record, from a second to a day',
}
const PER_DAY: Span = {
  quantity: 'most water in a day',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'every zone needs a finite limit that no plan may pass',
}
const MIN_RUN: Span = {
  quantity: 'shortest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const MAX_RUN: Span = {
  quantity: 'longest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'every valve needs a longest time above zero',
}
const REST: Span = {
  quantity: 'shortest time between two openings',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const DRAIN: Span = {
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 0.9,
  ends: '[]',
  hint: 'at nine tenths of drain nearly all water is lost; ask for less',
}
const DEPLETION: Span = {
  quantity: 'depletion',
  unit: '1',
  min: 0,
  max: 1,
  ends: '()',
  hint: 'give the share of the available water that may be used before the next shot',
}
const LOWER: Span = {
  quantity: 'lower limit of the water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give the water content at which plants get nothing any more',
}
const MIN_BELIEVED: Span = {
  quantity: 'lowest water content that is believed',
  unit: 'm³/m³',
  min: -0.1,
  max: 1,
  ends: '[)',
  hint: 'give it as a fraction, 0.05 for five per cent',
}
const MAX_BELIEVED: Span = {
  quantity: 'highest water content that is believed',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give it as a fraction, 0.9 for ninety per cent',
}
const RISE: Span = {
  quantity: 'least rise of a shot',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give several times the noise of the probe',
}
const AFTER_LIGHT: Span = {
  quantity: 'time between light and shots',
  unit: 's',
  min: -86400,
  max: 86400,
  ends: '[]',
  hint: 'give at most a day',
}

/** Refuses a zone that cannot be: every number has its range, and they agree with each other. */
export function checkZone(zone: Zone): Zone {
  const { container, emitters, probes, lamps, place } = zone
  within(container.substrateVolume, VOLUME)
  within(container.height, HEIGHT)
  within(container.plants, PLANTS)
  wholeWithin(emitters.count, COUNT)
  within(emitters.flow, FLOW)
  within(emitters.lineFill, FILL)
  within(place.latitude, LATITUDE)
  within(place.elevation, ELEVATION)
  within(zone.readingStep, STEP)
  if (lamps !== undefined) {
    within(lamps.on, LAMP_HOUR)
    within(lamps.off, LAMP_HOUR)
    within(lamps.irradiance, LAMP_LIGHT)
    if (lamps.on === lamps.off) throw new InputError('lamps', 'go on and off at once', 'leave them out, or give both')
  }
  if (place.clock.length === 0)
    throw new InputError('place.clock', 'has no entry', 'say how far local clocks are ahead of universal time')
  if (probes.length === 0) throw new InputError('probes', 'there is none', 'describe at least one probe')
  if (new Set(probes.map((probe) => probe.name)).size !== probes.length)
    throw new InputError('probes', 'two have the same name', 'give each a name of its own')
  for (const probe of probes) if (probe.weight !== undefined) within(probe.weight, WEIGHT)
  checkLimits(zone.limits)
  return zone
}

function checkLimits(limits: ZoneLimits): void {
  within(limits.maxPerDay, PER_DAY)
  within(limits.minRunTime, MIN_RUN)
  within(limits.maxRunTime, MAX_RUN)
  within(limits.minRest, REST)
  within(limits.drainFraction, DRAIN)
  within(limits.depletion, DEPLETION)
  within(limits.lowerLimit, LOWER)
  within(limits.minBelieved, MIN_BELIEVED)
  within(limits.maxBelieved, MAX_BELIEVED)
  within(limits.minRise, RISE)
  within(limits.firstShotAfterLight, AFTER_LIGHT)
  within(limits.lastShotBeforeDark, AFTER_LIGHT)
  if (limits.minRunTime > limits.maxRunTime)
    throw new InputError('minRunTime', 'is longer than the longest run time', 'give a shorter one')
  if (limits.minBelieved >= limits.maxBelieved)
    throw new InputError('minBelieved', 'is not below the highest that is believed', 'swap them')
}
