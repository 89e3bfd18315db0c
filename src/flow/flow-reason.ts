/** Why something about a flow is not known, or does not come. `explainFlowFinding` puts it into words. */
export type FlowReason =
  // The conductivity of a drain.
  | 'no-drain'
  // Numbers that were fitted to a record.
  | 'at-its-limit'
  | 'interval-reaches-limit'
  | 'not-told-by-record'
  // Water on a surface.
  | 'medium-conducts-all'
