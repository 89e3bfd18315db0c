import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const ALPHA: Domain = { quantity: 'alpha', unit: '1/cm', min: 0, max: Infinity, ends: '()', hint: 'about one over the suction at which the largest pores drain; mind 1/m and 1/kPa in tables' }
export const ALPHA_RATIO: Domain = { quantity: 'alpha ratio', unit: '1', min: 1, max: Infinity, ends: '[)', hint: 'a medium that is wetted holds less at the same suction; leave it out for the usual 2' }
export const ANY_SUCTION: Domain = { quantity: 'suction', unit: 'cm', min: -Infinity, max: Infinity, ends: '()', hint: 'give a finite suction; zero or less means saturated' }
export const BOTTOM_SUCTION: Domain = { quantity: 'bottom suction', unit: 'cm', min: 0, max: Infinity, ends: '[)', hint: 'zero over a water table or when the container has just stopped draining, more when roots or a wick have drawn on it' }
/** Ten g/cm³ is far above any medium and below every number of kg/m³. */
export const BULK_DENSITY: Domain = { quantity: 'bulk density', unit: 'g/cm³', min: 0, max: 10, ends: '(]', hint: 'give dry mass over the volume of medium; a number of kg/m³ goes through kilogramsPerCubicMetre()' }
export const COARSE_SHARE: Domain = { quantity: 'coarse share', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a share from 0 to 1' }
export const CONTAINER_VOLUME: Domain = { quantity: 'volume of the container', unit: 'cm³', min: 0, max: Infinity, ends: '()', hint: 'check the units of the measures' }
export const CONTENT_UNCERTAINTY: Domain = { quantity: 'uncertainty of water content', unit: 'm³/m³', min: 1e-4, max: 0.2, ends: '[]', hint: 'about 0.01 for weighed samples' }
export const CORNER_RADIUS: Domain = { quantity: 'corner radius', unit: 'cm', min: 0, max: Infinity, ends: '[)', hint: 'give the radius of the corners, zero when they are sharp' }
export const DEPLETION: Domain = { quantity: 'depletion', unit: '1', min: 0, max: 1, ends: '[)', hint: 'give the share of the available water that may be used, or leave it out' }
export const EXTENT: Domain = { quantity: 'length', unit: 'cm', min: 0, max: Infinity, ends: '()', hint: 'measure the medium inside the container, in its settled state' }
export const FILLED_VOLUME: Domain = { quantity: 'volume of medium', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give the volume that the medium fills, not that of the pot to its rim' }
export const GRAVIMETRIC: Domain = { quantity: 'gravimetric water content', unit: 'g/g', min: 0, max: Infinity, ends: '[)', hint: 'give mass of water over dry mass, not over wet mass' }
export const HAVERKAMP_COEFFICIENT: Domain = { quantity: 'coefficient', unit: 'cm^β', min: 0, max: Infinity, ends: '()', hint: 'give the coefficient for suctions in centimetres' }
export const HEIGHT: Domain = { quantity: 'height', unit: 'cm', min: 0, max: Infinity, ends: '[)', hint: 'count heights from the bottom' }
export const LOG_UNCERTAINTY: Domain = { quantity: 'uncertainty of the logarithm of conductivity', unit: '1', min: 1e-3, max: 3, ends: '[]', hint: '0.2 is a factor of 1.6' }
export const MIN_AIR: Domain = { quantity: 'least air', unit: '1', min: 0, max: 1, ends: '[)', hint: 'give the air-filled porosity below which roots suffer, often 0.1' }
export const PARTICLE_DENSITY: Domain = { quantity: 'particle density', unit: 'g/cm³', min: 0, max: 10, ends: '(]', hint: 'about 1.5 for organic and 2.65 for mineral parts; a number of kg/m³ goes through kilogramsPerCubicMetre()' }
export const POINT_CONDUCTIVITY: Domain = { quantity: 'conductivity', unit: 'cm/h', min: 0, max: Infinity, ends: '()', hint: 'leave a point that has no conductivity without one' }
export const POINT_SUCTION: Domain = { quantity: 'suction', unit: 'cm', min: 0, max: 1e8, ends: '[]', hint: 'give suction as a positive head in cm; kPa go through kilopascalsOfSuction()' }
export const PORE_CONNECTION: Domain = { quantity: 'pore connection', unit: '1', min: -Infinity, max: Infinity, ends: '()', hint: 'leave it out unless it was fitted' }
export const PROFILE_POINTS: Domain = { quantity: 'points', unit: '1', min: 2, max: 100000, ends: '[]', hint: 'give a whole number of heights, both ends included' }
export const READ_MASS: Domain = { quantity: 'mass', unit: 'g', min: 0, max: Infinity, ends: '[)', hint: 'give what the balance shows, in grams()' }
export const READ_WATER: Domain = { quantity: 'volume of water', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give litres() or millilitres()' }
export const REFILL_DEPLETION: Domain = { quantity: 'depletion', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give the share of the available water that may be used' }
export const RESIDUAL_CONTENT: Domain = { quantity: 'residual water content', unit: 'm³/m³', min: 0, max: 1, ends: '[)', hint: 'give zero or the water content that very high suction leaves' }
export const SATURATION: Domain = { quantity: 'degree of saturation', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give the volume of water per volume of pores' }
export const SECTION_AREA: Domain = { quantity: 'area', unit: 'm²', min: 0, max: Infinity, ends: '[)', hint: 'give the area of the section' }
export const SETTLING: Domain = { quantity: 'settling', unit: '1', min: 0, max: 1, ends: '[)', hint: 'give the loss of height or volume over what it was at first' }
export const SOME_SUCTION: Domain = { quantity: 'suction', unit: 'cm', min: 0, max: Infinity, ends: '()', hint: 'give a suction above zero' }
export const UNIT_VOLUME: Domain = { quantity: 'volume', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give the volume of the whole unit' }
export const WATER_CLASS: Domain = { quantity: 'share of the volume', unit: '1', min: -Infinity, max: Infinity, ends: '()', hint: 'take it from `waterClassesDeBoodt1972` or `waterClassesOfMedium`' }
export const WATER_DENSITY: Domain = { quantity: 'water density', unit: 'g/cm³', min: 0.9, max: 1.2, ends: '[]', hint: 'water has 0.9982 at 20 °C, nutrient solution a little more; leave it out for 1' }
