import { answersOf } from '../quantity/answer.js'
import type { Mass } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { CHANGE_LIMIT, SOME_MASS } from './domains.js'

/** Change of the dry mass between two weighings below which a sample counts as dry. ISO 17892-1 and ISO 11465 [not confirmed, source not seen]. */
const CONSTANT = 0.001

/** Two weighings of a sample in the oven. */
export interface SuccessiveMasses {
  /** Mass at the weighing before. Unit: g. Range: (0, ∞). */
  readonly previousMass: Mass
  /** Mass at the last weighing. Unit: g. Range: (0, ∞). */
  readonly lastMass: Mass
  /** Relative change that counts as none, 0.001 when left out. Unit: 1. Range: (0, 1). */
  readonly limit?: number
}

/** How much the mass of a drying sample still changes. */
export interface MassChange {
  /** Relative change since the weighing before. Unit: 1. */
  readonly change: number
  /** Whether the sample counts as dry. */
  readonly constant: boolean
}

/**
 * Whether a sample in the oven has reached constant mass.
 *
 * @equation `\delta = \frac{|m_1 - m_2|}{m_2} \le 0.001`
 * @returns The relative change and whether it is within the limit.
 * @source iso-17892-1-2014 and iso-11465-1993, constant mass [not confirmed, source not seen]
 * @example
 * constantMass({ previousMass: grams(86.52), lastMass: grams(86.47) }) // => { change: 0.000578235, constant: true }
 */
export function constantMass(masses: SuccessiveMasses): MassChange {
  requireObject(masses, 'masses')
  const { previousMass, lastMass, limit = CONSTANT } = masses
  const [before, last] = [numberIn(previousMass, SOME_MASS, 'previousMass'), numberIn(lastMass, SOME_MASS, 'lastMass')]
  const change = Math.abs(before - last) / last
  return answersOf({ change, constant: change <= numberIn(limit, CHANGE_LIMIT, 'limit') }, 'lastMass')
}
