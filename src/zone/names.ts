import type { NamesOf } from '../quantity/one-of.js'
import type { DescribedProbe, ZoneLamps, ZoneLimits } from './zone.js'

/** Names that the parts of a zone may have in which one may be left out. */

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
