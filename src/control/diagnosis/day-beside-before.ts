/** Shots of the last 24 hours beside those before. */
export interface DayBesideBefore {
  readonly since: number
  /** Share that three of ten shots did not exceed. */
  readonly drained: number
  readonly drainedBefore: number
  readonly level: number
  readonly levelBefore: number
  /** Whether that day began its shots near the highest level of those before. */
  readonly mayOverflow: boolean
  /** Mean rise of the probes, as a share of the usual. */
  readonly rise: number
  readonly riseBefore: number
}
