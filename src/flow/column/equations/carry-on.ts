import { type ColumnBalance, sumFlows } from './balance.js'

/**
 * Carries water and flows on to a small move of the suctions by their slopes. Flows that pass between cells change both alike, so that
 * no water is lost or made, however good the move is.
 */
export function carryOn(balance: ColumnBalance, move: Float64Array, max: Float64Array | undefined): void {
  const { terms } = balance
  const { water, waterByBelow, waterByOwn, waterByAbove, up, upByBelow, upByAbove } = terms
  const { taken, takenByBelow, takenByOwn, takenByAbove } = terms
  const nodes = water.length
  const top = nodes - 1
  let before = 0
  let own = move[0]!
  for (let i = 0; i < nodes; i++) {
    const after = i < top ? move[i + 1]! : 0
    water[i]! += waterByBelow[i]! * before + waterByOwn[i]! * own + waterByAbove[i]! * after
    if (i < top) up[i]! += upByBelow[i]! * own + upByAbove[i]! * after
    if (max !== undefined) {
      const drawn = taken[i]! + takenByBelow[i]! * before + takenByOwn[i]! * own + takenByAbove[i]! * after
      taken[i] = Math.min(Math.max(drawn, 0), max[i]!)
    }
    before = own
    own = after
  }
  terms.drained = Math.max(0, terms.drained + terms.drainedSlope * move[0]!)
  terms.runOff = Math.max(0, terms.runOff + terms.runOffSlope * move[top]!)
  terms.evaporated = Math.max(0, terms.evaporated + terms.evaporatedSlope * move[top]!)
  sumFlows(balance)
}
