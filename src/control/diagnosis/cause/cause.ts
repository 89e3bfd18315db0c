import type { CAUSE_CODES } from './cause-codes.js'

/** What can be wrong in a zone, as far as its record can show it. */
export type CauseCode = (typeof CAUSE_CODES)[number]

/** What to do by hand to prove or refute a cause. `explainControlFinding` has the sentences. */
export type CheckCode =
  | 'look-at-supply'
  | 'look-at-supply-and-weigh'
  | 'look-at-supply-then-water-by-hand'
  | 'shut-main-valve-and-look'
  | 'walk-the-line'
  | 'catch-test'
  | 'weigh-a-container'
  | 'small-shots-and-weigh'
  | 'ask-who-watered'
  | 'look-at-probe-and-cable'
  | 'reseat-the-probe'
  | 'restart-the-probe'
  | 'compare-with-hand-meter'
  | 'read-the-labels'
  | 'flush-and-read-again'
  | 'read-in-the-dark'
  | 'check-the-unit'
  | 'look-at-gateway'
  | 'measure-feed-ec'
  | 'pour-into-the-gauge'
  | 'fill-a-bucket'
  | 'set-the-clock'
  | 'look-at-the-power'

/** What was measured of a zone that tells of a cause. */
export type EvidenceCode =
  | 'age-of-readings'
  | 'answer-to-temperature'
  | 'best-rise-share'
  | 'calls-without-time'
  | 'climb-without-shot'
  | 'clock-leap'
  | 'clock-rate'
  | 'difference-of-probes'
  | 'drain-beside-the-valve'
  | 'drain-ec'
  | 'drain-long-after-shots'
  | 'drained-share'
  | 'drained-share-of-a-day'
  | 'equal-readings'
  | 'fall-at-night'
  | 'feed-ec'
  | 'flow-while-closed'
  | 'jump'
  | 'level'
  | 'lowest-rise-share'
  | 'metered-share'
  | 'missed-shots'
  | 'moments-unreadable'
  | 'noise'
  | 'plateau-per-day'
  | 'plateau-per-drain-ec'
  | 'reading'
  | 'readings-lost'
  | 'rise-share'
  | 'rise-share-of-a-day'
  | 'shot-over-medium'
  | 'silence'
  | 'spikes'
  | 'spread-of-age'
  | 'time-between-series'
  | 'time-of-climb'
  | 'time-without-change'
  | 'trusted-probes'
  | 'unbelievable-readings'
  | 'volume-while-closed'
  | 'water-beside-the-valve'

/** A number on which a cause rests. */
export interface Evidence {
  /** What was measured. */
  readonly code: EvidenceCode
  /** The number. Unit: that of `unit`. Range: any. */
  readonly value: number
  readonly unit: string
  /** What it was when all was well, or should be. Unit: that of `unit`. Range: any. */
  readonly usual?: number
  /** The probe that it is about. */
  readonly about?: string
  /** When it was so. Unit: s. Range: any. */
  readonly time?: number
}

/** One thing that may be wrong. */
export interface Cause {
  /** Which one. */
  readonly code: CauseCode
  /** How much it matters if it is so. */
  readonly level: 'note' | 'caution' | 'danger'
  /** How well the evidence fits, from a half for "may be" to nearly one; to rank causes by, not a probability; chosen on rehearsals. Unit: 1. Range: any. */
  readonly weight: number
  /** The probes that it is about; absent where it is about the zone. */
  readonly about?: readonly string[]
  /** The numbers on which it rests. */
  readonly evidence: readonly Evidence[]
  /** What to do by hand to make sure. */
  readonly check: CheckCode
  /** Since when it has been told. Unit: s. Range: any. */
  readonly since: number
}

/** A cause before it is ranked. */
export type Suspicion = Omit<Cause, 'since'>

/** Why a cause can be neither told nor ruled out. `explainControlFinding` has the sentences. */
export type UnknownReason =
  | 'too-few-shots'
  | 'too-few-nights'
  | 'no-trusted-probe'
  | 'only-newest-reading'
  | 'only-one-probe'
  | 'no-flow-meter'
  | 'no-drain-gauge'
  | 'no-temperature'
  | 'no-drain-ec'
  | 'no-feed-ec'
  | 'ec-below-rain'
  | 'series-out-of-step'
  | 'readings-far-apart'
  | 'counts-too-late'
  | 'no-clock'

/** What a record shows of a zone at a moment. */
export interface Diagnosis {
  /** What may be wrong, the likeliest first. */
  readonly causes: readonly Cause[]
  /** What the evidence speaks against, with the number that does. */
  readonly ruledOut: readonly { readonly code: CauseCode; readonly evidence: Evidence }[]
  /** What cannot be told, and why. */
  readonly cannotTell: readonly { readonly code: CauseCode; readonly reason: UnknownReason }[]
  /** Whether a probe that can be trusted, or the drain, says that the zone is full; not known where none can be trusted, or only the newest reading says so. */
  readonly full:
    | { readonly known: true; readonly value: boolean }
    | { readonly known: false; readonly reason: 'no-trusted-probe' | 'only-newest-reading' }
  /** The message could not be read, as a part of it throws: this is what was told before it, and the state is kept. Left out where it could. */
  readonly unreadable?: true
}

/** What is told where nothing was looked at. */
export function nothingTold(): Diagnosis {
  return { causes: [], ruledOut: [], cannotTell: [], full: { known: false, reason: 'no-trusted-probe' } }
}
