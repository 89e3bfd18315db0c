import type { Domain } from '../../quantity/domain.js'

/** Domains that the files on drain and salts share. */

export const FEED_EC: Domain = {
  quantity: 'EC of the feed',
  unit: 'dS/m',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give the EC at 25 °C of what the emitters give, zero or more; 2396 µS/cm are 2.396 dS/m',
}
export const DRAIN_EC: Domain = {
  quantity: 'EC of the drain',
  unit: 'dS/m',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give the EC at 25 °C of the collected drain, zero or more; 2396 µS/cm are 2.396 dS/m',
}
export const UPTAKE_EC: Domain = {
  quantity: 'EC of the uptake',
  unit: 'dS/m',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give the salts that plants take over the water that they take, as an EC; zero when they take none; 2396 µS/cm are 2.396 dS/m',
}
export const STORE_EC: Domain = {
  quantity: 'EC of the root zone',
  unit: 'dS/m',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give the EC at 25 °C of the water in the root zone, zero or more; 2396 µS/cm are 2.396 dS/m',
}
export const STORE_WATER: Domain = {
  quantity: 'water in the root zone',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give water content times volume of medium, above zero',
}
export const APPLIED: Domain = {
  quantity: 'water applied',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water of the whole time, zero or more',
}
export const SOME_APPLIED: Domain = {
  quantity: 'water applied',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the water of the whole time, above zero',
}
export const DRAINED: Domain = {
  quantity: 'drain',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the drain of the same time and the same plants, zero or more',
}
export const SOME_DRAINED: Domain = {
  quantity: 'drain',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'without drain salts only pile up: step through the days with reservoirStep()',
}
export const SOME_LEACHING: Domain = {
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the drain over the water applied, above zero: without drain there is no steady state',
}
export const WATER_EC: Domain = {
  quantity: 'EC of the irrigation water',
  unit: 'dS/m',
  min: 0,
  max: 200,
  ends: '[]',
  hint: 'give the EC at 25 °C, zero or more; 2396 µS/cm are 2.396 dS/m',
}
export const EXTRACT_EC: Domain = {
  quantity: 'EC of the saturated extract',
  unit: 'dS/m',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the EC of a saturated paste of soil, not of drain or pore water',
}
