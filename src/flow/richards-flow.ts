import { InputError } from '../quantity/errors.js'
import type { Length, PoreWaterEC, PressureHead, SuctionHead, WaterContent } from '../quantity/generated/kinds.js'
import type { ColumnEquations } from './column/equations/equations.js'
import { columnSimulation } from './column/simulation.js'
import type { RichardsColumn } from './richards-column.js'
import { richardsStarts } from './richards-starts.js'
import { type Moment, momentOf, type RichardsState, sumOf } from './richards-state.js'
import { richardsStep } from './richards-step.js'
import type { ContainerLayer, RichardsFlow } from './richards-terms.js'

/** The functions of a simulated column. */
export function richardsFlow(column: RichardsColumn): RichardsFlow {
  const { grid, media, ends, tolerance, salt } = column
  const simulation = columnSimulation(grid, media, ends, tolerance)
  const { equations } = simulation
  const unpack = (state: RichardsState): Moment => momentOf(state, equations, salt !== undefined)
  return {
    ...richardsStarts(column, equations),
    step: richardsStep(column, simulation, unpack),
    waterContent: (state) => {
      const moment = unpack(state)
      return ((sumOf(moment.held) - equations.standing(moment.suctions)) / grid.volume) as WaterContent
    },
    meanEC: (state) => {
      const moment = unpack(state)
      if (moment.salt === undefined)
        throw new InputError('state', 'knows of no salt', 'describe `salt` when the simulation is made')
      return (sumOf(moment.salt) / sumOf(moment.held)) as PoreWaterEC
    },
    profile: (state) => profileOf(unpack(state), column, equations),
  }
}

/** What there is at each height; at a boundary between two media twice. */
function profileOf(moment: Moment, { grid, layers }: RichardsColumn, { points }: ColumnEquations): ContainerLayer[] {
  return layers.flatMap((_, layer) => {
    const [first, last] = [grid.boundaries[layer]!, grid.boundaries[layer + 1]!]
    return Array.from({ length: last - first + 1 }, (_, k) => {
      const i = first + k
      const suction = moment.suctions[i]!
      return {
        height: grid.heights[i] as Length,
        layer,
        pressureHead: (0 - suction) as PressureHead,
        suction: Math.max(0, suction) as SuctionHead,
        waterContent: points.at.waterContent[i + layer] as WaterContent,
        ...(moment.salt === undefined ? {} : { poreWaterEC: (moment.salt[i]! / moment.held[i]!) as PoreWaterEC }),
      }
    })
  })
}
