import type { Domain } from '../../quantity/domain.js'

/** Domains that the steps from a reference to a crop and its soil water share. */

export const COEFFICIENT: Domain = {
  quantity: 'crop coefficient',
  unit: '1',
  min: 0,
  max: 3,
  ends: '[]',
  hint: 'crop coefficients lie between 0 and about 1.4',
}
export const REFERENCE_ET: Domain = {
  quantity: 'reference evapotranspiration',
  unit: 'mm/d',
  min: 0,
  max: 30,
  ends: '(]',
  hint: 'give a depth of water a day in mm, above zero',
}
export const CROP_ET: Domain = {
  quantity: 'crop evapotranspiration',
  unit: 'mm/d',
  min: 0,
  max: 90,
  ends: '[]',
  hint: 'give a depth of water a day in mm, zero or more',
}
export const HUMIDITY: Domain = {
  quantity: 'lowest relative humidity of the day',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share from 0 to 1; percent(45) makes one',
}
export const HEIGHT: Domain = {
  quantity: 'crop height',
  unit: 'cm',
  min: 0,
  max: 10000,
  ends: '[]',
  hint: 'give the mean height of the plants',
}
export const GROUND: Domain = {
  quantity: 'share of the ground',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share from 0 to 1',
}
export const WETTED: Domain = {
  quantity: 'share of the ground that is wetted',
  unit: '1',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give a share above 0, up to 1 for rain and sprinklers',
}
export const DEPTH: Domain = {
  quantity: 'depth of water',
  unit: 'mm',
  min: 0,
  max: 10000,
  ends: '[]',
  hint: 'give millimetres of water, zero or more',
}
export const CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the volume of water per volume of medium',
}
export const THICKNESS: Domain = {
  quantity: 'depth of the layer',
  unit: 'cm',
  min: 0,
  max: 2000,
  ends: '(]',
  hint: 'give a depth above zero; 0.1 m is metres(0.1)',
}
export const DEPLETION: Domain = {
  quantity: 'depletion fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give the share of the available water that may be used without stress, below 1',
}
export const EC: Domain = {
  quantity: 'electrical conductivity',
  unit: 'dS/m',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give dS/m at 25 °C, zero or more',
}
export const TOTAL_AVAILABLE: Domain = {
  quantity: 'total available water',
  unit: 'mm',
  min: 0,
  max: 10000,
  ends: '(]',
  hint: 'give millimetres above zero',
}
