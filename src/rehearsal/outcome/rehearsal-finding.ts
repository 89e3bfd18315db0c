/** Something that a rehearsal has shown. */
export type RehearsalFinding =
  | {
      readonly code: 'beyond-limit-of-day' | 'beyond-limit-of-day-against-will'
      readonly level: 'danger'
      /** Water in the worst 24 h. Unit: L. */
      readonly volume: number
      /** The limit. Unit: L. */
      readonly limit: number
    }
  | {
      readonly code: 'opening-too-long'
      readonly level: 'danger'
      /** Unit: s. */
      readonly duration: number
      /** Unit: s. */
      readonly limit: number
    }
  | {
      readonly code: 'opened-outside-hours' | 'opened-while-locked' | 'opened-blind'
      readonly level: 'danger' | 'caution' | 'note'
      /** Number of openings. Unit: 1. */
      readonly openings: number
    }
  | {
      readonly code: 'stress' | 'over-wet'
      readonly level: 'caution'
      /** Unit: h. */
      readonly hours: number
    }
  | { readonly code: 'fault-without-alarm'; readonly level: 'caution'; readonly fault: string }
  | {
      readonly code: 'false-alarms'
      readonly level: 'caution'
      /** Alarms that named nothing. Unit: 1. */
      readonly alarms: number
    }
  | {
      readonly code: 'controller-threw'
      readonly level: 'danger'
      /** Decisions in which it threw. Unit: 1. */
      readonly calls: number
    }
  | {
      readonly code: 'water-not-conserved'
      readonly level: 'danger'
      /** Water that was lost or made. Unit: L. */
      readonly volume: number
    }
