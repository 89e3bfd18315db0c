import { rootBetween } from '../numerics/root.js'
import { type Domain, domainWith } from '../quantity/domain.js'
import { WATER_CONTENT, WATER_GIVEN, WATER_USE } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type {
  DrainEC,
  Length,
  PoreWaterEC,
  PressureHead,
  SolutionEC,
  SuctionHead,
  Volume,
  WaterContent,
} from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import { follow, forget } from './column/history.js'
import { columnSimulation } from './column/simulation.js'
import type { ContainerFlow, FlowOutcome, FlowStep } from './container-flow.js'
import { EVAPORATION, STEP } from './domains.js'

import type { RichardsColumn } from './richards-column.js'
import { type Moment, momentOf, type RichardsState, stateOf } from './richards-state.js'
import { checkFeedEC } from './salt/salt-setting.js'
import type { SaltPassed } from './salt/solute.js'

/** What happens to a simulated container in a span of time. */
export interface RichardsStep extends FlowStep {
  /** Water that the air would take from the surface while it is wet; none by default. Unit: L. Range: [0, ∞). */
  readonly evaporation?: Volume
  /** EC of the water given; needed where salt is followed and water is given. Unit: dS/m. Range: [0, ∞). */
  readonly feedEC?: SolutionEC
}

/** Where the salt of a span of time went, as EC times volume. */
export interface SaltOutcome {
  /** Came with the water given. Unit: dS/m·L. */
  readonly given: number
  /** Left with the drain, less what came in from below. Unit: dS/m·L. */
  readonly drained: number
  /** Taken up by the roots. Unit: dS/m·L. */
  readonly taken: number
  /** Ran off over the rim. Unit: dS/m·L. */
  readonly ranOff: number
  /** EC of the drain, mixed; unknown when nothing drained. */
  readonly drainEC:
    | { readonly known: true; readonly ec: DrainEC }
    | { readonly known: false; readonly reason: 'no-drain' }
}

/** What came of a span of time, and how far the simulation can be trusted. */
export interface RichardsOutcome extends FlowOutcome<RichardsState> {
  /** Water that came in at the surface, or left it if less than zero; what ran past the medium is not in it. Unit: L. */
  readonly entered: Volume
  /** Water that ran past the medium to the drain, which it is part of. Unit: L. */
  readonly bypassed: Volume
  /** Water that left the surface into the air. Unit: L. */
  readonly evaporated: Volume
  /** Water that ran off over the rim. Unit: L. */
  readonly ranOff: Volume
  /** Water that stands on the surface in the end. Unit: L. */
  readonly standing: Volume
  /** Water that the simulation lost or made: rounding. Unit: L. */
  readonly imbalance: Volume
  /** Steps that it took. Unit: 1. */
  readonly steps: number
  /** Where the salt went, where salt is followed. */
  readonly salt?: SaltOutcome
}

/** One height of a container. At a seam between two media there are two, one for either. */
export interface ContainerLayer {
  /** Height above the bottom. Unit: cm. */
  readonly height: Length
  /** Position of its medium, from the bottom up. Unit: 1. */
  readonly layer: number
  /** Pressure head there: below zero where the medium sucks. Unit: cm. */
  readonly pressureHead: PressureHead
  /** Suction there; zero under water. Unit: cm. */
  readonly suction: SuctionHead
  /** Water content there. Unit: m³/m³. */
  readonly waterContent: WaterContent
  /** EC of the pore water there, where salt is followed. Unit: dS/m. */
  readonly poreWaterEC?: PoreWaterEC
}

