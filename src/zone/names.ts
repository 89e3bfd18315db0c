import type { NamesOf } from '../quantity/one-of.js'
import type { DescribedProbe, Zone, ZoneLamps, ZoneLimits } from './zone.js'

/** Names that the description of a zone may have, and its parts in which one may be left out. */

export const ZONE: NamesOf<Zone> = {
  name: 1,
  container: 1,
  medium: 1,
  plantDensity: 1,
  cropCoefficient: 1,
  emitters: 1,
  probes: 1,
  place: 1,
  lamps: 1,
  readingStep: 1,
  wateringLog: 1,
  limits: 1,
}
export const ZONE_LAMPS: NamesOf<ZoneLamps> = { on: 1, off: 1, irradiance: 1 }
export const ZONE_LIMITS: NamesOf<ZoneLimits> = {
  maxPerDay: 1,
  maxPerShot: 1,
  minRunTime: 1,
  maxRunTime: 1,
  minRest: 1,
  drainFraction: 1,
  allowedFall: 1,
  depletion: 1,
  lowerLimit: 1,
  minBelievable: 1,
  maxBelievable: 1,
  minRise: 1,
  firstShotAfterLight: 1,
  lastShotBeforeDark: 1,
}
export const DESCRIBED_PROBE: NamesOf<DescribedProbe> = { name: 1, calibration: 1, weight: 1 }
