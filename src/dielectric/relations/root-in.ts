import { type Cubic, cubicRoot } from '../../numerics/cubic.js'
import type { Domain } from '../../quantity/domain.js'
import type { Permittivity } from '../../quantity/generated/kinds.js'

/**
 * The permittivity in a domain at which a relation that rises all the way through it gives a water content. The search brackets a little
 * more than the domain; the rounding at its ends is taken back, so that the relation takes what its inverse gives.
 */
export function rootIn(domain: Domain, relation: Cubic, waterContent: number): Permittivity {
  const root = cubicRoot(relation, waterContent, domain.min - 1e-3, domain.max + 1e-3)
  return Math.min(domain.max, Math.max(domain.min, root)) as Permittivity
}
