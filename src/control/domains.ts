import type { Domain } from '../quantity/domain.js'

/** Domains that several files of this folder share. */

export const WATERED: Domain = {
  quantity: 'substrate volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the volume of medium that the shots water',
}
