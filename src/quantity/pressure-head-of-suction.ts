import type { Domain } from './domain.js'
import type { PressureHead, SuctionHead } from './generated/kinds.js'
import { numberIn, numberOf } from './guard.js'

const NO_STANDING_WATER: Domain = {
  quantity: 'pressure head',
  unit: 'cm',
  min: -Infinity,
  max: 0,
  ends: '(]',
  hint: 'standing water has no suction: give a head of zero or below',
}

/**
 * The pressure head of a suction: the same head of water with the other sign.
 *
 * @equation `h = -s`
 * @param suction - Suction head. Unit: cm. Range: any.
 * @returns Pressure head. Unit: cm.
 * @source definition: suction is counted positive where pressure is below that of the air
 * @example
 * pressureHeadOfSuction(centimetresOfSuction(10)) // => -10
 */
export function pressureHeadOfSuction(suction: SuctionHead): PressureHead {
  // Zero less the suction, so that saturation is 0 and not -0.
  return (0 - numberOf(suction, 'suction')) as PressureHead
}

/**
 * The suction of a pressure head at or below zero.
 *
 * @equation `s = -h`
 * @param head - Pressure head. Unit: cm. Range: (-∞, 0].
 * @returns Suction head. Unit: cm.
 * @throws `DomainError` for a head above zero: standing water has no suction.
 * @source definition: suction is counted positive where pressure is below that of the air
 * @example
 * suctionOfPressureHead(centimetresOfPressureHead(-10)) // => 10
 * suctionOfPressureHead(centimetresOfPressureHead(12)) // => throws DomainError
 */
export function suctionOfPressureHead(head: PressureHead): SuctionHead {
  return (0 - numberIn(head, NO_STANDING_WATER)) as SuctionHead
}
