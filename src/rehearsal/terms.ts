import type { Duration } from '../quantity/generated/kinds.js'

/** How often a rehearsed controller is called. */
export interface CalledEvery {
  /** How often the controller is called; every minute by default. Unit: s. Range: [1, 3600]. */
  readonly pollEvery?: Duration
}
