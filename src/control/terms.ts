import type { Diagnosis } from './diagnosis/cause/cause.js'

/** Terms that several inputs and states of control are composed of. */

/** When something is asked. */
export interface AskedNow {
  /** Now. Unit: s. */
  readonly now: number
}

/** The clock that a state has seen. */
export interface SeenClock {
  /** Latest moment seen. Unit: s. */
  readonly last: number | null
}

/** What a probe read, and when. */
export interface MomentOfProbe {
  /** Unit: m³/m³. */
  readonly waterContent: number
  /** When it was measured, by the clock of `now`. Unit: s. */
  readonly time: number
}

/** From which weight on a cause raises an alarm. */
export interface AlarmWeight {
  /** Causes of less weight raise nothing; 0.6 by default. Unit: 1. Range: [0, 1]. */
  readonly minWeight?: number
}

/** What may be wrong. */
export interface OfDiagnosis {
  /** The diagnosis, made by `watchZone`. */
  readonly diagnosis: Diagnosis
}
