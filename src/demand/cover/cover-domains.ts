import type { Domain } from '../../quantity/domain.js'

/** Domains that the methods for crops under cover share. */

export const LEAF_AREA: Domain = {
  quantity: 'leaf area index',
  unit: '1',
  min: 0,
  max: 20,
  ends: '(]',
  hint: 'give square metres of leaves on a square metre of ground, above 0',
}
export const EXTINCTION: Domain = {
  quantity: 'extinction coefficient',
  unit: '1',
  min: 0,
  max: 2,
  ends: '(]',
  hint: 'give 0.4 for upright to 0.9 for flat leaves',
}
export const RADIATION: Domain = {
  quantity: 'radiation on the crop',
  unit: 'W/m²',
  min: 0,
  max: 1500,
  ends: '[]',
  hint: 'give the radiation above the leaves inside, in W/m²',
}
export const NET: Domain = {
  quantity: 'net radiation of the crop',
  unit: 'W/m²',
  min: -300,
  max: 1500,
  ends: '[]',
  hint: 'give what the leaves absorb less what they give off, in W/m²',
}
export const DEFICIT: Domain = {
  quantity: 'vapour pressure deficit',
  unit: 'kPa',
  min: 0,
  max: 10,
  ends: '[]',
  hint: 'give kPa, zero or more',
}
export const AIR: Domain = {
  quantity: 'air temperature',
  unit: '°C',
  min: 0,
  max: 60,
  ends: '[]',
  hint: 'give the temperature among the plants in degrees Celsius',
}
export const RESISTANCE: Domain = {
  quantity: 'resistance to vapour',
  unit: 's/m',
  min: 1,
  max: 100000,
  ends: '[]',
  hint: 'give s/m of one side of a leaf; 100 to 300 for the air, 80 to 1000 for leaves',
}
export const PHOTON_YIELD: Domain = {
  quantity: 'photons for each joule of light',
  unit: 'µmol/J',
  min: 3,
  max: 6,
  ends: '[]',
  hint: 'give micromoles for each joule of light: about 4.6 for white, 5 for sodium; not micromoles for each joule of electricity',
}
