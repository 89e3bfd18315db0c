import { WATER_GIVEN } from '../../quantity/domains.js'
import type { Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { type ContainerAtRest, checkBottomSuction, litresOf, requireMediumInContainer } from './container-water.js'

/** A container that has dried at rest and the water that is given to it. */
export interface ShotOnContainer extends ContainerAtRest {
  /** Water given to the whole container. Unit: L. Range: [0, ∞). */
  readonly shot: Volume
}

/** Where the water of a shot ends up when it has come to rest. */
export interface DrainageAfterShot {
  /** Water that was missing to container capacity before the shot. Unit: L. */
  readonly deficit: Volume
  /** Water that drains in the end. Unit: L. */
  readonly drainage: Volume
  /** Water that stays. Unit: L. */
  readonly retained: Volume
  /** Mean water content in the end. Unit: m³/m³. */
  readonly waterContent: WaterContent
}

/**
 * What a shot leaves in a container that has dried, and what drains in the end: water up to container capacity stays.
 *
 * Real shots drain earlier and more, because some water passes by and a rewetted medium takes up less.
 *
 * @equation `D = \theta_{CC} V - \int_0^H \theta(s_0 + z)\,A(z)\,dz, \quad V_{drain} = \max(0, V_{shot} - D)`
 * @param state - Container, medium, bottom suction before the shot, and the shot.
 * @returns Deficit, drainage, retained water and mean water content in the end.
 * @validity No flow past the medium, no hysteresis, time enough to drain; drain water carries fertiliser: local rules apply.
 * @source definition: hydrostatics
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.3),
 *   saturated: waterContent(0.8),
 *   alpha: perCentimetre(0.35),
 *   n: 1.5,
 * })
 * const container = boxContainer({ length: centimetres(25), width: centimetres(40), height: centimetres(16) })
 * drainageAfterShot({ container, medium, bottomSuction: centimetresOfSuction(25), shot: litres(3) }) // => { deficit: 2.538143, drainage: 0.461857, waterContent: 0.605563 }
 */
export function drainageAfterShot(state: ShotOnContainer): DrainageAfterShot {
  requireObject(state, 'state')
  const { container, medium } = state
  requireMediumInContainer(state)
  const shot = numberIn(state.shot, WATER_GIVEN, 'shot')
  const before = litresOf(container, medium, checkBottomSuction(state.bottomSuction))
  const deficit = Math.max(0, litresOf(container, medium, 0) - before)
  const drainage = Math.max(0, shot - deficit)
  return {
    deficit: deficit as Volume,
    drainage: drainage as Volume,
    retained: (shot - drainage) as Volume,
    waterContent: ((before + shot - drainage) / container.volume) as WaterContent,
  }
}
