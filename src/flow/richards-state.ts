import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import type { PressureHead, Volume } from '../quantity/generated/kinds.js'
import { isList, numberIn, requireObject } from '../quantity/guard.js'
import type { ColumnEquations } from './column/equations/equations.js'
import { countOfScanning, recall, remembered } from './column/scanning/remembered.js'
import type { ColumnState } from './column/step/passed.js'
import { STATE_CURVE, STATE_HEAD, STATE_SALT, STATE_TURN, STATE_WATER } from './domains.js'

/** State of the simulation: plain numbers, so that it can be kept as JSON and taken up again at any step, bit for bit. */
export interface RichardsState {
  /** Pressure head at each node, from the bottom up: below zero where the medium sucks, above under standing water. Unit: cm. Range: any. */
  readonly pressureHeads: readonly PressureHead[]
  /** Water in the cell around each node, with what stands on the surface in the last. Unit: L. Range: any. */
  readonly water: readonly Volume[]
  /** Salt in the cell around each node, as EC times volume, where salt is followed. Unit: dS/m·L. Range: any. */
  readonly salt?: readonly number[]
  /**
   * Where media drain and wet on different curves, the curve on which each node, and then each middle between two, goes on: the share of the
   * main drying curve, or less than zero that of the main wetting curve. Unit: 1. Range: any.
   */
  readonly curves?: readonly number[]
  /** Suction up to which each of them last came that way. Unit: cm. Range: any. */
  readonly turns?: readonly number[]
}

/** How far, as a water content, the water of a cell may lie outside what it can hold: more than any simulation leaves. */
const APART = 1e-3

/** A simulated column at a moment. Units: cm, cm³, dS/m·cm³. */
export interface Moment extends ColumnState {
  readonly salt: Float64Array | undefined
}

/** The state as arrays of its own, checked number by number: nodes, finite numbers, and water that belongs to the heads. */
export function momentOf(state: RichardsState, equations: ColumnEquations, salted: boolean): Moment {
  requireObject(state, 'state')
  const { nodes, grid, full } = equations
  const { pressureHeads, water, salt } = state
  for (const [name, list] of Object.entries({ pressureHeads, water, ...(salted ? { salt } : {}) }))
    if (!isList(list) || list.length !== nodes)
      throw new InputError('state', `has not one number of \`${name}\` for each node`, 'begin with `start`')
  const suctions = numbersOf(pressureHeads, STATE_HEAD, 'pressureHeads', -1)
  const held = numbersOf(water, STATE_WATER, 'water', 1000)
  recallCurves(state, equations)
  equations.store(suctions)
  const standing = equations.standing(suctions)
  for (let i = 0; i < nodes; i++) {
    const own = held[i]! - (i === nodes - 1 ? standing : 0)
    const room = APART * grid.volumes[i]!
    if (own < -room || own > full[i]! + room)
      throw new InputError('state', `has water in cell ${i} that it cannot hold`, 'begin with `start`')
  }
  return {
    suctions,
    held,
    salt: salted ? numbersOf(salt as readonly number[], STATE_SALT, 'salt', 1000) : undefined,
  }
}

/** Numbers of a list, each looked at, in another unit. */
function numbersOf(list: readonly number[], domain: Domain, argument: string, scale: number): Float64Array {
  const numbers = new Float64Array(list.length)
  for (let i = 0; i < numbers.length; i++) numbers[i] = scale * numberIn(list[i]!, domain, argument)
  return numbers
}

/** Takes up on which curves the media are, where they drain and wet on different ones. */
function recallCurves({ curves, turns }: RichardsState, { points, grid }: ColumnEquations): void {
  const { history } = points
  if (history === undefined) return
  const count = countOfScanning(history, grid)
  for (const [name, list] of Object.entries({ curves, turns }))
    if (!isList(list) || list.length !== count)
      throw new InputError('state', `has not one number of \`${name}\` for each point`, 'begin with `start`')
  for (const curve of curves!) {
    numberIn(curve, STATE_CURVE, 'curves')
    if (curve === 0) throw new InputError('state', 'has a curve of no share', 'begin with `start`')
  }
  for (const turn of turns!) numberIn(turn, STATE_TURN, 'turns')
  recall(history, grid, { curves: curves!, turns: turns! })
}

/** The moment as plain numbers. */
export function stateOf({ suctions, held, salt }: Moment, { points, grid }: ColumnEquations): RichardsState {
  return {
    pressureHeads: listed(suctions, -1) as PressureHead[],
    water: listed(held, 1000) as Volume[],
    ...(salt === undefined ? {} : { salt: listed(salt, 1000) }),
    ...(points.history === undefined ? {} : remembered(points.history, grid)),
  }
}

/** The numbers in another unit, as a list; zero without a sign, which JSON does not keep. */
function listed(values: Float64Array, scale: number): number[] {
  const list: number[] = []
  for (let i = 0; i < values.length; i++) list.push(0 + values[i]! / scale)
  return list
}

/** The sum of the numbers of all cells. */
export function sumOf(cells: Float64Array): number {
  let total = 0
  for (let i = 0; i < cells.length; i++) total += cells[i]!
  return total
}
