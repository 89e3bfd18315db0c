import { SOME_POROSITY } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Porosity, Share } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { SETTLING } from '../domains.js'

/** A medium that was packed or has settled. */
export interface SettledMedium {
  /** Porosity before. Unit: 1. Range: (0, 1]. */
  readonly porosity: Porosity
  /** Volume lost as a share of the volume before: 1 cm of a 10 cm column is 0.1. Unit: 1. Range: [0, 1). */
  readonly settling: Share
}

/**
 * Porosity after packing or settling: the solids stay, the lost volume is lost pores.
 *
 * The pores that vanish are the largest ones, which held the air: the loss of air-filled porosity is larger than that of
 * porosity. Measure the retention curve at the density of the filled container.
 *
 * @equation `\phi' = 1 - \frac{1 - \phi}{1 - x}`
 * @returns Porosity after. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the solids do not fit into the volume that is left.
 * @source definition
 * @example
 * porosityAfterSettling({ porosity: percent(90), settling: percent(10) }) // => 0.88888889
 */
export function porosityAfterSettling(medium: SettledMedium): Porosity {
  const { porosity, settling } = optionsOf(medium)
  const left = 1 - numberIn(settling, SETTLING, 'settling')
  const after = 1 - (1 - numberIn(porosity, SOME_POROSITY, 'porosity')) / left
  if (after < 0) {
    throw new InputError(
      'settling',
      `${1 - porosity} of solids do not fit into ${left} of the volume`,
      'check both volumes and the porosity',
    )
  }
  return after as Porosity
}
