import { InputError } from '../../quantity/errors.js'
import type { Permittivity, Porosity } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { APPARENT, MIXING_EXPONENT, PORE_PERMITTIVITY, POROSITY, SOLIDS_PERMITTIVITY } from '../domains.js'
import type { ApparentPermittivity, MixingExponent, PoreSpace, SolidPhase } from '../terms.js'

/** Solids and one filling of all pores: bone-dry or saturated. */
export interface TwoPhases extends MixingExponent, SolidPhase {
  /** Permittivity of what fills the pores. Unit: 1. Range: [1, 100]. */
  readonly filling: Permittivity
}

/** Two phases and the porosity. */
export interface TwoPhaseMedium extends TwoPhases, PoreSpace {}

/** Two phases and what a probe reads in them. */
export interface TwoPhaseReading extends TwoPhases, ApparentPermittivity {}

/**
 * Permittivity of a medium of solids and pores that one substance fills.
 *
 * What a probe should read in a saturated medium (filling: water) or in an oven-dry one (filling: air): a band for the
 * plausibility of a calibration.
 *
 * @equation `\varepsilon^{\alpha} = (1 - \phi)\,\varepsilon_s^{\alpha} + \phi\,\varepsilon_f^{\alpha}`
 * @returns Apparent relative permittivity. Unit: 1.
 * @source birchak-1974
 * @example
 * permittivityTwoPhase({ solids: permittivity(4), filling: permittivity(81), porosity: percent(50), exponent: 0.5 }) // => 30.25
 */
export function permittivityTwoPhase(medium: TwoPhaseMedium): Permittivity {
  const exponent = numberIn(optionsOf(medium).exponent, MIXING_EXPONENT, 'exponent')
  const porosity = numberIn(medium.porosity, POROSITY, 'porosity')
  const mixed =
    (1 - porosity) * numberIn(medium.solids, SOLIDS_PERMITTIVITY, 'solids') ** exponent +
    porosity * numberIn(medium.filling, PORE_PERMITTIVITY, 'filling') ** exponent
  return (mixed ** (1 / exponent)) as Permittivity
}

/**
 * Porosity of a medium of solids and pores that one substance fills, from its permittivity.
 *
 * @equation `\phi = \frac{\varepsilon^{\alpha} - \varepsilon_s^{\alpha}}{\varepsilon_f^{\alpha} - \varepsilon_s^{\alpha}}`
 * @returns Porosity. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when solids and filling are alike, or when the permittivity does not lie between them.
 * @source birchak-1974, solved for the porosity
 * @example
 * porosityTwoPhase({ solids: permittivity(4), filling: permittivity(81), apparent: permittivity(30.25), exponent: 0.5 }) // => 0.5
 */
export function porosityTwoPhase(reading: TwoPhaseReading): Porosity {
  const exponent = numberIn(optionsOf(reading).exponent, MIXING_EXPONENT, 'exponent')
  const solids = numberIn(reading.solids, SOLIDS_PERMITTIVITY, 'solids') ** exponent
  const filling = numberIn(reading.filling, PORE_PERMITTIVITY, 'filling') ** exponent
  if (solids === filling)
    throw new InputError(
      'solids, filling',
      'they have the same permittivity',
      'no porosity can be told from a reading then',
    )
  const porosity = (numberIn(reading.apparent, APPARENT, 'apparent') ** exponent - solids) / (filling - solids)
  if (porosity < -1e-12 || porosity > 1 + 1e-12)
    throw new InputError(
      'apparent',
      `${reading.apparent} does not lie between the permittivities of solids and filling`,
      'check the filling: a medium that holds air and water has three phases',
    )
  return Math.min(1, Math.max(0, porosity)) as Porosity
}
