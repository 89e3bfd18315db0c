import type { Domain } from '../quantity/domain.js'

/** Domains that several files of this folder share. */

const TIME: Domain = {
  quantity: 'length of time',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more seconds',
}
export const WATERED: Domain = {
  quantity: 'substrate volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the volume of medium that the shots water',
}
