import type { Domain } from '../../quantity/domain.js'

/** Domains of the terms that the Penman-Monteith equation and its simpler kin share. */

export const WIND: Domain = {
  quantity: 'wind speed at 2 m',
  unit: 'm/s',
  min: 0,
  max: 120,
  ends: '[]',
  hint: 'give a wind speed in m/s, zero or more',
}
export const NET_RADIATION: Domain = {
  quantity: 'net radiation',
  unit: 'MJ/m²/d',
  min: -30,
  max: 60,
  ends: '[]',
  hint: 'give a daily sum in MJ/m²',
}
export const SOIL_HEAT: Domain = {
  quantity: 'soil heat flux',
  unit: 'MJ/m²/d',
  min: -30,
  max: 30,
  ends: '[]',
  hint: 'give a daily sum in MJ/m²; for a day it is near zero',
}
export const SLOPE: Domain = {
  quantity: 'slope of the vapour pressure curve',
  unit: 'kPa/K',
  min: 0,
  max: 4,
  ends: '(]',
  hint: 'give it in kPa/K, from slopeOfSaturationVapourPressureFao56()',
}
export const PSYCHROMETRIC: Domain = {
  quantity: 'psychrometric constant',
  unit: 'kPa/K',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give it in kPa/K, from psychrometricConstantFao56()',
}
