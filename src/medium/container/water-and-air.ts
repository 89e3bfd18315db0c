import { SOME_POROSITY } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { AirFilledPorosity, Porosity, SuctionHead, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import type { RetentionModel } from '../curves/retention-model.js'
import type { KnownPorosity, MeanWaterContent } from '../terms.js'
import { type ContainerAtRest, checkBottomSuction, litresOf, requireMediumInContainer } from './container-water.js'

/** A container at rest, with the porosity of its medium where that is known. */
export interface ContainerWithPorosity extends ContainerAtRest, KnownPorosity {}

/** What a container holds at rest. */
export interface WaterAndAir extends MeanWaterContent {
  /** Volume of water. Unit: L. */
  readonly water: Volume
  /** Volume of air, trapped air included. Unit: L. */
  readonly air: Volume
  /** Volume of solids. Unit: L. */
  readonly solid: Volume
  /** Mean air-filled porosity. Unit: 1. */
  readonly airFilledPorosity: AirFilledPorosity
  /** Suction at the surface. Unit: cm. */
  readonly topSuction: SuctionHead
  /** Water content at the surface. Unit: m³/m³. */
  readonly topWaterContent: WaterContent
  /** Water content at the bottom. Unit: m³/m³. */
  readonly bottomWaterContent: WaterContent
}

/**
 * Water, air and solids in a container at rest, and how wet its two ends are. Without a bottom suction it has just drained to
 * container capacity.
 *
 * @equation `V_w = \int_0^H \theta(s_0 + z)\,A(z)\,dz, \quad V_a = \phi V - V_w, \quad V_s = (1 - \phi) V`
 * @returns Volumes and means.
 * @throws `DomainError` outside the ranges; `InputError` when the porosity is below the saturated water content.
 * @validity As for container capacity.
 * @source definition: hydrostatics
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = boxContainer({ length: centimetres(100), width: centimetres(7.5), height: centimetres(15) })
 * waterAndAirAtRest({ container, medium, porosity: fraction(0.95) }) // => { water: 8.972186, air: 1.715314, solid: 0.5625 }
 */
export function waterAndAirAtRest(state: ContainerWithPorosity): WaterAndAir {
  requireObject(state, 'state')
  const { container, medium } = state
  requireMediumInContainer(state)
  const s0 = checkBottomSuction(state.bottomSuction)
  const porosity = checkPorosity(state.porosity, medium)
  const water = litresOf(container, medium, s0)
  const waterContent = water / container.volume
  const topSuction = (s0 + container.height) as SuctionHead
  return {
    water: water as Volume,
    air: (porosity * container.volume - water) as Volume,
    solid: ((1 - porosity) * container.volume) as Volume,
    waterContent: waterContent as WaterContent,
    airFilledPorosity: (porosity - waterContent) as AirFilledPorosity,
    topSuction,
    topWaterContent: medium.waterContent(topSuction),
    bottomWaterContent: medium.waterContent(s0 as SuctionHead),
  }
}

/** The porosity that was given, or else that the curve implies. */
export function checkPorosity(porosity: Porosity | undefined, medium: RetentionModel): number {
  if (porosity === undefined) return medium.saturated
  if (numberIn(porosity, SOME_POROSITY, 'porosity') >= medium.saturated) return porosity
  throw new InputError(
    'porosity',
    `a porosity of ${porosity} does not hold the saturated water content of ${medium.saturated}`,
    'one of the two is wrong; the saturated water content is at most the porosity',
  )
}
