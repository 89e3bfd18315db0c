import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { requireObject, wholeNumberIn } from '../../quantity/guard.js'
import { PROFILE_POINTS } from '../domains.js'
import { checkBottomSuction, requireMediumInContainer } from './container-water.js'
import { type ContainerWithPorosity, checkPorosity } from './water-and-air.js'

/** A container at rest and how finely to look at it. */
export interface ProfileRequest extends ContainerWithPorosity {
  /** Number of heights, evenly from bottom to surface. Unit: 1. Range: integers [2, 100000]. */
  readonly points: number
}

/** Water and air by height, in plain numbers of the canonical units. */
export interface WaterProfile {
  /** Height above the bottom. Unit: cm. */
  readonly height: Float64Array
  /** Suction there. Unit: cm. */
  readonly suction: Float64Array
  /** Water content there. Unit: m³/m³. */
  readonly waterContent: Float64Array
  /** Air-filled porosity there. Unit: 1. */
  readonly airFilledPorosity: Float64Array
}

/**
 * Water content and air-filled porosity at each height of a container at rest, for a plot or for placing a probe.
 *
 * @equation `\theta(z) = \theta(s_0 + z)`
 * @returns Columns of equal length, from the bottom up.
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
 * waterProfile({ container, medium, points: 4 }).waterContent[2] // => 0.744595
 */
export function waterProfile(request: ProfileRequest): WaterProfile {
  requireObject(request, 'request')
  const { container, medium } = request
  requireMediumInContainer(request)
  const points = wholeNumberIn(request.points, PROFILE_POINTS, 'points')
  const s0 = checkBottomSuction(request.bottomSuction)
  const porosity = checkPorosity(request.porosity, medium)
  const height = Float64Array.from({ length: points }, (_, i) => (container.height * i) / (points - 1))
  const suction = height.map((z) => s0 + z)
  const waterContent = suction.map((s) => medium.waterContent(s as SuctionHead))
  return { height, suction, waterContent, airFilledPorosity: waterContent.map((theta) => porosity - theta) }
}
