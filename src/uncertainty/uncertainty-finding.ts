import type { CodedFinding } from '../quantity/finding.js'

/** What to mind about a propagated uncertainty. `explainUncertaintyFinding` puts it into words. */
export type UncertaintyFinding = CodedFinding<
  'input-near-its-end' | 'not-straight' | 'correlated-degrees-of-freedom' | 'draws-refused'
>
