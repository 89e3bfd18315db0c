import type { Domain } from '../../quantity/domain.js'

/** The domains that the mass and volume relations share. Ten g/cm³ is far above any medium and below every number of kg/m³. */
export const BULK_DENSITY: Domain = {
  quantity: 'bulk density',
  unit: 'g/cm³',
  min: 0,
  max: 10,
  ends: '(]',
  hint: 'give dry mass over the volume of medium; a number of kg/m³ goes through kilogramsPerCubicMetre()',
}
export const PARTICLE_DENSITY: Domain = {
  quantity: 'particle density',
  unit: 'g/cm³',
  min: 0,
  max: 10,
  ends: '(]',
  hint: 'about 1.5 for organic and 2.65 for mineral parts; a number of kg/m³ goes through kilogramsPerCubicMetre()',
}
export const WATER_DENSITY: Domain = {
  quantity: 'water density',
  unit: 'g/cm³',
  min: 0.9,
  max: 1.2,
  ends: '[]',
  hint: 'water has 0.9982 at 20 °C, nutrient solution a little more; leave it out for 1',
}
export const WATER_CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the volume of water per volume of medium',
}
export const POROSITY: Domain = {
  quantity: 'porosity',
  unit: '1',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the volume of pores per volume of medium',
}
export const MASS_FRACTION: Domain = {
  quantity: 'mass fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a share of the dry mass; percent go through percent()',
}
