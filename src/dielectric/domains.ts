import type { Domain } from '../quantity/domain.js'

/** Spans that several relations share. A relation with another domain has its own beside it. */
export const APPARENT: Domain = {
  quantity: 'apparent permittivity',
  unit: '1',
  min: 1,
  max: 90,
  ends: '[]',
  hint: 'air reads 1 and water about 80; convert raw counts to permittivity first',
}
export const CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the volume of water per volume of medium, from 0 to 1',
}
export const POROSITY: Domain = {
  quantity: 'porosity',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the volume of pores per volume of medium, from 0 to 1',
}
export const SHARE_OF_MASS: Domain = {
  quantity: 'mass fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share of the dry mass from 0 to 1; percent go through percent()',
}
export const BULK_DENSITY: Domain = {
  quantity: 'bulk density',
  unit: 'g/cm³',
  min: 0,
  max: 2.65,
  ends: '(]',
  hint: 'give the dry mass per volume in g/cm³; peat and stone wool have about 0.1, soil about 1.4',
}
export const SOLIDS: Domain = {
  quantity: 'permittivity of the solids',
  unit: '1',
  min: 1,
  max: 20,
  ends: '[]',
  hint: 'minerals have about 3 to 5, organic matter about 4 to 6 as an assumption',
}
export const AIR: Domain = {
  quantity: 'permittivity of the air',
  unit: '1',
  min: 1,
  max: 1.1,
  ends: '[]',
  hint: 'take 1',
}
export const WATER: Domain = {
  quantity: 'permittivity of the water',
  unit: '1',
  min: 30,
  max: 100,
  ends: '[]',
  hint: 'take it from the temperature of the medium: 80.2 at 20 °C',
}
export const MIXING_EXPONENT: Domain = {
  quantity: 'exponent of the mixing law',
  unit: '1',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'one half is the refractive-index form, 1 is layers along the field',
}
export const FREQUENCY: Domain = {
  quantity: 'frequency',
  unit: 'Hz',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the frequency at which the probe measures, above zero',
}
export const CONDUCTIVITY: Domain = {
  quantity: 'electrical conductivity',
  unit: 'dS/m',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a conductivity of zero or more in dS/m',
}
export const LIQUID: Domain = {
  quantity: 'temperature',
  unit: '°C',
  min: -20,
  max: 110,
  ends: '[]',
  hint: 'the water must be liquid',
}
export const APPARENT_TO_49: Domain = {
  quantity: 'apparent permittivity',
  unit: '1',
  min: 1,
  max: 49,
  ends: '[]',
  hint: 'air reads 1; above 49 this cubic gives more water than volume',
}
