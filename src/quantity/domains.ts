import type { Domain } from './domain.js'

/** Domains of quantities that several topics take. One row a quantity, by name. */

export const BELIEVABLE: Domain = { quantity: 'limit of believable water contents', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give what the medium can hold at the driest and at the wettest' }
export const CAPACITY: Domain = { quantity: 'container capacity', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give the water content after drainage' }
export const CONFIDENCE: Domain = { quantity: 'confidence', unit: '1', min: 0.5, max: 0.9999, ends: '[]', hint: '0.95 is usual; nobody knows the tails of a distribution better than 0.9999' }
export const DAY_OF_YEAR: Domain = { quantity: 'day of the year', unit: 'd', min: 1, max: 366, ends: '[]', hint: 'give a whole number from 1 to 366; 1 January is 1' }
export const DRAINED: Domain = { quantity: 'drain', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give the drain of the same time and the same plants, zero or more' }
export const DRAIN_FRACTION: Domain = { quantity: 'share', unit: '1', min: 0, max: 1, ends: '[)', hint: 'give less' }
export const ELAPSED: Domain = { quantity: 'time', unit: 's', min: 0, max: Infinity, ends: '[)', hint: 'give the time since it began, zero or more' }
/** Of one container, of a plant or of a valve. A mean of several containers, or an emitter that two plants share, is no whole number. */
export const EMITTERS: Domain = { quantity: 'emitters', unit: '1', min: 0, max: 100000, ends: '(]', hint: 'give emitters' }
export const INSTANT: Domain = { quantity: 'instant', unit: 's', min: -62135596800, max: 253402300799, ends: '[]', hint: 'give seconds since 1970 in UTC, not milliseconds' }
export const MASS_FRACTION: Domain = { quantity: 'mass fraction', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a share of the dry mass from 0 to 1; percent go through percent()' }
export const MAX_RUN_TIME: Domain = { quantity: 'time', unit: 's', min: 0, max: 7200, ends: '(]', hint: 'give 2 h or less' }
export const PLANTS: Domain = { quantity: 'plants', unit: '1', min: 1, max: Infinity, ends: '[)', hint: 'give the whole number of plants that share the container' }
export const PLANT_DENSITY: Domain = { quantity: 'plant density', unit: '1/m²', min: 0, max: Infinity, ends: '()', hint: 'give the plants, or the emitters, on a square metre of ground, above zero' }
export const RAW_READING: Domain = { quantity: 'raw reading', unit: 'raw', min: -Infinity, max: Infinity, ends: '()', hint: 'give the finite number that the probe reports; leave a missing reading out' }
export const READING_STEP: Domain = { quantity: 'time between two readings', unit: 's', min: 1, max: 86400, ends: '[]', hint: 'give the step of the record, from a second to a day' }
export const READING_TIME: Domain = { quantity: 'time of a reading', unit: 's', min: -100000000000, max: 100000000000, ends: '[]', hint: 'give seconds since 1970, not milliseconds' }
export const ROD_LENGTH: Domain = { quantity: 'rod length', unit: 'cm', min: 0, max: 500, ends: '(]', hint: 'give the length of the rods in the medium' }
export const SATURATED_CONTENT: Domain = { quantity: 'saturated water content', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give the water content at zero suction, above zero and at most the porosity' }
export const SCALE_MASS: Domain = { quantity: 'mass on the scale', unit: 'g', min: 0, max: Infinity, ends: '[)', hint: 'give what the scale shows, zero or more; kilograms go through kilograms()' }
export const SEED: Domain = { quantity: 'seed', unit: '1', min: 0, max: 4294967295, ends: '[]', hint: 'give any whole number below 2^32 and keep it with the result' }
export const SITE_ELEVATION: Domain = { quantity: 'elevation', unit: 'm', min: -500, max: 9000, ends: '[]', hint: 'give the elevation of a place on land, in metres above sea level' }
export const SITE_LATITUDE: Domain = { quantity: 'latitude', unit: '°', min: -90, max: 90, ends: '[]', hint: 'give decimal degrees, south negative' }
export const SOME_POROSITY: Domain = { quantity: 'porosity', unit: '1', min: 0, max: 1, ends: '(]', hint: 'give the volume of pores per volume of medium, above zero' }
export const SOME_WATER_CONTENT: Domain = { quantity: 'water content', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give the volume of water per volume of medium, above zero' }
export const SUBSTRATE: Domain = { quantity: 'volume', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give more' }
export const SUBSTRATE_VOLUME: Domain = { quantity: 'substrate volume', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give the volume of medium that the water goes to' }
export const SUCTION: Domain = { quantity: 'suction', unit: 'cm', min: 0, max: Infinity, ends: '[)', hint: 'suctions are zero or more, without the minus sign of a pressure head' }
/** How long a valve is open at least, at rest, late, or fills its line. */
export const VALVE_TIME: Domain = { quantity: 'time', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give 0 or more' }
export const WATER_CONTENT: Domain = { quantity: 'water content', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give water per volume of medium' }
export const WATER_GIVEN: Domain = { quantity: 'water given', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give 0 or more, for one container' }
export const WATER_USE: Domain = { quantity: 'water use', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give what plants take, 0 or more' }
