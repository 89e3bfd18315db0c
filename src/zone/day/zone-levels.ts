import { porosityFromDensities } from '../../medium/bench/porosity.js'
import { boxContainer } from '../../medium/container/box-container.js'
import { containerCapacity } from '../../medium/container/container-capacity.js'
import { vanGenuchten1980 } from '../../medium/curves/van-genuchten-1980.js'
import { refillPointByDepletion } from '../../medium/limits/refill-point.js'
import { attempt } from '../../quantity/attempt.js'
import type { Length, WaterContent } from '../../quantity/generated/kinds.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { Zone } from '../zone.js'

/** What the medium holds in the container, from its bench test. */
export interface MediumAtRest {
  /** Share of pores. Unit: 1. */
  readonly porosity: number
  /** Mean water content after drain. Unit: m³/m³. */
  readonly containerCapacity: number
  /** Air that it then holds. Unit: 1. */
  readonly airFilledPorosity: number
}

/** Between what water contents a probe, or the mean of the probes, is kept. */
export interface LevelLimits {
  /** Level to which shots drain back. Unit: m³/m³. */
  readonly fullPoint: number
  /** Level at which to water again. Unit: m³/m³. */
  readonly refillPoint: number
}

/** What the bench test says of the container. */
export function mediumAtRest(zone: Zone): Known<MediumAtRest> {
  const { medium, container } = zone
  if (medium === undefined) return unknown('no-bench-test')
  const porosity = porosityFromDensities(medium)
  // Between upright walls only the height matters.
  const sides = { length: 10 as Length, width: 10 as Length }
  const capacity = containerCapacity({
    container: boxContainer({ ...sides, height: container.height }),
    medium: vanGenuchten1980(medium),
  })
  return known({ porosity, containerCapacity: capacity, airFilledPorosity: porosity - capacity })
}

/**
 * How far below its full point a level may fall before the next shot: as the zone says, or the wanted share of the water between capacity and lower
 * limit. It is the same for every probe, so that each has limits of its own level.
 */
export function allowedFall(zone: Zone, medium: Known<MediumAtRest>, fullPoint: number): Known<number> {
  const { allowedFall: fall, depletion, lowerLimit } = zone.limits
  // A share is taken only with a bench test.
  if (depletion === undefined || !medium.known)
    return fullPoint - fall! > lowerLimit ? known(fall!) : unknown('full-point-below-lower-limit')
  const full = medium.value.containerCapacity as WaterContent
  const found = attempt(() => refillPointByDepletion({ fullPoint: full, lowerLimit, depletion }))
  return found.ok ? known(full - found.value) : unknown('full-point-below-lower-limit')
}
