import type { Domain } from '../quantity/domain.js'

/** Domains that several files of this folder share. */

export const REFILL: Domain = {
  quantity: 'refill point',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the water content at which to water again',
}
export const LONGEST_STEP: Domain = {
  quantity: 'longest step',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'give a little more than the time between two readings',
}
export const DRAIN_TIME: Domain = {
  quantity: 'time to drain',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'give the time after the peak in which drain stops: some minutes to an hour',
}
export const EXPECTED_STEP: Domain = {
  quantity: 'expected step',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the time between two readings, above zero',
}
