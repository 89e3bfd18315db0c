export { type CoverageInput, coverageFactor } from './coverage-factor.js'
export { explainUncertaintyFinding } from './explain-uncertainty-finding.js'
export {
  type FirstOrderInput,
  propagateFirstOrder,
  type UncertainResult,
  type UncertaintyShare,
} from './propagate-first-order.js'
export {
  type DrawnInterval,
  type DrawnResult,
  type MonteCarloInput,
  propagateMonteCarlo,
} from './propagate-monte-carlo.js'
export type { Correlation, Spread, UncertainInput, UncertainInputs } from './uncertain-input.js'
export type { UncertaintyFinding } from './uncertainty-finding.js'
