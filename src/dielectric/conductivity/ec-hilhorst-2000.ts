import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { BulkEC, Permittivity, PoreWaterEC, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { APPARENT, CONDUCTIVITY, PERMITTIVITY_OFFSET, TEMPERATURE_HILHORST, WATER_PERMITTIVITY } from '../domains.js'
import type { BulkConductivity, PoreSolution, PoreWaterPermittivity } from '../terms.js'

/** Closer to the offset than this, an error of one unit in the permittivity changes the answer by its own size or more. */
const CLOSEST = 1

/** What Hilhorst needs to know of a medium. */
export interface MediumOfHilhorst extends PoreWaterPermittivity {
  /** Apparent permittivity of the whole. Unit: 1. Range: [1, 90]. */
  readonly apparent: Permittivity
  /** Permittivity at which the bulk conductivity would be zero. Unit: 1. Range: [0, 20]. */
  readonly offset: number
}

/** The medium and the conductivity of the whole. */
export interface BulkOfHilhorst extends MediumOfHilhorst, BulkConductivity {}

/** The medium and the conductivity of its pore water. */
export interface PoreWaterOfHilhorst extends MediumOfHilhorst, PoreSolution {}

/**
 * Permittivity of pore water by the straight line that goes with the model of Hilhorst (2000).
 *
 * Within 0.15 of IAPWS R8-97 from 5 to 35 °C.
 *
 * @equation `\varepsilon_p = 80.3 - 0.37\,(t - 20)`
 * @param temperature - Temperature of the medium. Unit: °C. Range: [0, 60].
 * @returns Relative permittivity. Unit: 1.
 * @source hilhorst-2000; the line checked in two manuals that cite it
 * @example
 * waterPermittivityHilhorst2000(celsius(10)) // => 84
 */
export function waterPermittivityHilhorst2000(temperature: Temperature): Permittivity {
  return (80.3 - 0.37 * (numberIn(temperature, TEMPERATURE_HILHORST) - 20)) as Permittivity
}

/**
 * Electrical conductivity of the pore water from bulk conductivity and permittivity after Hilhorst (2000).
 *
 * The offset is an argument without a default because it decides the answer in a dry medium: at a permittivity of 8, 1.64 in place
 * of 4.1 changes it by more than half, at 45 by 6 %. None was found for stone wool or peat: fit your own with `fitOffsetHilhorst2000`.
 * Errors up to 40 % were reported, 15 % above a permittivity of 20. Give the bulk conductivity at 25 °C or as measured, and take the
 * answer as the same; correct for temperature once.
 *
 * @equation `\sigma_p = \frac{\varepsilon_p\,\sigma_b}{\varepsilon_b - \varepsilon_0}`
 * @returns Conductivity of the pore water. Unit: dS/m.
 * @throws `DomainError` outside the ranges; `InputError` when the permittivity is less than 1 above the offset, where the equation runs away.
 * @validity Water content above 0.10 m³/m³.
 * @source hilhorst-2000 (form)
 * @example
 * poreWaterConductivityHilhorst2000({
 *   bulk: decisiemensPerMetre(0.5),
 *   apparent: permittivity(20),
 *   offset: 4.1,
 *   water: permittivity(80.3),
 * }) // => 2.525157
 */
export function poreWaterConductivityHilhorst2000(medium: BulkOfHilhorst): PoreWaterEC {
  return answerOf(
    numberIn(optionsOf(medium).bulk, CONDUCTIVITY, 'bulk') / conductingShare(medium),
    'bulk',
  ) as PoreWaterEC
}

/**
 * Bulk electrical conductivity that the model of Hilhorst (2000) expects of a pore water.
 *
 * @equation `\sigma_b = \sigma_p\,\frac{\varepsilon_b - \varepsilon_0}{\varepsilon_p}`
 * @returns Bulk conductivity. Unit: dS/m.
 * @throws `DomainError` outside the ranges; `InputError` when the permittivity is less than 1 above the offset.
 * @validity Water content above 0.10 m³/m³.
 * @source hilhorst-2000, solved for the bulk conductivity
 * @example
 * bulkConductivityHilhorst2000({
 *   poreWater: decisiemensPerMetre(2.525157),
 *   apparent: permittivity(20),
 *   offset: 4.1,
 *   water: permittivity(80.3),
 * }) // => 0.50000
 */
export function bulkConductivityHilhorst2000(medium: PoreWaterOfHilhorst): BulkEC {
  return (numberIn(optionsOf(medium).poreWater, CONDUCTIVITY, 'poreWater') * conductingShare(medium)) as BulkEC
}

function conductingShare(medium: MediumOfHilhorst): number {
  const apparent = numberIn(medium.apparent, APPARENT, 'apparent')
  const offset = numberIn(medium.offset, PERMITTIVITY_OFFSET, 'offset')
  const above = apparent - offset
  const water = numberIn(medium.water, WATER_PERMITTIVITY, 'water')
  if (above < CLOSEST)
    throw new InputError(
      'apparent, offset',
      `the permittivity ${apparent} is not at least ${CLOSEST} above the offset ${offset}`,
      'the medium is too dry for this model: small errors grow without bound; use readings above 0.10 m³/m³',
    )
  return above / water
}
