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
  quantity: 'volume of the shot',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a volume above zero',
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
  quantity: 'substrate volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the volume of medium that the probe stands for, not the nominal volume of the pot',
}
export const CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give water per volume of medium; a reading below 0 or above 1 needs a calibration first',
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
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give the share of the water that should drain; all of it cannot',
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
  quantity: 'flow of an emitter',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the measured flow of one emitter, above zero',
}
export const EMITTER_NUMBER: Domain = {
  quantity: 'emitters',
  unit: '1',
  min: 0,
  max: 1000000,
  ends: '(]',
  hint: 'give the number of emitters that run together',
}
export const WETTED_AREA: Domain = {
  quantity: 'area',
  unit: 'm²',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the area on which the water falls, above zero',
}
export const FILL_TIME: Domain = {
  quantity: 'line fill',
  unit: 's',
  min: 0,
  max: 3600,
  ends: '[]',
  hint: 'time it from opening the valve until all emitters run',
}
export const DEPTH_USE: Domain = {
  quantity: 'water use',
  unit: 'mm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the depth that the crop takes, zero or more',
}
