import type { Domain } from '../quantity/domain.js'

/** Domains that several formulas of the water share. */

export const LIQUID_WATER: Domain = {
  quantity: 'water temperature',
  unit: '°C',
  min: -20,
  max: 110,
  ends: '[]',
  hint: 'the water must be liquid',
}
export const IAPWS_SR6: Domain = {
  quantity: 'water temperature',
  unit: '°C',
  min: -20,
  max: 110,
  ends: '[]',
  hint: 'the release covers liquid water at 0.1 MPa from -20 to 110 °C',
}
