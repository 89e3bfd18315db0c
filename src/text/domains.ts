import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const UNCERTAINTY: Domain = { quantity: 'uncertainty', unit: 'unit of the kind', min: 0, max: Infinity, ends: '()', hint: 'give a standard uncertainty above zero, or leave it out' }
export const DIGITS: Domain = { quantity: 'digits', unit: '1', min: 1, max: 17, ends: '[]', hint: 'give a whole number of significant digits' }
