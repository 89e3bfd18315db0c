import { WATER_CONTENT } from '../../quantity/domains.js'
import { DomainError } from '../../quantity/errors.js'
import type { Permittivity } from '../../quantity/generated/kinds.js'
import { APPARENT } from '../domains.js'

/** The square of a root that lies between those of 1 and 90; the rounding of a round trip at the ends is forgiven. */
export function reachedPermittivity(root: number, waterContent: number, atAir: number, atTop: number): Permittivity {
  const squared = root * root
  if (root > 0 && squared >= APPARENT.min * (1 - 1e-12) && squared <= APPARENT.max * (1 + 1e-12))
    return squared as Permittivity
  throw new DomainError(waterContent, {
    ...WATER_CONTENT,
    min: Math.min(atAir, atTop),
    max: Math.max(atAir, atTop),
    hint: 'with these coefficients no permittivity from 1 to 90 gives this water content',
  })
}
