import type { Span } from '../quantity/span.js'

export const SATURATED_CONDUCTIVITY: Span = {
  quantity: 'saturated conductivity',
  unit: 'cm/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a conductivity above zero; tables print cm/min, cm/h, cm/d and mm/h',
}
export const COLUMN_HEIGHT: Span = {
  quantity: 'height of the column',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the height of the surface over the water table',
}
export const HEIGHT: Span = {
  quantity: 'height',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'count upwards from the water table',
}
export const BOTTOM_SUCTION: Span = {
  quantity: 'bottom suction',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero for a water table',
}
export const DOWNWARD_FLUX: Span = {
  quantity: 'downward flux',
  unit: 'mm/h',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite flux; downwards is positive, evaporation negative',
}
