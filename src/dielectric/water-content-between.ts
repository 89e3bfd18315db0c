import { domainWith } from '../quantity/domain.js'
import { DomainError } from '../quantity/errors.js'
import type { Permittivity, WaterContent } from '../quantity/generated/kinds.js'
import { APPARENT } from './domains.js'

/**
 * A water content that a relation gave, if it lies between no water and `full`; refused with the permittivities between which it would.
 * `permittivityAt` is the relation's inverse and is only asked for a refusal.
 */
export function waterContentBetween(
  waterContent: number,
  full: number,
  apparent: Permittivity,
  permittivityAt: (waterContent: number) => number,
): WaterContent {
  // What the rounding of a round trip leaves beyond the ends is taken back.
  if (waterContent >= -1e-14 && waterContent <= full + 1e-14)
    return Math.min(full, Math.max(0, waterContent)) as WaterContent
  const hint =
    waterContent < 0
      ? 'the relation gives less than no water: the probe is dry or lifted, or the relation does not fit the medium'
      : 'the relation gives more water than there is room for: it does not fit the medium'
  const min = Math.max(APPARENT.min, permittivityAt(0))
  throw new DomainError(
    apparent,
    domainWith(APPARENT, { min, max: Math.min(APPARENT.max, permittivityAt(full)), hint }),
    'apparent',
  )
}
