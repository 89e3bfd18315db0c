import type { AirFilledPorosity, WaterContent } from '../../quantity/generated/kinds.js'
import { requireMade, requireObject } from '../../quantity/guard.js'
import { type ContainerAtRest, meanWaterContentAtRest } from './container-water.js'

/**
 * Container capacity: the mean water content after the container has drained, when the suction at each height equals the height
 * above the bottom. With a bottom suction it is the mean water content at that later, drier state of rest.
 *
 * It belongs to the container as much as to the medium: the lower the container, the wetter it stays.
 *
 * @equation `\theta_{CC} = \frac{1}{V} \int_0^H \theta(s_0 + z)\,A(z)\,dz`
 * @returns Mean water content. Unit: m³/m³.
 * @validity Free drainage, one medium of even packing, on the drying curve; what a rewetted container holds is `rewettedCapacity`.
 * @source milks-1989b (retention curve and container geometry)
 * @source bilderback-1987
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = boxContainer({ length: centimetres(100), width: centimetres(7.5), height: centimetres(15) })
 * containerCapacity({ container, medium }) // => 0.7975276
 */
export function containerCapacity(state: ContainerAtRest): WaterContent {
  requireObject(state, 'state')
  return meanWaterContentAtRest(state) as WaterContent
}

/**
 * Air-filled porosity of a container that has drained: what saturation held and container capacity no longer holds.
 *
 * Air that saturation leaves trapped is not counted; where the porosity is known, it is the porosity less container capacity.
 *
 * @equation `\varepsilon_a = \theta_s - \theta_{CC}`
 * @returns Air-filled porosity. Unit: 1.
 * @validity As for container capacity.
 * @source milks-1989b (retention curve and container geometry)
 * @source bilderback-1987
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = boxContainer({ length: centimetres(100), width: centimetres(7.5), height: centimetres(15) })
 * airSpaceAtContainerCapacity({ container, medium }) // => 0.1324724
 */
export function airSpaceAtContainerCapacity(state: ContainerAtRest): AirFilledPorosity {
  requireObject(state, 'state')
  requireMade(state.medium, 'waterContent', 'medium')
  return (state.medium.saturated - meanWaterContentAtRest(state)) as AirFilledPorosity
}
