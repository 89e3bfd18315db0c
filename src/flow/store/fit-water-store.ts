import { DRAINED, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Share, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject, requireRows } from '../../quantity/guard.js'
import type { ContainerFlow } from '../container-flow.js'
import type { DrainMisfit } from '../terms.js'
import { type WaterStore, waterStore } from '../water-store.js'
import type { StoreNumbers } from './quick-drain.js'
import { searchStore } from './search-store.js'
import { minCapacity } from './store-onsets.js'
import type { StoreRecord, StoreToFit } from './store-record.js'
import { type ToldBy, toldByRecord } from './told-by-record.js'

/** A container that the storage model is to stand for, with a model to be followed in the place of a record. */
export interface StoreAndFlow<State> extends StoreToFit {
  /** The model that says what drains. */
  readonly flow: ContainerFlow<State>
}

/** A storage model that was fitted. */
export interface StoreFit extends DrainMisfit {
  /** The model, to be given to `waterStore` and to a plan. */
  readonly store: WaterStore
  /** How well the record tells each number; capacity in m³/m³, bypass in 1, lag in s. */
  readonly told: { readonly containerCapacity: ToldBy; readonly bypass: ToldBy; readonly drainLag: ToldBy }
  /** Drain of the model in all. Unit: L. */
  readonly drainedByStore: Volume
  /** Drain of the record in all. Unit: L. */
  readonly drained: Volume
}

/**
 * The storage model that drains as a record did: its container capacity, the share that passes by and the lag of the drain.
 *
 * @procedure Least sum of squared differences of the drain of the steps. For each step at which the store could first be full, and each
 * bypass and lag of a grid, the best capacity follows in closed form; bypass and the logarithm of the lag are then searched from the
 * best of these by the simplex of Nelder and Mead. Standard errors from differences at the minimum, ranges by halving.
 * @returns The model, how well each number is told, and its error.
 * @throws `DomainError` outside the ranges; `InputError` for fewer than four steps, drains that do not match them, or a record
 * without drain, from which nothing can be told.
 * @validity A record tells the capacity by the first time that the store is full: if all drain ran past, any capacity from the highest
 * content upwards drains alike. It tells the bypass by shots that do not fill the store: if each of them does, what runs past and
 * what overflows cannot be told apart. It tells the lag by drain that lasts from one step into the next. `told` says which of them is
 * not told, with the range that would do as well; `store` then holds a value of that range, of
 * capacity and bypass the lowest. Errors take noise as alike in all steps: with noise of 1 or 5 mL only in steps that drain, 221 simulated
 * records of 10 h were off by 1.6 to 1.9 times their errors in the root mean square. Where a store is never full, noise can pass for
 * overflow: 5 of 16 such records gave a capacity as known that was the highest content of the record.
 * For containers and shots like those of the record. What a record does not show, as a dry start, the model does not know.
 * Fitted to one simulated day each of stone wool, coir and peat, it drained on 50 other random days as much as the simulation within 7, 9
 * and 3 % in the median, and within 19 % at worst (`npm run bench -- store`): the drain of a store has but one lag.
 * @source nelder-1965
 * @example
 * const steps = [0.5, 0, 0, 0.5, 0, 0, 0.5, 0, 0].map((applied) => ({
 *   duration: minutes(20), applied: litres(applied), demand: litres(0.05),
 * }))
 * const drained = [0.21, 0.02, 0, 0.29, 0.04, 0, 0.29, 0.04, 0].map((volume) => litres(volume))
 * const { store } = fitWaterStore({
 *   substrateVolume: litres(10), minWaterContent: waterContent(0.1), start: waterContent(0.58), steps, drained,
 * })
 * store.containerCapacity // => 0.602
 */
