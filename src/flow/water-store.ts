import { CAPACITY, SUBSTRATE, WATER_CONTENT, WATER_GIVEN, WATER_USE } from '../quantity/domains.js'
import type { Duration, Share, Volume, WaterContent } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { inOrder } from '../quantity/in-order.js'
import type { ContainerFlow } from './container-flow.js'
import { BYPASS, DRAIN_LAG, MIN_WATER_CONTENT, STATE_WATER, STEP } from './domains.js'

/** State of the storage model: plain numbers, so that it can be kept as JSON and taken up again at any step. */
export interface StoreState {
  /** Water held against gravity. Unit: L. */
  readonly held: Volume
  /** Water on its way out. Unit: L. */
  readonly draining: Volume
}

/** What the storage model needs to know of a container. */
export interface WaterStore {
  /** Volume of medium. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Water content above which water drains. Unit: m³/m³. Range: (0, 1]. */
  readonly containerCapacity: WaterContent
  /** Water content below which the plants get nothing. Unit: m³/m³. Range: [0, 1). */
  readonly minWaterContent: WaterContent
  /** Share of the water given that finds its way past the medium. Unit: 1. Range: [0, 1]. */
  readonly bypass: Share
  /** Time in which all but 37 % of the water on its way out has left. Unit: s. Range: (0, 86400]. */
  readonly drainLag: Duration
}

/**
 * A fast model of the water in a container: a store that holds up to the container capacity, a share that passes by, and drain
 * that leaves with a lag. It conserves water exactly and does not know layers, hysteresis or water repellence.
 *
 * @equation `S' = \min\left((1-b)A + S - U,\; \theta_{cc} V\right), \qquad G' = (G + A + S - U - S')\,e^{-\Delta t/\tau}`
 * @returns The model as a set of pure functions.
 * @throws `DomainError` outside the ranges, `InputError` when the lowest water content is not below the capacity.
 * @validity A planning model: check its bypass and lag against the drain of your own containers. One capacity cannot stand for a medium that
 * drains and wets on different curves: what such a container holds when drain begins depends on how far each part of it had dried, and lies
 * anywhere between the two numbers of `rewettedCapacity`. Dried to 15 cm, slabs 7.5 cm high of stone wool, coir and peat with the wetting curve of
 * Kool and Parker hold 0.071, 0.037 and 0.007 m³/m³ less, and fitted stores miss the drain of a day by 16, 22 and 3 % in the median where they
 * miss 7, 9 and 3 % with one curve (`npm run bench -- store`). Simulate such media with `containerFlowRichards1931`.
 * @source definition: water balance of a container; linear reservoir as in nash-1957
 * @example
 * const flow = waterStore({
 *   substrateVolume: litres(10), containerCapacity: waterContent(0.6), minWaterContent: waterContent(0.1),
 *   bypass: fraction(0.1), drainLag: minutes(10),
 * })
 * const [state, { drained }] = flow.step(flow.startFrom(waterContent(0.55)), { duration: hours(1), applied: litres(1), demand: litres(0) })
 * flow.waterContent(state) // => 0.600
 * drained // => 0.4988
 */
export function waterStore(store: WaterStore): ContainerFlow<StoreState> {
  requireObject(store, 'store')
  const volume = numberIn(store.substrateVolume, SUBSTRATE, 'substrateVolume')
  const max = numberIn(store.containerCapacity, CAPACITY, 'containerCapacity') * volume
  const min = numberIn(store.minWaterContent, MIN_WATER_CONTENT, 'minWaterContent') * volume
  const bypass = numberIn(store.bypass, BYPASS, 'bypass')
  const lag = numberIn(store.drainLag, DRAIN_LAG, 'drainLag')
  inOrder('minWaterContent', store.minWaterContent, 'containerCapacity', store.containerCapacity)
  return {
    start: { held: max as Volume, draining: 0 as Volume },
    startFrom: (waterContent) => ({
      held: (numberIn(waterContent, WATER_CONTENT, 'waterContent') * volume) as Volume,
      draining: 0 as Volume,
    }),
    step: (state, during) => {
      const applied = numberIn(during.applied, WATER_GIVEN, 'applied')
      const stay = Math.exp(-numberIn(during.duration, STEP, 'duration') / lag)
      const filled = heldIn(state) + applied * (1 - bypass)
      const taken = Math.min(numberIn(during.demand, WATER_USE, 'demand'), Math.max(0, filled - min))
      const left = filled - taken
      const held = Math.min(left, max)
      const moving = numberIn(state.draining, STATE_WATER, 'draining') + applied * bypass + (left - held)
      const draining = moving * stay
      return [
        { held: held as Volume, draining: draining as Volume },
        { drained: (moving - draining) as Volume, taken: taken as Volume },
      ]
    },
    waterContent: (state) => (heldIn(state) / volume) as WaterContent,
  }
}

function heldIn(state: StoreState): number {
  requireObject(state, 'state')
  return numberIn(state.held, STATE_WATER, 'held')
}
