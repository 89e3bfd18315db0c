import type { ContainerFlow } from '../../flow/container-flow.js'
import { containerFlowRichards1931 } from '../../flow/container-flow-richards-1931.js'
import type { RichardsContainer } from '../../flow/richards-column.js'
import type { RichardsState } from '../../flow/richards-state.js'
import { type StoreState, type WaterStore, waterStore } from '../../flow/water-store.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'

/** A container with medium, as a rehearsal drives it. `storedMedium` and `richardsMedium` make one; so can you. */
export interface RehearsalMedium<State = unknown> {
  /** Volume of medium. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Its water. */
  readonly flow: ContainerFlow<State>
  /** All water in a state, on its way out or not, so that the balance can be checked. */
  readonly held: (state: State) => Volume
  /** Step in which water is followed. Unit: s. Range: [1, 3600]. */
  readonly step: Duration
  /** The same container when it holds less; left out, the fault `capacity-low` is refused. */
  readonly withCapacity?: (capacity: WaterContent) => ContainerFlow<State>
}

/**
 * A container for a rehearsal by the storage model: quick, exact in its balance, without layers.
 *
 * @procedure Follows the water by `waterStore` in steps of a minute.
 * @param store - The container, as `waterStore` takes it.
 * @returns The container with all that a rehearsal asks of it.
 * @throws `DomainError` outside the ranges, `InputError` when the lowest water content is not below the capacity.
 * @source definition: water balance of a container, as in `waterStore`
 * @example
 * const medium = storedMedium({
 *   substrateVolume: litres(10), containerCapacity: waterContent(0.6), minWaterContent: waterContent(0.1),
 *   bypass: fraction(0.1), drainLag: minutes(10),
 * })
 * medium.held(medium.flow.startFrom(waterContent(0.5))) // => 5
 */
export function storedMedium(store: WaterStore): RehearsalMedium {
  requireObject(store, 'store')
  const medium: RehearsalMedium<StoreState> = {
    substrateVolume: store.substrateVolume,
    flow: waterStore(store),
    held: ({ held, draining }) => (held + draining) as Volume,
    step: 60 as Duration,
    withCapacity: (containerCapacity) => waterStore({ ...store, containerCapacity }),
  }
  return medium as RehearsalMedium
}

/**
 * A container for a rehearsal by Richards' equation: layers, drain that lags and a medium that conducts. A hundred times slower than
 * the storage model, so take it to check a few histories, not to rehearse thousands.
 *
 * @procedure Follows the water by `containerFlowRichards1931` in steps of five minutes, and counts the water that stands on top.
 * @param container - The container, as `containerFlowRichards1931` takes it; it needs roots.
 * @returns The container with all that a rehearsal asks of it.
 * @throws `DomainError` outside the ranges, `InputError` for impossible roots.
 * @source richards-1931, as in `containerFlowRichards1931`
 * @example
 * const medium = richardsMedium({
 *   container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.02), saturated: waterContent(0.95), alpha: perCentimetre(0.08), n: 3.5 }),
 *   saturatedConductivity: centimetresPerMinute(6),
 *   roots: { limits: uptakeLimitsFeddes.tomato },
 * })
 * medium.held(medium.flow.startFrom(waterContent(0.8))) // => 12.000
 */
export function richardsMedium(container: RichardsContainer): RehearsalMedium {
  requireObject(container, 'container')
  requireObject(container.container, 'container.container')
  const medium: RehearsalMedium<RichardsState> = {
    substrateVolume: container.container.volume,
    flow: containerFlowRichards1931(container),
    held: ({ water }) => water.reduce((sum, part) => sum + part, 0) as Volume,
    step: 300 as Duration,
  }
  return medium as RehearsalMedium
}
