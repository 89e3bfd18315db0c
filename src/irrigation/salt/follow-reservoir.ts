import { WATER_USE } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { DrainEC, PoreWaterEC, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject, requireRows } from '../../quantity/guard.js'
import type { Reducer } from '../../quantity/reducer.js'
import { APPLIED, FEED_EC, STORE_EC, STORE_WATER, UPTAKE_EC } from '../domains.js'
import type { FeedSalts, SaltFlows } from '../terms.js'

/** A well-mixed root zone: plain data, so that it can be kept and taken up again. */
export interface ReservoirState {
  /** Water in it. Unit: L. Range: (0, ∞). */
  readonly water: Volume
  /** EC of that water. Unit: dS/m. Range: [0, 200]. */
  readonly ec: PoreWaterEC
}

/** What happens to a root zone between two looks: plants take water and salts, then a shot comes. */
export interface ReservoirEvent extends FeedSalts {
  /** Water applied. Unit: L. Range: [0, ∞). */
  readonly applied: Volume
  /** Water that the plants took. Unit: L. Range: [0, ∞). */
  readonly use: Volume
  /** Most water that the root zone holds against gravity; what is over drains. Unit: L. Range: (0, ∞). */
  readonly maxWater: Volume
}

/** Where water and salts went at an event. Amounts of salt are EC times volume. */
export interface ReservoirOutcome extends SaltFlows {
  /** Water that drained. Unit: L. */
  readonly drained: Volume
  /** EC of the drain: that of the mixed root zone. Unit: dS/m. */
  readonly drainEC: DrainEC
}

/**
 * Follows a well-mixed root zone: at each event plants take water and salts, the shot mixes in, and what is over drains.
 *
 * @equation `W' = W - U + I, \quad S' = C W + C_{in} I - C_{up} U, \quad C' = S' / W', \quad D = \max(0, W' - W_{max})`
 * @param start - Root zone before the first event.
 * @returns A reducer that takes events and gives drain and salts.
 * @throws Its step: `DomainError` outside the ranges; `InputError` when plants would take more water or salt than there is.
 * @source definition: salt balance of a well-mixed reservoir
 * @example
 * const slab = followReservoir({ water: litres(6), ec: decisiemensPerMetre(3) })
 * const [after, outcome] = slab.step(slab.start, {
 *   applied: litres(0.4),
 *   feedEC: decisiemensPerMetre(2.6),
 *   use: litres(0.3),
 *   maxWater: litres(6),
 * })
 * after // => { water: 6, ec: 3.12131 }
 * outcome.drained // => 0.1
 */
export function followReservoir(start: ReservoirState): Reducer<ReservoirState, ReservoirEvent, ReservoirOutcome> {
  requireObject(start, 'start')
  numberIn(start.water, STORE_WATER, 'water')
  numberIn(start.ec, STORE_EC, 'ec')
  return { start, step: afterEvent }
}

function afterEvent(state: ReservoirState, event: ReservoirEvent): readonly [ReservoirState, ReservoirOutcome] {
  requireObject(state, 'state')
  requireObject(event, 'input')
  const applied = numberIn(event.applied, APPLIED, 'applied')
  const use = numberIn(event.use, WATER_USE, 'use')
  const mixed = numberIn(state.water, STORE_WATER, 'water') - use + applied
  const max = numberIn(event.maxWater, STORE_WATER, 'maxWater')
  const saltIn = numberIn(event.feedEC, FEED_EC, 'feedEC') * applied
  const saltTaken = numberIn(optionOr(event.uptakeEC, 0), UPTAKE_EC, 'uptakeEC') * use
  const salt = numberIn(state.ec, STORE_EC, 'ec') * state.water + saltIn - saltTaken
  if (!(mixed > 0))
    throw new InputError('use', `plants would take ${use} L of less water`, 'take shorter steps or check the use')
  if (salt < 0)
    throw new InputError(
      'uptakeEC',
      'plants would take more salt than there is',
      'lower the uptake; it cannot go on so',
    )
  const ec = salt / mixed
  const drained = Math.max(0, mixed - max)
  return [
    { water: (mixed - drained) as Volume, ec: ec as PoreWaterEC },
    { drained: drained as Volume, drainEC: ec as unknown as DrainEC, saltIn, saltOut: ec * drained, saltTaken },
  ]
}

/** Sums over several events. */
export interface ReservoirRun extends SaltFlows {
  /** The root zone at the end. */
  readonly state: ReservoirState
  /** EC of the root zone after each event. Unit: dS/m. */
  readonly ec: Float64Array
  /** Drain of each event. Unit: L. */
  readonly drained: Float64Array
  /** Water applied in all. Unit: L. */
  readonly totalApplied: Volume
  /** Drain in all. Unit: L. */
  readonly totalDrained: Volume
}

/**
 * Steps a well-mixed root zone through events, one after the other.
 *
 * @param start - Root zone before the first event.
 * @param events - What happens, in order.
 * @procedure Takes each event as `followReservoir` does and adds up water and salts.
 * @returns Root zone at the end, courses and sums.
 * @throws As `followReservoir` and its step do.
 * @source definition: salt balance of a well-mixed reservoir
 * @example
 * const shot: ReservoirEvent = {
 *   applied: litres(0.4),
 *   feedEC: decisiemensPerMetre(2.6),
 *   use: litres(0.32),
 *   maxWater: litres(6),
 * }
 * const run = reservoirRun({ water: litres(6), ec: decisiemensPerMetre(2.6) }, Array(50).fill(shot))
 * run.state // => { water: 6, ec: 7.63689 }
 */
export function reservoirRun(start: ReservoirState, events: readonly ReservoirEvent[]): ReservoirRun {
  requireRows(events, 'events')
  const reservoir = followReservoir(start)
  const ec = new Float64Array(events.length)
  const drained = new Float64Array(events.length)
  let state = reservoir.start
  let [totalApplied, totalDrained, saltIn, saltOut, saltTaken] = [0, 0, 0, 0, 0]
  events.forEach((event, i) => {
    const [after, outcome] = reservoir.step(state, event)
    state = after
    ec[i] = state.ec
    drained[i] = outcome.drained
    totalApplied += event.applied
    totalDrained += outcome.drained
    saltIn += outcome.saltIn
    saltOut += outcome.saltOut
    saltTaken += outcome.saltTaken
  })
  return {
    state,
    ec,
    drained,
    totalApplied: totalApplied as Volume,
    totalDrained: totalDrained as Volume,
    saltIn,
    saltOut,
    saltTaken,
  }
}
