import type { Finding } from '../quantity/finding.js'

/** What is doubtful in a use that was computed or fitted, without words; `explainDemandFinding` has them. */
export interface UseFinding {
  /** Which doubt it is. */
  readonly code:
    | 'above-latent-heat'
    | 'cannot-tell-radiation'
    | 'cannot-tell-dryness'
    | 'cannot-tell-cause'
    | 'causes-move-together'
    | 'fails-new-days'
    | 'hardly-any-light'
  /** How much it matters: a `danger` must not be acted on unseen. */
  readonly level: Finding['level']
  /** The input, the result or the cause that it is about. */
  readonly about: string
  /** The coefficient, the correlation, the share of the variance that is explained, or the light of the brightest day. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** What it should not pass, or reaches in any usual record. Unit: that of `unit`. Range: any. */
  readonly limit: number
  /** Unit of both numbers. */
  readonly unit: 'mL/m² per J/cm²' | 'use/cause' | 'J/cm²' | '1'
}

/** Doubts that belong to a fit. */
export interface DoubtedFit {
  /** What the record cannot tell; `explainDemandFinding` has the words. */
  readonly findings: readonly UseFinding[]
}
