import type { SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireMade } from '../../quantity/guard.js'
import type { RetentionModel } from '../curves/retention-model.js'
import { scanningCurvesScott1983 } from '../curves/scanning-curves-scott-1983.js'
import { SOME_SUCTION } from '../domains.js'
import {
  type ContainerAtRest,
  checkBottomSuction,
  meanWaterContentAtRest,
  overHeight,
  requireMediumInContainer,
} from './container-water.js'

/** A container whose medium drains and wets on different curves, and how far it had dried. */
export interface RewettedContainer extends ContainerAtRest {
  /** How the medium holds water as it wets from dry. */
  readonly wetting: RetentionModel
  /** Suction to which it had dried before it was wetted. Unit: cm. Range: (0, ∞). */
  readonly driedTo: SuctionHead
}

/** What a container holds at rest, by how it came there. */
export interface RewettedCapacity {
  /** After it was full and has drained: container capacity. Unit: m³/m³. */
  readonly drained: WaterContent
  /** After it was dry and has been wetted without being filled. Unit: m³/m³. */
  readonly rewetted: WaterContent
}

/**
 * Container capacity of a medium that drains and wets on different curves: what it holds when it was full and has drained, and the less that
 * it holds when it had dried and was wetted only until it rests, as from a mat or by small shots. In between lies what it holds after shots
 * that fill a part of it. Filling it once, until water stands on the surface, brings it back to the first.
 *
 * @equation `\theta_{RW} = \frac{1}{V} \int_0^H \theta_\uparrow(s_0 + z)\,A(z)\,dz`
 * @param input - Container, both curves, the bottom suction, and how far it had dried.
 * @returns Both mean water contents.
 * @throws `DomainError` outside the ranges; `InputError` when the wetting curve lies above the drying curve there.
 * @validity As for container capacity; no water repellence, which keeps dry peat and bark from wetting at all.
 * @source scott-1983; kool-1987
 * @example
 * const drying = { residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6 }
 * const container = boxContainer({ length: centimetres(100), width: centimetres(7.5), height: centimetres(15) })
 * rewettedCapacity({
 *   container,
 *   medium: vanGenuchten1980(drying),
 *   wetting: wettingCurveKoolParker1987(drying),
 *   driedTo: centimetresOfSuction(50),
 * }) // => { drained: 0.7975276, rewetted: 0.7275285 }
 */
export function rewettedCapacity(input: RewettedContainer): RewettedCapacity {
  const { container, medium, wetting, driedTo, bottomSuction } = optionsOf(input)
  requireMediumInContainer({ container, medium })
  requireMade(wetting, 'waterContent', 'wetting')
  const dry = numberIn(driedTo, SOME_SUCTION, 'driedTo')
  const bottom = checkBottomSuction(bottomSuction)
  const { whileWetting } = scanningCurvesScott1983({ drying: medium, wetting, suction: dry as SuctionHead })
  // Higher up than it had dried to it drains, as ever.
  const curve = (s: SuctionHead) => (s < dry ? whileWetting(s) : medium.waterContent(s))
  const places = { ...wetting, breakpoints: [...wetting.breakpoints, ...medium.breakpoints, dry as SuctionHead] }
  const litres = overHeight(container, places, bottom, curve, 1e-12, medium.saturated * container.volume)
  return {
    drained: meanWaterContentAtRest({
      container,
      medium,
      ...(bottomSuction === undefined ? {} : { bottomSuction }),
    }) as WaterContent,
    rewetted: (litres / container.volume) as WaterContent,
  }
}
