import type { RecordReason } from '../../record/record-reason.js'

/** Why a result of a zone is not known: a reason of its own, or one that comes from the record. `explainZoneFinding` puts it into words. */
export type ZoneReason = OwnZoneReason | ZoneRecordReason

/** Reasons of the record that a result of a zone can have. */
export type ZoneRecordReason = Extract<
  RecordReason,
  | 'beyond-two-days'
  | 'draining'
  | 'few-days'
  | 'few-dry-downs'
  | 'few-readings'
  | 'few-settled-shots'
  | 'no-reading'
  | 'short'
  | 'shot'
  | 'shot-in-night'
>

/** Reasons that no record has. */
export type OwnZoneReason =
  | 'no-bench-test'
  | 'no-watering-log'
  | 'no-entry-on-this-day'
  | 'given-not-logged'
  | 'drain-not-logged'
  | 'log-impossible'
  | 'rises-exceed-log'
  | 'nothing-given-or-not-logged'
  | 'no-readings-at-midnight'
  | 'day-not-over'
  | 'shot-not-read-yet'
  | 'climate-not-recorded'
  | 'climate-has-gaps'
  | 'climate-impossible'
  | 'not-logged'
  | 'not-recorded'
  | 'numbers-impossible'
  | 'no-shot-on-this-day'
  | 'last-shot-not-in-record'
  | 'no-long-stretch-without-shots'
  | 'not-used'
  | 'no-reading-late-in-day'
  | 'no-trusted-readings'
  | 'no-trusted-probe'
  | 'more-than-eight-probes'
  | 'full-point-not-believed'
  | 'no-log-of-openings'
  | 'no-full-point'
  | 'full-point-below-lower-limit'
  | 'use-not-known'
  | 'no-time-for-shots'
  | 'plan-not-possible'
