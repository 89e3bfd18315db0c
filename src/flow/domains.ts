import type { Domain } from '../quantity/domain.js'

export const SATURATED_CONDUCTIVITY: Domain = {
  quantity: 'saturated conductivity',
  unit: 'cm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a conductivity above zero; tables print cm/min, cm/h, cm/d and mm/h',
}
export const COLUMN_HEIGHT: Domain = {
  quantity: 'height of the column',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the height of the surface over the water table',
}
export const HEIGHT: Domain = {
  quantity: 'height',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'count upwards from the water table',
}
export const BOTTOM_SUCTION: Domain = {
  quantity: 'bottom suction',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero for a water table',
}
export const DOWNWARD_FLUX: Domain = {
  quantity: 'downward flux',
  unit: 'mm/h',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite flux; downwards is positive, evaporation negative',
}
export const UPWARD_FLUX: Domain = {
  quantity: 'upward flux',
  unit: 'mm/h',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water that rises, counted positive',
}
export const SUCTION: Domain = {
  quantity: 'suction',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'suctions are zero or more, without the minus sign of a pressure head',
}
export const ALPHA: Domain = {
  quantity: 'alpha',
  unit: '1/cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give how fast the logarithm of the conductivity falls with suction; mind 1/m and 1/kPa in tables',
}
export const DEPTH_OF_TABLE: Domain = {
  quantity: 'depth of the water table',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give how far the water table is below the surface',
}
export const FRONT_CONDUCTIVITY: Domain = {
  quantity: 'conductivity of the wetted medium',
  unit: 'cm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a conductivity above zero; tables print cm/min, cm/h, cm/d and mm/h',
}
export const FRONT_SUCTION: Domain = {
  quantity: 'suction at the front',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the suction that draws the front on, zero or more',
}
export const WATER_CONTENT_RISE: Domain = {
  quantity: 'rise of water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the wetted water content less the one before',
}
export const PONDED_DEPTH: Domain = {
  quantity: 'ponded depth',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water that stands on the surface, zero or more',
}
export const TIME_OF_FRONT: Domain = {
  quantity: 'time',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a time above zero: at the very start the rate has no limit',
}
export const ELAPSED: Domain = {
  quantity: 'time',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the time since it began, zero or more',
}
export const APPLICATION_RATE: Domain = {
  quantity: 'application rate',
  unit: 'mm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the water that falls on the wetted surface, above zero',
}
export const STEP: Domain = {
  quantity: 'duration of the step',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'take steps of at most a day',
}
export const APPLIED: Domain = {
  quantity: 'water given',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}
export const DEMAND: Domain = {
  quantity: 'demand of the plants',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}