/** A container whose water is simulated, with a look inside. */
export interface RichardsFlow extends ContainerFlow<RichardsState> {
  readonly step: (state: RichardsState, during: RichardsStep) => RichardsOutcome
  /** The state in which the suction is a given one at each height; less than zero under water. */
  readonly startAt: (
    suction: (height: Length) => SuctionHead | PressureHead,
    /** How it came there, which matters where media drain and wet on different curves: `drained` when left out. */
    by?: 'drained' | 'wetted',
  ) => RichardsState
  /** What there is at each height, from the bottom up. */
  readonly profile: (state: RichardsState) => ContainerLayer[]
  /** EC of all water of a state, mixed; the feed's where salt is not followed makes no sense, and is refused. Unit: dS/m. */
  readonly meanEC: (state: RichardsState) => PoreWaterEC
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

/** The functions of a simulated column. */
export function richardsFlow(column: RichardsColumn): RichardsFlow {
  const { grid, media, ends, bypass, salt } = column
  const { nodes, heights, volume } = grid
  const { equations, advance } = columnSimulation(grid, media, ends, column.tolerance)
  const { terms, points } = equations
  const { history } = points
  const salted = salt !== undefined
  const unpack = (state: RichardsState): Moment => momentOf(state, equations, salted)

  /** Mean water content at suctions and its slope against a shift of all; what stands on the surface is not in it. */
  const mean = (suctions: Float64Array): readonly [waterContent: number, slope: number] => {
    equations.store(suctions)
    let [held, slope] = [
      -equations.standing(suctions),
      suctions[nodes - 1]! > 0 || equations.heldTop ? 0 : grid.surface,
    ]
    for (let i = 0; i < nodes; i++) {
      held += terms.water[i]!
      slope += terms.waterByBelow[i]! + terms.waterByOwn[i]! + terms.waterByAbove[i]!
    }
    return [held / volume, slope / volume]
  }
  const begin = (suctions: Float64Array): RichardsState => {
    equations.store(suctions)
    const held = terms.water.slice()
    if (history !== undefined) follow(history, grid, suctions)
    const salts = salted ? held.map((water) => water * salt.startEC) : undefined
    return stateOf({ suctions, held, salt: salts }, equations)
  }
  const forgetAll = (onWetting: boolean) => {
    if (history !== undefined) forget(history, onWetting)
  }
  const meanOf = ({ suctions, held }: Moment): number => (sum(held) - equations.standing(suctions)) / volume

  return {
    start: (waterContent) => {
      forgetAll(false)
      const atRest = (bottom: number) => mean(heights.map((height) => bottom + height))
      const underWater = -heights[nodes - 1]!
      numberIn(
        waterContent,
        domainWith(WATER_CONTENT, { min: atRest(DRIEST)[0], max: atRest(underWater)[0] }),
        'waterContent',
      )
      const bottom = rootBetween(
        (bottom) => {
          const [held, slope] = atRest(bottom)
          return [held - waterContent, slope]
        },
        underWater,
        DRIEST,
      )
      return begin(heights.map((height) => bottom + height))
    },
    startAt: (suction, by = 'drained') => {
      forgetAll(oneOf(by, ['drained', 'wetted'], 'by') === 'wetted')
      return begin(heights.map((height) => numberIn(suction(height as Length), SUCTION, 'suction')))
    },
    step: (state, during) => {
      const duration = numberIn(during.duration, STEP, 'duration')
      const given = numberIn(during.applied, WATER_GIVEN, 'applied') * 1000
      const demand = numberIn(during.demand, WATER_USE, 'demand') * 1000
      const evaporation = numberIn(during.evaporation ?? 0, EVAPORATION, 'evaporation') * 1000
      if (ends.surface !== 'shots' && given + evaporation > 0)
        throw new InputError('applied', 'cannot be given to a surface that keeps a suction', 'leave `surface` out')
      if (salted && given > 0 && during.feedEC === undefined)
        throw new InputError('feedEC', 'is left out, and salt is followed', 'give the EC of the water given')
      const feed = checkFeedEC(during.feedEC ?? (0 as SolutionEC))
      const moment = unpack(state)
      const before = sum(moment.held)
      const carried = salted ? companionOf(moment.salt as Float64Array, salt, feed) : undefined
      const past = given * bypass
      const conditions = {
        applied: (given - past) / duration,
        evaporation: evaporation / duration,
        sink: column.sink(demand / duration),
      }
      const passed = advance(moment, duration, conditions, carried?.onStep)
      const balance = passed.entered - passed.drained - passed.taken - passed.runOff - passed.evaporated
      return {
        state: stateOf(moment, equations),
        drained: ((passed.drained + past) / 1000) as Volume,
        taken: (passed.taken / 1000) as Volume,
        entered: (passed.entered / 1000) as Volume,
        bypassed: (past / 1000) as Volume,
        evaporated: (passed.evaporated / 1000) as Volume,
        ranOff: (passed.runOff / 1000) as Volume,
        standing: (equations.standing(moment.suctions) / 1000) as Volume,
        imbalance: ((sum(moment.held) - before - balance) / 1000) as Volume,
        steps: passed.steps,
        ...(carried === undefined ? {} : { salt: saltOutcome(carried.passed, past, feed, passed.drained) }),
      }
    },
    waterContent: (state) => meanOf(unpack(state)) as WaterContent,
    meanEC: (state) => {
      const { salt: salts, held } = unpack(state)
      if (salts === undefined)
        throw new InputError('state', 'knows of no salt', 'describe `salt` when the simulation is made')
      return (sum(salts) / sum(held)) as PoreWaterEC
    },
    profile: (state) => {
      const moment = unpack(state)
      return column.layers.flatMap((_, layer) => {
        const [first, last] = [grid.seams[layer]!, grid.seams[layer + 1]!]
        return Array.from({ length: last - first + 1 }, (_, k) => {
          const i = first + k
          const suction = moment.suctions[i]!
          return {
            height: heights[i] as Length,
            layer,
            pressureHead: (0 - suction) as PressureHead,
            suction: Math.max(0, suction) as SuctionHead,
            waterContent: points.at.waterContent[i + layer] as WaterContent,
            ...(moment.salt === undefined ? {} : { poreWaterEC: (moment.salt[i]! / moment.held[i]!) as PoreWaterEC }),
          }
        })
      })
    },
  }
}

function companionOf(cells: Float64Array, salt: NonNullable<RichardsColumn['salt']>, feed: number) {
  const passed: SaltPassed = { given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: 0 }
  const at = { feed, fromBelow: salt.fromBelow, uptakeShare: salt.uptakeShare, diffusion: salt.diffusion }
  return {
    passed,
    onStep: (flows: Parameters<typeof salt.carry>[1]) => salt.carry(cells, flows, at, passed),
  }
}

function saltOutcome(passed: SaltPassed, past: number, feed: number, drained: number): SaltOutcome {
  const left = passed.drained + past * feed
  const water = drained + past
  return {
    given: (passed.given + past * feed) / 1000,
    drained: (left - passed.fromBelow) / 1000,
    taken: passed.taken / 1000,
    ranOff: passed.runOff / 1000,
    drainEC: water > 0 ? { known: true, ec: (left / water) as DrainEC } : { known: false, reason: 'no-drain' },
  }
}

function sum(values: Float64Array): number {
  let total = 0
  for (let i = 0; i < values.length; i++) total += values[i]!
  return total
}
