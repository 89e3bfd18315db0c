import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const DOCUMENT_READING: Domain = { quantity: 'reading', unit: 'of the kind', min: -Infinity, max: Infinity, ends: '()', hint: 'give a finite number' }
export const MAX_CHARACTERS: Domain = { quantity: 'most characters', unit: '1', min: 1, max: Infinity, ends: '[)', hint: 'give the length of the longest text that you accept, a whole number' }
/** A day that begins wet may drain more than it is given. */
export const PREDICTED_SHARE: Domain = { quantity: 'predicted share', unit: '1', min: 0, max: Infinity, ends: '[)', hint: 'give zero or more' }
export const READING_INTERVAL: Domain = { quantity: 'time between two readings of a probe', unit: 's', min: 0, max: 31622400, ends: '(]', hint: 'give the time between two readings' }
