import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const ALLOWED_FALL: Domain = { quantity: 'fall of the water content before the next shot', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give it as a fraction of the volume, 0.03 for three points' }
export const CONTAINER_PLANTS: Domain = { quantity: 'plants in a container', unit: '1', min: 0, max: 10000, ends: '(]', hint: 'give the plants that share one container' }
export const DAYS_BEFORE: Domain = { quantity: 'days that are looked at before the day', unit: '1', min: 0, max: 60, ends: '[]', hint: 'give a whole number; a week shows what is usual' }
export const DEPLETION: Domain = { quantity: 'depletion', unit: '1', min: 0, max: 1, ends: '()', hint: 'give the share of the available water that may be used before the next shot' }
export const EMITTER_FLOW: Domain = { quantity: 'flow of one emitter', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'measure it with a cup and a watch' }
export const FROM_LIGHT: Domain = { quantity: 'time between light and shots', unit: 's', min: -86400, max: 86400, ends: '[]', hint: 'give at most a day' }
export const LAMP_HOUR: Domain = { quantity: 'hour of the lamps', unit: 's', min: 0, max: 86400, ends: '[)', hint: 'give seconds after local midnight' }
export const LAMP_LIGHT: Domain = { quantity: 'light of the lamps', unit: 'W/m²', min: 0, max: 1000, ends: '(]', hint: 'give it on the scale of the measured radiation' }
export const LOWER_LIMIT: Domain = { quantity: 'lower limit of the water content', unit: 'm³/m³', min: 0, max: 1, ends: '[)', hint: 'give the water content at which plants get nothing any more' }
export const MAX_PER_DAY: Domain = { quantity: 'most water in a day', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'every zone needs a finite limit that no plan may pass' }
export const MAX_PER_SHOT: Domain = { quantity: 'most water in a shot', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give what a container takes at once, or leave it out' }
export const MEDIUM_HEIGHT: Domain = { quantity: 'height of the medium', unit: 'cm', min: 0, max: 1000, ends: '(]', hint: 'measure the filled height' }
export const MIN_BELIEVED: Domain = { quantity: 'lowest water content that is believed', unit: 'm³/m³', min: -0.1, max: 1, ends: '[)', hint: 'give it as a fraction, 0.05 for five per cent' }
