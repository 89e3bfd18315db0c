import type { OneCodeEach, ReasonCode } from '../quantity/explained.js'
import type { CodedFinding } from '../quantity/finding.js'
import type { ValidityFinding } from '../quantity/validity.js'

/** What to mind about a medium, its readings, its curve or its limits. `explainMediumFinding` puts it into words. */
export type MediumFinding = ValidityFinding | CodedFinding<MediumCode>

/** Why a model is refused in a choice. `explainMediumFinding` puts it into words. */
export type FitRefusal = 'not-told-by-points' | 'search-without-end'

/** Everything about a medium that can be put into words. */
export type ExplainedMedium = OneCodeEach<[ValidityFinding, CodedFinding<MediumCode>, ReasonCode<FitRefusal>]>

/** What may be found out about a medium. */
export type MediumCode =
  // Readings of the bench.
  | 'more-than-full'
  | 'odd-solids'
  // Fitted curves.
  | 'at-limit'
  | 'residual-extrapolated'
  | 'saturation-extrapolated'
  | 'no-air-entry'
  // Limits of watering.
  | 'no-room'
  | 'air-below-min'
  | 'beyond-buffer'
  | 'field-soil-guide'
  | 'lower-limit-assumed'
  | 'drying-curve'
  | 'outside-ideal-substrate'
  // What holds of growing media at large.
  | 'salts-in-coir'
  | 'salts-dry-down'
  | 'packing'
  | 'settling'
  | 'rewetting'
  | 'closed-pores'
  | 'column-height'
