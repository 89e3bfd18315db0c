import type { Domain } from '../quantity/domain.js'

/** Domains that several files of this folder share. */

export const SEED: Domain = {
  quantity: 'seed',
  unit: '1',
  min: 0,
  max: 4294967295,
  ends: '[]',
  hint: 'give a whole number; the same one gives the same history',
}
export const DAYS: Domain = {
  quantity: 'days of the rehearsal',
  unit: 'd',
  min: 1,
  max: 60,
  ends: '[]',
  hint: 'give a whole number of days; a week shows most faults',
}
export const WATER: Domain = {
  quantity: 'volume of water',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give litres for one container, above zero',
}
export const LEVEL: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '()',
  hint: 'give a volumetric water content',
}
export const HOUR: Domain = {
  quantity: 'hour of the day',
  unit: 'h',
  min: 0,
  max: 24,
  ends: '[]',
  hint: 'count hours from local midnight',
}
export const PROBES: Domain = {
  quantity: 'probes',
  unit: '1',
  min: 1,
  max: 8,
  ends: '[]',
  hint: 'give a whole number',
}
export const SEEDS: Domain = {
  quantity: 'number of seeds',
  unit: '1',
  min: 1,
  max: 1000000,
  ends: '[]',
  hint: 'give a whole number; fifty show most of what can happen',
}
