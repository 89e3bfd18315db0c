/** What a record shows of its probes, as a code with its numbers; `explainRecordFinding` puts it into words. */
export type RecordFinding =
  | {
      readonly code: 'falls-away' | 'rises-away'
      /** How much it matters. */
      readonly level: 'caution'
      /** Name of the probe. */
      readonly about: string
      /** Change against its neighbours in a day. Unit: m³/m³/d. */
      readonly perDay: number
    }
  | {
      readonly code: 'noisy'
      readonly level: 'caution'
      /** Name of the probe. */
      readonly about: string
      /** Standard deviation of its noise. Unit: m³/m³. */
      readonly standardDeviation: number
      /** That of its neighbours. Unit: m³/m³. */
      readonly usual: number
    }
  | {
      readonly code: 'probe-sees-little' | 'probe-sees-much'
      readonly level: 'caution'
      /** Share of the water kept that shows at the probe. Unit: 1. */
      readonly share: number
    }
  | {
      readonly code: 'few-shots'
      readonly level: 'note'
      /** Shots on which the result rests. Unit: 1. */
      readonly shots: number
    }
  | {
      readonly code: 'reading-rises-with-salt'
      readonly level: 'caution'
      /** Change of the level after drain in a day. Unit: m³/m³/d. */
      readonly levelPerDay: number
      /** Change of the conductivity of the drain in a day. Unit: dS/m/d. */
      readonly drainPerDay: number
    }
  | {
      readonly code: 'above-capacity'
      readonly level: 'caution'
      /** Highest level after drain. Unit: m³/m³. */
      readonly max: number
      /** What the medium can hold. Unit: m³/m³. */
      readonly containerCapacity: number
    }
  | ClimbFinding

/** The water content climbed between two shots: more slowly than a shot, farther than noise. */
export interface ClimbFinding {
  readonly code: 'climbs-between-shots'
  readonly level: 'caution'
  /** Time of the lowest level. Unit: s. */
  readonly start: number
  /** Time of the highest level after it. Unit: s. */
  readonly end: number
  /** By how much it climbed. Unit: m³/m³. */
  readonly rise: number
}
