import type { ColumnGrid } from '../grid/grid.js'

/** How much more exact the drain of a step is kept than a single cell, as depths over the whole column. */
export const DRAIN = 300
/** The same of what passes at a height: a little everywhere, and more the lower, for soon it is what drains; share of the height by which it fades. */
const PASSING = 10
const LOW = 100
const FADES = 0.4

/** What is remembered of steps to tell how long the next may be. */
export interface StepControl {
  /** Error and length of the last step that stood; no error behind a change of conditions. Units: m³/m³, s. */
  error: number
  length: number
  /** Whether that error was the drain's, and whether that of the step that is tried is. */
  byDrain: boolean
  triedByDrain: boolean
  /** How long the step behind the onset of the drain may be that steps go towards; zero where there is none. Unit: s. */
  behind: number
}

/** Share of the tolerance, as lengths, at which steps aim. */
const AIM = 0.95
/** By how much a step may be longer than the last in any case, by how much because errors fell, and where that of the drain fell by chance. */
const LONGER = 5
const FALLING = 2
const CHANCE = 1.2
/** Share of the last error of a drain below which the next is small by chance. */
const UNLIKELY = 0.3

export function stepControl(): StepControl {
  return { error: 0, length: 0, byDrain: false, triedByDrain: false, behind: 0 }
}

/** By how much a step of an error may be longer, or must be shorter, if errors go with the third power of the length. */
export function factorFor(error: number, tolerance: number): number {
  return error > 0 ? AIM * (tolerance / error) ** (1 / 3) : LONGER
}

/** What is controlled of a step's work. */
interface Controlled {
  readonly control: StepControl
  readonly tolerance: number
}

/**
 * By how much the step that follows one that stands is longer. Behind a shot errors fall while steps grow, by the same share in each, so
 * that the fall goes on in the next: gustafsson-1994, from memory. Half of that fall is
 * believed: with all of it one step in eight was tried in vain. The error of a drain that has risen and begins to fall changes its sign, and is
 * small by chance.
 */
export function growth({ control, tolerance }: Controlled, dt: number, error: number): number {
  const factor = factorFor(error, tolerance)
  const { error: last, length, byDrain } = control
  control.error = error
  control.length = dt
  control.byDrain = control.triedByDrain
  if (last === 0 || error === 0) return factor
  if (byDrain && error < UNLIKELY * last) return Math.min(factor, CHANCE)
  const fall = Math.sqrt((dt / length) * (last / error) ** (1 / 3))
  return factor * Math.min(Math.max(fall, 1 / FALLING), FALLING)
}

/** How much more exact than a single cell, as depths over the whole column, is kept what passes above each. Unit: 1/cm³. */
export function weightOfPassing({ heights, volume }: ColumnGrid): Float64Array {
  const height = heights[heights.length - 1]!
  return heights.map((z) => (PASSING + LOW * Math.exp(-z / (FADES * height))) / volume)
}
