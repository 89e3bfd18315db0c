import type { Domain } from '../quantity/domain.js'

/** Ranges that several formulas of the air share. */
export const AIR_TEMPERATURE: Domain = {
  quantity: 'air temperature',
  unit: '°C',
  min: -60,
  max: 100,
  ends: '[]',
  hint: 'give the temperature of the air in degrees Celsius',
}
export const AIR_PRESSURE: Domain = {
  quantity: 'atmospheric pressure',
  unit: 'kPa',
  min: 30,
  max: 120,
  ends: '[]',
  hint: 'give the pressure of the air in kPa: about 101 at sea level',
}
export const VAPOUR: Domain = {
  quantity: 'vapour pressure',
  unit: 'kPa',
  min: 0,
  max: 102,
  ends: '[]',
  hint: 'give the pressure of water vapour in kPa; saturated air at 100 °C has 102',
}
export const HUMIDITY: Domain = {
  quantity: 'relative humidity',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share from 0 to 1, or percent(); a sensor that reads more than 100 % is wet or dirty',
}
export const SITE_ELEVATION: Domain = {
  quantity: 'elevation',
  unit: 'm',
  min: -500,
  max: 9000,
  ends: '[]',
  hint: 'give the elevation of a place on land, in metres above sea level',
}
export const OUTSIDE_RADIATION: Domain = {
  quantity: 'extraterrestrial radiation',
  unit: 'MJ/m²/d',
  min: 0,
  max: 60,
  ends: '[]',
  hint: 'give a daily sum in MJ/m², from extraterrestrialRadiationFao56()',
}
export const SITE_LATITUDE: Domain = {
  quantity: 'latitude',
  unit: '°',
  min: -90,
  max: 90,
  ends: '[]',
  hint: 'give decimal degrees, south negative',
}
export const SITE_LONGITUDE: Domain = {
  quantity: 'longitude',
  unit: '°',
  min: -180,
  max: 180,
  ends: '[]',
  hint: 'give decimal degrees, west negative',
}
export const YEAR_DAY: Domain = {
  quantity: 'day of the year',
  unit: 'd',
  min: 1,
  max: 366,
  ends: '[]',
  hint: 'give a whole number; 1 January is 1',
}
export const DAILY_SOLAR: Domain = {
  quantity: 'solar radiation',
  unit: 'MJ/m²/d',
  min: 0,
  max: 60,
  ends: '[]',
  hint: 'give a daily sum in MJ/m²; more than 50 does not reach the ground',
}
export const ALBEDO: Domain = {
  quantity: 'albedo',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the share of light that is reflected',
}
export const ACTUAL_VAPOUR: Domain = {
  quantity: 'actual vapour pressure',
  unit: 'kPa',
  min: 0,
  max: 10,
  ends: '[]',
  hint: 'give a pressure of water vapour in kPa',
}
export const PHOTON_FLUX: Domain = {
  quantity: 'photon flux',
  unit: 'µmol/m²/s',
  min: 0,
  max: 20000,
  ends: '[]',
  hint: 'give µmol/m²/s, zero or more; full sun has about 2000',
}
export const SUNSHINE: Domain = {
  quantity: 'sunshine of the day',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give the hours of bright sunshine of the day, from 0 to 24',
}
