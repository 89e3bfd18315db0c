import { rootBetween } from '../numerics/root.js'
import { type Domain, domainWith } from '../quantity/domain.js'
import { WATER_CONTENT, WATER_GIVEN, WATER_USE } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type {
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
import { EVAPORATION, STEP } from './domains.js'

import type { RichardsColumn } from './richards-column.js'
import { type Moment, momentOf, type RichardsState, stateOf } from './richards-state.js'
import type { RichardsFlow } from './richards-terms.js'
import { companionOf, saltOutcome } from './salt/salt-account.js'
import { checkFeedEC } from './salt/salt-setting.js'

/** Driest suction at the bottom of a container that a simulation can begin with. Unit: cm. */
const DRIEST = 1e6
/** To what share of a water content its limit is rounded. */
const DIGITS = 1e12
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
      const [least, most] = [atRest(DRIEST)[0], atRest(underWater)[0]]
      // Sums over cells round, and the limit stands in what a refusal says.
      const max = Math.round(most * DIGITS) / DIGITS
      numberIn(waterContent, domainWith(WATER_CONTENT, { min: least, max }), 'waterContent')
      const sought = Math.min(waterContent, most)
      const bottom = rootBetween(
        (bottom) => {
          const [held, slope] = atRest(bottom)
          return [held - sought, slope]
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

function sum(values: Float64Array): number {
  let total = 0
  for (let i = 0; i < values.length; i++) total += values[i]!
  return total
}
