import type { Domain } from '../quantity/domain.js'

/** Domains that several files of this folder share. */

export const GIVEN: Domain = {
  quantity: 'volume of water',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water for one container, zero or more',
}
export const SHOT: Domain = {
  quantity: 'volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give more',
}
export const USE: Domain = {
  quantity: 'water use',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water that the plants take, zero or more',
}
export const NET: Domain = {
  quantity: 'net water',
  unit: 'L or mm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water that must reach the roots, zero or more',
}
export const SUBSTRATE: Domain = {
  quantity: 'volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give more',
}
export const WATER_CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share of the volume',
}
export const CAPACITY: Domain = {
  quantity: 'container capacity',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the water content after free drainage, measured in this container',
}
export const DRAIN_FRACTION: Domain = {
  quantity: 'share',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give less',
}
export const SHARE: Domain = {
  quantity: 'share',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share from 0 to 1',
}
export const EFFICIENCY: Domain = {
  quantity: 'efficiency',
  unit: '1',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the share of the water that arrives, above 0 and up to 1',
}
export const RUN_TIME: Domain = {
  quantity: 'run time',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the time that the valve is open in all, zero or more',
}
export const ON_TIME: Domain = {
  quantity: 'longest opening',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a time above zero',
}
export const SOAK: Domain = {
  quantity: 'break between openings',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a time of zero or more',
}
export const RATE: Domain = {
  quantity: 'application rate',
  unit: 'mm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the water that falls on the wetted surface, above zero',
}
export const INFILTRATION: Domain = {
  quantity: 'infiltration rate',
  unit: 'mm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the rate at which the surface takes water, above zero',
}
export const PONDING: Domain = {
  quantity: 'ponding depth',
  unit: 'mm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the depth of water that may stand, above zero',
}
export const EMITTER_FLOW: Domain = {
  quantity: 'flow',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give more',
}
export const WETTED_AREA: Domain = {
  quantity: 'area',
  unit: 'm²',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the area on which the water falls, above zero',
}
export const DEPTH_USE: Domain = {
  quantity: 'water use',
  unit: 'mm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the depth that the crop takes, zero or more',
}
export const MOMENT: Domain = {
  quantity: 'time',
  unit: 's',
  min: -62135596800,
  max: 253402300799,
  ends: '[]',
  hint: 'give seconds since 1970',
}
export const ZONE_FLOW: Domain = {
  quantity: 'flow of the zone',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the flow of all emitters on the valve, above zero',
}
export const PUMP_FLOW: Domain = {
  quantity: 'flow of the pump',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the flow that the pump holds at working pressure',
}
export const EMITTERS: Domain = {
  quantity: 'number',
  unit: '1',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give more',
}
/** A document counts the emitters that somebody put into one container; formulas also take the mean of several. */
export const EMITTER_COUNT: Domain = {
  quantity: 'emitters',
  unit: '1',
  min: 1,
  max: 1000,
  ends: '[]',
  hint: 'give the whole number of emitters in one container',
}
export const MAX_PER_DAY: Domain = {
  quantity: 'volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}
export const LIGHT_THRESHOLD: Domain = {
  quantity: 'light',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give more',
}
export const CHANGE: Domain = {
  quantity: 'change',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give zero or more',
}
/** How long a valve is open, at rest, late, or fills its line. */
export const VALVE_TIME: Domain = {
  quantity: 'time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
