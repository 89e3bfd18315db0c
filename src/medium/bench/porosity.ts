import { InputError } from '../../quantity/errors.js'
import type { ParticleDensity, Porosity } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { BULK_DENSITY, PARTICLE_DENSITY } from '../domains.js'
import type { PackedDensity } from '../terms.js'

/** The two densities that fix the porosity of a medium. */
export interface MediumDensities extends PackedDensity {
  /** Dry mass per volume of its solids. Unit: g/cm³. Range: (0, 10]. */
  readonly particleDensity: ParticleDensity
}

/**
 * Porosity of a medium: the share of its volume that is not solid.
 *
 * The particle density decides: materials for growing media have 0.35 to 2.1 g/cm³ when their closed pores are counted as
 * solid, and the 2.65 g/cm³ of mineral soil makes the porosity of peat or bark several percentage points too high.
 *
 * @equation `\phi = 1 - \rho_b / \rho_p`
 * @returns Porosity. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the bulk density is above the particle density.
 * @source definition; span of particle densities: fonteno-1990, abstract
 * @example
 * porosityFromDensities({
 *   bulkDensity: gramsPerCubicCentimetre(0.1),
 *   particleDensity: gramsPerCubicCentimetre(1.55),
 * }) // => 0.93548387
 */
export function porosityFromDensities(densities: MediumDensities): Porosity {
  requireObject(densities, 'densities')
  return (1 - solidShare(densities)) as Porosity
}

/** Volume of solids per volume of medium. */
export function solidShare({ bulkDensity, particleDensity }: MediumDensities): number {
  const solid =
    numberIn(bulkDensity, BULK_DENSITY, 'bulkDensity') / numberIn(particleDensity, PARTICLE_DENSITY, 'particleDensity')
  if (solid > 1) {
    throw new InputError(
      'bulkDensity',
      `${bulkDensity} g/cm³ of medium is heavier than ${particleDensity} g/cm³ of its own solids`,
      'check the dry mass, the volume and the units of both densities',
    )
  }
  return solid
}
