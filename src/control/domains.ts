import type { Domain } from '../quantity/domain.js'

/** Domains that several files of this folder share. */

export const TIME: Domain = {
  quantity: 'length of time',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more seconds',
}
