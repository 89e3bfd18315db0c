import { rootBetween } from '../numerics/root.js'
import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import { numberIn } from '../quantity/guard.js'
import type { Length } from '../quantity/length.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { Volume } from '../quantity/volume.js'
import type { WaterContent } from '../quantity/water-content.js'
import { columnEquations } from './column-equations.js'
import { columnSolver } from './column-solver.js'
import type { ContainerFlow, FlowOutcome, FlowStep } from './container-flow.js'
import { APPLIED, DEMAND, STEP } from './domains.js'
import { type RichardsContainer, richardsColumn } from './richards-column.js'
import { mediumTable, nodeValues } from './tabulated-medium.js'

/** State of the simulation: plain numbers, so that it can be kept as JSON and taken up again at any step. */
export interface RichardsState {
  /** Suction at each node, from the bottom up; below zero under standing water. Unit: cm. */
  readonly suctions: readonly SuctionHead[]
}

/** What came of a span of time, and how far the simulation can be trusted. */
export interface RichardsOutcome extends FlowOutcome<RichardsState> {
  /** Water that came in at the surface, or left it if less than zero. Unit: L. */
  readonly entered: Volume
  /** Water that stands on the surface in the end. Unit: L. */
  readonly standing: Volume
  /** Water that the simulation lost or made. Unit: L. */
  readonly imbalance: Volume
  /** Steps that it took. Unit: 1. */
  readonly steps: number
}

/** One height of a container. */
export interface ContainerLayer {
  /** Height above the bottom. Unit: cm. */
  readonly height: Length
  /** Suction there. Unit: cm. */
  readonly suction: SuctionHead
  /** Water content there. Unit: m³/m³. */
  readonly waterContent: WaterContent
}

/** A container whose water is simulated, with a look inside. */
export interface RichardsFlow extends ContainerFlow<RichardsState> {
  readonly step: (state: RichardsState, during: FlowStep) => RichardsOutcome
  /** The state in which the suction is a given one at each height. */
  readonly startAt: (suction: (height: Length) => SuctionHead) => RichardsState
  /** Suction and water content from the bottom up. */
  readonly profile: (state: RichardsState) => ContainerLayer[]
}

/** Driest suction at the bottom of a container that a simulation can begin with. Unit: cm. */
const DRIEST = 1e6
const SUCTION: Domain = {
  quantity: 'suction',
  unit: 'cm',
  min: -1000,
  max: DRIEST,
  ends: '[]',
  hint: 'give the suction at each height, below zero only under water',
}

/**
 * Water in a container by the equation of Richards: it flows down by its weight and from wet to dry by suction, the slower the drier
 * the medium. Shots are spread evenly over surface and time, roots drink after Feddes, and the bottom drains where it is saturated.
 *
 * ```math
 * \frac{\partial \theta}{\partial t} =
 * \frac{1}{A} \frac{\partial}{\partial z} \left[ A\,K(s) \left( 1 - \frac{\partial s}{\partial z} \right) \right] - a(s)\,U
 * ```
 *
 * U is the demand in a volume of medium, and a(s) the share of it that roots can follow.
 *
 * The water content is what is balanced (the mixed form of Celia and others 1990), the conductivity between two nodes is its mean over
 * their suctions, and the step in time follows the error that it makes. What `step` gives is therefore balanced to about 1e-9 of
 * the water that passed; water cannot run past the medium, and wetting follows the same curve as drying.
 *
 * @param input - Container, medium, roots, and what bottom and surface do.
 * @returns The model as a set of pure functions.
 * @throws `DomainError` outside the ranges; `InputError` for impossible roots. Its functions throw `InputError` for a state of another
 * container and for a demand without roots, and `ConvergenceError` when no step is short enough, as where water meets a coarse medium
 * that roots have emptied to its residual.
 * @validity One-dimensional flow in a uniform medium without hysteresis, swelling or water repellence: an upper bound of how evenly a
 * real container wets. Water given at few points of a wide container spreads less than this says.
 * @source Richards, L. A. (1931), Physics 1:318-333 [from memory]; Celia, M. A., Bouloutas, E. T. and Zarba, R. L. (1990), Water Resources Research 26:1483-1496
 * @example
 * ```ts
 * const flow = containerFlowRichards1931({
 *   container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.02), saturated: waterContent(0.95), alpha: perCentimetre(0.08), n: 3.5 }),
 *   saturatedConductivity: centimetresPerMinute(6),
 * })
 * const drained = flow.start(waterContent(0.9))
 * const { state, drained: drain } = flow.step(drained, { duration: minutes(10), applied: litres(1), demand: litres(0) })
 * drain // => 0.5832
 * flow.waterContent(state) // => 0.9278
 * ```
 */
