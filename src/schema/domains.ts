import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const MOST_CHARACTERS: Domain = { quantity: 'most characters', unit: '1', min: 1, max: Infinity, ends: '[)', hint: 'give the length of the longest text that you accept, a whole number' }
