import { MASS_FRACTION } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { MassFraction, ParticleDensity } from '../../quantity/generated/kinds.js'
import { numberIn, requireRows } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { PARTICLE_DENSITY } from '../domains.js'

/** One part of a mix. */
export interface MixPart {
  /** Its share of the dry mass. Unit: 1. Range: [0, 1]. */
  readonly massFraction: MassFraction
  /** Density of its solids. Unit: g/cm³. Range: (0, 10]. */
  readonly particleDensity: ParticleDensity
}

/**
 * Particle density of a mix from the dry mass fractions and particle densities of its parts: their volumes add up.
 *
 * @equation `\frac{1}{\rho_p} = \sum_i \frac{w_i}{\rho_{p,i}}, \quad \sum_i w_i = 1`
 * @param parts - The parts of the mix. Fractions by volume must be turned into fractions by dry mass first.
 * @returns Particle density of the mix. Unit: g/cm³.
 * @throws `DomainError` outside the ranges; `InputError` when the fractions do not add up to 1 within 0.001.
 * @source definition
 * @example
 * particleDensityOfMix([
 *   { massFraction: percent(60), particleDensity: gramsPerCubicCentimetre(1.55) },
 *   { massFraction: percent(40), particleDensity: gramsPerCubicCentimetre(2.65) },
 * ]) // => 1.8585973
 */
export function particleDensityOfMix(parts: readonly MixPart[]): ParticleDensity {
  requireRows(parts, 'parts')
  let total = 0
  let volume = 0
  for (const { massFraction, particleDensity } of parts) {
    const share = numberIn(massFraction, MASS_FRACTION, 'massFraction')
    total += share
    volume += share / numberIn(particleDensity, PARTICLE_DENSITY, 'particleDensity')
  }
  if (!(Math.abs(total - 1) <= 1e-3)) {
    throw new InputError('parts', `their mass fractions add up to ${total}`, 'list every part of the dry mass, to 1')
  }
  return (total / volume) as ParticleDensity
}

/**
 * Particle density of a growing medium from its organic matter, as EN 13041 takes it: organic matter has 1.55 g/cm³, ash
 * 2.65 g/cm³.
 *
 * @equation `\frac{1}{\rho_p} = \frac{w}{1.55} + \frac{1 - w}{2.65}`
 * @param organicMatter - Organic matter as a share of the dry mass, by loss on ignition; the rest is ash. Unit: 1. Range: [0, 1].
 * @returns Particle density. Unit: g/cm³.
 * @validity Particulate growing media; not preformed stone wool or foam, not media with closed pores such as perlite or polystyrene.
 * @source en-13041-2011, particle density from organic matter and ash
 * @example
 * particleDensityEN13041(percent(95)) // => 1.5828516
 */
export function particleDensityEN13041(organicMatter: MassFraction): ParticleDensity {
  const w = namedIn(organicMatter, MASS_FRACTION, 'organicMatter')
  return (1 / (w / 1.55 + (1 - w) / 2.65)) as ParticleDensity
}
