import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const CONTAINERS: Domain = { quantity: 'containers', unit: '1', min: 1, max: 100000, ends: '[]', hint: 'give a whole number' }
export const CONTAINER_FLOW: Domain = { quantity: 'flow to a container', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give drippers times flow of one' }
export const DAYS: Domain = { quantity: 'days of the rehearsal', unit: 'd', min: 1, max: 60, ends: '[]', hint: 'give a whole number of days; a week shows most faults' }
export const DRIPPER_SPREAD: Domain = { quantity: 'spread of drippers', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a coefficient of variation' }
export const EVEN_SHARE: Domain = { quantity: 'even share of the use', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a share from 0 to 1' }
export const FAULT_END: Domain = { quantity: 'end of a fault', unit: 's', min: 0, max: Infinity, ends: '[)', hint: 'count from the start of the rehearsal, or leave it out' }
export const FAULT_PROBE: Domain = { quantity: 'probe of a fault', unit: '1', min: 0, max: 7, ends: '[]', hint: 'count the probes from zero, as a whole number' }
export const FAULT_SIZE: Domain = { quantity: 'size of a fault', unit: 'any', min: -Infinity, max: Infinity, ends: '()', hint: 'give a finite number in the unit of the fault, or leave it out' }
export const FAULT_START: Domain = { quantity: 'start of a fault', unit: 's', min: 0, max: Infinity, ends: '[)', hint: 'count from the start of the rehearsal' }
export const FEED_EC: Domain = { quantity: 'EC of the feed', unit: 'dS/m', min: 0, max: 50, ends: '[]', hint: 'give it in dS/m, not in µS/cm' }
export const LEVEL: Domain = { quantity: 'water content', unit: 'm³/m³', min: 0, max: 1, ends: '()', hint: 'give a volumetric water content' }
export const MEDIUM_STEP: Domain = { quantity: 'step of the medium', unit: 's', min: 1, max: 3600, ends: '[]', hint: 'give one second to an hour' }
export const PLACE_SPREAD: Domain = { quantity: 'spread of places', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a share' }
export const POLL_EVERY: Domain = { quantity: 'time between two calls', unit: 's', min: 1, max: 3600, ends: '[]', hint: 'give one second to an hour' }
export const PROBES: Domain = { quantity: 'probes', unit: '1', min: 1, max: 8, ends: '[]', hint: 'give a whole number' }
export const PROBE_LAG: Domain = { quantity: 'lag of the probe', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give zero to a day' }
export const PROBE_NOISE: Domain = { quantity: 'noise of the probe', unit: 'm³/m³', min: 0, max: 0.2, ends: '[]', hint: 'give a standard deviation' }
export const PROBE_OFFSET: Domain = { quantity: 'offset of the probes', unit: 'm³/m³', min: 0, max: 0.2, ends: '[]', hint: 'give a standard deviation' }
export const SEEDS: Domain = { quantity: 'number of seeds', unit: '1', min: 1, max: 1000000, ends: '[]', hint: 'give a whole number; fifty show most of what can happen' }
export const WEATHER_SPREAD: Domain = { quantity: 'spread of weather', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a coefficient of variation' }
