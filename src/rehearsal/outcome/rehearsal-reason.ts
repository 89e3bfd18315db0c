import type { Duration } from '../../quantity/generated/kinds.js'

/** Why a rehearsal has no such number. `explainRehearsalFinding` puts it into words. */
export type RehearsalReason = 'never-named' | 'nothing-to-name' | 'fewer-than-two-openings'

/** Time from the start of a fault to an alarm that names it, or that none did. */
export type TimeToAlarm =
  | {
      readonly known: true
      /** Unit: s. */
      readonly time: Duration
    }
  | { readonly known: false; readonly reason: 'never-named' | 'nothing-to-name' }

/** Shortest time from the end of an opening to the start of the next. */
export type RestBetweenOpenings =
  | {
      readonly known: true
      /** Unit: s. */
      readonly time: Duration
    }
  | { readonly known: false; readonly reason: 'fewer-than-two-openings' }

/** Share of faults that alarms named. */
export type NamedShare =
  | {
      readonly known: true
      /** Unit: 1. */
      readonly share: number
    }
  | { readonly known: false; readonly reason: 'nothing-to-name' }
