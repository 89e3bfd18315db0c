import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const ANSWER_TIME: Domain = { quantity: 'time in which a shot shows', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give the time from opening the valve until the reading has drained back' }
export const CLOCK_SLACK: Domain = { quantity: 'slack of the clocks', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give how far the clocks of log and probe may be apart, and one step between readings' }
export const DAY_RADIATION: Domain = { quantity: 'radiation of a day', unit: 'unit of the series', min: 0, max: 1e9, ends: '[]', hint: 'give sums of the day, always of the same place and unit; leave it out where it is not known' }
export const DAY_USE: Domain = { quantity: 'water use of a day', unit: 'L or mm', min: -1e6, max: 1e9, ends: '[]', hint: 'give given less drained less stored, always in the same unit; NaN or null where it is not known' }
export const DEVIATIONS: Domain = { quantity: 'standard deviations', unit: '1', min: 0, max: Infinity, ends: '()', hint: 'give how many standard deviations a change may be; 3 is usual' }
export const DRAIN_TIME: Domain = { quantity: 'time to drain', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give the time after the peak in which drain stops: some minutes to an hour' }
export const DRIFT_APART: Domain = { quantity: 'drift that matters', unit: 'm³/m³/d', min: 0, max: 1, ends: '(]', hint: 'give how far a probe may move away from its neighbours in a day' }
export const EXPECTED_STEP: Domain = { quantity: 'expected step', unit: 's', min: 0, max: Infinity, ends: '()', hint: 'give the time between two readings, above zero' }
export const FLAT_TOLERANCE: Domain = { quantity: 'tolerance of the flat line test', unit: 'unit of the series', min: 0, max: Infinity, ends: '[)', hint: 'give less than the noise of the sensor, zero or more' }
export const GAP_FACTOR: Domain = { quantity: 'factor of a gap', unit: '1', min: 1, max: Infinity, ends: '[)', hint: 'give how many times the expected step a gap is, at least 1' }
export const HOUR_DEVIATION: Domain = { quantity: 'standard deviation of the hour before', unit: 'unit of the series', min: 0, max: Infinity, ends: '[)', hint: 'give the standard deviation of the readings before, zero or more' }
export const LEVEL_AHEAD: Domain = { quantity: 'water content to be reached', unit: 'm³/m³', min: -1, max: 2, ends: '[]', hint: 'give a water content in the scale of the probe, such as its refill point' }
export const LOCAL_ADVANCE: Domain = { quantity: 'advance of local time', unit: 's', min: -50400, max: 50400, ends: '[]', hint: 'give how far local clocks are ahead of universal time, negative west of it' }
export const MAX_ANSWER_TIME: Domain = { quantity: 'latest answer', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give the time from opening the valve until the probe must have risen' }
export const MAX_CHANGE: Domain = { quantity: 'fastest change', unit: 'unit of the series per second', min: 0, max: Infinity, ends: '[)', hint: 'give a change per second, zero or more' }
export const MAX_RISE_TIME: Domain = { quantity: 'longest rise', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give the time in which a shot reaches the probe, some minutes to an hour' }
export const MAX_STEP: Domain = { quantity: 'longest step', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give a little more than the time between two readings' }
export const MIN_CLIMB: Domain = { quantity: 'least climb between shots', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give about the least rise of a shot, more than warmth does to the probe in a day' }
export const MIN_DRY_DOWN: Domain = { quantity: 'shortest dry-down', unit: 's', min: 0, max: 604800, ends: '(]', hint: 'give the time in which the fall outgrows the noise' }
export const MIN_RISE: Domain = { quantity: 'least rise of a shot', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give several times the noise of the probe' }
export const MIN_STEP: Domain = { quantity: 'least step', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give several times the noise of the probe' }
export const PROBED_VOLUME: Domain = { quantity: 'volume of medium that the probe stands for', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give the volume of medium in litres, above zero' }
export const PROBE_CONTENT: Domain = { quantity: 'water content of the probe', unit: 'm³/m³', min: -1, max: 2, ends: '[]', hint: 'give a volumetric water content, out of range or not' }
export const RANGE_LIMIT: Domain = { quantity: 'limit of the gross range test', unit: 'unit of the series', min: -Infinity, max: Infinity, ends: '()', hint: 'give a finite number in the unit of the series' }
export const READINGS_OF_HOUR: Domain = { quantity: 'readings of the hour before', unit: '1', min: 3, max: 100000, ends: '[]', hint: 'give the whole number of readings in an hour, at least 3' }
export const READINGS_ON_EACH_SIDE: Domain = { quantity: 'readings on each side', unit: '1', min: 3, max: 100, ends: '[]', hint: 'give an odd whole number of readings, 5 for instance' }
export const REFILL_POINT: Domain = { quantity: 'refill point', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give the water content at which to water again' }
export const REPEATS: Domain = { quantity: 'repeats', unit: '1', min: 1, max: 1000000, ends: '[]', hint: 'give a whole number of readings' }
export const SERIES_READING: Domain = { quantity: 'reading', unit: 'unit of the series', min: -Infinity, max: Infinity, ends: '()', hint: 'leave out readings that are missing' }
export const SETTLE_TIME: Domain = { quantity: 'time to drain', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give the time after the peak in which drain stops, so that drain is not taken for use' }
export const SHOT_RISE: Domain = { quantity: 'rise of a shot', unit: 'm³/m³', min: -1, max: 1, ends: '[]', hint: 'give the rise after drain' }
export const SPIKE_HEIGHT: Domain = { quantity: 'height of a spike', unit: 'unit of the series', min: 0, max: Infinity, ends: '[)', hint: 'give a height of zero or more in the unit of the series' }
export const SPREAD_TIME: Domain = { quantity: 'time over which the standard deviation is taken', unit: 's', min: 0, max: 31536000, ends: '()', hint: 'give a day and an hour, so that the course of a whole day is in it' }
export const TIME_AHEAD: Domain = { quantity: 'time ahead', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give some minutes to a day' }
export const TIME_CONSTANT: Domain = { quantity: 'time constant of the dry-down', unit: 's', min: 0, max: Infinity, ends: '()', hint: 'give the time in which the distance to the floor falls to 37 %, above zero' }
export const WATER_RETAINED: Domain = { quantity: 'water retained of a shot', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give what was applied less what drained, above zero' }