export function fitWaterStore(record: StoreRecord): StoreFit {
  requireObject(record, 'record')
  requireList(record.drained, 'drained')
  requireRows(record.steps, 'steps')
  const drained = drainOfRecord(record)
  const storeOf = ([capacity, bypass, lag]: StoreNumbers): WaterStore => ({
    substrateVolume: record.substrateVolume,
    minWaterContent: record.minWaterContent,
    containerCapacity: capacity as WaterContent,
    bypass: bypass as Share,
    drainLag: Math.exp(lag) as Duration,
  })
  const drainAt = (at: StoreNumbers) => drainOf(waterStore(storeOf(at)), record)
  // Checks the container and each step, which the search does not.
  drainAt([1, 0, 0])
  const found = searchStore(record)
  const told = toldByRecord(found.at, drainAt, found.value, minCapacity(record)) as [ToldBy, ToldBy, ToldBy]
  const [containerCapacity, bypass, lag] = told
  // No more may run past than the record asks for.
  const minBypass = bypass.known ? found.at[1] : bypass.range.min
  const at: StoreNumbers = [found.at[0], minBypass, found.at[2]]
  const modelled = drainAt(at)
  const squares = modelled.reduce((sum, volume, k) => sum + (volume - drained[k]!) ** 2, 0)
  return {
    store: storeOf(at),
    told: { containerCapacity, bypass, drainLag: inSeconds(lag, at[2]) },
    drainError: Math.sqrt(squares / drained.length) as Volume,
    drainedByStore: modelled.reduce((sum, volume) => sum + volume, 0) as Volume,
    drained: drained.reduce((sum, volume) => sum + volume, 0) as Volume,
  }
}

function drainOfRecord({ start, steps, drained }: StoreRecord): number[] {
  numberIn(start, WATER_CONTENT, 'start')
  if (steps.length < 4) throw new InputError('steps', `are ${steps.length}`, 'give at least four')
  if (steps.length !== drained.length)
    throw new InputError(
      'drained',
      `has ${drained.length} entries for ${steps.length} steps`,
      'give the drain of each step',
    )
  const volumes = drained.map((volume) => numberIn(volume, DRAINED, 'drained'))
  if (volumes.every((volume) => volume === 0))
    throw new InputError('drained', 'is zero in all steps', 'take a record with drain')
  return volumes
}

/** From the logarithm of the lag to seconds. */
function inSeconds(told: ToldBy, lag: number): ToldBy {
  if (told.known) return { known: true, standardError: told.standardError * Math.exp(lag) }
  return { ...told, range: { min: Math.exp(told.range.min), max: Math.exp(told.range.max) } }
}

/**
 * The storage model that drains as another model does, such as a simulation by Richards' equation: for a plan on a small computer.
 *
 * @procedure Follows the model through the steps and gives what drained and what plants took to `fitWaterStore`.
 * @returns The storage model, how well each number is told, and its error.
 * @throws As `fitWaterStore`, and what the model throws.
 * @validity As `fitWaterStore`.
 * @source nelder-1965
 * @example
 * const shots = [...Array(12).keys()].map((k) => ({
 *   duration: minutes(20), applied: litres(k % 3 ? 0 : 0.5), demand: litres(0.05),
 * }))
 * const flow = waterStore({
 *   substrateVolume: litres(10), containerCapacity: waterContent(0.6), minWaterContent: waterContent(0.1),
 *   bypass: fraction(0), drainLag: minutes(5),
 * })
 * fitWaterStoreToFlow({
 *   flow, substrateVolume: litres(10), minWaterContent: waterContent(0.1), start: waterContent(0.6), steps: shots,
 * }).store.drainLag // => 300.0
 */
export function fitWaterStoreToFlow<State>(request: StoreAndFlow<State>): StoreFit {
  requireObject(request, 'request')
  const { flow, ...rest } = request
  requireObject(flow, 'flow')
  if (typeof flow.startFrom !== 'function')
    throw new InputError('flow', 'is no model of flow', 'make it with containerFlowRichards1931() or waterStore()')
  requireRows(rest.steps, 'steps')
  let state = flow.startFrom(numberIn(rest.start, WATER_CONTENT, 'start') as WaterContent)
  const drained: Volume[] = []
  // The store has no roots of its own: it is to lose what the roots of the model took, not what they were asked for.
  const steps = rest.steps.map((during) => {
    const [next, after] = flow.step(state, during)
    state = next
    drained.push(Math.max(after.drained, 0) as Volume)
    return { ...during, demand: Math.max(after.taken, 0) as Volume }
  })
  if (drained.every((volume) => volume === 0)) throw new InputError('steps', 'drain nothing', 'give shots that drain')
  return fitWaterStore({ ...rest, steps, drained })
}

function drainOf<State>(flow: ContainerFlow<State>, { start, steps }: StoreToFit): Float64Array {
  let state = flow.startFrom(start)
  return Float64Array.from(steps, (during) => {
    const [next, after] = flow.step(state, during)
    state = next
    return after.drained
  })
}
