import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const CONDUCTIVITY: Domain = { quantity: 'electrical conductivity', unit: 'dS/m', min: 0, max: 60, ends: '[]', hint: 'give the conductivity at 25 °C in dS/m; sea water has about 53' }
export const DISSOLVED_OXYGEN: Domain = { quantity: 'dissolved oxygen', unit: 'mg/L', min: 0, max: 100, ends: '[]', hint: 'give mg/L; air-saturated water has 6 to 15' }
export const LIQUID_WATER: Domain = { quantity: 'water temperature', unit: '°C', min: -20, max: 110, ends: '[]', hint: 'the water must be liquid' }
export const SALINITY: Domain = { quantity: 'salinity', unit: '1', min: 0, max: 42, ends: '[]', hint: 'the practical scale ends at 42' }
export const SITE_PRESSURE: Domain = { quantity: 'pressure of the air', unit: 'kPa', min: 30, max: 200, ends: '[]', hint: 'give the pressure at the site, not reduced to sea level; 101.325 at sea level' }
export const TEMPERATURE_IAPWS_R8: Domain = { quantity: 'water temperature', unit: '°C', min: -35, max: 600, ends: '[]', hint: 'the release covers 238 to 873 K' }
export const TEMPERATURE_KELL: Domain = { quantity: 'water temperature', unit: '°C', min: -20, max: 150, ends: '[]', hint: 'the water must be liquid' }
export const TEMPERATURE_OXYGEN: Domain = { quantity: 'water temperature', unit: '°C', min: 0, max: 50, ends: '[]', hint: 'the equation was fitted from 0 to 40 °C' }
export const TEMPERATURE_SURFACE_TENSION: Domain = { quantity: 'water temperature', unit: '°C', min: -20, max: 373.946, ends: '[]', hint: 'the release holds from the triple point to the critical point, and extrapolates well a little below 0 °C' }
export const WATER_DENSITY: Domain = { quantity: 'water density', unit: 'g/cm³', min: 0, max: 1.3, ends: '(]', hint: 'give it in g/cm³; liquid water has about 0.998' }
