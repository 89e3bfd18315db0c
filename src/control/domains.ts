import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const ALARM_DELAY: Domain = { quantity: 'delay of an alarm', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give how long the condition must last, zero to a day' }
export const ALARM_WINDOW: Domain = { quantity: 'time in which alarms are counted', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give a time of at most a day; ten minutes is usual' }
export const CONTENT_AFTER_OUTAGE: Domain = { quantity: 'water content after the outage', unit: 'm³/m³', min: 0.01, max: 1, ends: '[]', hint: 'give the newest reading, or an estimate from the use of the plants; zero is what a dead probe sends' }
export const DECISION_INTERVAL: Domain = { quantity: 'time between decisions', unit: 's', min: 0, max: 3600, ends: '(]', hint: 'give the time at which a timer of its own asks for decisions, at most an hour' }
export const DISAGREEMENT: Domain = { quantity: 'disagreement of probes', unit: 'm³/m³', min: 0, max: 1, ends: '(]', hint: 'give by how much healthy probes of the zone may differ' }
export const FULL_POINT: Domain = { quantity: 'full point', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give the water content to come back to' }
export const HOUR_OF_DAY: Domain = { quantity: 'hour of the day', unit: 'h', min: 0, max: 24, ends: '[]', hint: 'give hours after local midnight' }
export const LOWER_LIMIT: Domain = { quantity: 'lower limit of the dead-band', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give the water content at which to switch on' }
export const MAX_ALARMS: Domain = { quantity: 'most alarms at a time', unit: '1', min: 1, max: 100, ends: '[]', hint: 'give the whole number that one person can look at; ten in ten minutes is the usual mark of a flood' }
export const MAX_SHOT: Domain = { quantity: 'largest shot', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give the largest volume that the dry medium takes at a time' }
export const MIN_WEIGHT: Domain = { quantity: 'least weight of a cause', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a share; a half lets every cause through' }
export const PAUSE: Domain = { quantity: 'pause', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give zero to a day' }
export const PROBE_OFFSET: Domain = { quantity: 'offset of a probe', unit: 'm³/m³', min: -1, max: 1, ends: '[]', hint: 'give by how much it reads above the zone as a whole' }
export const READING_AGE: Domain = { quantity: 'age of a reading', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give a few times the interval of the readings, at most a day' }
export const REFILL_INTERVAL: Domain = { quantity: 'time between refills', unit: 's', min: 86400, max: 2592000, ends: '[]', hint: 'give one to thirty days, or never' }
export const SHELF_TIME: Domain = { quantity: 'longest time on the shelf', unit: 's', min: 0, max: 604800, ends: '(]', hint: 'give a time of at most a week: a shelved alarm must come back by itself' }
export const SHOTS_WITHOUT_RISE: Domain = { quantity: 'shots without a rise', unit: '1', min: 1, max: 48, ends: '[]', hint: 'give a small whole number: somebody should come and look' }
export const SHOT_INTERVAL: Domain = { quantity: 'time between shots', unit: 's', min: 0, max: 86400, ends: '(]', hint: 'give the time that medium and pump need, from one start to the next' }
export const TIME_OF_DAY: Domain = { quantity: 'time of day', unit: 's', min: 0, max: 86400, ends: '[]', hint: 'give the time since local midnight' }
export const UNCHANGED_TIME: Domain = { quantity: 'time without a change', unit: 's', min: 0, max: 604800, ends: '(]', hint: 'give longer than a healthy probe shows the same number in a quiet night' }
export const UPPER_LIMIT: Domain = { quantity: 'upper limit of the dead-band', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give the water content at which to switch off, above the lower limit' }
export const VALVE_FLOW: Domain = { quantity: 'flow of the valve', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give the flow to the containers that the volumes are meant for' }
export const VOLUME_LEFT: Domain = { quantity: 'most volume', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give what may still be given today' }
export const WARNED_AHEAD: Domain = { quantity: 'time to be warned ahead', unit: 's', min: 0, max: 172800, ends: '[]', hint: 'give the time that somebody needs to come, two hours for instance' }
export const WATCHED_READING_AGE: Domain = { quantity: 'greatest age of a reading', unit: 's', min: 60, max: 86400, ends: '[]', hint: 'give a minute to a day' }
export const RESPONSE_TIME: Domain = { quantity: 'response time of the probes', unit: 's', min: 60, max: 7200, ends: '[]', hint: 'give one minute to two hours' }
export const WATER: Domain = { quantity: 'volume of water', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give a volume above zero' }
export const WEIGHT_BAND: Domain = { quantity: 'dead-band of the weight', unit: '1', min: 0, max: 0.5, ends: '[]', hint: 'give by how much a weight must fall below the least before its alarm returns to normal' }
