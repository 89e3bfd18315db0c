import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const CORRELATION: Domain = { quantity: 'correlation coefficient', unit: '1', min: -1, max: 1, ends: '[]', hint: 'it lies between -1 and 1' }
export const DEGREES_OF_FREEDOM: Domain = { quantity: 'degrees of freedom', unit: '1', min: 0.1, max: Infinity, ends: '[)', hint: 'give the number of readings less one, or leave it out' }
export const DRAWS: Domain = { quantity: 'number of draws', unit: '1', min: 1000, max: 10000000, ends: '[]', hint: 'give a whole number; 100000 fix the uncertainty to about 0.3 %, a million to 0.1 %' }
export const ESTIMATE: Domain = { quantity: 'estimate', unit: 'that of the input', min: -Infinity, max: Infinity, ends: '()', hint: 'give the best value of every input' }
export const STANDARD_UNCERTAINTY: Domain = { quantity: 'standard uncertainty', unit: 'that of the input', min: 0, max: Infinity, ends: '[)', hint: 'give one standard deviation, zero for an exact input' }
