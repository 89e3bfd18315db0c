import { InputError } from '../../quantity/errors.js'
import type { Permittivity, Share } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireRows } from '../../quantity/guard.js'
import { MIXING_EXPONENT, PHASE_PERMITTIVITY, PHASE_SHARE } from '../domains.js'
import type { MixingExponent } from '../terms.js'

/** One constituent of a medium. */
export interface Phase {
  /** Its volume per volume of medium. Unit: 1. Range: [0, 1]. */
  readonly share: Share
  /** Its own relative permittivity. Unit: 1. Range: [1, ∞). */
  readonly permittivity: Permittivity
}

/** The constituents of a medium and how they lie in the field. */
export interface Mixture extends MixingExponent {
  /** All constituents; their shares add up to 1. */
  readonly phases: readonly Phase[]
}

/**
 * Permittivity of a medium of any number of phases by the power law of mixing.
 *
 * With an exponent of 0.5 it is the refractive-index model, with 1 the mean of layers along the field.
 *
 * @equation `\varepsilon = \left(\sum_i v_i\,\varepsilon_i^{\alpha}\right)^{1/\alpha}`
 * @returns Apparent relative permittivity. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the shares do not add up to 1.
 * @source birchak-1974 (exponent one half); lichtenecker-1931 (any exponent)
 * @example
 * permittivityOfMixture({
 *   phases: [
 *     { share: fraction(0.5), permittivity: permittivity(4) },
 *     { share: fraction(0.25), permittivity: permittivity(81) },
 *     { share: fraction(0.25), permittivity: permittivity(1) },
 *   ],
 *   exponent: 0.5,
 * }) // => 12.25
 */
export function permittivityOfMixture(mixture: Mixture): Permittivity {
  const exponent = numberIn(optionsOf(mixture).exponent, MIXING_EXPONENT, 'exponent')
  let total = 0
  let mixed = 0
  requireRows(mixture.phases, 'phases')
  for (const phase of mixture.phases) {
    const share = numberIn(phase.share, PHASE_SHARE, 'share')
    total += share
    mixed += share * numberIn(phase.permittivity, PHASE_PERMITTIVITY, 'permittivity') ** exponent
  }
  if (Math.abs(total - 1) > 1e-9)
    throw new InputError(
      'phases',
      `their shares add up to ${total}`,
      'name every phase, air too, so that they add up to 1',
    )
  return (mixed ** (1 / exponent)) as Permittivity
}
