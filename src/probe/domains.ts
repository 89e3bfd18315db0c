import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const BULK_EC: Domain = { quantity: 'bulk EC', unit: 'dS/m', min: 0, max: Infinity, ends: '[)', hint: 'give the bulk EC at 25 °C' }
export const CALIBRATED_CONTENT: Domain = { quantity: 'calibrated water content', unit: 'm³/m³', min: -Infinity, max: Infinity, ends: '()', hint: 'the reading is too large a number to be raised to the power of this calibration' }
export const CALIBRATION_EXPONENT: Domain = { quantity: 'exponent', unit: '1', min: 0, max: 10, ends: '(]', hint: 'exponents from 1 to 4.6 have been published for different probes; 1 is the straight line' }
export const CHANGE_LIMIT: Domain = { quantity: 'limit of change', unit: '1', min: 0, max: 1, ends: '()', hint: '0.001 is usual: a tenth of a percent between two weighings' }
export const CLEARANCE: Domain = { quantity: 'clearance', unit: 'cm', min: 0, max: 50, ends: '(]', hint: '2 cm is common practice; ask for the radius of the sensitive volume if it is larger' }
export const CONTENT_TOLERANCE: Domain = { quantity: 'tolerance', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'say which error of water content still is good enough' }
export const COORDINATE: Domain = { quantity: 'coordinate', unit: 'cm', min: 0, max: Infinity, ends: '[)', hint: 'measure from the left and the front edge of the surface, and down from the surface' }
export const HALF_WIDTH: Domain = { quantity: 'half width', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'say how far the mean of the probes may lie from the mean of the zone' }
export const POROSITY: Domain = { quantity: 'porosity', unit: '1', min: 0, max: 1, ends: '()', hint: 'give the share of pores, between 0 and 1' }
export const POSITIVE_READING: Domain = { quantity: 'reading', unit: 'raw', min: 0, max: Infinity, ends: '[)', hint: 'a square root or a power needs a reading of zero or more: use another form for readings that can be negative' }
export const PREDICTED_CONTENT: Domain = { quantity: 'predicted water content', unit: 'm³/m³', min: -Infinity, max: Infinity, ends: '()', hint: 'leave out pairs of which one value is missing' }
export const PROBE_CONTENT: Domain = { quantity: 'water content of a probe', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'leave a missing reading out, and look into an impossible one before averaging' }
export const PROBE_WEIGHT: Domain = { quantity: 'weight of a probe', unit: '1', min: 0, max: Infinity, ends: '()', hint: 'give the plants, litres or square metres that it stands for' }
export const READING_NOISE: Domain = { quantity: 'standard deviation of the reading', unit: 'raw', min: 0, max: Infinity, ends: '[)', hint: 'take it from repeated readings of one insertion' }
export const READ_CONTENT: Domain = { quantity: 'water content', unit: 'm³/m³', min: -Infinity, max: Infinity, ends: '()', hint: 'leave missing readings out' }
export const READ_TEMPERATURE: Domain = { quantity: 'temperature', unit: '°C', min: -Infinity, max: Infinity, ends: '()', hint: 'leave missing readings out' }
export const REFERENCE_TEMPERATURE: Domain = { quantity: 'reference temperature', unit: '°C', min: -10, max: 60, ends: '[]', hint: '25 °C is usual; take the temperature of the calibration' }
export const SAMPLED_AREA: Domain = { quantity: 'sampled area', unit: 'm²', min: 0, max: Infinity, ends: '()', hint: 'about 0.001 m² for two rods; wider spacing feels further' }
export const SAMPLE_VOLUME: Domain = { quantity: 'volume of the sample', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give the volume that the sample filled when the probe was read' }
export const SAMPLE_WEIGHT: Domain = { quantity: 'weight of a sample', unit: '1', min: 0, max: Infinity, ends: '()', hint: 'leave a sample out rather than giving it no weight' }
export const SHAPE_RADIUS: Domain = { quantity: 'radius', unit: 'cm', min: 0, max: Infinity, ends: '[)', hint: 'give half of the thickness or width' }
export const SOME_MASS: Domain = { quantity: 'mass', unit: 'g', min: 0, max: Infinity, ends: '()', hint: 'give what the scale shows, above zero; kilograms go through kilograms()' }
export const SPREAD_BETWEEN_PLACES: Domain = { quantity: 'standard deviation between places', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'take it from a trial with one probe in many containers on one morning' }