export function containerFlowRichards1931(input: RichardsContainer): RichardsFlow {
  const { grid, medium, saturatedConductivity, ends, tolerance, sink } = richardsColumn(input)
  const { nodes, heights, volumes, volume } = grid
  const table = mediumTable(medium)
  const equations = columnEquations(grid, table, saturatedConductivity, ends)
  const advance = columnSolver(equations, tolerance)
  const values = nodeValues(nodes)

  /** Mean water content and its slope against a shift of all suctions. */
  const mean = (suctions: Float64Array): readonly [content: number, slope: number] => {
    table.read(suctions, values)
    let held = 0
    let slope = 0
    for (let i = 0; i < nodes; i++) {
      held += volumes[i]! * values.content[i]!
      slope -= volumes[i]! * values.capacity[i]!
    }
    return [held / volume, slope / volume]
  }
  const unpack = ({ suctions }: RichardsState): Float64Array => {
    if (suctions.length !== nodes)
      throw new InputError('state', 'has another number of nodes than the container', 'begin with `start`')
    return Float64Array.from(suctions, (suction) => numberIn(suction, STATE))
  }
  const pack = (suctions: Float64Array): RichardsState => ({ suctions: Array.from(suctions) as SuctionHead[] })

  return {
    start: (content) => {
      const atRest = (bottom: number) => mean(heights.map((height) => bottom + height))
      const underWater = -heights[nodes - 1]!
      const [most] = atRest(underWater)
      const [least] = atRest(DRIEST)
      numberIn(content, { ...CONTENT, min: least, max: most })
      const bottom = rootBetween(
        (bottom) => {
          const [held, slope] = atRest(bottom)
          return [held - content, slope]
        },
        underWater,
        DRIEST,
      )
      return pack(heights.map((height) => bottom + height))
    },
    startAt: (suction) => pack(heights.map((height) => numberIn(suction(height as Length), SUCTION))),
    step: (state, during) => {
      const duration = numberIn(during.duration, STEP, 'duration')
      const suctions = unpack(state)
      const applied = numberIn(during.applied, APPLIED, 'applied') * 1000
      if (applied > 0 && ends.surface !== 'shots')
        throw new InputError('applied', 'cannot be given to a surface that keeps a suction', 'leave `surface` out')
      const demand = numberIn(during.demand, DEMAND, 'demand') * 1000
      const conditions = { applied: applied / duration, sink: sink(demand / duration) }
      const passed = advance(suctions, duration, conditions)
      return {
        state: pack(suctions),
        drained: (passed.drained / 1000) as Volume,
        taken: (passed.taken / 1000) as Volume,
        entered: (passed.entered / 1000) as Volume,
        standing: (ends.surface === 'shots' ? equations.standing(suctions) / 1000 : 0) as Volume,
        imbalance: (passed.imbalance / 1000) as Volume,
        steps: passed.steps,
      }
    },
    waterContent: (state) => mean(unpack(state))[0] as WaterContent,
    profile: (state) => {
      const suctions = unpack(state)
      return state.suctions.map((suction, i) => ({
        height: heights[i] as Length,
        suction,
        waterContent: medium.waterContent(suctions[i] as SuctionHead),
      }))
    },
  }
}

const STATE: Domain = {
  quantity: 'suction of the state',
  unit: 'cm',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'keep the numbers of a state as they are',
}
const CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give a mean that the medium can hold at rest',
}
