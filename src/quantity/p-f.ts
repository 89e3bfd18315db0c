import type { Domain } from './domain.js'
import type { SuctionHead } from './generated/kinds.js'
import { numberIn } from './guard.js'

/**
 * Suction from its pF, the decimal logarithm of the suction head in centimetres of water.
 *
 * @equation `s = 10^{pF}`
 * @param value - pF. Unit: 1. Range: (-∞, 9].
 * @returns Suction head. Unit: cm.
 * @source schofield-1935
 * @example
 * pF(2) // => 100
 */
export function pF(value: number): SuctionHead {
  numberIn(value, PF)
  return (10 ** value) as SuctionHead
}

/**
 * The pF of a suction: the decimal logarithm of the suction head in centimetres of water.
 *
 * @equation `pF = \log_{10} s`
 * @param quantity - Suction head. Unit: cm. Range: (0, ∞).
 * @returns pF. Unit: 1.
 * @throws `DomainError` at zero suction, which has no pF.
 * @source schofield-1935
 * @example
 * inPF(centimetresOfSuction(100)) // => 2
 */
export function inPF(quantity: SuctionHead): number {
  return Math.log10(numberIn(quantity, UNSATURATED))
}

const PF: Domain = {
  quantity: 'pF',
  unit: '1',
  min: -Infinity,
  max: 9,
  ends: '(]',
  hint: 'pF runs to about 7 in oven-dry medium',
}
const UNSATURATED: Domain = {
  quantity: 'suction head',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'a saturated medium has no pF; give a suction above zero',
}
