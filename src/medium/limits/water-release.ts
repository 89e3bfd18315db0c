import { SUCTION } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { SuctionHead, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireMade } from '../../quantity/guard.js'
import type { RetentionModel } from '../curves/retention-model.js'
import type { RetainingMedium } from '../terms.js'

/** A medium between two suctions. */
export interface SuctionInterval extends RetainingMedium {
  /** The smaller suction. Unit: cm. Range: [0, ∞). */
  readonly from: SuctionHead
  /** The larger suction. Unit: cm. Range: [0, ∞). */
  readonly to: SuctionHead
}

/**
 * Water that a medium gives between two suctions.
 *
 * @equation `\Delta\theta = \theta(s_1) - \theta(s_2)`
 * @returns Water released from the smaller to the larger suction. Unit: m³/m³.
 * @throws `DomainError` outside the ranges; `InputError` when the suctions are swapped.
 * @source definition
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.18),
 *   saturated: waterContent(0.92),
 *   alpha: perCentimetre(0.15),
 *   n: 1.7,
 * })
 * waterBetweenSuctions({ medium, from: kilopascalsOfSuction(1), to: kilopascalsOfSuction(5) }) // => 0.2910563
 */
export function waterBetweenSuctions(interval: SuctionInterval): WaterContentChange {
  const { medium, from, to } = optionsOf(interval)
  requireMade(medium, 'waterContent', 'medium')
  if (numberIn(from, SUCTION, 'from') > numberIn(to, SUCTION, 'to'))
    throw new InputError('from, to', `${from} cm is more than ${to} cm`, 'give the smaller suction first')
  return (medium.waterContent(from) - medium.waterContent(to)) as WaterContentChange
}

/**
 * Easily available water of De Boodt and Verdonck (1972): what a medium gives between suctions of 10 and 50 cm.
 *
 * @equation `\mathrm{EAW} = \theta(10\,\text{cm}) - \theta(50\,\text{cm})`
 * @returns Easily available water. Unit: m³/m³.
 * @source de-boodt-1972
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.18),
 *   saturated: waterContent(0.92),
 *   alpha: perCentimetre(0.15),
 *   n: 1.7,
 * })
 * easilyAvailableWater(medium) // => 0.29300368
 */
export function easilyAvailableWater(medium: RetentionModel): WaterContentChange {
  return release(medium, 10, 50)
}

/**
 * Water buffering capacity of De Boodt and Verdonck (1972): what a medium gives between suctions of 50 and 100 cm.
 *
 * @equation `\mathrm{WBC} = \theta(50\,\text{cm}) - \theta(100\,\text{cm})`
 * @returns Water buffering capacity. Unit: m³/m³.
 * @source de-boodt-1972
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.18),
 *   saturated: waterContent(0.92),
 *   alpha: perCentimetre(0.15),
 *   n: 1.7,
 * })
 * waterBufferingCapacity(medium) // => 0.06751285
 */
export function waterBufferingCapacity(medium: RetentionModel): WaterContentChange {
  return release(medium, 50, 100)
}

function release(medium: RetentionModel, from: number, to: number): WaterContentChange {
  return waterBetweenSuctions({ medium, from: from as SuctionHead, to: to as SuctionHead })
}
