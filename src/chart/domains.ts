import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const AHEAD: Domain = { quantity: 'hours ahead of universal time', unit: 'h', min: -26, max: 26, ends: '[]', hint: 'give what local clocks are ahead of universal time, in hours; west is negative' }
export const HEIGHT: Domain = { quantity: 'height of the picture', unit: 'px', min: 150, max: 10000, ends: '[]', hint: 'give a height that leaves room for the axes' }
export const PICTURE_WIDTH: Domain = { quantity: 'width of the picture', unit: 'px', min: 200, max: 10000, ends: '[]', hint: 'give a width that leaves room for the axes' }
