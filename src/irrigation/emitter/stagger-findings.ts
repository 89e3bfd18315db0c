import type { Instant } from '../../quantity/calendar.js'
import type { HowSerious } from '../terms.js'

/** What is to be known of a shot that had to wait for the pump or for its own zone, without words; `explainIrrigationFinding` has them. */
export interface StaggerFinding extends HowSerious {
  /** What is late, or asked for again. */
  readonly code: 'begins-late' | 'ends-too-late' | 'wanted-twice' | 'runs-long'
  /** Whose shot it is. */
  readonly zone: string
  /** When it begins now. Unit: s. Range: any. */
  readonly time: Instant
  /** How much later than wanted it begins, or than allowed it ends, how long the shot before it was still to run, or how long it runs itself. Unit: s. Range: any. */
  readonly value: number
  /** Unit of the value. */
  readonly unit: 's'
}
