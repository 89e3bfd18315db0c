import { optionOr } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'

/** Which way a change counts. */
export type Direction = 'both' | 'rise' | 'fall'

/** The word of the option, both ways by default. */
export function directionOf(direction: Direction | undefined): Direction {
  return oneOf(optionOr(direction, 'both'), ['both', 'rise', 'fall'], 'direction')
}
