import { rootBetween } from '../numerics/root.js'
import { answerOf } from '../quantity/answer.js'
import { type Domain, domainWith } from '../quantity/domain.js'
import { WATER_CONTENT } from '../quantity/domains.js'
import type { Length } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import type { ColumnEquations } from './column/equations/equations.js'
import { follow, forget } from './column/scanning/history.js'
import type { RichardsColumn } from './richards-column.js'
import { type RichardsState, stateOf, sumOf } from './richards-state.js'
import type { RichardsFlow } from './richards-terms.js'

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

/** The states in which a simulation can begin. */
export function richardsStarts(
  { grid, ends, salt }: RichardsColumn,
  equations: ColumnEquations,
): Pick<RichardsFlow, 'start' | 'startFrom' | 'startAt'> {
  const { heights } = grid
  const { history } = equations.points
  const begin = (suctions: Float64Array, by: 'drained' | 'wetted'): RichardsState => {
    if (history !== undefined) forget(history, by === 'wetted')
    equations.store(suctions)
    const held = equations.terms.water.slice()
    if (history !== undefined) follow(history, grid, suctions)
    const salts = salt === undefined ? undefined : held.map((water) => water * salt.startEC)
    if (salts !== undefined) answerOf(sumOf(salts), 'startEC')
    return stateOf({ suctions, held, salt: salts }, equations)
  }
  const atRest = (bottom: number) => heights.map((height) => bottom + height)
  return {
    start: begin(atRest(typeof ends.base === 'number' ? ends.base : 0), 'drained'),
    startFrom: (waterContent) => {
      if (history !== undefined) forget(history, false)
      return begin(atRest(bottomOf(waterContent, grid, equations)), 'drained')
    },
    startAt: (suction, by = 'drained') => {
      oneOf(by, ['drained', 'wetted'], 'by')
      return begin(
        heights.map((height) => numberIn(suction(height as Length), SUCTION, 'suction')),
        by,
      )
    },
  }
}

/** Suction at the bottom of a column at rest that holds so much. */
function bottomOf(waterContent: number, grid: RichardsColumn['grid'], equations: ColumnEquations): number {
  const { heights, nodes } = grid
  const heldOver = (bottom: number) =>
    meanAt(
      heights.map((height) => bottom + height),
      grid,
      equations,
    )
  const underWater = -heights[nodes - 1]!
  const [min, max] = [heldOver(DRIEST)[0], heldOver(underWater)[0]]
  // Sums over cells round, and the limit stands in what a refusal says.
  numberIn(waterContent, domainWith(WATER_CONTENT, { min, max: Math.round(max * DIGITS) / DIGITS }), 'waterContent')
  const sought = Math.min(waterContent, max)
  return rootBetween(
    (bottom) => {
      const [held, slope] = heldOver(bottom)
      return [held - sought, slope]
    },
    underWater,
    DRIEST,
  )
}

/** Mean water content at suctions, none of them under water that stands on the surface, and its slope against a shift of all. */
function meanAt(
  suctions: Float64Array,
  { nodes, volume }: RichardsColumn['grid'],
  equations: ColumnEquations,
): readonly [waterContent: number, slope: number] {
  const { terms } = equations
  equations.store(suctions)
  let [held, slope] = [0, 0]
  for (let i = 0; i < nodes; i++) {
    held += terms.water[i]!
    slope += terms.waterByBelow[i]! + terms.waterByOwn[i]! + terms.waterByAbove[i]!
  }
  return [held / volume, slope / volume]
}
